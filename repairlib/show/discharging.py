"""The tool that empties a low-voltage capacitor, as it is built and as it is held."""

from __future__ import annotations

from repairlib.show.canvas import BOARD, METAL, PAPER, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture

CEMENT = "#efe9dc"  # a wirewound resistor in its block
BODY = "#35536d"  # of the capacitor
LETTERS = 16
_LEFT, _RIGHT, _LEVEL = 190, 490, 262  # where the two leads of the capacitor bend down


def draw_discharging() -> Picture:
    """Draw the tool on an axial capacitor: clip on the minus, probe at the plus, meter across it.

    >>> draw_discharging().alt.splitlines()[0]
    'A discharge tool at a capacitor on a board, seen from the side.'
    """
    canvas = Canvas(830, 390)
    _capacitor(canvas)
    _meter(canvas)
    _tool(canvas)
    return canvas.picture(
        "A discharge tool at a capacitor on a board, seen from the side.\n"
        "A wirewound resistor of 100 Ω, 5 W lies in a sleeve that covers both its joints too. From "
        "one end an insulated lead goes to a clip with insulated jaws, on the minus lead. From the "
        "other end a lead goes to a probe with a finger guard, at the plus lead.\n"
        "The two leads of a meter are at the same places all the time. It shows 0.1 V."
    )


def _capacitor(canvas: Canvas) -> None:
    canvas.rect(80, 312, 520, 16, BOARD)
    canvas.text(552, 344, "board", 14, fill=QUIET)
    for x, inner in ((_LEFT, 240), (_RIGHT, 440)):
        canvas.line((inner, _LEVEL), (x, _LEVEL), (x, 328), pen=4, stroke=METAL)
    canvas.rect(240, 232, 200, 60, BODY, round=8)
    canvas.text(345, _LEVEL, "2200µF 25V", LETTERS, fill=PAPER, bold=True)
    canvas.line((254, _LEVEL), (270, _LEVEL), stroke=PAPER, pen=4)
    canvas.text(216, 244, "−", 22, bold=True)
    canvas.text(464, 244, "+", 22, bold=True)


def _meter(canvas: Canvas) -> None:
    canvas.line((700, 250), (640, 290), (_RIGHT + 2, 294), pen=3, stroke=POSITIVE)
    canvas.line((720, 270), (690, 372), (150, 372), (_LEFT - 2, 296), pen=3)
    canvas.rect(680, 150, 110, 130, PAPER, round=10)
    canvas.rect(694, 164, 82, 36, "#dbe7f3")
    canvas.text(735, 182, "0.1 V", 18, bold=True)
    canvas.circle(735, 238, 20)
    canvas.line((735, 238), (747, 224), pen=3)
    canvas.text(735, 110, "meter, across it", LETTERS, bold=True)
    canvas.text(735, 130, "all the time", LETTERS, bold=True)


def _tool(canvas: Canvas) -> None:
    canvas.line((280, 74), (130, 74), (130, 170), pen=4)
    canvas.line((400, 74), (560, 74), (560, 130), pen=4, stroke=POSITIVE)
    canvas.rect(248, 46, 184, 56, "#f4f6f8", round=14, stroke=QUIET, dash="6 5")
    canvas.rect(280, 54, 120, 40, CEMENT, round=3)
    canvas.text(340, 74, "100 Ω 5 W", LETTERS, bold=True)
    canvas.text(340, 122, "sleeve over resistor and joints", 14, fill=QUIET)
    canvas.line((130, 170), (168, 228), pen=16)
    canvas.line((168, 228), (_LEFT + 4, _LEVEL + 2), pen=5)
    canvas.line((560, 130), (524, 200), pen=16, stroke=POSITIVE)
    canvas.line((510, 190), (540, 206), pen=6, stroke=POSITIVE)
    canvas.line((524, 200), (_RIGHT, _LEVEL), pen=3)
    canvas.text(112, 190, "1. clip", LETTERS, "end", bold=True)
    canvas.text(112, 210, "insulated jaws", 14, "end")
    canvas.text(580, 140, "2. probe", LETTERS, "start", bold=True)
    canvas.text(580, 160, "finger guard,", 14, "start")
    canvas.text(580, 178, "one hand", 14, "start")
