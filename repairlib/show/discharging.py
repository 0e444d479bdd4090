"""The tool that empties a low-voltage capacitor, as it is built and as it is held."""

from __future__ import annotations

from repairlib.show.canvas import BOARD, METAL, PAPER, QUIET, Canvas
from repairlib.show.picture import Picture
from repairlib.show.tools import BLACK, RED, clip, meter, probe, sleeved_resistor

BODY = "#35536d"  # of the capacitor
LETTERS, SMALL = 20, 18  # large enough for a phone
_LEFT, _RIGHT, _LEVEL = 190, 490, 262  # where the two leads of the capacitor bend down
_METER = (740, 220)


def draw_discharging() -> Picture:
    """Draw the tool on an axial capacitor: clip on the minus, probe at the plus, meter across it.

    >>> draw_discharging().alt.splitlines()[0]
    'A discharge tool at a capacitor on a board, seen from the side.'
    """
    canvas = Canvas(830, 360)
    with canvas.at(0, -36):
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
    canvas.text(112, 344, "board", SMALL, fill=QUIET)
    for x, inner in ((_LEFT, 240), (_RIGHT, 440)):
        canvas.line((inner, _LEVEL), (x, _LEVEL), (x, 328), pen=4, stroke=METAL)
    canvas.rect(240, 232, 200, 60, BODY, round=8)
    canvas.text(345, _LEVEL, "2200µF 25V", LETTERS, fill=PAPER, bold=True)
    canvas.line((254, _LEVEL), (270, _LEVEL), stroke=PAPER, pen=4)
    canvas.text(216, 244, "−", 22, bold=True)
    canvas.text(464, 244, "+", 22, bold=True)


def _meter(canvas: Canvas) -> None:
    with canvas.at(*_METER):
        sockets = meter(canvas, "0.1 V")
    black, red = [(_METER[0] + x, _METER[1] + y) for x, y in sockets]
    canvas.line(black, (black[0], 388), (150, 388), (_LEFT - 2, 296), stroke=BLACK, pen=4)
    canvas.line(red, (red[0], 364), (560, 364), (_RIGHT + 2, 296), stroke=RED, pen=4)
    canvas.text(_METER[0], _METER[1] - 144, "meter, across it", LETTERS, bold=True)
    canvas.text(_METER[0], _METER[1] - 121, "all the time", LETTERS, bold=True)


def _tool(canvas: Canvas) -> None:
    canvas.line((280, 74), (130, 74), (130, 190), stroke=BLACK, pen=5)
    canvas.line((400, 74), (560, 74), (560, 130), stroke=BLACK, pen=5)
    sleeved_resistor(canvas, 340, 74)
    canvas.text(340, 74, "100 Ω 5 W", SMALL - 1, bold=True)
    canvas.text(340, 120, "sleeve over resistor and joints", SMALL, fill=QUIET)
    clip(canvas, 130, 188, 50, BLACK)
    probe(canvas, (560, 130), (_RIGHT, _LEVEL), RED)
    canvas.text(112, 190, "1. clip", LETTERS, "end", bold=True)
    canvas.text(112, 213, "insulated", SMALL, "end")
    canvas.text(112, 234, "jaws", SMALL, "end")
    canvas.text(572, 140, "2. probe", LETTERS, "start", bold=True)
    canvas.text(572, 163, "finger guard", SMALL, "start")
    canvas.text(572, 184, "one hand", SMALL, "start")
