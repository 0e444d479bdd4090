"""Preferred values of components: the series E3 to E24 of IEC 60063.

Two significant figures a decade. E3 and E6 and E12 are every eighth, fourth and second
value of E24. The three-figure series are not here.
"""

from __future__ import annotations

from math import floor, log10

from repairlib.errors import RepairlibError

_E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75)
_E24 += (82, 91)

# IEC 60063 as quoted in an encyclopaedia's list of preferred numbers: figures in tenths.
E_SERIES = {"E3": _E24[::8], "E6": _E24[::4], "E12": _E24[::2], "E24": _E24}


def is_made(value: float, series: str = "E24") -> bool:
    """Whether `value` (any unit, above 0) is a value of that series.

    >>> is_made(47e-6, "E6"), is_made(50e-6, "E24")
    (True, False)
    """
    return abs(nearest(value, series) / value - 1) < 1e-6


def nearest(value: float, series: str = "E24") -> float:
    """The value of the series at the smallest ratio to `value`.

    >>> nearest(50e-6, "E6") * 1e6
    47.0
    """
    below, above = _neighbours(value, series)
    return below if value / below <= above / value else above


def next_up(value: float, series: str = "E24") -> float:
    """The smallest value of the series that is not below `value`.

    >>> next_up(25e-6, "E6") * 1e6
    33.0
    """
    below, above = _neighbours(value, series)
    return below if below >= value * (1 - 1e-9) else above


def next_down(value: float, series: str = "E24") -> float:
    """The largest value of the series that is not above `value`.

    >>> next_down(25e-6, "E6") * 1e6
    22.0
    """
    return _neighbours(value, series)[0]


def _neighbours(value: float, series: str) -> tuple[float, float]:
    """The largest value of the series not above `value`, and the one after it."""
    if series not in E_SERIES:
        raise RepairlibError(series, "not a series known here", ", ".join(E_SERIES))
    if not 1e-18 < value < 1e18:
        raise RepairlibError(value, "not a value that a part can have", "a number above 0")
    decade = floor(log10(value))
    candidates = [
        float(f"{figures}e{power - 1}")
        for power in (decade - 1, decade, decade + 1)
        for figures in E_SERIES[series]
    ]
    below = [candidate for candidate in candidates if candidate <= value * (1 + 1e-9)]
    return below[-1], candidates[len(below)]
