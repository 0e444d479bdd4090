"""Colour bands of resistors and inductors: figures, multiplier, tolerance, coefficient.

Bands can be read from either end. A direction that the code does not allow is left out; where
both are allowed both are given, and the E series says which is likelier.
"""

from __future__ import annotations

from repairlib.markings.colours import (
    COEFFICIENTS,
    FIGURES,
    MEMORY,
    MULTIPLIERS,
    NO_BAND,
    TOLERANCES,
)
from repairlib.markings.kinds import TABLE
from repairlib.markings.ranks import (
    CHIP_INDUCTOR_DOTS,
    IN_FULL,
    INDUCTOR_BANDS,
    MILITARY_BANDS,
    NEXT,
    OTHER_END,
    TOO_TIGHT,
)
from repairlib.markings.reading import Reading, percent_either_side
from repairlib.markings.resistor_codes import zero_link
from repairlib.markings.value_codes import times
from repairlib.markings.value_doubt import value_doubt

_LEAST_OF_FOUR = 0.004  # a fraction: parts of four bands are not sorted closer
_PLACES = {"resistor": IN_FULL, "inductor": INDUCTOR_BANDS}


def read_colours(text: str, bands: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """Readings of bands (a list of colours) on `part`, or on any part, each with its rank."""
    found = []
    if part in (None, "resistor"):
        if bands == ["black"]:
            found.append((IN_FULL, zero_link(text, "A single black band is a link of 0 Ω.")))
        if 3 <= len(bands) <= 6:
            found += _both_ends(text, bands, "resistor")
    if part in (None, "inductor"):
        if 3 <= len(bands) <= 4:
            found += _both_ends(text, bands, "inductor")
        if len(bands) == 5 and bands[0] == "silver":
            found += _military(text, bands)
    if part in (None, "chip-inductor") and len(bands) == 3:
        found += _dots(text, bands)
    if part is None and len(bands) == 5:
        from repairlib.markings.film_drops import read_drop

        rank = min([rank for rank, one in found if not one.doubt], default=IN_FULL)
        found += read_drop(text, bands, rank)
    if part in (None, "fuse") and len(bands) == 4:
        from repairlib.markings.fuses import read_fuse_bands

        found += read_fuse_bands(text, bands)
    return found


def why_not(bands: list[str]) -> str:
    """What is wrong with bands that no part carries, said for the order they were given in."""
    if len(bands) < 3:
        return (
            "a lone band means something only in black"
            if len(bands) == 1
            else "two bands say nothing"
        )
    if len(bands) > 6:
        return f"{len(bands)} bands; no part has more than six"
    wrong = _wrong_place(bands)
    turned = _wrong_place(bands[::-1])
    return f"{wrong}; from the other end {turned}" if turned != wrong else wrong


def _places(count: int) -> tuple[int, bool, bool]:
    """(number of figures, has a tolerance band, has a coefficient band)."""
    return (3 if count >= 5 else 2), count >= 4, count == 6


def _wrong_place(bands: list[str]) -> str:
    """The first band that its place does not allow, in words; "" where all are allowed."""
    figures, has_tolerance, has_coefficient = _places(len(bands))
    for colour in bands[:figures]:
        if colour not in FIGURES:
            return f"{colour} is no figure"
    if bands[0] == "black":
        return "black is no first figure"
    if has_tolerance and bands[figures + 1] not in TOLERANCES:
        return f"{bands[figures + 1]} is no tolerance"
    if has_coefficient and bands[5] not in COEFFICIENTS:
        return f"{bands[5]} is no temperature coefficient"
    return ""


def _both_ends(text: str, bands: list[str], kind: str) -> list[tuple[int, Reading]]:
    readings = []
    directions = [(bands, ""), (bands[::-1], "read from the other end")]
    if bands == bands[::-1]:
        directions = directions[:1]
    for place, (one, words) in enumerate(directions):
        if _wrong_place(one):
            continue
        ruled_out = _wrong_place(directions[1 - place][0]) if len(directions) > 1 else ""
        rank = _PLACES[kind] + OTHER_END * place
        readings += _readings(text, one, kind, words, ruled_out, rank)
    return readings


def _readings(text, bands, kind, words, ruled_out, rank) -> list[tuple[int, Reading]]:
    """The readings of bands in the right order: more than one where the editions differ."""
    counted, power = TABLE[kind].bands_in
    count, has_tolerance, has_coefficient = _places(len(bands))
    figures = "".join([str(FIGURES.index(colour)) for colour in bands[:count]])
    multiplier, source = MULTIPLIERS[bands[count]]
    value = float(f"{figures}e{multiplier + power}")
    said = [f"{figures} times {times(multiplier)}, in {counted}"]
    steps = [
        f"{', '.join(bands[:count])}: {figures}; {bands[count]}: times {times(multiplier)}",
        *([f"from the other end {ruled_out}, so this is the only way"] if ruled_out else []),
    ]
    sources, carries, ending = [source], {}, [words] if words else []
    if has_coefficient:
        ppm, origin = COEFFICIENTS[bands[5]]
        carries["tempco"] = float(ppm)
        ending.insert(0, f"{bands[5]} is ±{ppm} ppm/K")
        sources.append(origin)
    readings = []
    options = TOLERANCES[bands[count + 1]] if has_tolerance else ((NO_BAND, "", source),)
    for place, (percent, edition, origin) in enumerate(options):
        tolerance = percent_either_side(percent)
        meaning = f"{bands[count + 1]} is {tolerance}" if has_tolerance else "no fourth band: ±20 %"
        why = "; ".join([*said, f"{meaning} {edition}".strip(), *ending])
        doubt, down = value_doubt(kind, value, figures, tolerance)
        down += TOO_TIGHT if count == 2 and tolerance.high < _LEAST_OF_FOUR else 0
        keys = tuple(dict.fromkeys((*sources, origin)))
        one = Reading(
            kind=kind,
            text=text,
            quantity=TABLE[kind].quantity,
            value=value,
            unit=TABLE[kind].unit,
            why=f"{why}.",
            digits=count,
            tolerance=tolerance,
            carries=dict(carries),
            steps=tuple(steps),
            doubt=doubt,
            sources=keys,
        )
        readings.append((rank + NEXT * place + down, one))
    return readings


def _military(text: str, bands: list[str]) -> list[tuple[int, Reading]]:
    """Wide silver first band: three value bands in which gold is the decimal point, in µH."""
    value_bands, last = bands[1:4], bands[4]
    figures = [colour for colour in value_bands if colour != "gold"]
    points = value_bands[:2].count("gold")
    if last not in TOLERANCES or any(colour not in FIGURES for colour in figures):
        return []
    if points == 1:
        place = value_bands.index("gold")
        numbers = [str(FIGURES.index(colour)) for colour in figures]
        if len(numbers) < 2:
            return []
        number = f"{''.join(numbers[:place]) or '0'}.{''.join(numbers[place:])}"
        how = "gold is the decimal point"
    elif "gold" not in value_bands:
        first, second, third = (FIGURES.index(colour) for colour in value_bands)
        number = f"{first}{second}e{third}"
        how = f"{first}{second} times {times(third)}"
    else:
        return []
    percent, _, origin = TOLERANCES[last][0]
    tolerance = percent_either_side(percent)
    henry = float(f"{number}e-6") if "e" not in number else float(number) * 1e-6
    if not henry:
        return []
    why = f"A wide silver band stands before the value; {how}, in µH; {last} is {tolerance}."
    reading = Reading(
        kind="inductor",
        text=text,
        quantity="inductance",
        value=henry,
        unit="H",
        why=why,
        digits=2,
        tolerance=tolerance,
        sources=(MEMORY, origin),
    )
    return [(MILITARY_BANDS, reading)]


def _dots(text: str, bands: list[str]) -> list[tuple[int, Reading]]:
    """Three dots on a chip inductor, in nH."""
    if any(colour not in FIGURES for colour in bands[:2]) or bands[0] == "black":
        return []
    figures = "".join([str(FIGURES.index(colour)) for colour in bands[:2]])
    power, _ = MULTIPLIERS[bands[2]]
    henry = float(f"{figures}e{power - 9}")
    doubt, down = value_doubt("chip-inductor", henry, figures, None)
    why = f"Three dots on a radio-frequency chip: {figures} times {times(power)}, in nH."
    reading = Reading(
        kind="chip-inductor",
        text=text,
        quantity="inductance",
        value=henry,
        unit="H",
        why=why,
        digits=2,
        doubt=doubt,
        sources=("Coilcraft RF inductor colours",),
    )
    return [(CHIP_INDUCTOR_DOTS + down, reading)]
