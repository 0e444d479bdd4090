"""repairlib.health.meter and decision_rules: every worked case of the published notes."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.decide import RULES, UNIFORM, decide, false_accept_risk
from repairlib.core.errors import RepairlibError
from repairlib.health.meter import (
    four_wire_resistance,
    interval,
    judge_reading,
    last_digit,
    meter_interval,
    two_wire_resistance,
)
from tests.documents import document

ILAC = document("ILAC-G8:09/2019")

# Per cent of reading and digits


@pytest.mark.published(document("Meter accuracy KA-03135", "120.0 V ± 1.5 V"))
def test_one_percent_and_three_digits():
    assert interval("120.0 V", 1, 3).uncertainty == pytest.approx(1.5)


@pytest.mark.published(document("Meter accuracy and precision", "97.8 V to 102.2 V"))
def test_two_percent_and_two_digits():
    finding = meter_interval("100.0 V", 2, 2)
    assert (finding.low, finding.high) == pytest.approx((97.8, 102.2))


@pytest.mark.published(
    document("Meter error and accuracy", "1.987 V to 2.013 V, 98.8 V to 101.2 V")
)
@pytest.mark.parametrize(
    "reading, percent, digits, low, high",
    [("2.000 V", 0.5, 3, 1.987, 2.013), ("100.0 V", 1, 2, 98.8, 101.2)],
)
def test_worked_intervals(reading, percent, digits, low, high):
    finding = meter_interval(reading, percent, digits)
    assert (finding.low, finding.high) == pytest.approx((low, high))


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "reading, count",
    [
        ("120.0 V", 0.1),
        ("120 V", 1),
        ("2.000 V", 0.001),
        ("0.00 Ω", 0.01),
        ("-0.05 V", 0.01),
        ("4.70 kΩ", 10),
        ("4k7", 100),
        ("12,5 V", 0.1),
        ("1.50e3 Ω", 10),
        ("220.0 µF", 1e-7),
        ("1,000.5 V", 0.1),
        ("25.0 °C", 0.1),
        ("77.0 °F", 0.1 / 1.8),
    ],
)
def test_the_last_place_is_as_it_was_typed(reading, count):
    assert last_digit(reading) == pytest.approx(count)


def test_digits_are_counts_and_not_per_cent():
    wrong = 100 * (2 + 2) / 100
    assert interval("100.0 V", 2, 2).uncertainty == pytest.approx(2.2) != wrong


@pytest.mark.parametrize(
    "reading, percent, digits, said",
    [
        ("", 1, 1, "nothing was typed"),
        ("OL", 1, 1, "more than the range can show: it has no interval"),
        ("10 V", -1, 1, "percent is out of range"),
        ("10 V", 1, "2 V", "digits has no unit"),
        ("1e308 V", 100, 1, "too wide"),
    ],
)
def test_a_reading_that_cannot_be_used(reading, percent, digits, said):
    with pytest.raises(RepairlibError, match=said):
        meter_interval(reading, percent, digits)


# Low ohms


@pytest.mark.common_practice
def test_leads_are_taken_off():
    assert two_wire_resistance("0.35 Ω", "0.25 Ω").resistance == pytest.approx(0.10)


@pytest.mark.published(
    document("Meter error and accuracy", "leads add 0.2 Ω to 0.5 Ω, renew them above 1 Ω")
)
@pytest.mark.parametrize(
    ("leads", "worn"),
    [("0.2 Ω", False), ("0.5 Ω", False), ("1.0 Ω", False), ("1.05 Ω", True)],
)
def test_leads_above_one_ohm_are_worn(leads, worn):
    notes = two_wire_resistance("5 Ω", leads).notes
    assert bool(notes) == worn
    assert all("renew" in note for note in notes)


def test_both_readings_are_uncertain():
    finding = two_wire_resistance("0.35 Ω", "0.25 Ω", 1, 3)
    # 0.0035 + 0.03 and 0.0025 + 0.03, worked by hand
    assert (finding.low, finding.high) == pytest.approx((0.034, 0.166))
    near = two_wire_resistance("0.26 Ω", "0.25 Ω", 1, 3)
    # 0.01 ± (0.0026 + 0.03 + 0.0025 + 0.03)
    assert (near.low, near.high) == pytest.approx((-0.0551, 0.0751))
    assert "four-wire" in near.notes[0]


def test_leads_that_read_more_than_the_part():
    with pytest.raises(RepairlibError, match="less than the leads alone"):
        two_wire_resistance("0.20 Ω", "0.25 Ω")
    near = two_wire_resistance("0.24 Ω", "0.25 Ω", 1, 3)
    assert near.resistance == pytest.approx(-0.01)
    assert any("contradict each other" in note for note in near.notes)
    with pytest.raises(RepairlibError, match="below zero: is the circuit live"):
        two_wire_resistance("-3 Ω", "0.25 Ω")


# By hand: reading and leads, ± each, and what is left of the difference.
@pytest.mark.published(document("Meter accuracy KA-03135", "per cent of reading and counts add"))
@pytest.mark.parametrize(
    ("reading", "leads", "percent", "digits", "rest", "uncertainty"),
    [
        ("0.25 Ω", "0.35 Ω", 0.5, 5, -0.100, 0.103),  # 0.05125 + 0.05175
        ("0.10 Ω", "0.12 Ω", 1, 2, -0.020, 0.0422),  # 0.021 + 0.0212
        ("0.30 Ω", "0.28 Ω", 2, 3, 0.020, 0.0716),  # 0.036 + 0.0356
    ],
)
def test_a_difference_near_zero_keeps_its_uncertainty(
    reading, leads, percent, digits, rest, uncertainty
):
    finding = two_wire_resistance(reading, leads, percent, digits)
    assert finding.resistance == pytest.approx(rest)
    assert finding.uncertainty == pytest.approx(uncertainty, abs=1e-4)
    assert (finding.low, finding.high) == pytest.approx((rest - uncertainty, rest + uncertainty))
    assert any("four-wire" in note for note in finding.notes)


@pytest.mark.published(document("IEC 62368-1 test report", "0.012 Ω at 20 A"))
def test_four_wires():
    """By hand: 20 A × 0.012 Ω is 0.24 V and 4.8 W."""
    finding = four_wire_resistance("0.24 V", "20 A")
    assert finding.resistance == pytest.approx(0.012)
    assert finding.power == pytest.approx(4.8)


@pytest.mark.behaviour
def test_four_wires_without_a_current():
    with pytest.raises(RepairlibError, match="current is out of range"):
        four_wire_resistance(1, 0)


# Decision rules. Cases worked by hand from the clauses of ILAC-G8:09/2019: limits 4.75 to 5.25 V,
# U = w = 0.03 V.


FIVE_VOLT_RAIL = [
    (5.24, "simple", "pass"),
    (5.24, "guarded", "fail"),
    (5.24, "non-binary", "conditional pass"),
    (5.27, "non-binary", "conditional fail"),
    (5.27, "simple", "fail"),
    (5.30, "non-binary", "fail"),
    (5.22, "guarded", "pass"),
    (5.22, "non-binary", "pass"),
    (5.221, "guarded", "fail"),
    (5.25, "simple", "pass"),
    (4.78, "non-binary", "pass"),
    (4.77, "non-binary", "conditional pass"),
    (4.74, "non-binary", "conditional fail"),
    (4.70, "non-binary", "fail"),
]


@pytest.mark.published(f"{ILAC}: zones of the three rules, worked by hand")
@pytest.mark.parametrize("reading, rule, zone", FIVE_VOLT_RAIL)
def test_five_volt_rail(reading, rule, zone):
    assert decide(reading - 0.03, reading + 0.03, 4.75, 5.25, rule, unit="V").zone == zone


@pytest.mark.behaviour
@pytest.mark.parametrize("reading, rule, zone", FIVE_VOLT_RAIL)
def test_a_conditional_zone_cannot_be_told(reading, rule, zone):
    decision = decide(reading - 0.03, reading + 0.03, 4.75, 5.25, rule, unit="V")
    assert decision.verdict == ("cannot tell" if "conditional" in zone else zone)


@pytest.mark.published(f"{ILAC}: AL = TL - U, worked by hand")
def test_acceptance_limits():
    decision = decide(4.97, 5.03, 4.75, 5.25, "guarded")
    assert (decision.accept_low, decision.accept_high) == pytest.approx((4.78, 5.22))
    decision = decide(0.4, 3.6, None, 4.00, "guarded")  # U 1.60
    assert (decision.accept_low, decision.accept_high) == (None, pytest.approx(2.40))


@pytest.mark.from_memory("JCGM 106:2012: A = T - w, w = r U")
@pytest.mark.parametrize("r, accept", [(0.83, 2.672), (1.5, 1.6), (3, -0.8)])
def test_other_guard_bands(r, accept):
    decision = decide(0.4, 3.6, None, 4.00, "guarded", guard=r)  # U 1.60
    assert decision.accept_high == pytest.approx(accept)


@pytest.mark.published(
    f"{document('TUV decision rules', 'up to 50 %')}; {document('SGS decision rules', '< 2.5 %')}"
)
def test_risk_of_the_two_usual_rules():
    assert false_accept_risk(0) == 0.5
    assert 0.02 < false_accept_risk(1) < 0.025


@pytest.mark.from_memory("risk of w = 0.83 U, 1.5 U, 3 U: 5 %, 0.16 %, 1 ppm; normal curve")
def test_risk_of_other_guard_bands():
    assert false_accept_risk(0.83) == pytest.approx(0.0485, rel=0.01)
    assert false_accept_risk(1.5) == pytest.approx(0.00135, rel=0.01)
    assert false_accept_risk(3) == pytest.approx(1e-9, rel=0.05)


# It follows from AL = TL - w on both sides; what is then said and done is our choice.
@pytest.mark.behaviour
@pytest.mark.parametrize("rule", ["guarded", "non-binary"])
def test_nothing_passes_where_the_meter_is_too_coarse(rule):
    decision = decide(4.7, 5.3, 4.75, 5.25, rule, unit="V")
    assert decision.verdict == "cannot tell"
    assert "no acceptance zone" in decision.reason
    assert decide(6.0, 6.6, 4.75, 5.25, rule).verdict == "fail"


def test_a_band_just_as_wide_as_two_guard_bands_passes_at_its_middle():
    assert decide(4.75, 5.25, 4.75, 5.25, "guarded").verdict == "pass"


@pytest.mark.parametrize("rule", RULES)
def test_open_ends(rule):
    def over(limit):
        return decide(20e6, math.inf, limit_low=limit, rule=rule, unit="Ω")

    assert over(1e6).verdict == "pass"
    assert over(50e6).verdict == "cannot tell"
    assert "at least 20\xa0MΩ may or may not" in over(50e6).reason
    assert decide(20e6, math.inf, limit_high=1e6, rule=rule).verdict == "fail"
    assert decide(-math.inf, math.inf, limit_high=1, rule=rule).verdict == "cannot tell"


@pytest.mark.parametrize(
    "arguments, said",
    [
        ((1, 2), "nothing to judge by"),
        ((2, 1, 0, 3), "low end"),
        ((math.nan, 1, 0, 3), "low end"),
        ((1, 2, 3, 0), "lower limit"),
        ((1, 2, 3, 3), "lower limit"),
        ((1, 2, math.nan, 3), "lower limit"),
        ((1, 2, 0, 3, "fair"), "not a decision rule"),
        ((1, 2, 0, 3, "simple", -1), "guard band"),
    ],
)
def test_figures_that_contradict_each_other(arguments, said):
    with pytest.raises(RepairlibError, match=said):
        decide(*arguments)


@pytest.mark.common_practice
@pytest.mark.parametrize("reading", ["0.00 Ω", "0.0 Ω", "0 mΩ", "0.01 Ω", "-0.02 Ω", "< 0.1 Ω"])
@pytest.mark.parametrize("rule", RULES)
def test_a_short_never_passes(reading, rule):
    finding = judge_reading(reading, 1, 3, limit_high="1 Ω", rule=rule)
    assert finding.verdict == "cannot tell"
    assert "the probes touch each other, or the part is shorted" in finding.reason
    assert judge_reading("0.00 Ω", 1, 3, limit_low="1 kΩ").verdict == "fail"
    assert judge_reading("0.00 V", 1, 3, limit_high="60 V").verdict == "pass"


@pytest.mark.common_practice
@pytest.mark.parametrize("reading", ["OL", "O.L", "overload", "∞", "open", "0L", "OL MΩ"])
def test_an_overload_is_read_for_what_it_is(reading):
    for limits in ({"limit_high": "1 Ω"}, {"limit_low": "10 kΩ"}, {"limit_high": "47 µF"}):
        if limits == {"limit_high": "47 µF"} and "Ω" in reading:
            continue
        finding = judge_reading(reading, 1, 3, **limits)
        assert finding.verdict == "cannot tell"
        assert "more than the range can show" in finding.reason


def test_more_than_and_less_than_are_judged_by_their_end():
    assert judge_reading("> 20 MΩ", 0, 0, limit_low="1 MΩ").verdict == "pass"
    assert judge_reading(">2 Ω", 0, 0, limit_high="1 Ω").verdict == "fail"
    assert judge_reading("> 0.5 Ω", 0, 0, limit_high="1 Ω").verdict == "cannot tell"


@pytest.mark.from_memory("a pass at the limit, uniform within a bound: (1 - r) / 2, by hand")
@pytest.mark.parametrize(("guard", "risk"), [(0, 0.5), (0.5, 0.25), (0.8, 0.1), (1, 0), (2, 0)])
def test_risk_when_the_accuracy_is_a_bound(guard, risk):
    assert false_accept_risk(guard, UNIFORM) == pytest.approx(risk)


def test_the_assumption_behind_the_risk_is_said():
    finding = judge_reading("4.80 V", 1, 1, limit_high="5 V", rule="guarded", guard=0.5)
    said = finding.working[2]
    assert "25.00%" in said and "bound" in said
    assert "15.87%" in said and "normal" in said
    assert any("not a standard deviation" in note for note in finding.notes)


def test_a_reading_judged_as_typed():
    finding = judge_reading("5.24 V", 0, 3, "4.75 V", "5.25 V")
    assert (finding.verdict, finding.zone) == ("cannot tell", "conditional pass")
    assert (finding.accept_from, finding.accept_to) == pytest.approx((4.78, 5.22))
    assert "4.2.3" in finding.working[1]
    with pytest.raises(RepairlibError, match="nothing to judge by"):
        judge_reading("5.24 V", 0, 3)
    with pytest.raises(RepairlibError, match="it is in A where V is due"):
        judge_reading("5.24 V", 0, 3, "", "1 A")


numbers = st.floats(allow_nan=True, allow_infinity=True)


@given(numbers, numbers, st.none() | numbers, st.none() | numbers, st.sampled_from([*RULES]))
def test_any_figures_give_a_verdict_or_one_clear_error(low, high, limit_low, limit_high, rule):
    try:
        decision = decide(low, high, limit_low, limit_high, rule)
    except RepairlibError:
        return
    assert decision.verdict in ("pass", "fail", "cannot tell")
    if rule == "non-binary" and decision.verdict == "pass":
        assert limit_low is None or low >= limit_low - 1e-11 * max(abs(low), abs(high))


@given(st.text(max_size=14) | st.from_regex(r"-?[0-9]{0,4}[.,]?[0-9]{0,3}(e-?[0-9])? ?[kmu]?[VΩ]?"))
def test_any_reading_gives_an_interval_or_one_clear_error(reading):
    try:
        spread = interval(reading, 1, 2)
    except RepairlibError:
        return
    assert spread.low <= spread.reading <= spread.high
