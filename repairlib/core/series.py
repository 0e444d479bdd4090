"""Preferred values of components: the series E3 to E192 of IEC 60063.

E3 to E24 have two significant figures a decade, E48 to E192 three. E3, E6 and E12 are every
eighth, fourth and second value of E24; E48 and E96 every fourth and second value of E192. E24
is not part of E96: 240 and 390 are not in it.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError

# The printed list departs from the rounded powers of ten in eight places of E24 and one of E192.
_E24_IN_WORDS = "10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91"
_E24 = tuple([int(figures) for figures in _E24_IN_WORDS.split()])
_E192 = tuple([920 if step == 185 else round(10 ** (2 + step / 192)) for step in range(192)])

# IEC 60063 as quoted in an encyclopaedia's list of preferred numbers: figures without a point.
E_SERIES = {
    "E3": _E24[::8],
    "E6": _E24[::4],
    "E12": _E24[::2],
    "E24": _E24,
    "E48": _E192[::4],
    "E96": _E192[::2],
    "E192": _E192,
}
_SLACK = 1e-9


def is_made(value: float, series: str = "E24") -> bool:
    """Whether `value` (any unit, above 0) is a value of that series.

    >>> is_made(47e-6, "E6"), is_made(50e-6, "E24"), is_made(4990, "E96")
    (True, False, True)
    """
    return abs(nearest(value, series) / value - 1) < 1e-6


def series_of(value: float) -> str:
    """The coarsest series that has `value`, or "" where none has it.

    >>> series_of(4700), series_of(4990), series_of(9200), series_of(50)
    ('E3', 'E96', 'E192', '')
    """
    return next((series for series in E_SERIES if is_made(value, series)), "")


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
    return below if below >= value * (1 - _SLACK) else above


def next_down(value: float, series: str = "E24") -> float:
    """The largest value of the series that is not above `value`.

    >>> next_down(25e-6, "E6") * 1e6
    22.0
    """
    return _neighbours(value, series)[0]


def values_between(least: float, most: float, series: str = "E24") -> list[float]:
    """The values of the series from `least` to `most`, both included, in order.

    >>> values_between(30, 100, "E6")
    [33.0, 47.0, 68.0, 100.0]
    """
    value, found = next_up(least, series), []
    while value <= most * (1 + _SLACK):
        found.append(value)
        value = _neighbours(value, series)[1]
    return found


def _neighbours(value: float, series: str) -> tuple[float, float]:
    """The largest value of the series not above `value`, and the one after it."""
    if series not in E_SERIES:
        raise RepairlibError(series, "not a series known here", ", ".join(E_SERIES))
    if not 1e-18 < value < 1e18:
        raise RepairlibError(value, "not a value that a part can have", "a number above 0")
    figures = E_SERIES[series]
    mantissa, _, power = f"{value * (1 + _SLACK):.12e}".partition("e")
    whole = len(str(figures[0]))  # 2 or 3 figures
    scaled = float(mantissa) * 10 ** (whole - 1)
    place = sum([one <= scaled for one in figures]) - 1
    exponent = int(power) + 1 - whole
    return _decade(figures, place, exponent), _decade(figures, place + 1, exponent)


def _decade(figures: tuple[int, ...], place: int, power: int) -> float:
    """The value at `place` of the series, counted on into the next decade."""
    return float(f"{figures[place % len(figures)]}e{power + place // len(figures)}")
