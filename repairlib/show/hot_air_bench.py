"""Hot air on a chip, seen from the side: nozzle, distance, beads of the thermocouple, preheater.

The distance is common practice, no source; `heat.hot_air` takes the same where none is given.
"""

from __future__ import annotations

from repairlib.show.canvas import INK, METAL, NEGATIVE, PAPER, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture
from repairlib.show.tools import arrow

WIDTH, HEIGHT = 500.0, 330.0
LETTERS = 16
MIDDLE = 190.0  # of nozzle and chip
BOARD, CHIP = 222.0, 190.0  # heights of their upper faces
NOZZLE = 112.0  # height of its mouth
STEEL, PLASTIC, FR4 = "#9aa3ab", "#3d454d", "#cfe3cf"


def draw_hot_air() -> Picture:
    """Draw hot air on a chip from the side, every thing named.

    >>> draw_hot_air().alt.splitlines()[0]
    'Hot air on a chip, seen from the side.'
    """
    canvas = Canvas(WIDTH, HEIGHT)
    _board(canvas)
    _nozzle(canvas)
    _beads(canvas)
    _preheater(canvas)
    return canvas.picture(
        "Hot air on a chip, seen from the side.\n"
        "The nozzle stands upright over the middle of the chip, 10 mm away; the air streams down "
        "and spreads to all sides.\n"
        "Two thin wires end in beads: one at a joint of the chip, in touch with pin and pad, one "
        "on its body.\n"
        "Below the board the preheater warms the whole board. Beside the chip an electrolytic "
        "stands behind a shield."
    )


def _board(canvas: Canvas) -> None:
    canvas.rect(20, BOARD, 460, 14, FR4)
    canvas.rect(MIDDLE - 52, CHIP, 104, 28, PLASTIC, round=3)
    canvas.text(MIDDLE, CHIP + 14, "chip", LETTERS, fill=PAPER)
    for side in (-1, 1):
        x = MIDDLE + side * 52
        canvas.line((x, CHIP + 16), (x + side * 10, CHIP + 16), stroke=METAL, pen=4)
        canvas.line((x + side * 10, CHIP + 16), (x + side * 12, BOARD - 3), stroke=METAL, pen=4)
        canvas.line((x + side * 10, BOARD - 2), (x + side * 22, BOARD - 2), stroke=METAL, pen=4)
    canvas.rect(424, BOARD - 66, 42, 64, "#26405c", round=4)
    canvas.line((396, BOARD - 2), (396, BOARD - 92), (474, BOARD - 92), stroke=STEEL, pen=6)
    canvas.text(436, BOARD - 106, "shield", LETTERS)


def _nozzle(canvas: Canvas) -> None:
    canvas.polygon(
        [(MIDDLE - 30, 20), (MIDDLE + 30, 20), (MIDDLE + 22, NOZZLE), (MIDDLE - 22, NOZZLE)], STEEL
    )
    canvas.text(MIDDLE - 42, 44, "nozzle, upright", LETTERS, "end")
    for shift in (-14, 0, 14):
        x = MIDDLE + shift
        arrow(canvas, (x, NOZZLE + 10), (x, CHIP - 8), POSITIVE)
    x = MIDDLE + 64
    canvas.line((MIDDLE + 26, NOZZLE), (x + 8, NOZZLE), stroke=QUIET, pen=1)
    canvas.line((MIDDLE + 56, CHIP), (x + 8, CHIP), stroke=QUIET, pen=1)
    canvas.line((x, NOZZLE), (x, CHIP), pen=1.6)
    for y, way in ((NOZZLE, 8), (CHIP, -8)):
        canvas.line((x - 4, y + way), (x, y), (x + 4, y + way), pen=1.6)
    canvas.text(x + 10, (NOZZLE + CHIP) / 2 - 10, "distance:", LETTERS, "start")
    canvas.text(x + 10, (NOZZLE + CHIP) / 2 + 10, "10 mm", LETTERS, "start", bold=True)


def _beads(canvas: Canvas) -> None:
    """The two beads of the thermocouple with their wires, which come from the left."""
    for tip, height, words in (
        ((MIDDLE - 68, BOARD - 8), 168, "bead at the joint"),
        ((MIDDLE - 40, CHIP - 3), 122, "bead on the body"),
    ):
        canvas.line((12, height), (tip[0] - 34, height), tip, stroke=NEGATIVE, pen=2)
        canvas.circle(*tip, 5, NEGATIVE, pen=1, stroke=INK)
        canvas.text(12, height - 12, words, LETTERS, "start", NEGATIVE)


def _preheater(canvas: Canvas) -> None:
    for x in range(60, 460, 56):
        arrow(canvas, (x, 276), (x, 248), POSITIVE)
    canvas.rect(20, 282, 460, 36, "#6b747c", round=4)
    canvas.text(250, 300, "preheater, under the whole board", LETTERS, fill=PAPER)
