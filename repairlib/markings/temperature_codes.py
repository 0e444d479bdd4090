"""Temperature characteristics of ceramic capacitors (EIA-198): X7R, Y5V, C0G, NP0, N750."""

from __future__ import annotations

from repairlib.markings.ranks import IN_FULL
from repairlib.markings.reading import Reading, Tolerance

STANDARD = "EIA-198"
QUOTED = "EIA-198, quoted"
MEMORY = "from memory"

_LOWEST = {"X": -55.0, "Y": -30.0, "Z": 10.0}
_HIGHEST = {"2": 45.0, "4": 65.0, "5": 85.0, "6": 105.0, "7": 125.0, "8": 150.0, "9": 200.0}
# letter: (percent down, percent up)
_CHANGE = {
    "A": ("-1", "1"),
    "B": ("-1.5", "1.5"),
    "C": ("-2.2", "2.2"),
    "D": ("-3.3", "3.3"),
    "E": ("-4.7", "4.7"),
    "F": ("-7.5", "7.5"),
    "P": ("-10", "10"),
    "R": ("-15", "15"),
    "S": ("-22", "22"),
    "L": ("-40", "15"),
    "T": ("-33", "22"),
    "U": ("-56", "22"),
    "V": ("-82", "22"),
}
_CLASS_3 = "TUV"  # the strongest change; from memory that these are called class 3
_SECOND_HAND = "ABCDEF2"  # letters and digit read in a quoted table only

_FIGURE = {
    "C": "0",
    "B": "0.3",
    "L": "0.8",
    "A": "0.9",
    "M": "1.0",
    "P": "1.5",
    "R": "2.2",
    "S": "3.3",
    "T": "4.7",
    "V": "5.6",
    "U": "7.5",
}
_TIMES = {"0": -1, "1": -10, "2": -100, "3": -1000, "4": 1, "6": 10, "7": 100, "8": 1000}
_SPREAD = {"G": 30.0, "H": 60.0, "J": 120.0, "K": 250.0, "L": 500.0, "M": 1000.0, "N": 2500.0}

# Names by the coefficient itself: N is negative, P positive.
_NAMES = {
    "NP0": "C0G",
    "NPO": "C0G",
    "P100": "M7G",
    "N030": "B2G",
    "N033": "S1G",
    "N075": "U1G",
    "N150": "P2G",
    "N220": "R2G",
    "N330": "S2H",
    "N470": "T2H",
    "N750": "U2J",
    "N1500": "P3K",
    "N2200": "R3L",
    "C0G": "C0G",
    "COG": "C0G",
}


def characteristic(code: str) -> str | None:
    """The code in its standard spelling when it is a temperature characteristic, else None.

    >>> characteristic("x7r"), characteristic("COG"), characteristic("A7R")
    ('X7R', 'C0G', None)
    """
    code = code.upper()
    if code in _NAMES:
        return "C0G" if code == "COG" else "NP0" if code == "NPO" else code
    if len(code) != 3:
        return None
    first, digit, last = tuple(code)
    if first in _LOWEST and digit in _HIGHEST and last in _CHANGE:
        return code
    if first in _FIGURE and digit in _TIMES and last in _SPREAD:
        return code
    return None


def read_temperature(text: str, piece: str, part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a temperature characteristic that stands alone."""
    code = characteristic(piece) if 3 <= len(piece) <= 5 else None
    if code is None:
        return []
    eia = _NAMES.get(code, code)
    reading = _class_1(text, code, eia) if eia[0] in _FIGURE else _class_2(text, code)
    return [(IN_FULL, reading)]


def _class_1(text: str, code: str, eia: str) -> Reading:
    """A temperature coefficient in ppm/K with its own tolerance."""
    figure, times, spread = _FIGURE[eia[0]], _TIMES[eia[1]], _SPREAD[eia[2]]
    power = len(str(abs(times))) - 1
    coefficient = float(f"{'-' if times < 0 else ''}{figure}e{power}") + 0.0
    why = (
        f"class 1: {eia[0]} is {figure}, {eia[1]} is times {times}, {eia[2]} is ±{spread:g} ppm/K."
    )
    if code != eia:
        why = f"{code} is {eia}, {why}"
    if text.strip().upper() in ("NPO", "COG"):
        why += " The O is a zero."
    return Reading(
        kind="temperature-characteristic",
        text=text,
        quantity="temperature characteristic",
        value=coefficient,
        unit="ppm/K",
        why=_capital(why),
        tolerance=Tolerance(-spread, spread, "ppm/K"),
        carries={"temperature_characteristic": code, "dielectric_class": 1},
        steps=(f"{figure} × {times} ppm/K = {coefficient:g} ppm/K",),
        sources=(QUOTED if code == eia or code == "NP0" else MEMORY,),
    )


def _class_2(text: str, code: str) -> Reading:
    """The largest change of capacitance between two temperatures."""
    first, digit, last = tuple(code)
    low, high = _LOWEST[first], _HIGHEST[digit]
    down, up = _CHANGE[last]
    change = Tolerance(float(f"{down}e-2"), float(f"{up}e-2"))
    number = 3 if last in _CLASS_3 else 2
    why = f"Class {number}: from {first} {low:+g} °C to {digit} {high:+g} °C the capacitance may"
    second_hand = digit in _SECOND_HAND or last in _SECOND_HAND
    source = MEMORY if last == "L" else QUOTED if second_hand else STANDARD
    return Reading(
        kind="temperature-characteristic",
        text=text,
        quantity="temperature characteristic",
        value=None,
        unit="",
        why=f"{why} change by {last} {change}.",
        tolerance=change,
        carries={
            "temperature_characteristic": code,
            "dielectric_class": number,
            "lowest_temperature": low,
            "highest_temperature": high,
        },
        sources=(source,),
    )


def _capital(sentence: str) -> str:
    return sentence[0].upper() + sentence[1:]
