"""The board's side: outline, pads and the polarity mark printed beside them.

Drawn around (0, 0) with the marked end on the left. Each mark drawer returns the point that a
label may lead to.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.show.anatomy import Anatomy, arc
from repairlib.show.canvas import BOARD, COPPER, INK, PAPER, QUIET, Canvas, Point

HALF_WIDTH, HALF_HEIGHT = 152, 76
FILLED = "#9fb5a4"


class Footprint:
    """Where the outline and the pads of one place on the board are."""

    def __init__(self, anatomy: Anatomy, end: int) -> None:
        shape, *size = anatomy.outline
        self.round = shape == "round"
        self.half_width = size[0]
        self.half_height = size[-1]
        # The board's marked end stays on the left, however the part above is turned.
        turn = 1 if end < 0 else -1
        self.pads = [(turn * x, turn * y) for x, y in anatomy.pads]
        self.holes = anatomy.holes

    @property
    def beside(self) -> Point:
        """A place for a sign, outside the outline next to the marked pad."""
        x, y = self.pads[0]
        return min(-self.half_width, x - 12) - 17, y


def draw_footprint(canvas: Canvas, place: Footprint, mark: str) -> Point:
    """Draw the place with its mark; the point returned is where the mark sits."""
    canvas.rect(-HALF_WIDTH, -HALF_HEIGHT, 2 * HALF_WIDTH, 2 * HALF_HEIGHT, BOARD, round=8)
    canvas.text(HALF_WIDTH - 10, HALF_HEIGHT - 13, "board", 15, "end", QUIET)
    if mark not in OUTLINE_MARKS:
        _outline(canvas, place)
    point = MARKS[mark](canvas, place)
    for number, (x, y) in enumerate(place.pads):
        square = number == 0 and mark == "square pad"
        _pad(canvas, x, y, place.holes, square)
    return point


def mark_in_words(mark: str) -> str:
    """The mark as a drawing without labels says it: what is seen and where, not what it means."""
    seen = mark if mark in ("no mark", "NP or BP") else f"{mark} (left)"
    return f"On the board: {seen}."


def _outline(canvas: Canvas, place: Footprint) -> None:
    if place.round:
        canvas.circle(0, 0, place.half_width)
    else:
        wide, high = place.half_width, place.half_height
        canvas.rect(-wide, -high, 2 * wide, 2 * high)


def _pad(canvas: Canvas, x: float, y: float, hole: bool, square: bool) -> None:
    if not hole:
        canvas.rect(x - 13, y - 11, 26, 22, COPPER, pen=1.5)
        return
    if square:
        canvas.rect(x - 11, y - 11, 22, 22, COPPER, pen=1.5)
    else:
        canvas.circle(x, y, 11, COPPER, pen=1.5)
    canvas.circle(x, y, 4.5, PAPER, pen=1.5)


def _plus(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.line((x - 8, y), (x + 8, y), pen=4)
    canvas.line((x, y - 8), (x, y + 8), pen=4)
    return x - 12, y


def _minus(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.line((x - 9, y), (x + 9, y), pen=4)
    return x - 13, y


def _letter(sign: str) -> Callable[[Canvas, Footprint], Point]:
    def draw(canvas: Canvas, place: Footprint) -> Point:
        x, y = place.beside
        canvas.text(x, y, sign, 24, bold=True)
        return x - 12, y

    return draw


def _dot(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.circle(x, y, 6, INK)
    return x - 6, y


def _triangle(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.polygon([(x - 9, y - 10), (x - 9, y + 10), (x + 9, y)], INK)
    return x - 9, y


def _half_filled(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if place.round:
        canvas.polygon(arc(0, 0, wide, 90, 270), FILLED)
    else:
        canvas.rect(-wide, -high, wide, 2 * high, FILLED)
    return -wide * 0.7, -high * 0.6


def _square_pad(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.pads[0]
    return x - 11, y


def _bar(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    left = -wide - 16 if place.round else -wide + 5
    canvas.rect(left, -high * 0.8, 10, high * 1.6, PAPER)
    return left + 5, -high * 0.5


def _stripe(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if place.round:
        canvas.line(*arc(0, 0, wide + 6, 140, 220), pen=7)
        return -wide - 6, -6
    canvas.line((-wide - 6, -high), (-wide - 6, high), pen=7)
    return -wide - 6, -high * 0.6


def _diode_symbol(canvas: Canvas, place: Footprint) -> Point:
    canvas.line((-30, 0), (30, 0))
    canvas.polygon([(13, -14), (13, 14), (-12, 0)], INK)
    canvas.line((-14, -15), (-14, 15), pen=4)
    return -14, -13


def _notch(canvas: Canvas, place: Footprint) -> Point:
    wide = place.half_width
    canvas.polygon(arc(-wide, 0, 12, -90, 90), BOARD)
    canvas.line((-wide, -9), (-wide, 9), stroke=BOARD, pen=4)
    return -wide + 11, -3


def _cut_corners(canvas: Canvas, place: Footprint) -> Point:
    wide, high, cut = place.half_width, min(place.half_height, 66), 18
    canvas.polygon(
        [
            (-wide, -high + cut),
            (-wide + cut, -high),
            (wide, -high),
            (wide, high),
            (-wide + cut, high),
            (-wide, high - cut),
        ]
    )
    return -wide + cut / 2, -high + cut / 2


def _flat_side(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if len(place.pads) == 3:  # a transistor's flat runs along its row of leads
        canvas.polygon(arc(0, 0, wide, 130, 410))
        return -wide * 0.5, high * 0.77
    if place.round:
        canvas.polygon(arc(0, 0, wide, -140, 140))
        return -wide * 0.77, -high * 0.4
    _outline(canvas, place)
    canvas.line((-wide, -high), (-wide, high), pen=5)
    return -wide, -high * 0.5


def _non_polar(canvas: Canvas, place: Footprint) -> Point:
    y = -place.half_height + 18 if place.round else 16 - HALF_HEIGHT
    canvas.text(0, y, "NP", 20, bold=True)
    return -18, y


def _nothing(canvas: Canvas, place: Footprint) -> Point:
    return place.pads[0]


OUTLINE_MARKS = ("two cut corners of the outline", "flat side of the outline")
MARKS: dict[str, Callable[[Canvas, Footprint], Point]] = {
    "plus sign": _plus,
    "minus sign": _minus,
    "filled or hatched half circle": _half_filled,
    "square pad": _square_pad,
    "white bar": _bar,
    "stripe": _stripe,
    "bar of the diode symbol": _diode_symbol,
    "triangle": _triangle,
    "dot": _dot,
    "notch": _notch,
    "two cut corners of the outline": _cut_corners,
    "flat side of the outline": _flat_side,
    "letter K": _letter("K"),
    "letter A": _letter("A"),
    "figure 1": _letter("1"),
    "NP or BP": _non_polar,
    "no mark": _nothing,
    "something else": _letter("?"),
}
