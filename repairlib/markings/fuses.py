"""Fuses: speed letter, rated current, breaking capacity and voltage; and the four colour bands.

A fuse is replaced by one of the same rating and class. No substitute is ever offered here.
"""

from __future__ import annotations

from itertools import pairwise

from repairlib.markings.ranks import (
    DOUBTED,
    FUSE_BANDS,
    FUSE_BANDS_FROM_OTHER_END,
    FUSE_OF_AMPERES_ALONE,
    FUSE_WITHOUT_UNIT,
    IN_FULL,
    NEXT,
)
from repairlib.markings.reading import Reading
from repairlib.markings.value_codes import plain_numbers

SPEEDS = {
    "FF": ("very quick", "encyclopaedia, Fuse"),
    "F": ("quick", "encyclopaedia, Fuse"),
    "M": ("medium", "from memory"),
    "T": ("time-lag", "encyclopaedia, Fuse"),
    "TT": ("long time-lag", "from memory"),
}
BREAKING = {"H": "high", "L": "low", "E": "enhanced"}
BREAKING_SOURCE = "GOST R IEC 60127-2-2010"
BANDS_SOURCE = "GOST IEC 60127-1-2010"
SAME = "Replace it only by one of the same rating and class."

_BAND_SPEEDS = {"black": "FF", "red": "F", "yellow": "M", "blue": "T", "grey": "TT"}
# R20, of which R10 is every second value: ratings in three figures. The bands show the first two.
_R20_IN_WORDS = "100 112 125 140 160 180 200 224 250 280 315 355 400 450 500 560 630 710 800 900"
_R20 = tuple([int(figures) for figures in _R20_IN_WORDS.split()])
# as printed in words or by the old American names, from memory
_SPEED_WORDS = {
    **dict.fromkeys(("SLOW BLOW", "SLO BLO", "SLOW", "TIME LAG", "MDL", "MDA", "MDX"), "T"),
    **dict.fromkeys(("FAST BLOW", "FAST ACTING", "FAST", "QUICK", "AGC", "GMA"), "F"),
}
_SIZES = ("1AG", "3AG", "5AG", "8AG")  # a glass fuse of that size, quick or slow
_MOST_AMPERES = 20.0
_ALSO_SOLD = (150, 300, 350, 600, 700, 750)  # in other countries' lists


def read_fuse(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """Readings of a fuse's text, each with its rank; none when it is no such text."""
    if len(pieces) > 1 and pieces[0].upper() in _SIZES:
        pieces = pieces[1:]
    speed, pieces = _speed_in_words(_letters_in_place(pieces))
    if not speed and len(pieces) == 2 and pieces[0].endswith(("V", "v")):
        pieces = pieces[::-1]  # 250V 5A
    if any([one[-1:].isdecimal() and two[:1].isdecimal() for one, two in pairwise(pieces)]):
        return []
    joined = "".join(pieces).replace("VAC", "V").replace("VDC", "V")
    named = speed
    if not speed:
        speed = next((name for name in ("FF", "TT", "F", "M", "T") if joined.startswith(name)), "")
    rest = joined if named else joined[len(speed) :]
    number = rest[: len(rest) - len(rest.lstrip("0123456789.,"))]
    rest = rest[len(number) :]
    if not plain_numbers(number):
        return []
    without_unit = _is_without_unit(speed, rest, bool(named))
    milli = _is_milli(number) if without_unit else rest[:2] == "mA"
    if not without_unit:
        if not rest.startswith(("A", "mA")):
            return []
        rest = rest[2:] if milli else rest[1:]
    if not speed and rest[:2] in SPEEDS:
        speed, rest = rest[:2], rest[2:]
    elif not speed and rest[:1] in SPEEDS:
        speed, rest = rest[:1], rest[1:]
    breaking = rest[0] if rest[:1] in BREAKING else ""
    rest = rest[len(breaking) :]
    volts = rest.removesuffix("~").removesuffix("V")
    unit_said = rest != volts or without_unit
    if rest and not (volts.isdecimal() and len(volts) <= 4 and unit_said and int(volts)):
        return []
    found = []
    for place, plain in enumerate(plain_numbers(number)):
        ampere = float(f"{plain}e{-3 if milli else 0}")
        known = bool(speed or volts)
        rank = (IN_FULL if known else FUSE_OF_AMPERES_ALONE) + NEXT * place
        rank += FUSE_WITHOUT_UNIT if without_unit else 0
        reading = _fuse(text, ampere, speed, breaking, volts)
        found.append((rank + (DOUBTED if reading.doubt else 0), reading))
    return found


def _letters_in_place(pieces: list[str]) -> list[str]:
    """The pieces with a lone letter where it is printed in one word: T3.15A 250V H, 4A 125V T."""
    *others, last = pieces
    if not others or others[0][-1:] != "A":
        return pieces
    if last in BREAKING and len(others) == 2:
        return [others[0] + last, others[1]]
    return [last + others[0], *others[1:]] if last in SPEEDS else pieces


def _speed_in_words(pieces: list[str]) -> tuple[str, list[str]]:
    """The speed that words or an American name say, and the other pieces: SLOW BLOW, AGC."""
    if len(pieces) > 1 and pieces[-1].upper() in ("SLOW", "FAST", "QUICK"):
        pieces = [pieces[-1], *pieces[:-1]]
    words = [piece.upper() for piece in pieces]
    for count in (2, 1):
        speed = _SPEED_WORDS.get(" ".join(words[:count]).replace("-", " "))
        if speed and len(pieces) > count:
            return speed, pieces[count:]
    return "", pieces


def _is_without_unit(speed: str, rest: str, in_words: bool) -> bool:
    """Whether the current stands without A: T315L250V by IEC 60127, or an American name's MDL 3."""
    if in_words and not rest:
        return True
    return bool(speed) and rest[:1] in BREAKING and rest[1:].removesuffix("V").isdecimal()


def _is_milli(number: str) -> bool:
    """Without a unit up to 20 is in A, more is in mA."""
    return float(plain_numbers(number)[0]) > _MOST_AMPERES


def _fuse(text: str, ampere: float, speed: str, breaking: str, volts: str) -> Reading:
    said, sources = ["the number is the rated current"], ["common practice"]
    carries: dict[str, str | float] = {}
    if speed:
        said.insert(0, f"{speed} is {SPEEDS[speed][0]}")
        carries["speed"] = speed
        sources.append(SPEEDS[speed][1])
    if breaking:
        said.append(f"{breaking} is {BREAKING[breaking]} breaking capacity")
        carries["breaking_capacity"] = BREAKING[breaking]
        sources.append(BREAKING_SOURCE)
    if volts:
        carries["rated_voltage"] = float(volts)
    doubt = "" if _is_sold(ampere) else "not a current that fuses are rated for"
    sentence = "; ".join(said)
    why = f"{sentence[0].upper()}{sentence[1:]}. {SAME}"
    return Reading(
        kind="fuse",
        text=text,
        quantity="current",
        value=ampere,
        unit="A",
        why=why,
        carries=carries,
        doubt=doubt,
        sources=tuple(dict.fromkeys(sources)),
    )


def _is_sold(ampere: float) -> bool:
    figures = f"{ampere:.2e}"
    three = int(figures[0] + figures[2:4])
    exact = abs(float(figures) / ampere - 1) < 1e-9
    return exact and 0.002 <= ampere <= 100 and three in _R20 + _ALSO_SOLD


def read_fuse_bands(text: str, bands: list[str]) -> list[tuple[int, Reading]]:
    """Readings of four bands: two figures of the rating, power of ten in mA, speed."""
    found = []
    directions = (bands, bands[::-1]) if bands != bands[::-1] else (bands,)
    for place, one in enumerate(directions):
        reading = _bands(text, one, "; read from the other end" if place else "")
        if reading is not None:
            found.append((FUSE_BANDS + FUSE_BANDS_FROM_OTHER_END * place, reading))
    return found


def _bands(text: str, bands: list[str], ending: str) -> Reading | None:
    from repairlib.markings.colours import FIGURES

    first, second, power, last = bands
    if last not in _BAND_SPEEDS or any(one not in FIGURES for one in bands[:3]):
        return None
    shown = FIGURES.index(first) * 10 + FIGURES.index(second)
    rating = next((three for three in _R20 if three // 10 == shown), None)
    exponent = FIGURES.index(power)
    if rating is None or not 0.002 <= float(f"{rating}e{exponent - 4}") <= 100:
        return None
    ampere = float(f"{rating}e{exponent - 4}")
    speed = _BAND_SPEEDS[last]
    why = f"{shown} stands for {rating / 10:g}, times {10**exponent}, in mA; {last} at the end is "
    why += f"{SPEEDS[speed][0]}{ending}. {SAME}"
    return Reading(
        kind="fuse",
        text=text,
        quantity="current",
        value=ampere,
        unit="A",
        why=why,
        carries={"speed": speed},
        sources=(BANDS_SOURCE, SPEEDS[speed][1]),
    )
