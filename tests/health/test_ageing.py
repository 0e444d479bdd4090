"""The calculators of ageing: what they say beside the number."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.ageing import better_part, expected_life, mixed_use_life, too_old
from tests.documents import document

TEN_DEGREES = document("Cosel lifetime note", "10-degree rule")


def said(finding):
    return " ".join([*finding.notes, *finding.working])


@pytest.mark.published(
    document("encyclopaedia, Electrolytic capacitor", "2000 h at 105 °C are 128 000 h at 45 °C")
)
def test_expected_life():
    """The article says about 15 years; by hand 128 000 h / 8760 h = 14.6."""
    finding = expected_life("2000 h", "45 °C")
    assert finding.hours == 128_000
    assert finding.years == 14.6


@pytest.mark.behaviour
def test_a_life_is_said_to_be_an_estimate_and_by_which_rule():
    words = said(expected_life("2000 h", "45 °C"))
    assert "An estimate" in words
    assert "plain 10-degree rule" in words


@pytest.mark.published(document("Beckhoff PS9011", "answers end at 15 years, 131 400 h"))
def test_answers_end_at_15_years():
    finding = expected_life("166000 h", "25 °C", rated_temperature="40 °C")
    assert (finding.hours, finding.years) == (131_400, 15)


@pytest.mark.behaviour
def test_the_cap_is_said_with_what_the_rule_gave():
    """By hand: 166 000 h × 2^1.5 = 469 519 h, said to four figures."""
    words = said(expected_life("166000 h", "25 °C", rated_temperature="40 °C"))
    assert "469500 h" in words
    assert "15 years is believed" in words


@pytest.mark.published(
    document("Jianghai, quoted", "Ki 4 for 105 °C parts above rated ripple; worked by hand")
)
def test_more_than_rated_ripple_shortens_life():
    """By hand: 4^((1 - 1.2²) × 5 / 10) = 0.7371."""
    finding = expected_life("2000 h", "65 °C", ripple="120 %", above_rated_ripple="estimate")
    assert finding.by_ripple == pytest.approx(0.7371, rel=1e-4)


@pytest.mark.behaviour
def test_more_than_rated_ripple_is_refused_until_asked_for():
    with pytest.raises(RepairlibError, match="ripple above the part's rating"):
        expected_life("2000 h", "65 °C", ripple="120 %")
    words = said(expected_life("2000 h", "65 °C", ripple="120 %", above_rated_ripple="estimate"))
    assert "Ki 4" in words
    assert "an estimate only" in words


@pytest.mark.behaviour
def test_the_choice_on_ripple_is_said():
    """Makers differ in the heating at rated ripple; 5 K, which both ranges hold, was followed."""
    words = said(expected_life("2000 h", "65 °C", ripple="50 %"))
    assert "A choice: ripple counts by one published rule, with Ki 2 and 5 K" in words
    assert "Makers differ: 3.5 to 5 K for 105 °C parts, to 10 K for 85 °C parts" in words


@pytest.mark.from_memory("some makers leave voltage out for small radials, others take 3 to 5")
def test_the_choice_on_voltage_is_said():
    """The exponent of 2.5 was followed: it is the only one that was seen in print."""
    words = said(expected_life("2000 h", "65 °C", voltage="80 %", voltage_credit="exponent 2.5"))
    assert "exponent 2.5. Some makers leave it out; others take 3 to 5" in words


@pytest.mark.from_memory("most makers of small radial parts give no credit for less voltage")
@pytest.mark.parametrize(
    "family", ["aluminium general 105", "aluminium general 85", "aluminium low impedance"]
)
def test_less_voltage_adds_nothing_to_a_radial_part(family):
    finding = expected_life("2000 h", "65 °C", family, voltage="50 %")
    assert finding.by_voltage == 1
    assert "give no credit" in said(finding)


@pytest.mark.published(document("Jianghai, quoted", "KV is 3.59 below 0.6, ratio^-2.5 above"))
def test_less_voltage_counts_for_a_snap_in_part_and_when_asked_for():
    """By hand: 0.8^-2.5 = 1.747."""
    snap_in = expected_life("2000 h", "65 °C", "aluminium snap-in", voltage="50 %")
    assert snap_in.by_voltage == 3.59
    asked = expected_life("2000 h", "65 °C", voltage="80 %", voltage_credit="exponent 2.5")
    assert asked.by_voltage == pytest.approx(1.747, rel=1e-3)


# By hand, T0 85 °C: 2000 h × 2^((85 - T) / 10).
AT_85 = {("aluminium general 85", 65): 8000, ("aluminium general 85", 55): 16_000}
AT_85 |= {("aluminium snap-in", 75): 4000, ("aluminium non-polar axial", 45): 32_000}


@pytest.mark.published(TEN_DEGREES)
@pytest.mark.parametrize(("part", "hours"), AT_85.items())
def test_the_rated_temperature_is_that_of_the_family(part, hours):
    family, celsius = part
    assert expected_life("2000 h", celsius, family).hours == hours
    assert mixed_use_life("2000 h", f"3 h at {celsius} °C", family=family).hours == hours
    better = better_part("2000 h", celsius, "2000 h", celsius, family=family)
    assert better.old_hours == hours
    back = better_part("2000 h", celsius, "2000 h", celsius, new_family=family)
    assert back.new_hours == hours
    # An hour a day for ten years: 3650 h.
    used = too_old("2000 h", celsius, 10, 1, family=family).used
    assert used == pytest.approx(365_000 / hours, rel=0.01)


@pytest.mark.behaviour
@pytest.mark.parametrize("family", ["aluminium general 85", "aluminium snap-in"])
def test_above_the_hottest_of_the_family_is_refused(family):
    for calculate in (
        lambda: expected_life("2000 h", "86 °C", family),
        lambda: expected_life("2000 h", "60 °C", family, "105 °C"),
        lambda: mixed_use_life("2000 h", "1 h at 40 °C; 1 h at 100 °C", family=family),
        lambda: too_old("2000 h", "100 °C", 10, family=family),
        lambda: better_part("2000 h", "60 °C", "2000 h", "95 °C", new_family=family),
        lambda: better_part("2000 h", "60 °C", "2000 h", "60 °C", "105 °C", family=family),
    ):
        with pytest.raises(RepairlibError, match="85"):
            calculate()


@pytest.mark.published(document("Beckhoff PS9011", "answers end at 15 years"))
@pytest.mark.parametrize(
    ("hours", "celsius", "words"),
    [
        ("10000 h", 25, "15 years or more"),
        ("5000 h", 45, "12.2 to 15 years or more"),  # 320 000 h / 3 / 8760 h
        ("2000 h", 65, "1.8 to 7.3 years"),  # 32 000 h, half to twice
    ],
)
def test_no_range_goes_beyond_15_years(hours, celsius, words):
    assert expected_life(hours, celsius).from_to == words


def test_the_note_names_the_rule_of_each_part():
    notes = better_part("2000 h", 65, "2000 h", 65, new_family="polymer radial").notes
    assert any("10-degree rule" in note for note in notes)
    assert any("ten times for each 20 °C" in note for note in notes)
    only = better_part(
        "2000 h", 65, "2000 h", 65, family="polymer radial", new_family="polymer radial"
    )
    assert not any("10-degree rule" in note for note in only.notes)


@pytest.mark.from_memory("aluminium polymer: ten times for each 20 °C")
def test_polymer_says_that_its_rule_is_from_memory():
    finding = expected_life("2000 h", "85 °C", "polymer radial", ripple="50 %")
    assert finding.hours == 20_000
    assert "from memory" in said(finding)
    assert "from memory" in finding.sources


def test_a_bare_number_is_not_taken_for_hours():
    """2000 alone would be seconds: half an hour of life."""
    with pytest.raises(RepairlibError, match="was the unit h left out"):
        expected_life("2000", "45 °C")


def test_a_temperature_above_the_rating_is_refused_with_the_reason():
    with pytest.raises(RepairlibError, match="not extrapolated"):
        expected_life("2000 h", "90 °C", "aluminium general 85", "85 °C")
    with pytest.raises(RepairlibError, match="out of range"):
        expected_life("2000 h", "-300 °C")


@pytest.mark.published(document("Cosel lifetime note", "L = sum(h) / sum(h / L)"))
def test_changing_use():
    """By hand: 64 000 h at 45 °C and 16 000 h at 65 °C, half of the time each: 25 600 h."""
    finding = mixed_use_life("1000 h", "12 h at 65 °C; 12 h at 45 °C")
    assert finding.hours == 25_600


@pytest.mark.parametrize(
    "uses",
    ["", "8 h", "8 h at", "8 h at 200 °C", "0 h at 20 °C", "-5 h at 20", "at 20", "8 V at 20"],
)
def test_uses_that_make_no_sense(uses):
    with pytest.raises(RepairlibError):
        mixed_use_life("1000 h", uses)


@pytest.mark.published(TEN_DEGREES)
def test_how_much_of_its_life_is_used():
    """By hand: 2000 h at 85 °C are 16 000 h at 55 °C; 10 years of 2 h a day are 7300 h, 46 %."""
    finding = too_old("2000 h", "55 °C", 10, 2, "85 °C")
    assert finding.used == pytest.approx(45.6, abs=0.1)


@pytest.mark.behaviour
def test_how_old_is_too_old():
    assert too_old("2000 h", "55 °C", 10, 2, "85 °C").verdict == "ageing"  # 10 years old
    assert too_old("2000 h", "55 °C", 5, 2, "85 °C").verdict == "young"
    assert too_old("2000 h", "55 °C", 10, 8, "85 °C").verdict == "too old"


@pytest.mark.behaviour
def test_a_part_that_lay_in_a_drawer_ages_too():
    """The manual ends its answers at 15 years of use; that a drawer counts too is our choice."""
    assert too_old("5000 h", "25 °C", 15, 0).verdict != "too old"
    finding = too_old("5000 h", "25 °C", 15.1, 0)
    assert finding.verdict == "too old"
    assert "never a proof" in said(finding)


@pytest.mark.published(TEN_DEGREES)
def test_what_a_better_part_buys():
    """By hand: 10 °C cooler doubles, 20 °C more of rating is four times, 5000 for 2000 h is 2.5."""
    finding = better_part("2000 h", "65 °C", "5000 h", "55 °C", "85 °C", "105 °C")
    assert finding.times == pytest.approx(20)
    assert better_part("2000 h", "65 °C", "2000 h", "55 °C").times == pytest.approx(2)
    assert better_part("2000 h", "65 °C", "2000 h", "65 °C", "85 °C").times == pytest.approx(4)


def test_every_life_says_which_ripple_was_taken():
    for finding in (
        mixed_use_life("1000 h", "8 h at 65 °C; 16 h at 45 °C"),
        too_old("2000 h", "45 °C", 10, 8),
        better_part("2000 h", "65 °C", "5000 h", "55 °C", "85 °C"),
    ):
        assert "Rated ripple was taken" in said(finding)
