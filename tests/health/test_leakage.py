"""Leakage limits, in the form of the data sheets: C in µF, V in volts, limit in µA."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.end_of_life import end_of_life_limits
from repairlib.health.leakage import LARGER, OWN, SUM, leakage_limit, own_leakage_limit
from repairlib.health.verdict import judge_capacitor
from tests.documents import document

APSA, ESRD = document("Nippon Chemi-Con APSA"), document("Cornell Dubilier ESRD")
PARTS_WITHOUT_A_POLARITY = "; ".join(document(key) for key in ("RFE TN", "Nichicon ET", "Teapo SN"))

LOW, GENERAL = "aluminium low impedance", "aluminium general 105"


def microamps(family, microfarad, volts, rule=OWN, celsius=20):
    return leakage_limit(family, microfarad * 1e-6, volts, rule, celsius).leakage * 1e6


def read_after(family, volts=10, rule=OWN, microfarad=100):
    return leakage_limit(family, microfarad * 1e-6, volts, rule).read_after


@pytest.mark.published(document("Rubycon ZL", "larger of 0.01 CV and 3 µA after 2 min"))
def test_low_impedance():
    assert microamps(LOW, 100, 25) == pytest.approx(25)
    assert microamps(LOW, 2200, 16) == pytest.approx(352)
    assert microamps(LOW, 1, 50) == pytest.approx(3)  # 0.5 is smaller
    assert read_after(LOW) == "2 min"


@pytest.mark.published(document("Lelon RGA", "leakage to and above 100 V"))
def test_general():
    assert microamps(GENERAL, 100, 25) == pytest.approx(25)
    assert microamps(GENERAL, 1, 400) == pytest.approx(27)  # CV 400: 0.03 CV + 15
    assert microamps(GENERAL, 10, 400) == pytest.approx(105)  # CV 4000: 0.02 CV + 25
    assert microamps(GENERAL, 2.5, 400) == pytest.approx(45)  # CV 1000 still takes the first
    assert microamps(GENERAL, 1, 50) == pytest.approx(3)
    assert (read_after(GENERAL, 25), read_after(GENERAL, 400)) == ("2 min", "5 min")


@pytest.mark.published(document("KEMET ESL", "leakage to 100 V and from 160 V"))
def test_another_general_series():
    other = "other 105 general"
    assert microamps(GENERAL, 10, 400, other) == pytest.approx(90)
    assert microamps(GENERAL, 10, 50, other) == pytest.approx(5)
    assert microamps(GENERAL, 1, 50, other) == pytest.approx(3)


@pytest.mark.behaviour
def test_a_time_that_was_not_seen_is_left_wide():
    assert read_after(GENERAL, 400, "other 105 general") == "2 to 5 min"


@pytest.mark.published(document("LZ chip", "leakage by diameter"))
def test_chips():
    assert microamps("aluminium chip small", 100, 16) == pytest.approx(16)
    assert microamps("aluminium chip small", 1, 16) == pytest.approx(3)
    assert microamps("aluminium chip large", 100, 16) == pytest.approx(48)
    assert microamps("aluminium chip large", 1, 16) == pytest.approx(4)
    assert read_after("aluminium chip small") == "2 min"
    assert read_after("aluminium chip large") == "1 min"


@pytest.mark.published(f"{PARTS_WITHOUT_A_POLARITY}: leakage")
def test_parts_without_a_polarity():
    assert microamps("aluminium non-polar axial", 10, 25) == pytest.approx(7.5)
    assert microamps("aluminium non-polar axial", 1, 25) == pytest.approx(3)
    assert microamps("aluminium bipolar", 10, 25) == pytest.approx(7.5)
    assert microamps("aluminium bipolar", 1, 25) == pytest.approx(3)
    assert microamps("aluminium non-polar", 10, 25) == pytest.approx(10.5)  # a sum
    times = [
        read_after(f"aluminium {name}") for name in ("non-polar axial", "bipolar", "non-polar")
    ]
    assert times == ["2 min", "5 min", "5 min"]


@pytest.mark.published(document("F93", "leakage at 20, 85 and 125 °C after 1 min"))
def test_tantalum():
    assert microamps("tantalum", 47, 16) == pytest.approx(7.52)
    assert microamps("tantalum", 1, 16) == pytest.approx(0.5)
    assert microamps("tantalum", 47, 16, celsius=85) == pytest.approx(75.2)
    assert microamps("tantalum", 1, 16, celsius=85) == pytest.approx(5)
    assert microamps("tantalum", 47, 16, celsius=125) == pytest.approx(94)
    assert microamps("tantalum", 1, 16, celsius=125) == pytest.approx(6.3)
    assert read_after("tantalum") == "1 min"


@pytest.mark.from_memory("chip tantalum polymer: 0.1 CV after 5 min; the data sheet names no maker")
def test_tantalum_polymer():
    assert microamps("tantalum polymer", 100, 6.3) == pytest.approx(63)
    assert read_after("tantalum polymer") == "5 min"


@pytest.mark.published(f"{APSA}; {ESRD}: leakage")
def test_polymer():
    assert microamps("polymer radial", 560, 6.3) == pytest.approx(705.6)
    assert microamps("polymer chip low", 220, 2.5) == pytest.approx(33)
    assert microamps("polymer chip high", 100, 10) == pytest.approx(40)
    assert microamps("polymer chip high", 10, 6.3) == pytest.approx(3)
    assert read_after("polymer radial") == "2 min"
    assert (read_after("polymer chip low", 4), read_after("polymer chip high")) == ("2 min",) * 2


@pytest.mark.published(
    document("encyclopaedia, Electrolytic capacitor", "leakage 0.01 CV + 3 µA, a sum")
)
def test_the_sum_form():
    assert microamps(LOW, 100, 25, SUM) == pytest.approx(28)


def test_a_verdict_on_leakage_names_the_form_too():
    judged = judge_capacitor(GENERAL, "100 µF", "25 V", "98 µF", leakage="20 µA")
    for finding in (judged, end_of_life_limits(GENERAL, "100 µF", "25 V")):
        assert any("Makers take the larger" in note for note in finding.notes)


def test_where_sources_disagree_the_makers_form_is_followed_and_named():
    """Makers: larger of 0.01 CV and 3. Encyclopaedia: the sum. The data sheets were followed."""
    finding = leakage_limit(LOW, "100 µF", "25 V")
    assert finding.leakage == pytest.approx(25e-6)
    assert any("larger of 0.01 CV and 3 µA" in note for note in finding.notes)
    assert any("adds the two" in note for note in finding.notes)
    assert any("Makers take the larger" in note for note in leakage_limit(LOW, 1e-4, 25, SUM).notes)
    assert leakage_limit(LOW, "100 µF", "25 V", LARGER).leakage == finding.leakage


@pytest.mark.parametrize(
    ("given_values", "wrong"),
    [
        ((LOW, 1e-6, 400), "at this rating"),
        ((LOW, 1e-6, 16, OWN, 85), "at this temperature"),
        ((LOW, 1e-6, 16, OWN, -300), "out of range"),
        (("aluminium snap-in", 1e-3, 63), "no leakage limit of this family"),
        (("film polyester", 1e-6, 63), "not a family"),
        ((LOW, 0, 16), "out of range"),
        ((LOW, 1e-6, 0), "out of range"),
    ],
)
def test_where_nothing_was_stated_nothing_is_made_up(given_values, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        leakage_limit(*given_values)


@pytest.mark.published(document("Lelon RGA", "above 100 V: 0.03 CV + 15 to CV 1000, 0.02 CV + 25"))
@pytest.mark.parametrize(
    ("microfarad", "volts", "microamps"),
    [(470, 150, 1435), (100, 125, 275), (4.7, 101, 29.241), (2.2, 159, 25.494), (10, 160, 57)],
)
def test_between_100_and_160_volts(microfarad, volts, microamps):
    """By hand: 0.02 × 70 500 + 25; 0.02 × 12 500 + 25; 0.03 × 474.7 + 15; 0.03 × 349.8 + 15."""
    limit = own_leakage_limit("aluminium general 105", microfarad * 1e-6, volts)
    assert limit == pytest.approx(microamps * 1e-6)
    assert own_leakage_limit("aluminium general 105", 10e-6, 100) == pytest.approx(10e-6)
