"""The displays of bench supply and thermometer."""

from dataclasses import replace

import pytest

from repairlib.bench.bench_supply import HOLDS_AMPS, HOLDS_VOLTS, supply_shows
from repairlib.bench.state import SUPPLY, Feed
from repairlib.bench.thermometer import temperature
from repairlib.core.errors import RepairlibError
from tests.bench.small_boards import board


@pytest.mark.common_practice
def test_a_supply_holds_its_volts_until_its_limit():
    # By hand: 9 V over 90 Ω are 100 mA; behind a limit of 50 mA 4.5 V are left.
    load = board("R1, in, 0, 90 Ω")
    free = supply_shows(replace(load, feed=Feed(SUPPLY, 9.0, 0.2)))
    bound = supply_shows(replace(load, feed=Feed(SUPPLY, 9.0, 0.05)))
    assert free.value == pytest.approx(0.1, abs=free.error) and HOLDS_VOLTS in free.shown
    assert bound.value == pytest.approx(0.05, abs=bound.error) and HOLDS_AMPS in bound.shown
    assert free.shown.startswith(("8.9", "9.0")) and bound.shown.startswith(("4.4", "4.5"))


def test_a_supply_that_is_off_shows_nothing():
    with pytest.raises(RepairlibError, match="off"):
        supply_shows(board("R1, in, 0, 90 Ω"))


def test_a_warm_part_is_read_within_the_error():
    warm = replace(board("R1, in, 0, 90 Ω"), heat={"R1": 41.0})
    reading = temperature(warm, "r1")
    assert abs(reading.value - 63.0) <= reading.error and reading.unit == "°C"
    with pytest.raises(RepairlibError):
        temperature(warm, "Q7")
