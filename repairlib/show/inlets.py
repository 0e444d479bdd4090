"""A barrel inlet for low voltage: sound and burnt, from the front and cut open.

What is seen is common practice; lengths are not to scale.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.show.canvas import COPPER, METAL, PAPER, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture
from repairlib.show.strip import Shown, Strip

WIDTH, HEIGHT = 216.0, 156.0
LETTERS = 14
BODY, RIM, DARK = "#3d454d", "#566069", "#12171c"
SCORCHED, BROWN, CHAR = "#6b4a33", "#9c6b3f", "#2a1c14"


def draw_inlets() -> Strip:
    """Draw a sound inlet beside a burnt one, from the front, and why the one burnt, cut open.

    >>> [one.name for one in draw_inlets().shown][:2]
    ['Sound', 'Burnt']
    """
    return Strip([Shown(_picture(draw, seen), name, words) for draw, name, words, seen in _SCENES])


def _picture(draw: Callable[[Canvas], None], seen: str) -> Picture:
    canvas = Canvas(WIDTH, HEIGHT)
    with canvas.at(WIDTH / 2, HEIGHT / 2):
        draw(canvas)
    return canvas.picture(f"A barrel inlet, {seen}.")


def _lugs(canvas: Canvas, fill: str) -> None:
    for x in (-34, 22):
        canvas.rect(x, 54, 12, 20, fill, pen=1)


def _sound(canvas: Canvas) -> None:
    _lugs(canvas, METAL)
    canvas.rect(-58, -56, 116, 112, BODY, round=8)
    canvas.circle(0, 0, 44, RIM, pen=1)
    canvas.circle(0, 0, 34, DARK)
    canvas.circle(0, 0, 9, METAL)


def _burnt(canvas: Canvas) -> None:
    _lugs(canvas, "#8d8375")
    sagged = [(-56, -56), (54, -56), (59, -40), (58, 18), (67, 46), (58, 60), (22, 57), (-58, 56)]
    canvas.polygon([*sagged, (-59, -46)], SCORCHED)
    canvas.ellipse(6, 8, 54, 46, BROWN, stroke=SCORCHED, pen=1)
    canvas.polygon([(6, 50), (-34, 36), (-20, 12), (30, 8), (52, 26), (40, 46)], CHAR, pen=1)
    hole = [(-33, -4), (-24, -26), (0, -35), (25, -25), (35, 0), (40, 22), (20, 26), (6, 42)]
    canvas.polygon([*hole, (-10, 30), (-27, 22)], DARK)
    canvas.circle(2, 1, 9, "#7a6a58")
    for x, y in ((-2, -2), (5, 3), (1, 6)):
        canvas.circle(x, y, 1.8, CHAR, pen=0.5)
    for x, y, over in ((-66, -20, 7), (-70, 10, 9)):  # soot on the panel beside it
        canvas.circle(x - 8, y, over, "#8a817a", stroke="none", opacity=0.5)


def _pressed(canvas: Canvas) -> None:
    _cut(canvas)
    _spring(canvas, -21)


def _slack(canvas: Canvas) -> None:
    _cut(canvas)
    canvas.rect(4, -44, 78, 12, BROWN, stroke="none")
    _spring(canvas, -28)
    for x, y in ((24, -30), (30, -33), (38, -33), (44, -30)):
        canvas.line((34, -21), (x, y), stroke=POSITIVE, pen=2)
    canvas.text(34, -62, "gap: sparks, heat", LETTERS, fill=POSITIVE, bold=True)
    canvas.line((34, -54), (34, -34), stroke=POSITIVE, pen=1)


def _cut(canvas: Canvas) -> None:
    """The inlet in its set and the plug in it, cut along the middle."""
    canvas.rect(-22, -48, 122, 84, BODY, round=4)
    canvas.rect(-22, -40, 108, 68, PAPER, pen=1)
    canvas.rect(-16, -5, 102, 10, METAL, pen=1)
    for y in (-20, 12):
        canvas.rect(-54, y, 108, 8, METAL, pen=1)
    for y in (-10, 7):
        canvas.rect(-54, y, 96, 3, COPPER, pen=0.5)
    canvas.rect(-104, -30, 52, 60, DARK, round=5)
    canvas.text(-78, 0, "plug", LETTERS, fill=PAPER)
    canvas.text(50, 58, "pin of the inlet", LETTERS, fill=QUIET)
    canvas.line((62, 49), (70, 5), stroke=QUIET, pen=1)


def _spring(canvas: Canvas, low: float) -> None:
    """The leaf that presses on the plug's sleeve; low: how far down its bend reaches."""
    for pen, stroke in ((6, DARK), (4, COPPER)):
        canvas.line((96, -36), (66, -36), (34, low - 3), (10, low - 10), stroke=stroke, pen=pen)


_SCENES = (
    (
        _sound,
        "Sound",
        "Black plastic, a round rim, a bright pin.",
        "sound, from the front: black plastic, a round opening, a bright pin in its middle",
    ),
    (
        _burnt,
        "Burnt",
        "Brown, the rim has melted, the pin is dull and pitted. Both halves go: inlet and plug.",
        "burnt, from the front: brown plastic, the rim melted on one side, soot, a dull pitted pin",
    ),
    (
        _pressed,
        "Cut open: the spring presses",
        "It pushes hard on the plug's sleeve. Current has a wide way over.",
        "cut open, with its plug in: a spring presses on the sleeve of the plug",
    ),
    (
        _slack,
        "The spring has gone slack",
        "It touches in a spot, or not at all. The spot gets hot, and heat makes the spring "
        "softer still.",
        "cut open, with its plug in: the spring hardly reaches the sleeve, sparks at the gap",
    ),
)
