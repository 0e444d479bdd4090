"""Switch-mode places: the list's words are understood, and ripple comes before the price."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.recap import plan, read_catalogue, replacement_capacitor

HEAD = (
    "part,series,family,capacitance_uf,rated_v,rated_c,life_h,ripple_ma,ripple_hz,esr_class,"
    "impedance_ohm,diameter_mm,length_mm,lead_spacing_mm,mounting,price,pack\n"
)
TWO = HEAD + (
    "LOW,A,aluminium low impedance,1000,16,105,5000,{low},100000,low,0.05,10,20,5,radial,0.20,1\n"
    "HIGH,B,aluminium low impedance,1000,16,105,5000,{high},100000,low,0.03,10,20,5,radial,0.90,1\n"
)


def catalogue(tmp_path, low, high):
    path = tmp_path / "shop.csv"
    path.write_text(TWO.format(low=low, high=high), encoding="utf-8")
    return read_catalogue(path)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "words", ["SMPS", "switching supply", "high ripple", "switch mode", "switching output"]
)
def test_a_switch_mode_place_asks_for_low_impedance(words):
    (item,) = plan(f"C1 470uF 25V elect {words}\n").all_items
    assert item.verdict == "replace" and item.low_impedance
    assert "ripple and ESR" in dict(item.new.rules)
    assert any("low impedance" in look for look in item.looks)


@pytest.mark.behaviour
@pytest.mark.parametrize(("low", "high"), [(400, 1500), (900, 1200)])
def test_where_it_is_asked_for_ripple_comes_before_price(tmp_path, low, high):
    shop = catalogue(tmp_path, low, high)
    (item,) = plan("C1 1000uF 16V elect SMPS\n", catalogue=shop).items
    assert item.selection.part.part == "HIGH" and item.selection.cheapest.part == "LOW"
    (plain,) = plan("C1 1000uF 16V elect radial\n", catalogue=shop).items
    assert plain.selection.part.part == "LOW"


@pytest.mark.common_practice
def test_the_calculator_speaks_of_ripple_where_a_wet_part_goes():
    said = " ".join(replacement_capacitor("1000 uF", "16 V", "aluminium electrolytic").notes)
    assert "ripple current" in said and "100 kHz" in said
    assert not replacement_capacitor("100 nF", "63 V", "film").notes


def test_the_demo_catalogue_has_low_impedance_parts():
    made = plan(
        "C1 470uF 25V elect SMPS\n", catalogue=read_catalogue(demo_path("parts-catalogue.csv"))
    )
    assert made.items[0].selection.part.family == "aluminium low impedance"
