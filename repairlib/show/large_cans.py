"""Large cans: with screws, with snap-in pins, with several sections, filled with oil."""

from __future__ import annotations

from repairlib.core.quantity import NBSP
from repairlib.markings import sections_in
from repairlib.show.anatomy import (
    Anatomy,
    Mark,
    arc,
    either_way,
    print_marking,
    two_ends,
)
from repairlib.show.canvas import INK, METAL, PAPER, Canvas, Point
from repairlib.show.capacitors import ALUMINIUM, SLEEVE, STRIPE

DECK = "#3a3f45"  # the board of bakelite or rubber that closes a can
CLAMP = "#8b959e"
SECTIONS = ("half circle", "square", "triangle", "no sign")  # as makers cut or print them
BASE: Point = (68, -14)  # of a can with sections, seen from below
BASE_RADIUS = 58
LUGS = ((-19, -17), (19, -17), (-19, 17), (19, 17))  # on that base


def screw_can(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """A can in a clamp, its two screws on top."""
    for x in (-36, 36):
        canvas.rect(x - 13, -116, 26, 34, METAL, round=2)
        canvas.line((x - 13, -105), (x + 13, -105), pen=1.2)
        canvas.line((x - 13, -94), (x + 13, -94), pen=1.2)
    canvas.rect(-74, -84, 148, 32, DECK, round=4)
    canvas.text(-end * 62, -68, "+", 22, fill=PAPER, bold=True)
    canvas.text(end * 62, -68, "−", 22, fill=PAPER, bold=True)
    canvas.rect(-78, -54, 156, 170, SLEEVE, round=6)
    canvas.rect(-88, 70, 176, 22, CLAMP, round=3)
    canvas.rect(84, 62, 22, 38, CLAMP, round=3)
    canvas.circle(95, 81, 5, METAL)
    print_marking(canvas, marking, 0, 8, 136, 100, PAPER)
    return Anatomy(
        looks="A large aluminium can, held in a clamp, with two screws on its top.",
        terminals=two_ends(end, 36, -116, "negative"),
        marks=(
            Mark(-end * 73, -74, "plus sign beside the screw", "positive"),
            Mark(end * 73, -60, "minus sign beside the screw", "negative"),
        ),
        outline=("round", 66),
        pads=((end * 36, 0), (-end * 36, 0)),
    )


def snap_in(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for side in (-1, 1):
        x = side * 26
        pin = [(x - 5, 70), (x + 5, 70), (x + 5, 84), (x + 11, 92), (x + 4, 108), (x - 4, 108)]
        canvas.polygon([*pin, (x - 5, 96)], METAL, pen=1.5)
    canvas.rect(-84, -110, 168, 184, SLEEVE, round=10, stroke="none")
    canvas.rect(min(end * 84, end * 50), -98, 34, 160, STRIPE, stroke="none")
    for y in (-72, -18, 36):
        canvas.line((end * 67 - 8, y), (end * 67 + 8, y), pen=5)
    canvas.rect(-84, -110, 168, 184, round=10)
    canvas.line((-84, -98), (84, -98), stroke=STRIPE, pen=1.5)
    canvas.line((-84, 62), (84, 62), stroke=STRIPE, pen=1.5)
    print_marking(canvas, marking, -end * 18, -18, 116, 130, PAPER)
    return Anatomy(
        looks="A large round aluminium can on two short stiff pins, seen from the side.",
        terminals=two_ends(end, 26, 108, "negative"),
        marks=(Mark(end * 72, 9, "stripe with minus signs", "negative"),),
        outline=("round", 70),
        pads=((end * 26, 0), (-end * 26, 0)),
    )


def oil_can(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """A capacitor for a motor or a lamp: sealed metal, two flat terminals, no polarity."""
    for x in (-30, 30):
        canvas.rect(x - 9, -116, 18, 26, METAL, round=2)
        canvas.circle(x, -105, 3, PAPER, pen=1.2)
        canvas.rect(x - 14, -92, 28, 12, DECK, round=2)
    canvas.rect(-72, -82, 144, 190, ALUMINIUM, round=8)
    canvas.rect(-76, -84, 152, 14, METAL, round=4)
    print_marking(canvas, marking, 0, 18, 126, 130)
    return either_way(
        "A plain metal can with two flat terminals on its top, seen from the side.",
        ("round", 66),
        (30, -110),
    )


def sections_can(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: such as 20-20-20 450V: a line for each section, and its sign at its lug."""
    values, volts = sections_of(marking)
    for pin in (-96, -74, -52):
        canvas.rect(pin - 4, 78, 8, 30, METAL, pen=1.5)
    canvas.rect(-124, -112, 100, 182, ALUMINIUM, round=10)
    canvas.rect(-130, 62, 112, 18, METAL, round=3)
    if values:
        step = min(34, 104 / len(values))
        for row, value in enumerate(values):
            _sign(canvas, SECTIONS[row], -110, -86 + step * row, 8)
            canvas.fitted_text(-60, -86 + step * row, [value], 66, 17, bold=True)
        print_marking(canvas, volts, -74, 40, 88, 24)
    else:
        print_marking(canvas, marking, -74, -22, 88, 120)
    x, y = BASE
    with canvas.at(x, y):
        _base(canvas, max(len(values), 2))
    return Anatomy(
        looks="A tall aluminium can with several lugs below; beside it its base seen from below. "
        "Signs cut into the base stand beside the lugs.",
        terminals=(),
        marks=(
            Mark(-130, 71, "can and its twisted lugs", "negative of all sections"),
            Mark(x + 19, y - 32, "a lug with its sign", "positive of that section"),
        ),
        outline=("round", 66),
        pads=((-40, 0), (40, 0)),
    )


def _base(canvas: Canvas, sections: int) -> None:
    """The base from below: a lug with its sign for each section, and those of the can."""
    canvas.circle(0, 0, BASE_RADIUS, METAL)
    canvas.circle(0, 0, BASE_RADIUS - 9, DECK)
    for (x, y), sign in zip(LUGS[:sections], SECTIONS, strict=False):
        canvas.rect(x - 4, y - 10, 8, 20, METAL, pen=1.5)
        _sign(canvas, sign, 1.75 * x, y, 7, PAPER)
    for turn in (90, 210, 330):
        x, y = arc(0, 0, BASE_RADIUS - 5, turn, turn, 1)[0]
        canvas.rect(x - 7, y - 5, 14, 10, CLAMP)
    canvas.text(0, 74, "from below", 14, bold=True)


def sections_of(marking: str) -> tuple[list[str], str]:
    """What each section holds, and the volts of all; empty where the marking names no sections.

    >>> values, volts = sections_of("16+32µF 450V")
    >>> len(values), volts, sections_of("100µF")
    (2, '450V', ([], ''))
    """
    parted = sections_in(" ".join(marking.split()))
    if parted is None or not 2 <= len(parted[0]) <= len(SECTIONS):
        return [], ""
    volts = parted[1].removeprefix("µF").removeprefix("uF").strip()
    return [f"{number}{NBSP}µF" for number in parted[0]], volts


def _sign(canvas: Canvas, sign: str, x: float, y: float, half: float, fill: str = INK) -> None:
    """The sign of one section."""
    if sign == "half circle":
        canvas.polygon(arc(x, y + half / 2, half, 180, 360), fill, stroke="none")
    elif sign == "square":
        canvas.rect(x - half * 0.8, y - half * 0.8, 1.6 * half, 1.6 * half, fill, stroke="none")
    elif sign == "triangle":
        canvas.polygon(
            [(x, y - half), (x + half, y + half * 0.8), (x - half, y + half * 0.8)],
            fill,
            stroke="none",
        )
