"""Current limit, lamp in series and fuse: their figures, and whom they leave the work to."""

from itertools import pairwise

import pytest

from repairlib.core.calculators import HOMES, calculator_named
from repairlib.core.errors import RepairlibError
from repairlib.power_up import (
    LAMP,
    NEITHER,
    current_limit,
    fuse_pulse,
    series_lamp,
    short_below,
    steps_up,
)
from repairlib.power_up.fuse import decaying_pulse
from tests.documents import document

QUALIFIED = "leave it to a qualified person"


@pytest.mark.from_memory("volts set with the output off, 100 mA to begin, a little above, in steps")
def test_the_limit_begins_at_100_milliampere_and_ends_a_little_above():
    finding = current_limit("12 V", "250 mA")
    assert finding.verdict == "begin at 3\xa0V with 100\xa0mA"
    assert 0.25 < finding.last_limit <= 1.25 * 0.25
    assert "output off" in finding.notes[0] and "Read the current" in finding.notes[0]


@pytest.mark.behaviour
@pytest.mark.parametrize("voltage", [3.3, 12, 60])
@pytest.mark.parametrize("current", [1e-3, 0.05, 0.3, 2, 40])
def test_steps_rise_and_a_sound_set_stays_below_each(voltage, current):
    steps = steps_up(voltage, current)
    assert steps[-1].volts == voltage and steps[0].limit <= 0.1
    for lower, upper in pairwise(steps):
        assert lower.volts < upper.volts and lower.limit <= upper.limit
    for step in steps:
        sound = current * step.volts / voltage  # it takes less at fewer volts
        assert sound < step.most < step.limit <= 1.2 * current * (1 + 1e-8)
        regulated = current if step.volts >= voltage / 2 else sound  # all, once it regulates
        assert regulated < step.most


@pytest.mark.common_practice
def test_with_neither_supply_nor_lamp_it_is_handed_on():
    finding = current_limit("12 V", "250 mA", NEITHER)
    assert finding.verdict == "hand on" and "somebody who has a limited supply" in finding.reason
    assert "step_1" not in finding.values


@pytest.mark.published(document("IEC 62368-1", "5.2.2, ES1: 60 V dc"))
def test_a_lamp_and_high_volts_are_for_qualified_people():
    for finding in (current_limit("12 V", 1, LAMP), current_limit("61 V", 1)):
        assert finding.verdict == QUALIFIED and "mains" in finding.cautions
        assert "step_1" not in finding.values
    with pytest.raises(RepairlibError):
        steps_up(61, 1)


@pytest.mark.behaviour
def test_ohms_of_a_short_are_volts_by_limit_and_never_below_the_leads():
    """12 V by 1.2 × 0.5 A is 20 Ω."""
    assert short_below(12, 0.5) == short_below(-12, 0.5) == 20
    assert short_below(1.2, 10) == 1
    for wrong in ((0, 1), (5, 0), (float("nan"), 1), (5, float("inf"))):
        with pytest.raises(RepairlibError):
            short_below(*wrong)


@pytest.mark.published(
    document("encyclopaedia, Incandescent light bulb", "about 1/15; 100 W 120 V: 144 Ω, 9.5 Ω cold")
)
def test_a_filament_cold_and_hot():
    lamp = series_lamp("100 W", "120 V")
    assert (lamp.lamp, lamp.hot) == (100, pytest.approx(144))
    assert lamp.cold_from == pytest.approx(9.6)  # 144 / 15; the page says about 9.5
    assert lamp.cold_from <= 9.6 < lamp.cold_to


# 230² / 60 = 881.7; by 14 it is 63. 230² / 100 = 529; by 14 it is 37.8.
@pytest.mark.from_memory("cold by hot 10, 14 and 15 on pages on lamps; use 10 to 15")
@pytest.mark.parametrize(("watts", "hot", "cold"), [(60, 882, 63), (100, 529, 37.8)])
def test_lamps_at_230_volts(watts, hot, cold):
    lamp = series_lamp(watts)
    assert lamp.hot == pytest.approx(hot, rel=5e-4)
    assert lamp.cold_from < cold < lamp.cold_to
    assert (lamp.hot / lamp.cold_to, lamp.hot / lamp.cold_from) == pytest.approx((10, 15))


@pytest.mark.published(
    document("series lamp note", "bright with a shorted set; hardly lit, nearly full volts, else")
)
def test_what_the_lamp_shows():
    told = " ".join(series_lamp("40 W").notes)
    assert "Bright and stays bright: a fault" in told
    assert "Dim: the set gets nearly its full volts" in told


@pytest.mark.common_practice
def test_watts_about_the_sets_own():
    assert [series_lamp(watts).lamp for watts in (5, 38, 55, 120, 200)] == [15, 40, 60, 100, 200]


@pytest.mark.from_memory("switch-mode sets may not start on a lamp")
def test_a_switch_mode_set_may_not_start():
    for supply, due in (("switch-mode", True), ("not known", True), ("transformer", False)):
        told = " ".join(series_lamp("40 W", supply=supply).notes)
        assert ("may not start" in told) == due


@pytest.mark.behaviour
@pytest.mark.parametrize("supply", ["transformer", "switch-mode", "not known"])
@pytest.mark.parametrize("watts", [1, 60, 200])
def test_a_lamp_is_never_for_everybody(supply, watts):
    finding = series_lamp(watts, supply=supply)
    assert finding.verdict == QUALIFIED and "does not isolate" in finding.reason
    assert {"mains", "stored charge"} <= set(finding.cautions)
    assert "can kill" in finding.notes[0]


@pytest.mark.published(document("Littelfuse fuse guide", "22, 29, 38, 48 % of melting I²t; 10 s"))
@pytest.mark.parametrize(
    ("pulses", "share"), [("100000", 0.22), ("10000", 0.29), ("1000", 0.38), ("100", 0.48)]
)
def test_share_of_the_melting_integral(pulses, share):
    """10 V, 2 Ω, 0.04 F: 5 A and 80 ms, 25 × 0.08 / 2 = 1 A²s."""
    at_edge = 1 / share
    keeps = fuse_pulse(10, 0.04, 2, pulses, melting=at_edge * 1.001)
    breaks = fuse_pulse(10, 0.04, 2, pulses, melting=at_edge * 0.999)
    assert (keeps.verdict, breaks.verdict) == ("within the limits", "outside the limits")
    assert any("10 s apart" in line for line in keeps.working)


@pytest.mark.published(document("Littelfuse fuse guide", "chart 1, shape F: I²t = ip² t / 2"))
def test_a_decaying_pulse():
    """V² C / (2 R): 325² × 100e-6 / 10 = 1.05625 A²s; by 0.22 it is 4.80."""
    assert decaying_pulse(65, 0.5e-3) == pytest.approx(1.05625)
    finding = fuse_pulse("325 V", "100 µF", "5 Ω")
    assert (finding.pulse, finding.melting_needed) == ("1.06 A²s", "4.8 A²s")
    assert finding.peak == 65
    with pytest.raises(RepairlibError):
        decaying_pulse(-1, 1)


@pytest.mark.from_memory("run a fuse at 75 % of its rating, never above its rated volts")
def test_running_current():
    finding = fuse_pulse(12, "1000 µF", 1, current="1.5 A")
    assert finding.rating_at_least == 2
    assert any("rated volts" in note for note in finding.notes)


@pytest.mark.behaviour
def test_a_fuse_is_no_reason_to_go_larger_or_to_the_mains():
    finding = fuse_pulse("325 V", "100 µF", "5 Ω", melting=10)
    assert finding.verdict == f"within the limits; {QUALIFIED}"
    assert {"mains", "stored charge", "heat and fire"} <= set(finding.cautions)
    assert "same rating" in finding.notes[0] and "fault: find it" in finding.notes[0]
    assert fuse_pulse(12, "1000 µF", 1).verdict is None


@pytest.mark.behaviour
def test_much_charge_is_named_at_few_volts_too():
    """12² × 10 / 2 = 720 J, 12² × 1e-3 / 2 = 72 mJ."""
    assert "stored charge" in fuse_pulse(12, "10 F", 1).cautions
    assert "stored charge" not in fuse_pulse(12, "1000 µF", 1).cautions


@pytest.mark.behaviour
def test_high_volts_are_never_for_an_ordinary_meter():
    for finding in (current_limit("1000 V", 1), fuse_pulse("1000 V", "1 µF", 5)):
        assert "not with an ordinary meter" in finding.reason
        assert "high-voltage tubes" in finding.cautions


@pytest.mark.behaviour
def test_no_answer_of_this_room_says_safe():
    names = [one for home in HOMES if home.startswith("power_up") for one in HOMES[home].split()]
    assert len(names) == 5
    for name in names:
        assert "safe" not in calculator_named(name).page().casefold()
