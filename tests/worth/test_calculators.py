"""worth_repairing and break_even: what they say, and what is kept from waste."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.stored_charge import QUALIFIED
from repairlib.worth.calculators import break_even, worth_repairing
from repairlib.worth.waste import RECYCLED, WASTE_A_HEAD, energy_of_making
from tests.documents import document

SCANNER = {
    "value": 55,
    "parts": 4,
    "hours": 3,
    "hour_worth": 6,
    "tools": 24,
    "jobs": 8,
    "replacement": 50,
    "failed": 5,
}


def words(text):
    return str(text).replace("\xa0", " ")


# The sums are worked by hand in test_job.py.
@pytest.mark.published(document("encyclopaedia, Expected value", "E(X) is the sum of xi f(xi)"))
def test_a_range_of_gain_and_cost():
    finding = worth_repairing(**SCANNER, success_low="40 %", success_high="75", hazards="none")
    assert finding.verdict == "it depends"
    assert (finding.gain_low, finding.gain_high) == (-8, 11.25)
    assert (finding.cost_low, finding.cost_high) == (26.25, 28)
    assert finding.gain_low.unit == "tokens"
    assert words(finding.break_even_hours) == "at 40 %: 1.67 h; at 75 %: 4.88 h"
    assert words(finding.break_even_parts) == (
        "at 40 %: none: a loss even with free parts; at 75 %: 15.25 tokens"
    )


@pytest.mark.published(document("break-even analysis", "revenue less total costs is zero"))
def test_break_even_at_one_chance():
    """At 75 %: 54.545 %, 4.875 h, 15.25 tokens, as in test_job.py."""
    finding = break_even(**SCANNER, chance=75, currency="crowns")
    assert finding.break_even_chance == 54.5
    assert words(finding.break_even_hours) == "4.88 h"
    assert words(finding.break_even_parts) == "15.25 crowns"
    assert words(finding.gain) == "11.25 crowns"


def test_for_pleasure_hours_do_not_count():
    finding = worth_repairing(60, 8, 200, 50, 80, "none")
    assert finding.break_even_hours == "any: an hour is worth nothing here"
    assert finding.gain_low == 22


def test_a_break_even_that_is_not_there_is_said():
    assert break_even(100, 20, 3, 50, hour_worth=50).break_even_chance == (
        "none: even 100 % is not enough"
    )
    assert "success earns nothing" in break_even(0, 3, 1, 50).break_even_chance


def test_mains_is_handed_on_with_its_caution_and_the_figures_are_for_others():
    finding = worth_repairing(1000, 1, 1, 90, 99, "mains; stored charge")
    assert finding.verdict == QUALIFIED
    assert finding.cautions == ("mains", "stored charge")
    assert "whoever is qualified" in finding.notes[0]


def test_the_sum_says_that_it_is_no_word_on_danger():
    for finding in (worth_repairing(60, 8, 2, 50, 80, "none"), break_even(60, 8, 2, 50)):
        assert "not danger" in finding.notes[0]
        assert " safe" not in finding._repr_html_()


@pytest.mark.published(document("community repair data", "53 % of electronic products"))
def test_the_guess_is_held_against_what_others_reached():
    assert any("53 %" in note for note in worth_repairing(60, 8, 2, 50, 80, "none").notes)


@pytest.mark.published(
    document("computer manufacturing energy", "6400 MJ, 260 kg of fuel, ratio 11, others 1 to 2")
)
def test_energy_of_making():
    """6400 / 260 = 24.6 MJ for a kg of fuel; × 11 = 271 MJ, × 1 = 24.6 MJ for a kg of product."""
    least, most = energy_of_making(1)
    assert least == pytest.approx(24.6e6, rel=2e-3)
    assert most == pytest.approx(271e6, rel=2e-3)


@pytest.mark.published(document("Global E-waste Monitor 2024", "7.8 kg per capita, 22.3 per cent"))
def test_waste_a_head():
    assert (WASTE_A_HEAD, RECYCLED) == (7.8, 22.3)


# By hand from test_energy_of_making: 2.8 × 24.6 = 68.9 MJ, 2.8 × 271 = 758 MJ, to two figures.
def test_mass_stays_beside_the_sum():
    without = worth_repairing(60, 8, 2, 50, 80, "none")
    finding = worth_repairing(60, 8, 2, 50, 80, "none", mass="2.8 kg")
    assert finding.gain_low == without.gain_low
    assert words(finding.energy_kept) == "69 MJ to 760 MJ, doubtful"
    assert words(finding.mass_kept) == "2.8 kg"
    assert any("36 %" in words(note) for note in finding.notes)  # 2.8 / 7.8
    assert "mass_kept" not in without.values


@pytest.mark.parametrize(
    ("changes", "wrong"),
    [
        ({"value": -1}, "value is out of range"),
        ({"parts": "many"}, "no number stands in front"),
        ({"hours": "2 h"}, "has no unit"),
        ({"jobs": 0}, "jobs is out of range"),
        ({"success_high": 101}, "out of range"),
        ({"success_low": 90}, "above the high end"),
        ({"success_low": 0.5}, "may be 0.5 % or 50 %"),
        ({"hazards": "perhaps"}, "not a hazard known here"),
        ({"currency": "5"}, "not the name of a currency"),
        ({"mass": "2 V"}, "in V where kg is due"),
    ],
)
def test_bad_input_is_one_line(changes, wrong):
    given = {"success_low": 40, "success_high": 75, "hazards": "none"} | SCANNER | changes
    with pytest.raises(RepairlibError, match=wrong) as error:
        worth_repairing(**given)
    assert "\n" not in str(error.value)


def test_hazards_have_to_be_said():
    with pytest.raises(RepairlibError, match="hazards is missing"):
        worth_repairing(60, 8, 2, 50, 80)
