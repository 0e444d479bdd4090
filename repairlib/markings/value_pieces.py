"""Every way to read the piece of a marking that holds its value, on one body.

Such a piece may start with a voltage code and end in a letter: 2A104J, 107C, 4n7K63.
"""

from __future__ import annotations

from repairlib.core.once import Once
from repairlib.markings import value_codes
from repairlib.markings.made import is_preferred
from repairlib.markings.other_pieces import explicit_piece
from repairlib.markings.ranks import (
    DECIMALS_IN_PICOFARAD,
    IN_FULL,
    LETTER_IS_VOLTS_FIRST,
    LETTER_ON_BARE_NUMBER,
    LONE_FIGURE_AND_LETTER,
    NEXT,
    NO_TOLERANCE_LETTER,
    OLD_HABIT,
    PLAIN_NUMBER_ABOVE_ONE,
    SMALL_NUMBER_IN_MICROFARAD,
    TOO_TIGHT,
)
from repairlib.markings.reading import Tolerance
from repairlib.markings.tolerance_letters import P_DISPUTED, tolerances
from repairlib.markings.value_codes import BARE, MICRO, PICO, PRACTICE, PRINTED, SMALL_PICO, Value
from repairlib.markings.voltage_codes import (
    CAN_LETTERS,
    TANTALUM_LETTERS,
    bare_volts,
    code_source,
    letter_source,
    two_characters,
)

VOLTAGE_LETTERS = {"tantalum": TANTALUM_LETTERS, "can": CAN_LETTERS}
_ALUMINIUM_TOLERANCES = "JKMQSTZ"
_SELDOM = 0.009  # a fraction; closer percent letters are seldom on capacitors


class Way:
    """One way to read a value piece: its Value, the letter behind it, the code before it.

    `volts` come from the code before, from the letter, or from the number behind the letter.
    """

    __slots__ = (
        "behind",
        "code_source",
        "letter",
        "rank",
        "source",
        "tolerance",
        "value",
        "voltage_code",
        "volts",
    )

    def __init__(
        self,
        value: Value,
        rank: int = 0,
        letter: str = "",
        tolerance: Tolerance | None = None,
        volts: float | None = None,
        behind: str = "",
        source: str = "",
    ):
        self.value = value
        self.rank = value.rank + rank
        self.letter = letter
        self.tolerance = tolerance
        self.volts = volts
        self.behind = behind
        self.source = source
        self.voltage_code = ""
        self.code_source = ""

    def words(self) -> list[str]:
        """What each piece of the marking means, as a person would say it."""
        said = [self.value.why]
        if self.tolerance is not None:
            disputed = f" {P_DISPUTED[self.source]}" if self.letter == "P" else ""
            said.append(f"{self.letter} is {self.tolerance}{disputed}")
        elif self.letter == "A" and self.source == "from memory":
            said.append("A leaves the tolerance to the data sheet")
        elif self.letter:
            said.append(f"{self.letter} is {self.volts:g} V")
        if self.behind:
            said.append(f"{self.behind} is the rated voltage")
        if self.voltage_code:
            said.append(f"{self.voltage_code} is {self.volts:g} V")
        return said

    def sources(self) -> list[str]:
        """The keys of the sources of these meanings."""
        keys = [self.value.source, self.source, self.code_source]
        return [key for key in keys if key]


class Apart:
    """The pieces of one marking taken apart, as is the same on any body: each of them once.

    `explicit` is what a piece says of itself (see explicit_piece), `numbers` its Numbers.
    """

    __slots__ = ("explicit", "numbers")

    def __init__(self) -> None:
        self.explicit = Once(explicit_piece)
        self.numbers = Once(Numbers)


class Numbers:
    """The `number` that a piece begins with and the `rest`; `plain` is what the number may be.

    As values: `in_micro` without a unit, as on polar parts, and `with_unit`.

    >>> numbers = Numbers("4n7")
    >>> numbers.number, numbers.rest, [value.farad for value in numbers.with_unit]
    ('4', 'n7', [4.7e-09])
    """

    __slots__ = ("in_micro", "number", "plain", "rest", "with_unit")

    def __init__(self, piece: str):
        self.number, self.rest = value_codes.number_and_rest(piece)
        self.plain = value_codes.plain_numbers(self.number)
        self.in_micro = [
            _in_micro(figures, self.rest, IN_FULL + NEXT * place)
            for place, figures in enumerate(self.plain)
        ]
        self.with_unit = value_codes.with_unit(self.number, self.rest) if self.rest else []


def ways_to_read(piece: str, apart: Apart, body: str, sound_only: bool) -> list[Way]:
    """Every way to read `piece` as a value on `body`; none when it is no value there.

    With `sound_only` without bare numbers that no such part is made in.
    """
    ways = _ways(piece, apart, body, None, sound_only)
    if ways or len(piece) < 4:
        return ways
    volts = two_characters(piece[:2])
    if volts is not None and body in ("capacitor", "tantalum"):
        return _ways(piece[2:], apart, body, (volts, piece[:2], code_source(piece[:2])))
    letters = VOLTAGE_LETTERS.get(body, {})
    if piece[0] in letters and piece[1:4].isdecimal() and piece[4:] in ("", "J", "K", "M"):
        letter = piece[0]
        return _ways(piece[1:], apart, body, (letters[letter], letter, letter_source(body, letter)))
    return []


def _ways(
    piece: str,
    apart: Apart,
    body: str,
    lead: tuple[float, str, str] | None,
    sound_only: bool = False,
) -> list[Way]:
    """The ways to read a value and its letter; behind a voltage code, `lead`, only figure codes."""
    numbers = apart.numbers[piece]
    values = _codes(numbers.number, numbers.rest, body)
    if lead is None and body == "capacitor":
        values += _bare_numbers(numbers.plain, numbers.rest)
        values += numbers.with_unit
    elif lead is None:
        micro = numbers.in_micro
        values += [one for one in micro if not sound_only or is_preferred(body, one.farad)]
        values += numbers.with_unit
    ways = [way for value in values for way in _tails(value, body)]
    if lead is None:
        return ways
    ways = [way for way in ways if way.volts is None]
    for way in ways:
        way.volts, way.voltage_code, way.code_source = lead
    return ways


def _codes(number: str, rest: str, body: str) -> list[Value]:
    """The three-figure code, and R as a point on ceramics."""
    value = None
    if rest[:1] in ("R", "r") and body != "tantalum":
        value = value_codes.point_code(number, rest, in_microfarad=body != "capacitor")
    elif body in ("capacitor", "tantalum") and len(number) == 3 and number.isdecimal():
        value = value_codes.figure_code(number, rest, eight_is_large=body == "tantalum")
    elif len(number) == 3 and number.isdecimal() and not rest:
        value = value_codes.code_in_microfarad(number)
    return [value] if value else []


def _in_micro(figures: str, rest: str, rank: int) -> Value:
    return Value(MICRO, figures, -6, "a number without a unit is in µF", PRACTICE, rest, rank)


def _bare_numbers(plain: list[str], rest: str) -> list[Value]:
    """A number without a unit on a part that is not polar: pF on small ceramics, else µF."""

    def pico(why: str, rank: int, form: str = PICO) -> Value:
        return Value(form, figures, -12, why, PRACTICE, rest, rank)

    values = []
    for place, figures in enumerate(plain):
        if "." in figures:
            below_one = figures[0] == "0"
            rank = NEXT * place + (0 if below_one else PLAIN_NUMBER_ABOVE_ONE)
            values.append(_in_micro(figures, rest, rank))
            rank = NEXT * place + DECIMALS_IN_PICOFARAD
            values += [] if below_one else [pico("in pF on a ceramic", rank)]
        elif len(figures) <= 2:
            rank = LONE_FIGURE_AND_LETTER if len(figures) == 1 and rest else IN_FULL
            values.append(pico("a small whole number is in pF", rank, SMALL_PICO))
            values += [] if rest else [_in_micro(figures, rest, SMALL_NUMBER_IN_MICROFARAD)]
        elif figures[-1] == "0" and len(figures) <= 5:
            old = "old parts print plain pF"
            why = old if len(figures) == 3 else "a whole number is in pF"
            values.append(pico(why, OLD_HABIT))
    return values


def _tails(value: Value, body: str) -> list[Way]:
    """What may stand behind the value: nothing, a voltage letter, a tolerance, plain volts."""
    rest = value.rest
    if not rest:
        return [Way(value)]
    if rest[0].isdecimal():  # 1000µF16V
        volts = bare_volts(rest.removesuffix("V").removesuffix("v"))
        return [Way(value, volts=volts, behind=rest)] if volts else []
    letter, behind = rest[0], rest[1:]
    ways: list[Way] = []
    if letter == "H" and value.form == PRINTED:  # 10µH is an inductor
        return ways
    letters = VOLTAGE_LETTERS.get(body, {})
    if letter in letters and not behind:
        source = letter_source(body, letter)
        ways.append(Way(value, letter=letter, volts=letters[letter], source=source))
    volts = (bare_volts(behind.removesuffix("V")) or two_characters(behind)) if behind else None
    if behind and (volts is None or value.form in (PICO, SMALL_PICO)):
        return ways
    if body != "capacitor" and letter not in _ALUMINIUM_TOLERANCES:
        return ways
    if letter == "A" and body == "capacitor" and value.form not in BARE:  # IEC 60062
        rank = NO_TOLERANCE_LETTER
        return [Way(value, rank, letter, volts=volts, behind=behind, source="from memory")]
    if letter == "m" and value.form in BARE:  # 33m is 33 mF, a letter code
        return ways
    for place, (tolerance, source) in enumerate(tolerances(letter, value.farad)):
        rank = NEXT * place + (LETTER_IS_VOLTS_FIRST if ways else 0)
        if tolerance.unit == "" and tolerance.high < _SELDOM:
            rank += TOO_TIGHT
        between = letter == "M" and volts is not None  # 100M16
        if value.form in BARE and not between and (letter in "FPN" or body != "capacitor"):
            rank += LETTER_ON_BARE_NUMBER
        ways.append(Way(value, rank, letter, tolerance, volts, behind, source))
    return ways
