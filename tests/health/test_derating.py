"""What a part may be asked for at most."""

import pytest

from repairlib.errors import RepairlibError
from repairlib.health.derating import (
    OHM_PER_VOLT,
    REVERSE_VOLTS,
    ceramic_ageing,
    returning_voltage,
    tantalum_rating,
    tantalum_working_voltage,
)


@pytest.mark.published("KEMET on tantalum derating, 2015: half of the rating to 85 °C")
def test_manganese_dioxide():
    assert tantalum_working_voltage("tantalum", "25 V").working_voltage == 12.5
    assert tantalum_rating("tantalum", "12 V").rated_voltage == 24


@pytest.mark.published("encyclopaedia article Electrolytic capacitor: polymer 20 %, 3 Ω per volt")
def test_polymer_and_series_resistance():
    """From memory 10 % would do to 10 V; the larger derating was followed, and the note says so."""
    finding = tantalum_working_voltage("tantalum polymer", "16 V")
    assert finding.working_voltage == pytest.approx(12.8)
    assert any("10 % is enough" in note for note in finding.notes)
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


@pytest.mark.published("a parts library's article on ceramic capacitors: loss per decade of hours")
def test_ceramic_ageing():
    assert lost("X7R", 10) == pytest.approx((2.5, 2.5))
    assert lost("X5R", 100) == pytest.approx((10, 14))
    assert lost("C0G", 10_000) == (0, 0)


def lost(kind, hours):
    finding = ceramic_ageing(kind, hours)
    return finding.lost_at_least, finding.lost_at_most


@pytest.mark.parametrize(("kind", "hours"), [("Y5V", 10), ("X7R", 0), ("X7R", float("nan"))])
def test_ceramic_ageing_that_is_not_known(kind, hours):
    with pytest.raises(RepairlibError):
        ceramic_ageing(kind, hours)
