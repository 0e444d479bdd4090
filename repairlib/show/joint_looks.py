"""What a soldered joint looks like, cut open: a good one, and the bad ones beside it.

From common practice; how far a hole must be filled stands in `heat.judge_hole_fill`.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.show.canvas import BOARD, COPPER, INK, METAL, POSITIVE, Canvas
from repairlib.show.hole_section import (
    COAT,
    HOLE,
    LEAD,
    LEAD_END,
    PAD,
    SOLDER,
    THICK,
    WITHOUT,
    board,
    copper,
    filled,
    fillet,
    joint,
    lead,
    mirrored,
    section,
)
from repairlib.show.strip import Shown, Strip
from repairlib.show.tools import curve

DULL = "#aeb5ba"


def draw_joints(*names: str) -> Strip:
    """Draw joints beside each other, cut open, each with what is seen and what to do.

    names: of JOINTS, all of them when none is given. Raises RepairlibError for another name.

    >>> print(draw_joints("good").shown[0].words)
    Hollow flanks run out thin on pad and lead. The hole is full. Leave it.
    """
    for name in names:
        if name not in JOINTS:
            raise RepairlibError(name, "no joint of this name is drawn", ", ".join(JOINTS))
    shown = []
    for name in names or JOINTS:
        draw, seen, words = JOINTS[name]
        picture = section(draw, f"A joint cut open, solder side up: {seen}.", WITHOUT)
        shown.append(Shown(picture, name.capitalize(), words))
    return Strip(shown)


def _good(canvas: Canvas) -> None:
    joint(canvas, soldered=True)


def _pad_cold(canvas: Canvas) -> None:
    joint(canvas)
    ball = curve((-LEAD, -12), (-44, -4), (-34, -44), (-LEAD, -40))
    canvas.polygon([*ball, *mirrored(ball)], SOLDER, pen=1)
    canvas.rect(-LEAD, LEAD_END, 2 * LEAD, 8, METAL, pen=1)


def _lead_cold(canvas: Canvas) -> None:
    joint(canvas)
    for side in (-1, 1):
        dome = curve((PAD - 3, -COAT), (PAD - 4, -30), (LEAD + 5, -32), (LEAD + 5, -COAT))
        canvas.polygon([(side * x, y) for x, y in dome], SOLDER, pen=1)
        canvas.rect(min(side * HOLE, side * (LEAD + 4)), -COAT, 3, 16, SOLDER, pen=0.5)


def _too_little(canvas: Canvas) -> None:
    board(canvas)
    filled(canvas, bottom=THICK * 0.4)
    fillet(canvas, reach=26, rise=-18)
    _lead_and_copper(canvas)


def _too_much(canvas: Canvas) -> None:
    board(canvas)
    filled(canvas)
    _lead_and_copper(canvas)
    dome = curve((-PAD + 1, -COAT), (-PAD - 16, -34), (-34, -62), (0, -62))
    canvas.polygon([*dome, *mirrored(dome)], SOLDER, pen=1)


def _moved(canvas: Canvas) -> None:
    board(canvas)
    filled(canvas, fill=DULL)
    rough = [(-39, -6), (-31, -12), (-27, -9), (-21, -19), (-17, -15), (-13, -28), (-LEAD, -33)]
    canvas.polygon([*rough, *mirrored(rough)], DULL, pen=1)
    _lead_and_copper(canvas)
    for side in (-1, 1):
        crack = [(LEAD + 1, -30), (LEAD + 5, -20), (LEAD + 2, -12), (LEAD + 6, -3), (LEAD + 3, 14)]
        canvas.line(*[(side * x, y) for x, y in crack], stroke=INK, pen=2)


def _bridge(canvas: Canvas) -> None:
    edges = (-100, -60, -42, 42, 60, 100)
    for left, right in zip(edges[::2], edges[1::2], strict=True):
        canvas.rect(left, 0, right - left, THICK, BOARD, pen=1)
    bridge = curve((-82, -COAT), (-60, -10), (-58, -20), (-51, -38))
    middle = curve((-51, -38), (-30, -14), (30, -14), (51, -38))
    canvas.polygon([*bridge, *middle, *mirrored(bridge)], SOLDER, pen=1)
    for x in (-51, 51):
        canvas.rect(x - 9, 0, 18, THICK, SOLDER, pen=1)
        canvas.rect(x - 5, LEAD_END, 10, THICK + 66, METAL, pen=1)
        for side in (-1, 1):
            canvas.rect(x + side * 9 - (3 if side < 0 else 0), 0, 3, THICK, COPPER, pen=1)
            for y in (-COAT, THICK):
                canvas.rect(x + (9 if side > 0 else -34), y, 25, COAT, COPPER, pen=1)
    canvas.line((-14, -30), (14, -6), stroke=POSITIVE, pen=3)
    canvas.line((-14, -6), (14, -30), stroke=POSITIVE, pen=3)


def _pad_off(canvas: Canvas) -> None:
    board(canvas)
    filled(canvas)
    _lead_and_copper(canvas, lifted=True)


def _lead_and_copper(canvas: Canvas, lifted: bool = False) -> None:
    lead(canvas)
    copper(canvas, lifted)


JOINTS = {
    "good": (
        _good,
        "hollow flanks from the pad up to the lead, the hole full to the other side",
        "Hollow flanks run out thin on pad and lead. The hole is full. Leave it.",
    ),
    "the pad was cold": (
        _pad_cold,
        "a ball of solder on the lead that does not touch the pad; the hole is empty",
        "A ball on the lead. Flux, and the tip on pad and lead.",
    ),
    "the lead was cold": (
        _lead_cold,
        "solder on the pad with a gap all round the lead",
        "A ring with a gap. The lead is dirty: flux, heat the lead too.",
    ),
    "too little": (
        _too_little,
        "a thin skin on the pad, and solder in the upper part of the hole only",
        "The hole is not full. Flux, heat, a touch of solder.",
    ),
    "too much": (
        _too_much,
        "a fat ball over pad and lead, its edge overhanging the pad",
        "A ball that hides what is under it. Braid some off.",
    ),
    "it moved": (
        _moved,
        "rough, dull solder with cracks along the lead",
        "Rough and cracked. Flux, melt all of it again, hold still.",
    ),
    "bridge": (
        _bridge,
        "one lump of solder across two pads, crossed out",
        "Two joints run together. Flux and a clean tip, or braid.",
    ),
    "the pad is off": (
        _pad_off,
        "the pad on one side bent up from the board",
        "Too long, too hot, or pulled. Stop: the track must be mended.",
    ),
}
