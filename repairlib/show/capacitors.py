"""Capacitor bodies: electrolytic, tantalum, polymer, film, ceramic."""

from __future__ import annotations

from repairlib.show.anatomy import (
    NO_POLARITY,
    Anatomy,
    Mark,
    Terminal,
    arc,
    leads,
    print_marking,
    two_ends,
)
from repairlib.show.canvas import INK, METAL, PAPER, Canvas

SLEEVE = "#34516b"
STRIPE = "#dfe8ef"
ALUMINIUM = "#dde3e8"
TANTALUM = "#e9b04f"
TANTALUM_BAR = "#6b4312"
POLYMER = "#4b4f58"
SEGMENT = "#232a31"
POLYMER_SEGMENT = "#8a3f5d"
CERAMIC = "#dca368"
FILM = "#8fb3c4"
MLCC = "#c8ad8c"


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
        marks=(Mark(end * 52, -18, "stripe with minus signs", "negative"), *lengths),
        outline=("round", 58),
        pads=((end * 24, 0), (-end * 24, 0)),
    )


def non_polar(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    leads(canvas, (-24, 112), (24, 112), top=58)
    _radial_can(canvas)
    _radial_outline(canvas)
    print_marking(canvas, marking, 0, -34, 108, 96, PAPER)
    canvas.text(0, 28, "NP", 24, fill=PAPER, bold=True)
    return Anatomy(
        looks="A round aluminium can standing on two equal leads. Its sleeve has no stripe.",
        terminals=(Terminal(-24, 112, "", "either"), Terminal(24, 112, "", "either")),
        marks=(Mark(28 * end, 28, "NP or BP, no stripe", "no polarity"),),
        outline=("round", 58),
        pads=((-24, 0), (24, 0)),
        notes=NO_POLARITY,
    )


def axial(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for x in (-1, 1):
        canvas.line((x * 84, 0), (x * 126, 0), stroke=INK, pen=5)
        canvas.line((x * 84, 0), (x * 126, 0), stroke=METAL, pen=2.5)
    canvas.rect(-88, -40, 176, 80, SLEEVE, round=8)
    ring = -end * 66
    canvas.rect(ring - 5, -38, 10, 76, PAPER, stroke="none")
    canvas.rect(ring - 5, -34, 10, 68, SLEEVE, stroke=INK, pen=1.5)
    canvas.line((-end * 54, 22), (end * 78, 22), stroke=STRIPE, pen=6)
    for tip in (-16, 28, 72):
        canvas.polygon(
            [(end * (tip - 16), 11), (end * (tip + 4), 22), (end * (tip - 16), 33)],
            STRIPE,
            stroke="none",
        )
    print_marking(canvas, marking, end * 12, -14, 128, 46, PAPER)
    return Anatomy(
        looks="An aluminium can lying down, with one lead at each end.",
        terminals=two_ends(end, 104, 56, "negative"),
        marks=(
            Mark(end * 82, 22, "line with arrows", "negative"),
            Mark(ring, -30, "indented ring", "positive"),
        ),
        outline=("box", 88, 32),
        pads=((end * 104, 0), (-end * 104, 0)),
    )


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
    drop = [*arc(0, -28, 58, 165, 375), (36, 40), (22, 52), (-22, 52), (-36, 40)]
    canvas.polygon(drop, TANTALUM)
    x, y = end * 28, 30
    if mark == "dot":
        canvas.circle(x, y, 7, INK)
        sign = Mark(x, y, "dot", "positive")
    else:
        canvas.line((x - 8, y), (x + 8, y), pen=4)
        canvas.line((x, y - 8), (x, y + 8), pen=4)
        sign = Mark(x + end * 14, y - 4, "plus sign", "positive")
    print_marking(canvas, marking, 0, -30, 100, 84)
    return Anatomy(
        looks="A drop-shaped bead of resin on two leads.",
        terminals=two_ends(end, 24, short, "positive", y_marked=long),
        marks=(sign, Mark(end * 24, 92, "longer lead", "positive")),
        outline=("round", 46),
        pads=((end * 24, 0), (-end * 24, 0)),
    )


def disc(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    leads(canvas, (-28, 112), (28, 112), top=20)
    canvas.polygon([(-38, 10), (38, 10), (32, 48), (24, 52), (-24, 52), (-32, 48)], CERAMIC)
    canvas.circle(0, -24, 64, CERAMIC)
    canvas.rect(-30, 30, 60, 12, CERAMIC, stroke="none")
    print_marking(canvas, marking, 0, -24, 112, 92)
    return Anatomy(
        looks="A round flat disc on two leads.",
        terminals=(Terminal(-28, 112, "", "either"), Terminal(28, 112, "", "either")),
        outline=("box", 62, 16),
        pads=((-28, 0), (28, 0)),
        notes=NO_POLARITY,
    )


def film_box(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    leads(canvas, (-64, 112), (64, 112), top=50)
    canvas.rect(-92, -70, 184, 122, FILM, round=5)
    canvas.line((-92, 40), (92, 40), pen=1.5)
    marks: tuple[Mark, ...] = ()
    if mark == "line or band at one end":
        canvas.rect(min(end * 86, end * 76), -70, 10, 110, INK, stroke="none")
        marks = (Mark(end * 81, -30, mark, "outer foil, not a polarity"),)
    print_marking(canvas, marking, 0, -16, 150, 100)
    return Anatomy(
        looks="A rectangular plastic box on two leads.",
        terminals=(Terminal(end * 64, 112, "", "either"), Terminal(-end * 64, 112, "", "either")),
        marks=marks,
        outline=("box", 90, 26),
        pads=((end * 64, 0), (-end * 64, 0)),
        notes=NO_POLARITY,
    )


def ceramic_chip(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    canvas.rect(-84, -44, 168, 88, MLCC, round=5)
    for x in (-84, 52):
        canvas.rect(x, -44, 32, 88, METAL, round=5)
    print_marking(canvas, marking, 0, 0, 94, 78)
    return Anatomy(
        looks="A small block with a metal cap at each end, seen from above. Usually unprinted.",
        terminals=(Terminal(-76, 44, "", "either"), Terminal(76, 44, "", "either")),
        outline=("box", 92, 34),
        pads=((-76, 0), (76, 0)),
        notes=NO_POLARITY,
        holes=False,
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
