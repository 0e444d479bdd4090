"""What a reading on paper means: `OL`, `< 0.1`, `>20M`, a blank, `0.00` from a shorted lead.

Covers one reading with its unit. Tables of readings are read in measured.py, and how exact a
reading is, is worked out in meter.py.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, read_quantity

VALUE, BELOW, ABOVE, OVERLOAD, ZERO, NOTHING, UNREADABLE = (
    "value",
    "below",
    "above",
    "overload",
    "zero",
    "nothing",
    "unreadable",
)
_LESS = r"<=|≤|=<|<|less than|below|under|at most|max\.?"
_MORE = r">=|≥|=>|>|more than|greater than|above|over|at least|min\.?"
_ABOUT = r"~|≈|about|approx\.?|circa|ca\.?"
_RELATION = re.compile(rf"(?:(?P<less>{_LESS})|(?P<more>{_MORE})|(?P<about>{_ABOUT}))\s*(?=[\d.,])")
_OVERLOAD = re.compile(
    r"(?:\.?[o0]\.?l\.?|over[ -]?(?:load|range|flow|limit)?|out of range|inf(?:inite|inity)?|∞"
    r"|open(?: circuit)?|o/?c)\.?\s*(?:[kmµu]?(?:Ω|\u2126|ohms?|f|a|v))?",
    re.IGNORECASE,
)
_SHORT = re.compile(r"short(?:ed)?(?: circuit)?|s/?c", re.IGNORECASE)
_NOTHING = re.compile(r"[-–—_.?\s]*|n/?a|none|not (?:measured|tested|read)", re.IGNORECASE)
_BARE = re.compile(r"[-+]?(?=[.,]?\d)[\d.,]*(?:e[-+]?\d+)?", re.IGNORECASE)
_FREQUENCY = re.compile(r"\s*(?:@|\bat\b)\s*(.+)$")
_SPREAD = re.compile(r"\s*(?:±|\+/-|\+-)\s*")
_LONGEST = 60
_NEEDS_UNIT = ("F", "A", "H")  # nobody writes whole farads
_EXAMPLES = {"Ω": "0.35, 350 mΩ", "F": "98 µF", "A": "3 µA", "H": "10 µH", "V": "25 V"}
_EXAMPLES |= {"": "0.08 or 8 %"}
_ZERO_MEANS = {
    "Ω": "no part has 0 Ω: the probes touch each other, the part is shorted, or the range is too "
    "high. Measure again",
    "F": "no capacitance at all: a broken connection, or a shorted part",
    "A": "less than the meter can show on this range",
}
_OVERLOAD_MEANS = {
    "Ω": "more than the range can show, or open",
    "F": "more than the range can show, or a part that leaks or is shorted",
}


@dataclass(frozen=True, slots=True)
class Measurement:
    """One reading: its `text` as written, what it is (`kind`), and where the value can lie.

    `kind` is VALUE, BELOW, ABOVE, OVERLOAD, ZERO, NOTHING or UNREADABLE. `value` is the number in
    SI units, None where there is none. `low` and `high` bound the value; an open end is infinite.
    They leave the meter's own uncertainty out. `frequency` in Hz is given when the reading names
    it. `why` says what it was taken for.
    """

    text: str
    kind: str
    value: float | None
    low: float
    high: float
    unit: str
    why: str
    frequency: float | None = None

    def __str__(self) -> str:
        if self.kind == VALUE and self.value is not None:
            return str(Quantity(self.value, self.unit))
        return f"{self.kind}: {self.why}"


def read_measurement(
    text: str, unit: str, bare: str | None = None, range_top: float | None = None
) -> Measurement:
    """What the reading `text` means, in `unit` (one of the library, or "" for D).

    `bare` is the unit with prefix that a number without unit has, as the heading says ("µF").
    `range_top` is the end of the meter's range in SI units, if known: an overload is then a value
    above it. Raises RepairlibError for what is no reading, for another kind of unit, and for a
    negative resistance or capacitance.

    >>> print(read_measurement("350m", "Ω"), read_measurement("98", "F", bare="µF"))
    350 mΩ 98 µF
    >>> read_measurement(">20M", "Ω").low, read_measurement("O.L", "Ω").kind
    (20000000.0, 'overload')
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", _accepted(unit))
    words = " ".join(text.strip().strip("\"'").split())
    if _NOTHING.fullmatch(words):
        return Measurement(text, NOTHING, None, -math.inf, math.inf, unit, "not measured")
    if len(words) > _LONGEST:
        raise RepairlibError(text, f"longer than {_LONGEST} characters", _accepted(unit))
    if _OVERLOAD.fullmatch(words):
        low = -math.inf if range_top is None else range_top
        why = _OVERLOAD_MEANS.get(unit, "more than the range can show")
        return Measurement(text, OVERLOAD, None, low, math.inf, unit, why)
    if _SHORT.fullmatch(words):
        return Measurement(text, ZERO, 0.0, 0.0, 0.0, unit, "written as a short circuit")
    measured = _read_number(text, words, unit, bare)
    if unit in ("Ω", "F") and measured.high < 0:
        wrong = "below zero: was the circuit live, or the part still charged?"
        raise RepairlibError(text, wrong, _accepted(unit))
    return measured


def last_digit(reading: str, unit: str | None = None) -> float:
    """What one count of the last place of `reading` is worth, in SI units.

    `reading` is text as the meter shows it, with its trailing zeros. Raises RepairlibError when
    it is not a number in `unit`.

    >>> last_digit("120.0 V"), last_digit("0.00 Ω"), last_digit("4.70 kΩ")
    (0.1, 0.01, 10.0)
    """
    read_quantity(reading, unit)
    figures = _without_exponent(reading)
    zeros = "".join("0" if c.isdigit() else c for c in figures)
    last = max(at for at, c in enumerate(zeros) if c == "0")
    one = zeros[:last] + "1" + zeros[last + 1 :] + reading[len(figures) :]
    none = zeros + reading[len(figures) :]
    # A difference, because °F has an offset.
    return abs(read_quantity(one, unit).value - read_quantity(none, unit).value)


def unreadable(text: str, unit: str, problem: RepairlibError) -> Measurement:
    """The place of a reading that cannot be read, with what is wrong with it."""
    return Measurement(text, UNREADABLE, None, -math.inf, math.inf, unit, problem.wrong)


def _read_number(text: str, words: str, unit: str, bare: str | None) -> Measurement:
    """A number with what may stand around it: `<`, `about`, `± 5 %`, `@ 100 kHz`, `?`."""
    frequency = None
    at = _FREQUENCY.search(words)
    if at:
        frequency = _inside(text, at[1], "Hz").value
        words = words[: at.start()]
    doubtful = words.endswith("?")
    relation = _RELATION.match(words.lower())
    number, *spread = _SPREAD.split(words[relation.end() if relation else 0 :].rstrip("? "))
    value = _value(text, number, unit, bare)
    measured = Measurement(text, VALUE, value, value, value, unit, "as written", frequency)
    if relation and relation["less"]:
        return replace(measured, kind=BELOW, value=None, low=-math.inf, why="less than this")
    if relation and relation["more"]:
        return replace(measured, kind=ABOVE, value=None, high=math.inf, why="more than this")
    if len(spread) == 1:
        around = _around(text, value, spread[0], unit, bare)
        return replace(measured, low=value - around, high=value + around, why="with its spread")
    if spread:
        raise RepairlibError(text, "± stands twice", _accepted(unit))
    if value == 0 and unit in _ZERO_MEANS:
        count = _one_count(number, unit, bare)
        return replace(measured, kind=ZERO, high=count, why=_ZERO_MEANS[unit])
    if doubtful or (relation and relation["about"]):
        return replace(measured, why="written as doubtful: measure again")
    return measured


def _value(text: str, number: str, unit: str, bare: str | None) -> float:
    number = number.strip()
    if unit == "":
        quantity = _inside(text, number, None)
        if quantity.unit not in ("", "%"):
            wrong = f"it is in {quantity.unit} where a ratio is due"
            raise RepairlibError(text, wrong, _accepted(unit))
        return quantity.value / 100 if "%" in (quantity.unit, bare) else quantity.value
    if _BARE.fullmatch(number):
        if bare:
            number = f"{number} {bare}"
        elif unit in _NEEDS_UNIT:
            wrong = "it has no unit, and no heading gives one"
            raise RepairlibError(text, wrong, f"a number with its unit, such as {_EXAMPLES[unit]}")
    return _inside(text, number, unit).value


def _around(text: str, value: float, spread: str, unit: str, bare: str | None) -> float:
    """The ± of a reading, in its unit or in per cent of it."""
    if spread.endswith("%") and unit != "%":
        return abs(value) * _inside(text, spread, "%").value / 100
    return abs(_value(text, spread, unit, bare))


def _one_count(number: str, unit: str, bare: str | None) -> float:
    number = number.strip()
    if bare and _BARE.fullmatch(number):
        number = f"{number} {bare}"
    return last_digit(number, unit)


def _inside(text: str, piece: str, unit: str | None) -> Quantity:
    """`piece` of `text` as a quantity; an error names the whole text."""
    try:
        return read_quantity(piece, unit)
    except RepairlibError as problem:
        raise RepairlibError(text, problem.wrong, problem.accepted) from None


def _accepted(unit: str) -> str:
    example = _EXAMPLES.get(unit, f"a number in {unit}")
    return f"{example}, OL, < 0.1, > 20M, or nothing" if unit else f"{example}, or nothing"


def _without_exponent(reading: str) -> str:
    """`reading` up to the e of a power of ten such as 1.5e3."""
    for at in range(1, len(reading)):
        if reading[at] in "eE" and reading[at + 1 :].lstrip("+-")[:1].isdigit():
            return reading[:at]
    return reading
