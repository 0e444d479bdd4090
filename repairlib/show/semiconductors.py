"""Diodes, LEDs, bridge rectifiers and transistor packages."""

from __future__ import annotations

from repairlib.show.anatomy import (
    Anatomy,
    Mark,
    Terminal,
    arc,
    leads,
    print_marking,
    two_ends,
    wires,
)
from repairlib.show.canvas import INK, METAL, PAPER, Canvas

BLACK_CASE = "#3d454d"
GLASS = "#dd9466"
LENS = "#e58a84"
CHIP_LED = "#f4efdf"
GREEN = "#4d8b57"

WORKS_REVERSED = ("It works in reverse:", "cathode on the more", "positive rail.")
BY_DATA_SHEET = "cannot tell: makers differ"
BY_TYPE_NUMBER = "cannot tell: depends on the type number"


def diode(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _diode(canvas, marking, end, BLACK_CASE, "#dfe8ef", PAPER, "black")


def zener(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _diode(canvas, marking, end, GLASS, INK, INK, "small glass", WORKS_REVERSED)


def glass_diode(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _diode(canvas, marking, end, GLASS, INK, INK, "small glass")


def led(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    short, long = 88, 112
    leads(canvas, (end * 20, short), (-end * 20, long), top=40)
    dome = [*arc(0, -50, 46, 180, 360), (46, 30), (-46, 30)]
    canvas.polygon(dome, LENS)
    # The rim sticks out all round, except where it is cut flat.
    rim = [(end * 46, 30), (end * 46, 46), (-end * 58, 46), (-end * 58, 30)]
    canvas.polygon(rim, LENS)
    print_marking(canvas, marking, 0, -24, 76, 80)
    return Anatomy(
        looks="A clear or coloured dome with a rim, on two leads, seen from the side.",
        terminals=two_ends(end, 20, long, "cathode", y_marked=short),
        marks=(
            Mark(end * 47, 38, "flat on the rim", "cathode"),
            Mark(end * 20, 80, "shorter lead", "cathode"),
            Mark(-end * 20, 100, "longer lead", "anode"),
        ),
        outline=("round", 50),
        pads=((end * 20, 0), (-end * 20, 0)),
    )


def chip_led(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    canvas.rect(-84, -46, 168, 92, CHIP_LED, round=5)
    for x in (-84, 56):
        canvas.rect(x, -46, 28, 92, METAL, round=5)
    canvas.ellipse(0, 0, 34, 30, LENS)
    if mark == "notch":
        corner = [(end * 86, -48), (end * 60, -48), (end * 86, -22)]
        canvas.polygon(corner, PAPER, stroke=PAPER)
        canvas.line((end * 60, -46), (end * 84, -22))
        drawn = Mark(end * 72, -34, "notch", BY_DATA_SHEET)
    elif mark == "green mark":
        canvas.rect(min(end * 54, end * 42), -42, 12, 84, GREEN, stroke="none")
        drawn = Mark(end * 48, -28, "green mark", BY_DATA_SHEET)
    else:
        canvas.circle(end * 46, -32, 6, INK)
        drawn = Mark(end * 46, -32, "dot", BY_DATA_SHEET)
    print_marking(canvas, marking, 0, 0, 56, 46)
    return Anatomy(
        looks="A small flat block with a lens in the middle and a metal pad at each end.",
        terminals=(
            Terminal(end * 72, 46, "?", "see data sheet"),
            Terminal(-end * 72, 46, "?", "see data sheet"),
        ),
        marks=(drawn,),
        outline=("box", 92, 34),
        pads=((end * 72, 0), (-end * 72, 0)),
        holes=False,
    )


def bridge(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """mark: any name leaves the printed signs off, so that only shape and leads are seen."""
    places = [end * 72, end * 24, -end * 24, -end * 72]
    leads(canvas, (places[0], 112), *((x, 96) for x in places[1:]), top=40)
    case = [(end * 70, -70), (end * 98, -42), (end * 98, 48), (-end * 98, 48), (-end * 98, -70)]
    canvas.polygon(case, BLACK_CASE)
    signs = "????" if mark else "+~~−"
    marks: tuple[Mark, ...] = (
        Mark(end * 86, -56, "bevelled corner", "positive, usually"),
        Mark(places[0], 104, "longest lead", "positive, usually"),
    )
    if not mark:
        for x, sign in zip(places, signs, strict=True):
            canvas.text(x, 30, sign, 24, fill=PAPER, bold=True)
        marks += (
            Mark(end * 91, 22, "plus sign", "positive"),
            Mark(-end * 91, 22, "minus sign", "negative"),
        )
    print_marking(canvas, marking, 0, -26, 140, 76, PAPER)
    return Anatomy(
        looks="A flat black block standing on four leads in a row, seen from the front.",
        terminals=tuple(
            Terminal(x, 112 if x == places[0] else 96, sign)
            for x, sign in zip(places, signs, strict=True)
        ),
        marks=marks,
        outline=("box", 98, 26),
        pads=tuple((x, 0) for x in places),
    )


def to_92(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    xs = (-28, 0, 28)
    leads(canvas, *((x, 112) for x in xs), top=40)
    canvas.polygon([(-50, -60), (-44, -70), (44, -70), (50, -60), (50, 48), (-50, 48)], BLACK_CASE)
    canvas.line((-50, -60), (50, -60), stroke="#8b959e", pen=1.5)
    print_marking(canvas, marking, 0, -6, 88, 96, PAPER)
    return _three_leads(
        "A small black half-cylinder on three leads, its flat face towards you.",
        [(x, 112) for x in xs],
        Mark(40 * end, 20, "flat face", BY_TYPE_NUMBER),
        ("round", 46),
    )


def to_220(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    xs = (-38, 0, 38)
    leads(canvas, *((x, 114) for x in xs), top=40, width=8)
    canvas.rect(-62, -112, 124, 90, METAL, round=3)
    canvas.circle(0, -78, 15, PAPER)
    canvas.rect(-62, -44, 124, 94, BLACK_CASE, round=3)
    print_marking(canvas, marking, 0, 4, 110, 84, PAPER)
    return _three_leads(
        "A black block with a metal tab that has a hole, on three leads, seen from the front.",
        [(x, 114) for x in xs],
        Mark(50 * end, -80, "metal tab", BY_TYPE_NUMBER),
        ("box", 66, 24),
    )


def sot_23(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    turn = -end  # turned half round, the single lead is at the bottom
    ends = [(-40 * turn, 50 * turn), (40 * turn, 50 * turn), (0, -50 * turn)]
    for x, y in ends:
        canvas.rect(x - 13, y - 16, 26, 32, METAL)
    canvas.rect(-74, -42, 148, 84, BLACK_CASE, round=4)
    print_marking(canvas, marking, 0, 0, 130, 74, PAPER)
    return _three_leads(
        "A tiny black block seen from above: two leads on one long side, one on the other.",
        [(x, y + (16 if y > 0 else -16)) for x, y in ends],
        Mark(8 * end, -58 * turn, "single lead on one side", BY_TYPE_NUMBER),
        ("box", 74, 26),
        pads=tuple((x, 30 if y > 0 else -30) for x, y in ends),
        holes=False,
    )


def _diode(
    canvas: Canvas, marking: str, end: int, case: str, band: str, ink: str, kind: str, notes=()
) -> Anatomy:
    wires(canvas, 66, 126)
    canvas.rect(-72, -32, 144, 64, case, round=9)
    canvas.rect(min(end * 56, end * 36), -31, 20, 62, band, stroke="none")
    print_marking(canvas, marking, -end * 17, 0, 98, 56, ink)
    return Anatomy(
        looks=f"A {kind} cylinder with a lead at each end.",
        terminals=two_ends(end, 104, 40, "cathode"),
        marks=(Mark(end * 46, -22, "band at one end", "cathode"),),
        outline=("box", 72, 26),
        pads=((end * 104, 0), (-end * 104, 0)),
        notes=notes,
    )


def _three_leads(
    looks: str,
    places: list,
    mark: Mark,
    outline: tuple,
    pads: tuple = ((-34, 0), (0, 0), (34, 0)),
    holes: bool = True,
) -> Anatomy:
    terminals = tuple(Terminal(x, y, str(n)) for n, (x, y) in enumerate(places, 1))
    return Anatomy(looks, terminals, (mark,), outline, pads, holes)
