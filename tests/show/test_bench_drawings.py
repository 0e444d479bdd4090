"""The bench, the discharge curve and its circuit: named, said in words, byte-stable."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import AFTER_UNPLUGGING
from repairlib.core.quantity import brief
from repairlib.show import draw_discharge_tool, draw_meter, draw_part
from repairlib.show.bench import draw_bench
from repairlib.show.discharge import draw_discharge, draw_discharge_circuit, draw_strap_path
from repairlib.show.discharging import draw_discharging
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet


def plain(text):
    return text.replace("\xa0", " ")


def test_everything_on_the_bench_is_named():
    picture = draw_bench()
    for words in ("meter", "discharge resistor", "iron", "fume", "plug", "mat", "wrist strap"):
        assert words in picture.svg and words in picture.alt
    assert plain(picture.svg).count("cord 1 MΩ</text>") == 2
    assert picture.svg == draw_bench().svg


def test_the_tool_is_named_and_insulated_as_it_is_held():
    picture = draw_discharging()
    for words in ("100 Ω", "clip", "insulated jaws", "probe", "finger guard", "meter", "sleeve"):
        assert words in plain(picture.svg) and words in plain(picture.alt)
    assert picture.svg == draw_discharging().svg


# Worked by hand: 22 s × ln(400 / 60) = 41.74 s, 400 V / e = 147.2 V.
@pytest.mark.published("IEC 62368-1, 5.2.2: ES1 ends at 60 V dc")
def test_the_curve_names_its_limit():
    assert "60 V dc (IEC 62368-1, ES1)" in plain(draw_discharge(220e-6, 400, 100e3).svg)


@pytest.mark.common_practice
def test_the_curve_names_its_times():
    """By hand: 22 s × ln(400 / 60) = 41.74 s; after one time constant 400 V / e = 147.2 V."""
    drawn = plain(draw_discharge(220e-6, 400, 100e3).svg)
    assert "41.74 s" in drawn
    assert "147.2 V, 37 %" in drawn


@pytest.mark.behaviour
def test_the_curve_is_labelled_and_the_same_each_time():
    picture = draw_discharge(220e-6, 400, 100e3)
    assert "time (s)" in plain(picture.svg)
    assert "never reaches 0" in picture.alt
    assert picture.svg == draw_discharge(220e-6, 400, 100e3).svg


def test_any_limit_and_any_size_can_be_drawn():
    for limit in AFTER_UNPLUGGING:
        assert limit in draw_discharge(1e-6, 121, 1e3, limit).alt
    for farad, ohm in ((1e-12, 1), (1e-9, 1e3), (1, 1e6), (1e-6, 1e12)):
        assert draw_discharge(farad, 325, ohm).svg
    with pytest.raises(RepairlibError, match="not below"):
        draw_discharge(1e-6, 50, 1e3)


def test_circuits():
    circuit = draw_discharge_circuit(1e-3, 50, 1e3)
    for words in ("1000 µF", "1 kΩ", "insulated probe", "stays on"):
        assert words in plain(circuit.svg)
    path = draw_strap_path(230)
    assert "230 V / 1 MΩ = 230 µA" in plain(path.alt)
    assert "strap cord 1 MΩ" in plain(path.svg)


@pytest.mark.parametrize("ohms", [47, 390, 2200, 10e3])
def test_the_discharge_tool_carries_the_resistor_that_is_asked_for(ohms):
    picture = draw_discharge_tool(ohms, "3 W")
    named = brief(ohms, "Ω")
    assert f">{named}<" in picture.svg and named in picture.alt and "3 W" in picture.alt
    assert_text_is_inside_the_sheet(picture)
    assert_no_text_covers_another(picture)
    with pytest.raises(RepairlibError, match="not a resistance"):
        draw_discharge_tool(0)


@pytest.mark.parametrize("flip", [False, True])
@pytest.mark.parametrize(
    ("body", "positive"),
    [
        ("radial", "right"),
        ("dipped tantalum", "left"),
        ("axial", "right"),
        ("snap-in can", "right"),
    ],
)
def test_the_red_lead_is_on_the_positive_end(body, positive, flip):
    said = draw_meter("12.0 V", body, flip=flip).alt
    side = positive if not flip else {"left": "right", "right": "left"}[positive]
    assert f"the red one on the {side} end" in said
    said = draw_part(body, flip=flip).alt.lower()
    assert f"the {side} end is positive" in said or f"the {side} end is the anode" in said


def test_the_meter_shows_what_is_read():
    for setting, reading in (("V", "0.00 V"), ("Ω", "OL"), ("A", "0.2 A")):
        picture = draw_meter(reading, "resistor", setting=setting)
        assert f">{reading}<" in picture.svg
        assert_text_is_inside_the_sheet(picture)
        assert_no_text_covers_another(picture)
    for body, setting, told in (("to-92", "V", "two ends"), ("radial", "W", "no such place")):
        with pytest.raises(RepairlibError, match=told):
            draw_meter("1", body, setting=setting)
