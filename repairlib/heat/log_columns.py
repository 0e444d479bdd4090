"""The layout of a logged table: which line heads it, what parts its columns, in which units.

Covers what parts two columns, decimal commas, lines of words before the table, units in headings.
It does not look at what the readings mean.
"""

from __future__ import annotations

import re
from datetime import datetime
from typing import NamedTuple

from repairlib.core.errors import RepairlibError, shown
from repairlib.core.typed.table import (
    BLANKS,
    FRAMED,
    SIGNS,
    STROKES,
    cells_of,
    is_framed,
    is_rule,
)
from repairlib.core.wording import counted

CELSIUS, FAHRENHEIT = "°C", "°F"
TIME_UNITS = {"ms": 1e-3, "s": 1.0, "min": 60.0, "h": 3600.0}
SEARCHED = 500  # lines; the table begins within them
OPEN_WORDS = {"", "-", "--", "---", "----", "open", "ol", "o.l", "o.l.", "nan", "err", "error"}
OPEN_WORDS |= {"fault", "n/a", "na", "null", "none", "inf", "-inf", "over", "overrange", "burnout"}

_TIME_SPELT = {
    "ms": ("ms", "msec", "milliseconds", "millis"),
    "s": ("s", "sec", "secs", "second", "seconds"),
    "min": ("min", "mins", "minute", "minutes"),
    "h": ("h", "hr", "hrs", "hour", "hours"),
}
_CELSIUS_SPELT = {"c", "°c", "ºc", "degc", "celsius"}
_FAHRENHEIT_SPELT = {"f", "°f", "ºf", "degf", "fahrenheit"}
_CLOCK = re.compile(r"(?:(.*\d)[ T])?(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d*)?))?$")


class Layout(NamedTuple):
    """Where the table begins and how to read it. `unit` is None where none is stated."""

    first: int
    separator: str
    decimal: str
    names: tuple[str, ...]
    seconds_a_unit: float
    unit: str | None
    notes: tuple[str, ...]


def find_layout(lines: list[str], name: str) -> Layout:
    """The layout of a log from its first lines.

    Raises RepairlibError when no line holds a time and a reading, and when columns state both
    °C and °F.

    >>> find_layout(["time (s),joint (°C)", "0.0,24.6", "0.5,24.9"], "log").names
    ('joint',)
    """
    first, separator, fields = _first_row(lines, name)
    decimal = _decimal(lines[first : first + 50], separator)
    above = [line.strip() for line in lines[:first] if line.strip() and not is_rule(line)]
    heading, heads = _headings(above, separator, len(fields))
    notes = []
    words = [line for line in above if line != heading]
    if words:
        notes.append(
            f"{counted(len(words), 'line')} before the table not read as data: {shown(words[0])}"
        )
    time_unit = _time_unit(heads[0]) if heads else None
    if time_unit is None and not is_clock(fields[0]):
        notes.append("The time has no unit: read as seconds.")
    units = {_temperature_unit(head) for head in heads[1:]} - {None}
    units = units or {_preamble_unit(words)} - {None}
    if len(units) > 1:
        wrong = "some columns are in °C, others in °F"
        raise RepairlibError(name, wrong, "one unit of temperature for all columns")
    names = tuple(_plain(head) for head in heads[1:])
    if not all(names) or len(set(names)) < len(names):
        names = tuple(f"channel {place}" for place in range(1, len(fields)))
    return Layout(
        first,
        separator,
        decimal,
        names,
        TIME_UNITS[time_unit or "s"],
        next(iter(units), None),
        tuple(notes),
    )


def number(field: str, decimal: str) -> float | None:
    """The number in a field: NaN for the words of an open sensor, None for other words.

    >>> number("24,6", ","), number("OPEN", "."), number("end", ".")
    (24.6, nan, None)
    """
    text = field.replace(",", ".") if decimal == "," else field
    try:
        return float(text)
    except ValueError:
        return float("nan") if text.casefold() in OPEN_WORDS else None


def clock_seconds(field: str) -> float | None:
    """Seconds of a time of day, with its date when there is one; None for anything else.

    >>> clock_seconds("10:00:01.5")
    36001.5
    """
    found = _CLOCK.match(field.strip())
    if not found:
        return None
    date, hours, minutes, seconds = found.groups()
    of_day = int(hours) * 3600 + int(minutes) * 60 + float(seconds or 0)
    if not date:
        return of_day
    try:
        return datetime.fromisoformat(date.strip()).toordinal() * 86400.0 + of_day
    except ValueError:
        return None


def is_clock(field: str) -> bool:
    return clock_seconds(field) is not None


def _first_row(lines: list[str], name: str) -> tuple[int, str, list[str]]:
    """The first line that holds a time and at least one reading, its separator and fields."""
    for place, line in enumerate(lines[:SEARCHED]):
        for sign in (*SIGNS, BLANKS):
            separator = FRAMED if sign == STROKES and is_framed(line.strip()) else sign
            fields = cells_of(line, separator)
            if fields is not None and _is_row(fields):
                return place, separator, fields
    accepted = "rows of a time and one or more temperatures, such as 0.5,24.9"
    raise RepairlibError(name, "no row with a time and a temperature was found", accepted)


def _is_row(fields: list[str]) -> bool:
    if len(fields) < 2:
        return False
    time = number(fields[0], ",")
    timed = is_clock(fields[0]) or (time is not None and time == time)
    return timed and all(number(field, ",") is not None for field in fields[1:])


def _decimal(lines: list[str], separator: str) -> str:
    """The decimal sign of the cells: a comma where there are commas in them and no points."""
    cells = " ".join(cell for line in lines for cell in cells_of(line, separator) or ())
    return "," if "," in cells and "." not in cells else "."


def _headings(above: list[str], separator: str, width: int) -> tuple[str, list[str]]:
    """The heading line and its fields: the last line above the table, when it is as wide as it."""
    heads = (cells_of(above[-1], separator) or []) if above else []
    return (above[-1], heads) if len(heads) == width else ("", [])


def _words(head: str) -> list[str]:
    return [word for word in re.split(r"[\s()\[\]/,:_.]+", head.casefold()) if word]


def _time_unit(head: str) -> str | None:
    spelt = {word: unit for unit, words in _TIME_SPELT.items() for word in words}
    return next((spelt[word] for word in reversed(_words(head)) if word in spelt), None)


def _temperature_unit(head: str) -> str | None:
    words = set(_words(head))
    if "deg" in words:
        words |= {"degc"} if "c" in words else {"degf"} if "f" in words else set()
    if words & _FAHRENHEIT_SPELT:
        return FAHRENHEIT
    return CELSIUS if words & _CELSIUS_SPELT else None


def _preamble_unit(words: list[str]) -> str | None:
    """The unit that a line such as "Unit: °F" above the table states."""
    for line in words:
        if "unit" in line.casefold():
            return _temperature_unit(line)
    return None


def _plain(head: str) -> str:
    """A heading without its unit: "joint (°C)" is "joint"."""
    bare = re.sub(r"[(\[].*?[)\]]", "", head).strip()
    words = [w for w in bare.split() if w.casefold() not in _CELSIUS_SPELT | _FAHRENHEIT_SPELT]
    return " ".join(words).strip(" ,:") or head.strip()
