"""The leads of small memories, as data sheets number them."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import DOES, PINS, pins_of


@pytest.mark.published("zhiwanyuzhou.com 2021-09-04, table of the leads of an 8-lead W25Q64")
def test_25_series():
    assert pins_of("25-series") == ("CS", "DO", "WP", "GND", "DI", "CLK", "HOLD", "VCC")


@pytest.mark.published("Microchip online docs, AT24C01C to AT24C08C, table 2-1 Pin Function Table")
def test_24_series():
    assert pins_of("24-series") == ("A0", "A1", "A2", "GND", "SDA", "SCL", "WP", "VCC")


@pytest.mark.from_memory("leads of a 93C46 in its usual form")
def test_93_series():
    assert pins_of("93-series") == ("CS", "CLK", "DI", "DO", "GND", "ORG", "NC", "VCC")


@pytest.mark.behaviour
def test_other_series():
    assert all(len(names) == 8 for names in PINS.values())
    assert {name for names in PINS.values() for name in names} == set(DOES)
    with pytest.raises(RepairlibError, match="25-series"):
        pins_of("27-series")
