"""Chip resistors: three or four figures, R L or m as the point, the 96-value code, links.

Not here: a letter before two figures, for which no published table was found.
"""

from __future__ import annotations

from repairlib.core.series import E_SERIES
from repairlib.markings.ranks import (
    DOUBTED,
    FOUR_FIGURES,
    IN_FULL,
    NEXT,
    PLACE_AMONG_96,
    POINT_IN_MILLIOHM,
    POINT_R,
    SELDOM_MULTIPLIER,
    USUAL_CODE,
)
from repairlib.markings.reading import Reading
from repairlib.markings.value_codes import ZEROS, ten_to, times
from repairlib.markings.value_doubt import value_doubt

FIGURES_SOURCE = "Yageo chip marking"
POINT_SOURCE = "NIC chip marking guide"
MILLI_SOURCE = "Vishay WSR"
LETTERS_SOURCE = "WFxxR approval sheet"
ALL_LETTERS_SOURCE = "RND chip resistor"
LINK_SOURCE = "encyclopaedia, Zero-ohm link"
MEMORY = "from memory"

# letter: ((power of ten, source, doubt), ...), likeliest first. Behind the place in E96.
MULTIPLIERS = {
    "A": ((0, LETTERS_SOURCE, ""),),
    "B": ((1, LETTERS_SOURCE, ""),),
    "C": ((2, LETTERS_SOURCE, ""),),
    "D": ((3, LETTERS_SOURCE, ""),),
    "E": ((4, LETTERS_SOURCE, ""),),
    "F": ((5, ALL_LETTERS_SOURCE, ""),),
    "X": ((-1, LETTERS_SOURCE, ""),),
    "Y": ((-2, ALL_LETTERS_SOURCE, ""),),
    "Z": ((-3, ALL_LETTERS_SOURCE, ""),),
    "R": ((-2, MEMORY, ""),),
    "S": ((-1, MEMORY, ""),),
    "G": ((6, ALL_LETTERS_SOURCE, "only one maker goes on to G"),),
    "H": (
        (1, MEMORY, "makers differ: H is times 10, or times 10000000"),
        (7, ALL_LETTERS_SOURCE, "makers differ: H is times 10000000, or times 10"),
    ),
}


def read_chip_resistor(text: str, pieces: list[str], part) -> list[tuple[int, Reading]]:
    """Readings of the code on a chip resistor, each with its rank; none when it is no such code."""
    if len(pieces) != 1 or len(pieces[0]) > 6:
        return []
    code = pieces[0]
    if code.isdecimal():
        return _figures(text, code)
    found = _point(text, code.upper().replace("M", "m") if "R" in code.upper() else code)
    if len(code) == 3 and code[:2].isdecimal():
        found += _e96(text, int(code[:2]), code[2].upper(), bool(found))
    return found


def _figures(text: str, code: str) -> list[tuple[int, Reading]]:
    if set(code) == {"0"} and len(code) <= 4:
        return [_link(text)]
    if len(code) not in (3, 4) or code[0] == "0":
        return []
    figures, power = code[:-1], int(code[-1])
    used = (
        "three figures are used for 5 %"
        if len(code) == 3
        else "four figures are used for 1 % and closer"
    )
    why = f"{figures} and {ZEROS[power]}, in Ω; {used}"
    rank = USUAL_CODE if len(code) == 3 and power < 6 else FOUR_FIGURES
    step = f"{figures} × {ten_to(power)} Ω"
    value = float(f"{figures}e{power}")
    return [_ranked(text, value, figures, why, FIGURES_SOURCE, rank, step=step)]


def _point(text: str, code: str) -> list[tuple[int, Reading]]:
    """R, L or m where the decimal point is. M may be mΩ here and MΩ elsewhere: both."""
    found = []
    for letter, power, unit, source in (
        ("R", 0, "Ω", POINT_SOURCE),
        ("L", -3, "mΩ", MILLI_SOURCE),
        ("m", -3, "mΩ", MEMORY),
        ("M", -3, "mΩ", MEMORY),
        ("M", 6, "MΩ", "IEC 60062:2016"),
    ):
        whole, point, decimals = code.partition(letter)
        digits = whole + decimals
        if not point or not digits.isdecimal() or (len(whole) > 1 and whole[0] == "0"):
            continue
        if not set(digits) - {"0"}:
            found += [_link(text)] if letter == "R" else []
            continue
        number = f"{whole or '0'}.{decimals or '0'}"
        why = f"{letter} is the decimal point, in {unit}"
        why += "; M may be mΩ or MΩ, measure it" if letter == "M" else ""
        if letter == "R" and len(code) == 3 and not decimals and 1 <= int(whole) <= 96:
            why += f"; as place {whole} of the 96 values it would be another value"
        rank = POINT_R if letter == "R" else POINT_IN_MILLIOHM
        value = float(f"{number}e{power}")
        found.append(_ranked(text, value, digits, why, source, rank + NEXT * (power > 0)))
    return found


def _e96(text: str, place: int, letter: str, has_point: bool) -> list[tuple[int, Reading]]:
    """Two figures are the place in E96, the letter is the multiplier. 1 % parts."""
    if not 1 <= place <= 96 or letter not in MULTIPLIERS:
        return []
    figures = E_SERIES["E96"][place - 1]
    found = []
    for order, (power, source, doubt) in enumerate(MULTIPLIERS[letter]):
        why = f"Place {place:02} of the 96 values is {figures}; {letter} is times {times(power)}"
        if has_point:
            doubt = "R is rather the decimal point"
        value = float(f"{figures}e{power}")
        rank = PLACE_AMONG_96 if letter in "ABCDEFXYZ" else SELDOM_MULTIPLIER
        found.append(_ranked(text, value, str(figures), why, source, rank + NEXT * order, doubt))
    return found


def _link(text: str) -> tuple[int, Reading]:
    return _ranked(text, 0.0, "0", "A link of 0 Ω", LINK_SOURCE, IN_FULL)


def _ranked(text, value, figures, why, source, rank, doubt="", step="") -> tuple[int, Reading]:
    down = DOUBTED if doubt else 0
    if value and not doubt:
        doubt, down = value_doubt("chip-resistor", value, figures, None)
    digits = len(figures.strip("0")) if len(figures) > 3 else len(figures)
    reading = Reading(
        kind="chip-resistor",
        text=text,
        quantity="resistance",
        value=value,
        unit="Ω",
        why=f"{why}.",
        digits=digits,
        steps=(step,) if step else (),
        doubt=doubt,
        sources=(source,),
    )
    return rank + down, reading
