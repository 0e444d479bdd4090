"""What a part may be asked for at most."""

import pytest

from repairlib.health.derating import (
    returning_voltage,
    tantalum_rating,
    tantalum_working_voltage,
)
from repairlib.health.reforming import reforming_schedule
from tests.documents import document

KEMET = document("KEMET derating 2015", "half of the rating to 85 °C, less above")


def article(stated):
    return document("encyclopaedia, Electrolytic capacitor", stated)


@pytest.mark.published(KEMET)
def test_manganese_dioxide():
    assert tantalum_working_voltage("tantalum", "25 V").working_voltage == 12.5
    assert tantalum_rating("tantalum", "12 V").at_least == 24


# By hand: twice the rail, or 1.25 times; then the next of 2.5 4 6.3 10 16 20 25 35 50 V.
ON_A_RAIL = {("tantalum", 12): 25, ("tantalum", 15): 35, ("tantalum", 3.3): 10}
ON_A_RAIL |= {("tantalum", 5): 10, ("tantalum", 25): 50, ("tantalum", 8): 16}
ON_A_RAIL |= {("tantalum polymer", 5): 6.3, ("tantalum polymer", 12): 16}
ON_A_RAIL |= {("tantalum polymer", 20): 25, ("tantalum polymer", 40): 50}


@pytest.mark.from_memory("rated voltages of a standard tantalum series, 2.5 to 50 V")
@pytest.mark.parametrize(("rail", "rated"), ON_A_RAIL.items())
def test_a_rating_that_is_made(rail, rated):
    assert tantalum_rating(*rail).rated_voltage == rated


@pytest.mark.behaviour
@pytest.mark.parametrize(("family", "rail"), [("tantalum", 28), ("tantalum polymer", 48)])
def test_no_rating_is_made_for_a_high_rail(family, rail):
    finding = tantalum_rating(family, rail)
    assert finding.verdict == "do not"
    assert "50 V: take another kind" in finding.reason


@pytest.mark.behaviour
def test_tantalum_warns_of_fire():
    assert "heat and fire" in tantalum_working_voltage("tantalum", "25 V").cautions


@pytest.mark.published(KEMET)
def test_hot_tantalum_is_not_told():
    assert tantalum_working_voltage("tantalum", 25, 85).working_voltage == 12.5
    assert tantalum_working_voltage("tantalum", 25, 86).verdict == "cannot tell"
    assert tantalum_working_voltage("tantalum", 25, 105).verdict == "cannot tell"


@pytest.mark.published(article("tantalum polymer 20 % less, 3 Ω per volt before solid tantalum"))
def test_polymer_and_series_resistance():
    finding = tantalum_working_voltage("tantalum polymer", "16 V")
    assert finding.working_voltage == pytest.approx(12.8)
    assert tantalum_working_voltage("tantalum polymer", "10 V").working_voltage == 8
    assert tantalum_working_voltage("tantalum", 20).series_resistance == 30  # 10 V × 3 Ω


@pytest.mark.behaviour
def test_the_choice_on_polymer_is_said():
    """From memory 10 % would do to 10 V; the larger derating was followed, and the note says so."""
    finding = tantalum_working_voltage("tantalum polymer", "16 V")
    assert any("10 % is enough" in note for note in finding.notes)


@pytest.mark.published(
    article("dielectric absorption of wet aluminium 10 to 15 %, solid tantalum 2 to 3 % or 10 %")
)
def test_charge_comes_back():
    finding = returning_voltage("wet aluminium", "400 V")
    assert (finding.lowest, finding.highest) == pytest.approx((40, 60))
    finding = returning_voltage("solid tantalum", "100 V")
    assert (finding.lowest, finding.highest) == pytest.approx((2, 3))
    assert any("10 %" in note for note in finding.notes)


@pytest.mark.published(document("GE 23A", "reverse voltage at most 1.5 V"))
def test_reverse_voltage():
    notes = reforming_schedule("470 µF", "25 V", 12).notes
    assert any("at most 1.5 V the wrong way" in note for note in notes)
