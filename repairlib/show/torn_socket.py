"""A fine-pitch surface socket: sound, torn off with its pads, mended with wire links.

Seen from above, and a barrel cut open. How each is mended is common practice; not to scale.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from repairlib.show.canvas import BOARD, COPPER, INK, METAL, NEGATIVE, PAPER, QUIET, Canvas
from repairlib.show.hole_section import COAT, HOLE, PAD, SOLDER, THICK
from repairlib.show.picture import Picture
from repairlib.show.strip import Shown, Strip
from repairlib.show.tools import curve

WIDTH, HEIGHT = 216.0, 190.0
LETTERS = 14
SHELL, PLASTIC, BARE, GLUE = "#b9c1c8", "#3d454d", "#cdbb8d", "#f2e7a0"
PITCH = 22.0
PLACES = [PITCH * (number - 2.5) for number in range(6)]  # of the contacts, from left to right
TORN = (2, 3)  # their numbers in PLACES: contacts 3 and 4
VIA = 76.0


def draw_torn_socket() -> Strip:
    """Draw a socket that is sound, torn off, and mended; and a torn barrel mended with a wire.

    >>> [one.name for one in draw_torn_socket().shown]
    ['Sound', 'Torn off', 'Mended', 'A torn barrel, cut open']
    """
    return Strip([Shown(_picture(draw, seen), name, words) for draw, name, words, seen in _SCENES])


def _picture(draw: Callable[[Canvas], None], seen: str) -> Picture:
    canvas = Canvas(WIDTH, HEIGHT)
    with canvas.at(WIDTH / 2, HEIGHT / 2):
        draw(canvas)
    return canvas.picture(seen + ".")


def _board(canvas: Canvas) -> None:
    canvas.rect(-104, -58, 208, 150, BOARD, pen=1)


def _tracks(canvas: Canvas, pads: Iterable[int]) -> None:
    """A track with its via for every contact, and the pads that are still there."""
    for x in PLACES:
        canvas.line((x, 44), (x, VIA), stroke=COPPER, pen=4)
        canvas.circle(x, VIA, 6, COPPER, pen=1)
        canvas.circle(x, VIA, 2.5, PAPER, pen=0.5)
    for number in pads:
        canvas.rect(PLACES[number] - 6, 14, 12, 32, COPPER, pen=1)


def _socket(canvas: Canvas) -> None:
    """The socket at its place: shell, anchors with solder, leads with solder."""
    for x in (-92.0, 76.0):
        canvas.ellipse(x + 8, -8, 14, 18, SOLDER, pen=1)
        canvas.rect(x, -20, 16, 24, SHELL, pen=1)
    canvas.rect(-80, -70, 160, 80, SHELL, round=4)
    canvas.rect(-68, -82, 136, 16, PLASTIC, pen=1)
    for x in PLACES:
        canvas.ellipse(x, 26, 6, 11, SOLDER, pen=0.5)
        canvas.rect(x - 3, 8, 6, 20, METAL, pen=1)


def _sound(canvas: Canvas) -> None:
    _board(canvas)
    _tracks(canvas, range(6))
    _socket(canvas)
    canvas.text(PLACES[0] - 16, 30, "1", LETTERS, bold=True)
    canvas.text(0, -30, "socket", LETTERS)


def _torn(canvas: Canvas) -> None:
    _board(canvas)
    _tracks(canvas, [number for number in range(6) if number not in TORN])
    for number in TORN:
        x = PLACES[number]
        canvas.rect(x - 6, 14, 12, 32, BARE, stroke=INK, pen=1, dash="3 3")
    ragged = [(0, -22), (10, -18), (14, -6), (8, 6), (-4, 10), (-13, 4), (-12, -10)]
    for middle in (-84, 84):
        canvas.polygon([(middle + x, y - 8) for x, y in ragged], BARE, pen=1)
    shell = [(-62, -84), (90, -60), (84, -8), (-70, -32)]
    canvas.polygon(shell, SHELL)
    for number, x in enumerate(PLACES):
        foot = x + 8, -18 + 0.16 * x
        canvas.line(foot, (foot[0] - 2, foot[1] + 15), stroke=METAL, pen=5)
        if number in TORN:
            canvas.rect(foot[0] - 8, foot[1] + 10, 12, 14, COPPER, pen=1)
    canvas.text(6, -48, "socket", LETTERS)


def _mended(canvas: Canvas) -> None:
    _board(canvas)
    _tracks(canvas, [number for number in range(6) if number not in TORN])
    for number in TORN:
        x = PLACES[number]
        canvas.rect(x - 6, 14, 12, 32, BARE, stroke=INK, pen=1, dash="3 3")
    _socket(canvas)
    for number, side in zip(TORN, (-1, 1), strict=True):
        x = PLACES[number]
        canvas.ellipse(x + side * 5, 50, 11, 8, GLUE, stroke=QUIET, pen=1)
        wire = curve((x, 26), (x + side * 10, 40), (x + side * 10, 60), (x, VIA))
        for pen, stroke in ((6, INK), (4, NEGATIVE)):
            canvas.line(*wire, stroke=stroke, pen=pen)
        for y in (24, VIA):
            canvas.circle(x, y, 5, SOLDER, pen=1)


def _barrel(canvas: Canvas) -> None:
    with canvas.at(0, -THICK / 2):
        for x in (-100, HOLE):
            canvas.rect(x, 0, 100 - HOLE, THICK, BOARD, pen=1)
        ragged = [(HOLE, 0), (HOLE + 5, 8), (HOLE - 1, 16), (HOLE + 6, 26), (HOLE, THICK)]
        for side in (-1, 1):
            canvas.polygon([(side * x, y) for x, y in ragged], BARE, pen=1)
            for y in (-COAT, THICK):
                left = min(side * (PAD - 8), side * 100)
                canvas.rect(left, y, 108 - PAD, COAT, COPPER, pen=1)
        bent = [(62, -12), (14, -12), (0, 0), (0, THICK), (-14, THICK + 12), (-62, THICK + 12)]
        for y in (-COAT - 12, THICK + COAT):
            canvas.ellipse(56 if y < 0 else -56, y + 6, 24, 9, SOLDER, pen=1)
        for pen, stroke in ((9, INK), (6.5, METAL)):
            canvas.line(*bent, stroke=stroke, pen=pen)
        canvas.text(-62, 20, "board", LETTERS)
        canvas.text(50, -44, "track", LETTERS, fill=QUIET)
        canvas.line((66, -35), (90, -4), stroke=QUIET, pen=1)
        canvas.text(-38, -44, "wire", LETTERS, fill=QUIET)
        canvas.line((-26, -36), (4, -8), stroke=QUIET, pen=1)


_SCENES = (
    (
        _sound,
        "Sound",
        "Each lead stands on its pad. The anchors at both sides take the pull of the cable.",
        "A socket from above: six leads soldered to six pads, each with a track to its via, and an "
        "anchor soldered at each side",
    ),
    (
        _torn,
        "Torn off",
        "Leads 3 and 4 took their pads along: dashed. The anchors tore out of the board.",
        "The socket torn off: two of its leads carry pads, two places on the board are bare, both "
        "anchors are torn out",
    ),
    (
        _mended,
        "Mended",
        "A thin insulated wire from each lead to the via of its own track, glued down before the "
        "plug goes in.",
        "A new socket: two thin wires go from the leads without pads to the vias of their tracks, "
        "with drops of glue",
    ),
    (
        _barrel,
        "A torn barrel, cut open",
        "Wire through the hole, soldered to the track on both faces. A layer inside is not "
        "reached.",
        "A hole whose copper wall is gone, cut open: a wire goes through it and is soldered to the "
        "track above and below",
    ),
)
