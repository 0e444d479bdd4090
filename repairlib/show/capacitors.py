"""Polar capacitors: aluminium and polymer cans, tantalum."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from repairlib.show.anatomy import (
    Anatomy,
    Mark,
    Name,
    arc,
    either_way,
    leads,
    print_marking,
    two_ends,
    wires,
)
from repairlib.show.bands import INKS, bands_across, bands_in
from repairlib.show.canvas import INK, METAL, PAPER, QUIET, Canvas, Point

SLEEVE = "#34516b"
STRIPE = "#dfe8ef"
ALUMINIUM = "#dde3e8"
TANTALUM = "#e9b04f"
TANTALUM_BAR = "#6b4312"
POLYMER = "#4b4f58"
SEGMENT = "#232a31"
POLYMER_SEGMENT = "#8a3f5d"
RUBBER = "#3a3a3a"
BEAD = [*arc(0, -28, 58, 165, 375), (36, 40), (22, 52), (-22, 52), (-36, 40)]  # its outline


def radial(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """mark: "cut leads" gives a used part, whose leads were cut to any length."""
    cut = mark == "cut leads"
    at_stripe, at_other = (104, 84) if cut else (88, 112)
    leads(canvas, (end * 24, at_stripe), (-end * 24, at_other), top=58)
    _radial_can(canvas)
    left = -60 if end < 0 else 32
    canvas.rect(left, -88, 28, 140, STRIPE, stroke="none")
    for y in (-60, -18, 24):
        canvas.line((left + 8, y), (left + 20, y), stroke=INK, pen=5)
    _radial_outline(canvas)
    print_marking(canvas, marking, -end * 15, -18, 80, 130, PAPER)
    lengths = (
        (Mark(end * 24, 92, "leads cut to any length", "nothing: the part was used"),)
        if cut
        else (
            Mark(end * 24, 82, "shorter lead", "negative"),
            Mark(-end * 24, 100, "longer lead", "positive"),
        )
    )
    return Anatomy(
        looks="A round aluminium can standing on two leads, in a dark sleeve, seen from the side.",
        terminals=two_ends(end, 24, at_other, "negative", y_marked=at_stripe),
        marks=(Mark(end * 46, 3, "stripe with minus signs", "negative"), *lengths),
        outline=("round", 58),
        pads=((end * 24, 0), (-end * 24, 0)),
    )


def non_polar(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    leads(canvas, (-24, 112), (24, 112), top=58)
    _radial_can(canvas)
    _radial_outline(canvas)
    print_marking(canvas, marking, 0, -34, 108, 96, PAPER)
    canvas.text(0, 28, "NP", 24, fill=PAPER, bold=True)
    return either_way(
        "A round aluminium can standing on two equal leads. Its sleeve has no stripe.",
        ("round", 58),
        (24, 112),
        marks=(Mark(38 * end, 30, "NP or BP, no stripe", "no polarity"),),
    )


def axial(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    plus = -end
    wires(canvas, 84)
    canvas.rect(min(plus * 84, plus * 94), -26, 10, 52, RUBBER, round=2)  # the seal round the lead
    groove = plus * 66
    case = [(-88, -38), (-86, -40), (groove - 7, -40), (groove, -33), (groove + 7, -40), (86, -40)]
    case += [(88, -38)]
    canvas.polygon(_mirrored(case), SLEEVE)
    for x, pen in ((groove - 7, 1.2), (groove, 2.5), (groove + 7, 1.2)):
        reach = 32 if x == groove else 39
        canvas.line((x, -reach), (x, reach), stroke="#1d3145", pen=pen)
    canvas.line((-end * 48, 22), (end * 74, 22), stroke=STRIPE, pen=6)
    for tip in (-10, 29, 68):
        canvas.polygon(
            [(end * (tip - 16), 11), (end * (tip + 4), 22), (end * (tip - 16), 33)],
            STRIPE,
            stroke="none",
        )
    print_marking(canvas, marking, end * 15, -14, 124, 46, PAPER)
    return Anatomy(
        looks="An aluminium can lying down, with one lead at each end.",
        terminals=two_ends(end, 108, 56, "negative"),
        marks=(
            Mark(end * 84, 30, "line with arrows", "negative"),
            Mark(groove, -24, "indented ring", "positive"),
        ),
        outline=("box", 88, 32),
        pads=((end * 108, 0), (-end * 108, 0)),
    )


def _mirrored(upper: Sequence[Point]) -> list[Point]:
    """A closed outline from its upper half, left to right."""
    return [*upper, *((x, -y) for x, y in reversed(upper))]


def _bead_half(y: float) -> float:
    """Half the width of a bead at y."""
    if y < -13:
        return sqrt(max(0.0, 58**2 - (y + 28) ** 2))
    return 56 - (y + 13) * 20 / 53 if y < 40 else 36 - (y - 40) * 14 / 12


def can(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _smd_can(canvas, marking, end, SEGMENT, "black segment on top", "An aluminium")


def polymer_can(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _smd_can(
        canvas, marking, end, POLYMER_SEGMENT, "coloured segment on top", "A polymer aluminium"
    )


def moulded_tantalum(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _moulded_chip(canvas, marking, end, TANTALUM, TANTALUM_BAR, INK, "yellow")


def polymer_chip(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _moulded_chip(canvas, marking, end, POLYMER, STRIPE, PAPER, "dark")


def dipped_tantalum(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    long, short = 112, 88
    leads(canvas, (end * 24, long), (-end * 24, short), top=30)
    canvas.polygon(BEAD, TANTALUM)
    x, y = end * 28, 30
    if mark == "dot":
        canvas.circle(x, y, 7, INK)
        sign = Mark(x + end * 7, y, "dot", "positive")
    else:
        canvas.line((x - 8, y), (x + 8, y), pen=4)
        canvas.line((x, y - 8), (x, y + 8), pen=4)
        sign = Mark(x + end * 19, y - 6, "plus sign", "positive")
    print_marking(canvas, marking, 0, -30, 100, 84)
    return Anatomy(
        looks="A drop-shaped bead of resin on two leads.",
        terminals=two_ends(end, 24, short, "positive", y_marked=long),
        marks=(sign, Mark(end * 24, 92, "longer lead", "positive")),
        outline=("round", 46),
        pads=((end * 24, 0), (-end * 24, 0)),
    )


def coloured_bead(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: four colours (top, second, dot, foot), or a text."""
    colours = bands_in(marking)
    if len(colours) != 4:
        return dipped_tantalum(canvas, marking, end, mark)
    long, short = 112, 88
    leads(canvas, (end * 24, long), (-end * 24, short), top=30)
    top, second, dot, foot = colours
    names = bands_across(canvas, [top, second, foot], [-86, -44, 16], _bead_half, 52)
    canvas.polygon(BEAD)
    canvas.circle(0, -14, 13, INKS[dot])
    spot = Name(dot, -84, -14, "end", ((-13, -14), (-80, -14)))
    return Anatomy(
        looks="A drop-shaped bead on two leads, painted in colours, with a dot on one face.",
        terminals=two_ends(end, 24, short, "positive", y_marked=long),
        marks=(Mark(end * 24, 100, "longer lead", "positive"),),
        outline=("round", 46),
        pads=((end * 24, 0), (-end * 24, 0)),
        bands=(top, second, f"{dot} (dot)", foot),
        read="top to bottom",
        names=(*names, spot),
    )


def from_above(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """The top of a can: its vent, a cross pressed into the metal, and the edge of its sleeve."""
    canvas.circle(0, 0, 84, SLEEVE)
    middle = 180 if end < 0 else 0
    canvas.polygon(
        [*arc(0, 0, 84, middle - 28, middle + 28), *arc(0, 0, 70, middle + 28, middle - 28)], STRIPE
    )
    canvas.circle(0, 0, 70, ALUMINIUM)
    for angle in (45, 135):
        (x, y), _ = arc(0, 0, 50, angle, angle, 1)
        canvas.line((-x, -y), (x, y), stroke=QUIET, pen=4)
    print_marking(canvas, marking, 0, -102, 150, 28)
    return Anatomy(
        looks="The flat metal top of a round can, seen from above: a cross is pressed into it.",
        terminals=two_ends(end, 24, 84, "negative"),
        marks=(
            Mark(end * 77, 12, "stripe at the edge of the sleeve", "negative"),
            Mark(-end * 35, -35, "cross in the top", "where it opens under pressure"),
        ),
        outline=("round", 70),
        pads=((end * 24, 0), (-end * 24, 0)),
    )


def _radial_can(canvas: Canvas) -> None:
    canvas.rect(-60, -100, 120, 160, SLEEVE, round=12, stroke="none")


def _radial_outline(canvas: Canvas) -> None:
    canvas.rect(-60, -100, 120, 160, round=12)
    canvas.line((-60, -88), (60, -88), stroke=STRIPE, pen=1.5)
    canvas.line((-60, 52), (60, 52), stroke=STRIPE, pen=1.5)


def _smd_can(
    canvas: Canvas, marking: str, end: int, segment: str, mark_name: str, maker: str
) -> Anatomy:
    for x in (-96, 64):
        canvas.rect(x, -11, 32, 22, METAL)
    # The plastic base has its two cut corners on the side away from the segment.
    cut = 24
    base = [(end * 78, -78), (end * 78, 78), (-end * (78 - cut), 78), (-end * 78, 78 - cut)]
    base += [(-end * 78, -78 + cut), (-end * (78 - cut), -78)]
    canvas.polygon(base, POLYMER)
    canvas.circle(0, 0, 70, ALUMINIUM)
    middle = 180 if end < 0 else 0
    canvas.polygon(arc(0, 0, 70, middle - 55, middle + 55), segment)
    print_marking(canvas, marking, -end * 15, 0, 84, 110)
    return Anatomy(
        looks=f"{maker} can on a square plastic base, seen from above.",
        terminals=two_ends(end, 84, 86, "negative"),
        marks=(
            Mark(end * 56, 0, mark_name, "negative"),
            Mark(-end * 68, -66, "bevelled corners of the base", "positive"),
        ),
        outline=("round", 66),
        pads=((end * 84, 0), (-end * 84, 0)),
        holes=False,
    )


def _moulded_chip(
    canvas: Canvas, marking: str, end: int, body: str, bar: str, ink: str, colour: str
) -> Anatomy:
    for x in (-104, 78):
        canvas.rect(x, -26, 26, 52, METAL)
    cut = 12
    shape = [(end * (92 - cut), -52), (end * 92, -52 + cut), (end * 92, 52 - cut)]
    shape += [(end * (92 - cut), 52), (-end * 92, 52), (-end * 92, -52)]
    canvas.polygon(shape, body)
    canvas.rect(min(end * 80, end * 54), -50, 26, 100, bar, stroke="none")
    print_marking(canvas, marking, -end * 20, 0, 128, 94, ink)
    return Anatomy(
        looks=f"A flat {colour} moulded block with a metal terminal at each end, seen from above.",
        terminals=two_ends(end, 84, 62, "positive"),
        marks=(
            Mark(end * 67, 4, "bar at one end", "positive"),
            Mark(end * 87, -47, "bevelled edge", "positive"),
        ),
        outline=("box", 100, 34),
        pads=((end * 84, 0), (-end * 84, 0)),
        holes=False,
    )
