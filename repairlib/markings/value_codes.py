"""How a capacitance is written: figure codes in pF, letter codes, and plain numbers with a unit.

Each function takes a number and what follows it, and gives Value objects: no part is known here.
"""

from __future__ import annotations

from repairlib.markings.ranks import (
    CAPITAL_UNIT,
    IN_FULL,
    MILLIFARAD,
    NEXT,
    THOUSANDS,
)

LETTER_STANDARD = "IEC 60062:2016"
FIGURE_STANDARD = "KEMET ceramic ordering table"
PRACTICE = "common practice"

CODE, PRINTED, MICRO, PICO, SMALL_PICO = "code", "printed", "micro", "pico", "small pico"
POINT, CODE_IN_MICRO = "point", "code in micro"  # R47 and 271, which mean µF beside low volts
BARE = (MICRO, PICO, SMALL_PICO, CODE_IN_MICRO)

_POWERS = {"p": -12, "n": -9, "u": -6, "µ": -6, "m": -3, "F": 0}
_CAPITALS = {"P": "p", "N": "n", "U": "µ"}  # often typed, never standard
_NAMES = {"p": "pF", "n": "nF", "u": "µF", "µ": "µF", "m": "mF", "F": "F"}
# unit as printed: power of ten. MFD and MF are old American for microfarad.
_UNITS = {
    "pF": -12,
    "PF": -12,
    "pf": -12,
    **dict.fromkeys(("MMF", "mmf", "MMFD", "mmfd", "µµF", "uuF", "uuf", "UUF"), -12),
    "kpF": -9,
    "nF": -9,
    "NF": -9,
    "nf": -9,
    "µF": -6,
    "uF": -6,
    "UF": -6,
    "uf": -6,
    "µf": -6,
    "MFD": -6,
    "mfd": -6,
    "Mfd": -6,
    "MF": -6,
    "mf": -6,
    "mF": -3,
}
_LONGEST_UNIT = 4
_LONGEST_NUMBER = 8
_COUNTS = "no one two three four five six seven eight nine"
ZEROS = tuple([f"{count} zero{'' if count == 'one' else 's'}" for count in _COUNTS.split()])
_RAISED = dict(zip("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹", strict=True))


class Value:
    """A capacitance before its part is known: farad, digits, why, steps, source, what follows.

    `form` is CODE, PRINTED (with a letter or unit), POINT where R is
    the point, or for a bare number MICRO, PICO, SMALL_PICO or CODE_IN_MICRO.
    """

    __slots__ = ("digits", "farad", "form", "rank", "rest", "source", "steps", "why")

    def __init__(
        self,
        form: str,
        number: str,
        power: int,
        why: str,
        source: str,
        rest: str = "",
        rank: int = IN_FULL,
        step: str = "",
    ):
        self.form = form
        self.farad = float(f"{number}e{power}")
        self.digits = len(number.replace(".", "").lstrip("0")) or 1
        self.why = why
        self.steps = (step,) if step else ()
        self.source = source
        self.rest = rest
        self.rank = rank


def figure_code(code: str, rest: str = "", eight_is_large: bool = False) -> Value | None:
    """Two figures and a power of ten, in pF; 9 is x0.1 and 8 is x0.01.

    With `eight_is_large` (tantalum and polymer parts) 8 is eight zeros and 9 is not used.

    >>> figure_code("104").farad, figure_code("479").farad, figure_code("508").farad
    (1e-07, 4.7e-12, 5e-13)
    """
    figures, last = code[:2], code[2]
    if figures[0] == "0":
        return None
    if last == "9" or (last == "8" and not eight_is_large):
        if eight_is_large:
            return None
        power = -1 if last == "9" else -2
        factor = "0.1" if last == "9" else "0.01"
        why = f"{figures} times {factor}, in pF"
        step = f"{figures} × {factor} pF"
        return Value(CODE, figures, power - 12, why, FIGURE_STANDARD, rest, step=step)
    why = f"{figures} and {ZEROS[int(last)]}, in pF"
    source = "from memory" if last == "8" else FIGURE_STANDARD
    step = f"{figures} × {ten_to(last)} pF = {figures}{'0' * int(last)} pF"
    return Value(CODE, figures, int(last) - 12, why, source, rest, step=step)


def point_code(number: str, rest: str, in_microfarad: bool = False) -> Value | None:
    """R stands where the decimal point is, in pF (ceramic): R50, 1R0; on small cans in µF.

    >>> point_code("1", "R0").farad
    1e-12
    """
    if rest[:1] not in ("R", "r"):
        return None
    decimals, rest = leading_digits(rest[1:])
    if not (number or decimals) or not _whole(number or "0") or len(decimals) > 2:
        return None
    figures = f"{number or '0'}.{decimals}" if decimals else number
    if not figures.strip("0."):
        return None
    if in_microfarad:
        return Value(POINT, figures, -6, "R is the decimal point, in µF", PRACTICE, rest)
    why = "R is the decimal point, in pF"
    return Value(POINT, figures, -12, why, "Samsung part-number table", rest)


def code_in_microfarad(code: str) -> Value | None:
    """Two figures and one or two zeros, in µF, as on polymer cans: 271 is 270 µF.

    >>> code_in_microfarad("271").farad
    0.00027
    """
    figures, last = code[:2], code[2]
    if figures[0] == "0" or last not in "12":
        return None
    why = f"{figures} and {ZEROS[int(last)]}, in µF, as on polymer cans"
    return Value(CODE_IN_MICRO, figures, int(last) - 6, why, PRACTICE, "")


def with_unit(number: str, rest: str) -> list[Value]:
    """Values of a letter code (4n7) or of a number and its unit (4.7nF), likeliest first.

    >>> [value.farad for value in with_unit("4", "u7")], [v.rest for v in with_unit("47", "pF")]
    ([4.7e-06], ['', 'F'])
    """
    values = []
    for length in range(min(_LONGEST_UNIT, len(rest)), 1, -1):
        power = _UNITS.get(rest[:length])
        if power is None or not number:
            continue
        if rest[:length] == "mF":  # on old parts it is µF, and few parts print millifarad
            values += _plain(number, -6, "mF, old printing for µF", rest[length:])
            values += _plain(number, -3, "mF, read as millifarad", rest[length:], MILLIFARAD)
        else:
            values += _plain(number, power, rest[:length], rest[length:])
        if rest[:2] not in ("pF", "nF") or not number.isdecimal():
            return values
        break  # 47pF may be the letter code 47p with a tolerance letter F
    letter = _CAPITALS.get(rest[:1], rest[:1])
    return values + _letter_code(number, letter, rest) if letter in _POWERS else values


def _letter_code(number: str, letter: str, rest: str) -> list[Value]:
    """Values of 4n7, n47, 33n, and of 4.7n; two when the comma may be a thousands mark."""
    decimals, left = leading_digits(rest[1:])
    rank = CAPITAL_UNIT if rest[0] in _CAPITALS else IN_FULL
    unit = f"the letter {rest[0]} is {_NAMES[letter]}"
    point = f"{unit} and the decimal point"
    if not decimals:
        options = [(figures, unit, left) for figures in plain_numbers(number)] if number else []
    elif (number and not _whole(number)) or (not number and rest[0] in _CAPITALS):
        options = []  # 4.7n7, or N47, is no letter code
    else:
        options = [(f"{number or '0'}.{decimals}", point, left)]
        if len(number) > 1 and len(decimals) > 1:  # 10µ35 is more likely 10 µF and 35 V
            options.insert(0, (number, unit, decimals + left))
    return [
        Value(
            form=PRINTED,
            number=figures,
            power=_POWERS[letter],
            why=why,
            source=LETTER_STANDARD,
            rest=behind,
            rank=rank + (THOUSANDS if "," in number and place else NEXT * place),
            step=f"{number}{rest[0]}{decimals} = {figures} {_NAMES[letter]}",
        )
        for place, (figures, why, behind) in enumerate(options)
        if figures.strip("0.") and len(figures) <= _LONGEST_NUMBER
    ]


def _plain(number: str, power: int, unit: str, rest: str, rank: int = IN_FULL) -> list[Value]:
    """Values of a plain number with a unit; two when its comma may be a thousands mark."""
    return [
        Value(PRINTED, figures, power, f"the number is in {unit}", PRACTICE, rest, rank + extra)
        for figures, extra in zip(plain_numbers(number), (0, THOUSANDS), strict=False)
    ]


def plain_numbers(number: str) -> list[str]:
    """The numbers that `number` may be, with a decimal point: 4,7 is one, 1,000 is two.

    >>> plain_numbers("4,7"), plain_numbers("1,000"), plain_numbers(".022"), plain_numbers("1.2.3")
    (['4.7'], ['1000', '1.000'], ['0.022'], [])
    >>> plain_numbers("2.200"), plain_numbers("3.125")
    (['2200', '2.200'], ['3.125'])
    """
    comma = "," in number
    whole, point, decimals = number.partition("," if comma else ".")
    if not point:
        return [number] if _whole(number) and number != "0" else []
    if not decimals.isdecimal() or not (whole == "" or _whole(whole)) or len(number) > 8:
        return []
    decimal = f"{whole or '0'}.{decimals}"
    if not decimal.strip("0."):
        return []
    thousands = comma or decimals.endswith("00")  # 4.700 of German parts is no 4.7
    if thousands and len(decimals) == 3 and whole not in ("", "0"):
        return [whole + decimals, decimal]
    return [decimal]


def _whole(number: str) -> bool:
    """Whether `number` is a whole number as printed on parts: 0, or not starting with 0."""
    return number.isdecimal() and (number[0] != "0" or number == "0") and len(number) <= 6


def ten_to(power: int | str) -> str:
    """A power of ten as it is written on a board.

    >>> ten_to(4), ten_to(-2)
    ('10⁴', '10⁻²')
    """
    return "10" + "".join([_RAISED[sign] for sign in str(power)])


def times(power: int) -> str:
    """A power of ten as people write a factor.

    >>> times(-2), times(3)
    ('0.01', '1000')
    """
    return "1" + "0" * power if power >= 0 else "0." + "0" * (-power - 1) + "1"


def leading_digits(text: str) -> tuple[str, str]:
    """The digits at the start of `text`, and what follows."""
    rest = text.lstrip("0123456789")
    return text[: len(text) - len(rest)], rest


def number_and_rest(piece: str) -> tuple[str, str]:
    """'104' and 'K' of '104K'; '' and 'p33' of 'p33'."""
    rest = piece.lstrip("0123456789.,")
    return piece[: len(piece) - len(rest)], rest
