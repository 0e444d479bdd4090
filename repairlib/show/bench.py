"""The bench before work begins: mat, strap, common ground, and the tools that keep it dead."""

from __future__ import annotations

from repairlib.show.canvas import BOARD, INK, METAL, NEGATIVE, PAPER, QUIET, Canvas
from repairlib.show.picture import Picture

MAT = "#dbe7f3"
WOOD = "#efe6d6"
_TOP, _FRONT = 150, 350  # of the bench top
_GROUND = (640, 420)  # the common point


def draw_bench() -> Picture:
    """Draw a bench ready for work, every thing named.

    >>> draw_bench().alt.splitlines()[0]
    'A bench ready for work, seen from above and in front.'
    """
    canvas = Canvas(860, 470)
    with canvas.at(0, -50):  # nothing stands in the top 50
        canvas.rect(30, _TOP, 800, _FRONT - _TOP, WOOD, round=6)
        canvas.rect(190, 170, 400, 160, MAT, round=6)
        canvas.text(390, 314, "mat that drains charge", 15)
        _set(canvas)
        _things(canvas)
        _ground(canvas)
        _hand(canvas)
    return canvas.picture(
        "A bench ready for work, seen from above and in front.\n"
        "On the mat: the set, its plug pulled and lying in sight. Left: the meter, and a discharge "
        "resistor with insulated probes. Right: the iron in its stand, and the hood that takes the "
        "fumes away. In front: the hand in its wrist strap.\n"
        "Strap and mat each have a cord of their own with 1 MΩ in it. Both cords meet at one "
        "common point, and that is joined to the ground of the building."
    )


def _set(canvas: Canvas) -> None:
    canvas.rect(250, 186, 190, 92, METAL, round=5)
    canvas.rect(264, 200, 162, 44, BOARD, round=3)
    canvas.text(345, 222, "board", 15)
    canvas.text(345, 261, "the set, dead", 15)
    canvas.line((440, 210), (486, 210), (500, 232), pen=3)
    canvas.rect(500, 224, 34, 22, INK, round=4)
    canvas.line((534, 230), (546, 230), pen=3)
    canvas.line((534, 240), (546, 240), pen=3)
    canvas.text(520, 264, "plug, in sight", 15)


def _things(canvas: Canvas) -> None:
    canvas.rect(62, 172, 70, 66, PAPER, round=6)
    canvas.rect(72, 182, 50, 22, MAT)
    canvas.text(97, 193, "0.0 V", 14, bold=True)
    canvas.circle(97, 221, 9)
    canvas.text(97, 254, "meter", 15)
    canvas.line((52, 292), (72, 292), pen=3)
    canvas.rect(72, 284, 60, 16, "#d9c8a0", round=4)
    canvas.line((132, 292), (152, 292), pen=3)
    canvas.text(106, 318, "discharge resistor,", 14)
    canvas.text(106, 336, "insulated probes", 14)
    canvas.line((670, 262), (722, 226), pen=7)
    canvas.line((722, 226), (744, 210), pen=3)
    canvas.polygon([(642, 300), (698, 300), (682, 252), (658, 252)], METAL)
    canvas.text(672, 318, "iron in its stand", 15)
    canvas.polygon([(736, 160), (806, 160), (790, 196), (752, 196)], METAL)
    canvas.line((771, 160), (771, 92), (840, 92), pen=12, stroke=METAL)
    canvas.text(771, 248, "fume hood", 15)
    canvas.text(812, 70, "air out", 15)


def _ground(canvas: Canvas) -> None:
    x, y = _GROUND
    _cord(canvas, (560, 330), (560, y), (x, y), at=(600, y), name="mat cord 1 MΩ")
    canvas.circle(x, y, 9, PAPER, pen=3)
    canvas.text(x + 18, y - 18, "common point", 15, "start")
    canvas.line((x, y + 9), (x, 462), pen=3)
    for row, half in enumerate((22, 14, 6)):
        canvas.line((x - half, 462 + 9 * row), (x + half, 462 + 9 * row), pen=3)
    canvas.text(x + 34, 472, "ground of the building", 15, "start")


def _hand(canvas: Canvas) -> None:
    canvas.line((250, 505), (268, 404), pen=26, stroke="#d9a982")
    canvas.circle(272, 384, 22, "#d9a982", stroke="#d9a982")
    canvas.line((247, 438), (281, 444), pen=12, stroke=NEGATIVE)
    canvas.text(236, 430, "wrist strap", 15, "end")
    canvas.text(236, 450, "on bare skin", 14, "end", fill=QUIET)
    x, y = _GROUND
    _cord(canvas, (284, 445), (420, 488), (560, 488), (x - 9, y + 4), at=(450, 488), name="")
    canvas.text(450, 466, "strap cord 1 MΩ", 15)


def _cord(canvas: Canvas, *points, at, name: str) -> None:
    """A cord through the points with its resistor at `at`, lying level there."""
    canvas.line(*points, pen=3, stroke=NEGATIVE)
    canvas.rect(at[0] - 20, at[1] - 7, 40, 14, PAPER, stroke=NEGATIVE)
    if name:
        canvas.text(at[0] - 52, at[1] - 22, name, 15, "end")
