"""Re-forming: published practices by their figures, and what no schedule may promise."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.capacitor_families import families
from repairlib.health.reforming import METHODS, reforming_schedule
from tests.documents import document

INSIDE = {name: one.inside for name, one in families().items()}
WET = [name for name, inside in INSIDE.items() if inside == "wet aluminium"]


def article(stated):
    return document("encyclopaedia, Electrolytic capacitor", stated)


@pytest.mark.published(
    document("IEC 60384-4, quoted", "100 Ω to 100 V, 1000 Ω above, 1 h, then 12 to 48 h of rest")
)
def test_databook():
    low = reforming_schedule("470 µF", "63 V", 5, "databook")
    high = reforming_schedule("47 µF", "400 V", 5, "databook")
    assert (low.series_resistor, high.series_resistor) == (100, 1000)
    assert (low.steps, low.minutes_each_step) == ("63 V", 60)
    assert "12 to 48 h" in low.afterwards


@pytest.mark.published(article("rated voltage through about 1 kΩ for 1 h, parts of the 1970s"))
def test_encyclopaedia():
    finding = reforming_schedule("47 µF", "25 V", 50, "encyclopaedia")
    assert (finding.series_resistor, finding.minutes_each_step) == (1000, 60)
    assert any("1970s" in step for step in finding.working)


@pytest.mark.published(
    document("Vishay 056/057", "rated voltage for 30 min, measured 24 to 48 h later")
)
def test_snap_in():
    finding = reforming_schedule("470 µF", "63 V", 5, "databook", "aluminium snap-in")
    assert any("30 min and measures 24 to 48 h later" in note for note in finding.notes)


@pytest.mark.published(document("Cornell Dubilier ESRD", "42 months of storage"))
def test_polymer_chips_may_be_stored():
    with pytest.raises(RepairlibError, match="42 months"):
        reforming_schedule(1e-6, 10, 10, family="polymer chip low")


@pytest.mark.from_memory("30 kΩ 5 W, 5 min and 1 min per month stored")
def test_old_workshop():
    finding = reforming_schedule("8 µF", "450 V", 10, "old workshop")
    assert finding.series_resistor == 30e3
    assert finding.minutes_each_step == 125  # 5 + 120 months
    assert finding.resistor_power >= 5


@pytest.mark.common_practice
def test_stepped():
    finding = reforming_schedule("470 µF", "25 V", 12)
    assert finding.steps == "6.25 V, 12.5 V, 18.75 V, 25 V"
    assert any("no published figure" in note for note in finding.notes)
    # A shorted part: 25 V / 5.6 kΩ is 4.5 mA, 0.11 W.
    assert finding.resistor_power == 0.25


@pytest.mark.published(article("two years of storage are usual, up to ten with some"))
def test_two_years_are_usual():
    finding = reforming_schedule("470 µF", "25 V", 2)
    assert finding.verdict == "not needed"
    assert "with some parts ten" in finding.reason
    assert reforming_schedule("470 µF", "25 V", 2.5).verdict == "verify"


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("volts", [6.3, 25, 63, 400])
@pytest.mark.parametrize("farad", [1e-6, 1e-4, 1e-2])
def test_it_never_says_safe_and_always_says_when_to_stop(method, volts, farad):
    finding = reforming_schedule(farad, volts, 20, method)
    assert finding.verdict == "verify"
    assert set(finding.cautions) >= {"stored charge", "mains", "heat and fire"}
    assert "warm" in finding.give_up
    assert any("Never from the mains" in note for note in finding.notes)
    assert any("qualified" in note for note in finding.notes) == (volts > 60)


@pytest.mark.parametrize("farad", [1e-6, 1e-4, 1e-2])
@pytest.mark.parametrize("volts", [6.3, 63, 400])
def test_the_resistor_survives_a_shorted_part(farad, volts):
    finding = reforming_schedule(farad, volts, 20)
    assert finding.resistor_power >= 2 * volts**2 / finding.series_resistor


@pytest.mark.published(article("solid types need no re-forming"))
@pytest.mark.parametrize("family", [name for name in INSIDE if INSIDE[name].startswith("solid")])
def test_solid_parts_need_none(family):
    with pytest.raises(RepairlibError, match="no wet oxide"):
        reforming_schedule(1e-6, 10, 10, family=family)


@pytest.mark.common_practice
@pytest.mark.parametrize("family", [name for name in INSIDE if name not in WET])
def test_only_wet_parts(family):
    with pytest.raises(RepairlibError, match="no wet oxide"):
        reforming_schedule(1e-6, 10, 10, family=family)


# EIA-815 gives the same hours and no temperature.
@pytest.mark.published(
    "TDK, databook of aluminium electrolytic capacitors, as quoted at "
    "wungiel.pl/19_Feb_2020_15465.html: rated voltage 1 h, then 12 to 48 h at 15 to 35 °C"
)
def test_databook_rest_has_its_temperature():
    notes = " ".join(reforming_schedule("470 µF", "63 V", 5, "databook").notes)
    assert "12 to 48 h of rest at 15 to 35 °C" in notes


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("family", "both_ways"),
    [
        ("aluminium bipolar", True),
        ("aluminium non-polar", True),
        ("aluminium non-polar axial", True),
        ("aluminium general 85", False),
        ("aluminium snap-in", False),
    ],
)
def test_a_bipolar_part_is_re_formed_both_ways(family, both_ways):
    notes = " ".join(reforming_schedule("10 µF", "50 V", 12, family=family).notes)
    assert ("once each way round" in notes) == both_ways
    assert ("Plus to plus" in notes) != both_ways
