"""What a part may be asked for at most."""

import pytest

from repairlib.health.derating import (
    returning_voltage,
    tantalum_rating,
    tantalum_working_voltage,
)
from repairlib.health.reforming import reforming_schedule
from tests.documents import document

KEMET = document("KEMET tantalum derating", "half of the rating to 85 °C, less above")


def article(stated):
    return document("encyclopaedia, Electrolytic capacitor", stated)


@pytest.mark.published(KEMET)
def test_manganese_dioxide():
    assert tantalum_working_voltage("tantalum", "25 V").working_voltage == 12.5
    assert tantalum_rating("tantalum", "12 V").rated_voltage == 24


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
    assert any("at most 1.5 V the wrong way round" in note for note in notes)
