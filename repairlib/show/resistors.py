"""Resistors and inductors: with bands, painted all over, as a chip, and several in one row."""

from __future__ import annotations

from repairlib.markings import is_painted, places_of
from repairlib.show.anatomy import (
    Anatomy,
    Mark,
    Name,
    Terminal,
    either_way,
    leads,
    print_marking,
    wires,
)
from repairlib.show.bands import CHOKE, INKS, TAN, bands_along, bands_in, body_colour
from repairlib.show.canvas import METAL, PAPER, Canvas

CHIP_BODY = "#30363c"
ARRAY_BODY = "#39424c"
KNOB, WAIST = 31, 24  # half the height of a resistor at its ends and between them
KNOBS_FROM = 52
ARRAY_PINS = tuple(-98 + 28 * number for number in range(8))


def resistor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: colours, first band first, or a text that is printed.

    mark: "even distances" where no band stands apart.
    """
    if is_painted(marking) and not isinstance(places_of(marking), str):
        return _painted(canvas, places_of(marking))
    bands = bands_in(marking)
    fill = body_colour(bands) if bands else TAN
    wires(canvas, 84)
    canvas.rect(-70, -25, 140, 50, fill, round=4)
    for x in (-88, 44):
        canvas.rect(x, -KNOB, 44, 2 * KNOB, fill, round=12)
    canvas.rect(-66, -23.5, 132, 47, fill, stroke="none")
    looks = "A small body with a lead at each end, lying down."
    if not bands:
        return _printed(canvas, marking, looks)
    return _lying(looks, **bands_along(canvas, bands, end, _half, mark=mark))


def _half(x: float) -> float:
    """Half the height of a resistor at x."""
    return KNOB if abs(x) > KNOBS_FROM else WAIST


def inductor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: colours, first band first, or a text that is printed."""
    wires(canvas, 84)
    canvas.rect(-88, -KNOB, 176, 2 * KNOB, CHOKE, round=20)
    looks = "A small rounded body with a lead at each end."
    bands = bands_in(marking)
    if not bands:
        return _printed(canvas, marking, looks)
    return _lying(looks, **bands_along(canvas, bands, end, lambda x: KNOB, mark=mark))


def chip_resistor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for x in (-104, 74):
        canvas.rect(x, -50, 30, 100, METAL, round=4)
    canvas.rect(-78, -50, 156, 100, CHIP_BODY, round=4)
    print_marking(canvas, marking, 0, 0, 140, 84, PAPER)
    return either_way(
        "A tiny black block with a metal end on each side, seen from above.",
        ("box", 104, 50),
        (112, 30),
        pads=((-90, 0), (90, 0)),
        holes=False,
    )


def resistor_array(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """Several resistors in one flat body on one row of leads."""
    leads(canvas, *((x, 92) for x in ARRAY_PINS), top=30)
    canvas.rect(-116, -50, 232, 84, ARRAY_BODY, round=6)
    canvas.circle(end * 98, 14, 7, PAPER)
    print_marking(canvas, marking, 0, -16, 200, 56, PAPER)
    pins = sorted(ARRAY_PINS, key=lambda x: -end * x)
    return Anatomy(
        looks="A flat black block standing on eight leads in one row, seen from the front.",
        terminals=tuple(Terminal(x, 92, str(number)) for number, x in enumerate(pins, 1)),
        marks=(Mark(end * 112, 4, "dot", "pin 1"),),
        outline=("box", 116, 24),
        pads=tuple((x, 0) for x in pins),
    )


def _painted(canvas: Canvas, places: dict[str, str]) -> Anatomy:
    """The old style: the whole body, one end and a dot are painted."""
    wires(canvas, 84)
    canvas.rect(-88, -29, 176, 58, INKS[places["body"]], round=6)
    names = [_name(-58, 1, 60, 29, f"body {places['body']}")]
    for place, x, far in (("tolerance", -88, 84), ("end", 58, 60)):
        if place in places:
            canvas.rect(x, -29, 30, 58, INKS[places[place]], round=6)
            names.append(_name(x + 15, -1, far, 29, f"{place} {places[place]}"))
    if "dot" in places:
        canvas.circle(0, 0, 13, INKS[places["dot"]])
        names.append(_name(0, 1, 84, 13, f"dot {places['dot']}"))
    said = ", ".join(name.words for name in names)
    looks = f"A small body painted all over, with a lead at each end: {said}."
    return _lying(looks, names=tuple(names))


def _name(x: float, side: int, far: float, start: float, words: str) -> Name:
    return Name(words, x, side * far, "middle", ((x, side * start), (x, side * (far - 11))))


def _printed(canvas: Canvas, marking: str, looks: str) -> Anatomy:
    print_marking(canvas, marking, 0, 0, 150, 44)
    return _lying(looks)


def _lying(looks: str, **more) -> Anatomy:
    return either_way(looks, ("box", 88, 30), (112, 30), **more)
