"""Several capacitors in one can: 16+16µF 450V, 20-20-20 450V; and motor-start parts, 88-108 MFD.

A motor-start part is one capacitor that is marked with its least and its most. It is no polar part,
whatever volts stand beside it.
"""

from __future__ import annotations

from repairlib.markings.clean_text import split
from repairlib.markings.made import is_preferred
from repairlib.markings.reading import Reading, Tolerance
from repairlib.markings.value_codes import number_and_rest, plain_numbers
from repairlib.markings.voltage_codes import bare_volts, printed_volts

_LEAST_SPREAD, _MOST_SPREAD = 1.15, 1.31  # of the two ends of a motor-start part
_LINE_VOLTS = (370.0, 440.0)  # ratings of motor-run parts, which no electrolytic has


def sections_in(cleaned: str) -> tuple[list[str], str] | None:
    """The numbers of the sections, and what stands behind them: unit, volts; or None.

    >>> sections_in("16+24µF 450V"), sections_in("20-20-20 450V"), sections_in("100-25")
    ((['16', '24'], 'µF 450V'), (['20', '20', '20'], ' 450V'), None)
    """
    words, space, rest = cleaned.replace("/", " ").partition(" ")
    mark = "+" if "+" in words else "-"
    *first, last = words.split(mark)
    number, unit = number_and_rest(last)
    numbers = [*[one.removesuffix(unit) for one in first], number]
    if not first or not all([bool(plain_numbers(one)) for one in numbers]):
        return None
    if mark == "-" and (unit or (len(numbers) == 2 and "V" not in rest)):
        return None
    if unit and not unit.startswith(("µ", "u", "U", "m", "M")):
        return None
    return numbers, unit + space + rest


def rating_of_sections(rest: str) -> tuple[str, bool]:
    """What stands behind the sections, and whether its volts are AC, also where that is not said.

    >>> rating_of_sections("µF 440V"), rating_of_sections(" 450V")
    (('µF 440VAC', True), (' 450V', False))
    """
    first, *others = split(f"1{rest}")
    for piece in others:
        volts = printed_volts(piece)
        if volts and (volts[1] == "AC" or volts[0] in _LINE_VOLTS):
            rated = rest if volts[1] == "AC" else rest.rstrip("Vv~") + "VAC"
            return f"µF{rated}" if first == "1" else rated, True
    return rest, False


def motor_start(cleaned: str) -> list[Reading]:
    """The reading of a motor-start part, 88-108 MFD 250VAC; none when it is no such part.

    >>> [one.headline.replace("\\u00a0", " ") for one in motor_start("270-324 MFD 110V")]
    ['297 µF ±9.1 %, 110 V, AC, non-polar']
    """
    least, hyphen, rest = cleaned.partition("-")
    most, rest = number_and_rest(rest)
    if not (hyphen and least.isdecimal() and most.isdecimal()):
        return []
    low, high = float(least), float(most)
    if low < 15 or not _LEAST_SPREAD <= high / low <= _MOST_SPREAD:
        return []
    pieces = split(f"1{rest}")
    volts = [one for one in map(_volts, pieces[1:]) if one]
    says_ac = any(kind == "AC" for _, kind in volts)
    made = all(is_preferred("radial", end * 1e-6) for end in (low, high))
    if not volts or (made and not says_ac):
        return []
    middle = (low + high) / 2
    spread = round(high / middle - 1, 3)
    why = f"A motor-start part: one capacitor of {least} to {most} µF, not polar, for AC only. "
    why += "Fit one of the same two ends and at least the same AC volts, never a polar part."
    carries = {"rated_voltage": max(volts)[0], "voltage_type": "AC", "polarity": "non-polar"}
    return [
        Reading(
            kind="radial",
            text=cleaned,
            quantity="capacitance",
            value=float(f"{middle!r}e-6"),
            unit="F",
            why=why,
            digits=3,
            tolerance=Tolerance(-spread, spread),
            carries=carries,
            sources=("common practice",),
        )
    ]


def _volts(piece: str) -> tuple[float, str] | None:
    bare = bare_volts(piece)
    return printed_volts(piece) or ((bare, "") if bare else None)


def joined(numbers: list[str], ac: bool) -> str:
    """The sections in words."""
    shared = "one terminal" if ac else "the minus"
    return f"one of {len(numbers)} sections, {' + '.join(numbers)} µF, which share {shared}"
