"""What a part may be asked for at most."""

import pytest

from repairlib.health.derating import (
    OHM_PER_VOLT,
    REVERSE_VOLTS,
    returning_voltage,
    tantalum_rating,
    tantalum_working_voltage,
)


@pytest.mark.published("KEMET on tantalum derating, 2015: half of the rating to 85 °C")
def test_manganese_dioxide():
    assert tantalum_working_voltage("tantalum", "25 V").working_voltage == 12.5
    assert tantalum_rating("tantalum", "12 V").rated_voltage == 24
    assert "heat and fire" in tantalum_working_voltage("tantalum", "25 V").cautions


@pytest.mark.published("KEMET on tantalum derating, 2015: less above 85 °C")
def test_hot_tantalum_is_not_told():
    assert tantalum_working_voltage("tantalum", 25, 105).verdict == "cannot tell"


@pytest.mark.published("encyclopaedia article Electrolytic capacitor: polymer 20 %, 3 Ω per volt")
def test_polymer_and_series_resistance():
    """From memory 10 % would do to 10 V; the larger derating was followed, and the note says so."""
    finding = tantalum_working_voltage("tantalum polymer", "16 V")
    assert finding.working_voltage == pytest.approx(12.8)
    assert any("10 % is enough" in note for note in finding.notes)
    assert tantalum_working_voltage("tantalum polymer", "10 V").working_voltage == 8
    assert tantalum_working_voltage("tantalum", 20).series_resistance == 30
    assert OHM_PER_VOLT == 3


@pytest.mark.published("encyclopaedia article Electrolytic capacitor: dielectric absorption")
def test_charge_comes_back():
    finding = returning_voltage("wet aluminium", "400 V")
    assert (finding.lowest, finding.highest) == pytest.approx((40, 60))
    finding = returning_voltage("solid tantalum", "100 V")
    assert (finding.lowest, finding.highest) == pytest.approx((2, 3))
    assert any("10 %" in note for note in finding.notes)


@pytest.mark.published("GE 23A application information: reverse voltage at most 1.5 V")
def test_reverse_voltage():
    assert REVERSE_VOLTS == 1.5
