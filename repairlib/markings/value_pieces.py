"""Every way to read the piece of a marking that holds its value, on one body.

Such a piece may start with a voltage code and end in a letter: 2A104J, 107C, 4n7K63.
"""

from __future__ import annotations

from repairlib.markings import value_codes
from repairlib.markings.tolerance_letters import tolerances
from repairlib.markings.value_codes import Value
from repairlib.markings.voltage_codes import (
    CAN_LETTERS,
    TANTALUM_LETTERS,
    bare_volts,
    code_source,
    letter_source,
    two_characters,
)

VOLTAGE_LETTERS = {"tantalum": TANTALUM_LETTERS, "can": CAN_LETTERS}
SMALL_PICO = "a small whole number is in pF"
_MICRO = "a number without a unit is in µF"
_ON_CERAMIC = "in pF on a ceramic"
_PLAIN_PICO = "old parts print plain pF"
_LONG_PICO = "a whole number is in pF"
_BARE = (SMALL_PICO, _MICRO, _ON_CERAMIC, _PLAIN_PICO, _LONG_PICO)
_ALUMINIUM_TOLERANCES = "JKMQSTZ"
_SELDOM = 0.009  # a fraction; closer percent letters are seldom on capacitors


class Way:
    """One way to read a value piece: its Value, and the tolerance and volts found with it."""

    __slots__ = ("rank", "said", "sources", "tolerance", "value", "volts")

    def __init__(self, value, rank=0, tolerance=None, volts=None, said=(), sources=()):
        self.value = value
        self.rank = value.rank + rank
        self.tolerance = tolerance
        self.volts = volts
        self.said = said
        self.sources = sources


def is_bare(value: Value) -> bool:
    """Whether the value is a number without a unit, so that only the body says what it means."""
    return value.why in _BARE


def ways_to_read(piece: str, body: str) -> list[Way]:
    """Every way to read `piece` as a value on `body`; none when it is no value there."""
    ways = _ways(piece, body, None)
    if ways or len(piece) < 4:
        return ways
    volts = two_characters(piece[:2])
    if volts is not None and body in ("capacitor", "tantalum"):
        lead = (volts, f"{piece[:2]} is {volts:g} V", code_source(piece[:2]))
        return _ways(piece[2:], body, lead)
    letters = VOLTAGE_LETTERS.get(body, {})
    if piece[0] in letters and len(piece) == 4 and piece[1:].isdecimal():
        volts = letters[piece[0]]
        lead = (volts, f"{piece[0]} is {volts:g} V", letter_source(body, piece[0]))
        return _ways(piece[1:], body, lead)
    return []


def _ways(piece: str, body: str, lead: tuple[float, str, str] | None) -> list[Way]:
    """The ways to read a value and its letter; behind a voltage code, `lead`, only figure codes."""
    number, rest = value_codes.number_and_rest(piece)
    values = _codes(number, rest, body)
    if lead is None:
        values += _bare_numbers(number, rest, body)
        if rest:
            values += value_codes.with_unit(number, rest)
    ways = [way for value in values for way in _tails(value, body)]
    if lead is None:
        return ways
    ways = [way for way in ways if way.volts is None]
    for way in ways:
        way.volts = lead[0]
        way.said = (*way.said, lead[1])
        way.sources = (*way.sources, lead[2])
    return ways


def _codes(number: str, rest: str, body: str) -> list[Value]:
    """The three-figure code, and R as a point on ceramics."""
    value = None
    if body == "capacitor" and rest[:1] in ("R", "r"):
        value = value_codes.point_code(number, rest)
    elif body in ("capacitor", "tantalum") and len(number) == 3 and number.isdecimal():
        value = value_codes.figure_code(number, rest, eight_is_large=body == "tantalum")
    return [value] if value else []


def _bare_numbers(number: str, rest: str, body: str) -> list[Value]:
    """A number without a unit: pF on small ceramics, µF everywhere else."""

    def value(power: int, why: str, rank: int) -> Value:
        return Value(figures, power, why, value_codes.PRACTICE, rest, rank)

    values = []
    for place, figures in enumerate(value_codes.plain_numbers(number)):
        if not figures.strip("0."):
            continue
        if body != "capacitor":
            values.append(value(-6, _MICRO, place))
        elif "." in figures:
            values.append(value(-6, _MICRO, place))
            values += [value(-12, _ON_CERAMIC, place + 12)] if figures[0] != "0" else []
        elif len(figures) <= 2:
            values.append(value(-12, SMALL_PICO, 0))
            values += [] if rest else [value(-6, _MICRO, 15)]
        elif figures[-1] == "0" and len(figures) <= 5:
            why = _PLAIN_PICO if len(figures) == 3 else _LONG_PICO
            values.append(value(-12, why, 30))
    return values


def _tails(value: Value, body: str) -> list[Way]:
    """What may stand behind the value: nothing, a voltage letter, a tolerance, plain volts."""
    rest = value.rest
    if not rest:
        return [Way(value)]
    letter, behind = rest[0], rest[1:]
    ways = []
    letters = VOLTAGE_LETTERS.get(body, {})
    if letter in letters and not behind:
        volts = letters[letter]
        said = (f"{letter} is {volts:g} V",)
        ways.append(Way(value, 0, None, volts, said, (letter_source(body, letter),)))
    volts = bare_volts(behind.removesuffix("V")) if behind else None
    if behind and (volts is None or (is_bare(value) and value.why != _MICRO)):
        return ways
    if body != "capacitor" and letter not in _ALUMINIUM_TOLERANCES:
        return ways
    rating = (f"{behind} is the rated voltage",) if behind else ()
    if letter == "A" and body == "capacitor" and not is_bare(value):  # IEC 60062
        said = ("A leaves the tolerance to the data sheet", *rating)
        return [*ways, Way(value, 25, None, volts, said, ("from memory",))]
    for place, (tolerance, source) in enumerate(tolerances(letter, value.farad)):
        rank = place + (5 if ways else 0)
        rank += 15 if tolerance.unit == "" and tolerance.high < _SELDOM else 0
        rank += 10 if is_bare(value) and (letter in "FPNm" or body != "capacitor") else 0
        said = (f"{letter} is {tolerance}", *rating)
        ways.append(Way(value, rank, tolerance, volts, said, (source,)))
    return ways
