"""Inductors with text: three figures in µH, R as the point in µH, N in nH, plain values in henry.

Makers agree on the figures and letters of the value, not on all letters of the tolerance.
"""

from __future__ import annotations

from repairlib.markings.other_pieces import percent_tolerance
from repairlib.markings.ranks import IN_FULL, INDUCTOR_CODE, INDUCTOR_POINT, NEXT
from repairlib.markings.reading import Reading, Tolerance, percent_either_side
from repairlib.markings.value_codes import (
    ZEROS,
    leading_digits,
    number_and_rest,
    plain_numbers,
    ten_to,
)
from repairlib.markings.value_doubt import value_doubt

CODES = "CTC coils"
TOLERANCE_SOURCE = "Token inductor colour code"
PRACTICE = "common practice"

_UNITS = {"H": 0, "mH": -3, "µH": -6, "uH": -6, "UH": -6, "nH": -9, "MH": -3}
_POINTS = ("n", "u", "µ", "m")
# letter: ((amount, "%" or "nH", source), ...), likeliest first
TOLERANCES = {
    "F": (("1", "%"),),
    "G": (("2", "%"),),
    "H": (("3", "%"),),
    "J": (("5", "%"),),
    "K": (("10", "%"),),
    "L": (("15", "%"),),
    "M": (("20", "%"),),
    "V": (("25", "%"),),
    "N": (("30", "%"),),
    "D": (("0.5", "nH"),),
    "S": (("0.3", "nH"),),
    "B": (("0.15", "nH"), ("0.1", "%")),
    "C": (("0.2", "nH"), ("0.25", "%")),
}


def read_inductor(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """Readings of an inductor's text, each with its rank; none when it is no such text."""
    value, percent = "", None
    carries: dict[str, float] = {}
    for piece in pieces:
        ampere = _ampere(piece) if value else None
        if piece[-1] == "%" and percent is None:
            percent = percent_tolerance(piece[:-1])
            if percent is None:
                return []
        elif not value:
            value = piece
        elif ampere and not carries and "H" in value:
            carries["rated_current"] = ampere
        elif piece in TOLERANCES or piece in _UNITS:
            value += piece
        else:
            return []
    found = []
    for number, power, why, source, tail, rank in _values(value) if value else ():
        for place, (tolerance, words, keys) in enumerate(_tails(tail)):
            if percent is not None and tolerance is not None:
                continue
            henry = float(f"{number}e{power}")
            kind = _kind(part, value, power)
            doubt, down = value_doubt(kind, henry, number, None)
            reading = Reading(
                kind=kind,
                text=text,
                quantity="inductance",
                value=henry,
                unit="H",
                why="; ".join([why, *words]) + ".",
                digits=len(number.replace(".", "").lstrip("0")) or 1,
                tolerance=percent or tolerance,
                carries=dict(carries),
                steps=(f"{value}: {number} × {ten_to(power)} H",),
                doubt=doubt,
                sources=(source, *keys),
            )
            found.append((rank + NEXT * place + down, reading))
    return found


def _ampere(piece: str) -> float | None:
    """The amperes of 1A, 0.5A or 500mA, or None."""
    if piece[-1] != "A":
        return None
    milli = piece.endswith("mA")
    number = piece[: -2 if milli else -1]
    return (
        float(f"{plain_numbers(number)[0]}e{-3 if milli else 0}") if plain_numbers(number) else None
    )


def _kind(part: str | None, piece: str, power: int) -> str:
    if part:
        return part
    return "chip-inductor" if power == -9 and "H" not in piece else "inductor"


def _values(piece: str):
    """(number, power of ten, why, source, letters left, rank) for each way to read the value."""
    number, rest = number_and_rest(piece)
    for unit in (rest[:2], rest[:1]):
        if unit in _UNITS and number:
            for place, plain in enumerate(plain_numbers(number)):
                why = f"The number is in {unit}"
                yield plain, _UNITS[unit], why, PRACTICE, rest[len(unit) :], IN_FULL + NEXT * place
            break
    if rest[:1] in _POINTS and rest[1:2].isdecimal() and "H" in rest and "." not in number:
        decimals, tail = leading_digits(rest[1:])  # 3n9H
        if tail[0] == "H" and number.isdecimal() and number[0] != "0":
            unit = f"{rest[0]}H"
            why = f"{rest[0]} is the decimal point, in {unit}"
            yield f"{number}.{decimals}", _UNITS[unit], why, PRACTICE, tail[1:], IN_FULL
    if (
        len(number) == 3
        and number.isdecimal()
        and number[0] != "0"
        and not leading_digits(rest[1:])[0]
    ):
        figures, power = number[:2], int(number[2])
        yield figures, power - 6, f"{figures} and {ZEROS[power]}, in µH", CODES, rest, INDUCTOR_CODE
    letter = rest[:1].upper()
    if letter not in ("R", "N") or "." in number or "," in number or number[:2] == "00":
        return
    decimals, tail = leading_digits(rest[1:])
    power, unit = (-6, "µH") if letter == "R" else (-9, "nH")
    value = f"{number or '0'}.{decimals}" if decimals else number
    if value.strip("0.") and len(value) <= 6 and not (len(number) > 1 and number[0] == "0"):
        why = f"{rest[0]} is the decimal point, in {unit}"
        yield value, power, why, CODES, tail, INDUCTOR_POINT


def _tails(letter: str):
    """(tolerance, words, sources) for each meaning of the letter behind the value."""
    if not letter:
        return [(None, [], [])]
    options = []
    for amount, unit in TOLERANCES.get(letter.upper(), ()):
        if unit == "nH":
            tolerance = Tolerance(float(f"-{amount}e-9"), float(f"{amount}e-9"), "H")
        else:
            tolerance = percent_either_side(amount)
        general = letter.upper() in "BC" and unit == "%"
        source = "IEC 60062:2016" if general else TOLERANCE_SOURCE
        differs = ""
        if letter.upper() in "BC":
            differs = " in the general code" if general else " at one maker"
        options.append((tolerance, [f"{letter} is {tolerance}{differs}"], [source]))
    return options
