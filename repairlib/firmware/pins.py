"""The eight leads of small serial memories, in the order in which leads are counted.

From above, with the dot or notch at pin 1: down that side, then up the other. The 25- and 24-series
are as in data sheets (named in the tests), the 93-series is from memory.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError

PINS = {
    "25-series": ("CS", "DO", "WP", "GND", "DI", "CLK", "HOLD", "VCC"),
    "24-series": ("A0", "A1", "A2", "GND", "SDA", "SCL", "WP", "VCC"),
    "93-series": ("CS", "CLK", "DI", "DO", "GND", "ORG", "NC", "VCC"),
}
DOES = {
    "CS": "chip select: picks the chip, low on a 25-series, high on a 93-series",
    "DO": "data out of the chip",
    "DI": "data into the chip",
    "WP": "write protect",
    "HOLD": "low pauses the chip",
    "CLK": "clock",
    "GND": "ground",
    "VCC": "supply: 1.8 V, 3.3 V or 5 V, measure before anything is connected",
    "SDA": "data, both ways",
    "SCL": "clock",
    "A0": "address of the chip on the bus",
    "A1": "address of the chip on the bus",
    "A2": "address of the chip on the bus",
    "ORG": "chooses bytes or words",
    "NC": "not connected",
}


def pins_of(series: str) -> tuple[str, ...]:
    """The names of pins 1 to 8 of a series.

    A 93-series chip may also be of a turned variant: look into its data sheet. Raises
    RepairlibError for another series.

    >>> pins_of("25-series")[3], pins_of("25-series")[7]
    ('GND', 'VCC')
    """
    if series not in PINS:
        raise RepairlibError(series, "the leads of this series are not known", ", ".join(PINS))
    return PINS[series]
