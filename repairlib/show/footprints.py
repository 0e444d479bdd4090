"""The board's side: outline, pads and the polarity mark printed beside them.

Drawn around (0, 0) with the marked end on the left. Each mark drawer returns the point that a
label may lead to.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.show.anatomy import Anatomy, arc
from repairlib.show.canvas import COPPER, PAPER, Canvas, Point
from repairlib.show.looks import Look, look_of

HALF_WIDTH, HALF_HEIGHT = 152, 76
EDGE = 6  # a trace ends so far from the edge of the board
CLEAR = 3.5 + 6  # from a sign to the middle of the dot that a label's line ends in


class Footprint:
    """Where the outline and the pads of one place on the board are, and how the board looks."""

    def __init__(self, anatomy: Anatomy, end: int, look: str = "green") -> None:
        self.look: Look = look_of(look)
        shape, *size = anatomy.outline
        self.round = shape == "round"
        self.half_width = size[0]
        self.half_height = size[-1]
        # The board's marked end stays on the left, however the part above is turned.
        turn = 1 if end < 0 else -1
        self.pads = [(turn * x, turn * y) for x, y in anatomy.pads]
        self.holes = anatomy.holes

    @property
    def ink(self) -> str:
        """What is printed on the board."""
        return self.look.print

    @property
    def beside(self) -> Point:
        """A place for a sign, outside the outline next to the marked pad."""
        x, y = self.pads[0]
        return min(-self.half_width, x - 12) - 17, y


def draw_footprint(canvas: Canvas, place: Footprint, mark: str) -> Point:
    """Draw the place with its mark; the point returned is where the mark sits."""
    look = place.look
    canvas.rect(-HALF_WIDTH, -HALF_HEIGHT, 2 * HALF_WIDTH, 2 * HALF_HEIGHT, look.ground, round=8)
    for number, pad in enumerate(place.pads):
        canvas.line(*_trace(number, pad, len(place.pads)), stroke=look.trace, pen=9)
    _neighbours(canvas, look)
    canvas.text(HALF_WIDTH - 10, HALF_HEIGHT - 13, "board", 15, "end", look.print)
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


def _trace(number: int, pad: Point, pads: int) -> list[Point]:
    """The copper from a pad to the edge of the board."""
    x, y = pad
    if pads == 2:
        side = -1 if x < 0 else 1
        bend, level = y - side * 28, y - side * 46
        return [(x, y), (x, bend), (x + side * 18, level), (side * (HALF_WIDTH - EDGE), level)]
    up = y < 0 or (y == 0 and number % 2 == 0)
    return [(x, y), (x, (-1 if up else 1) * (HALF_HEIGHT - EDGE))]


def _neighbours(canvas: Canvas, look: Look) -> None:
    """Other parts in two corners, a hole for a screw, and contacts along the edge."""
    x, y = HALF_WIDTH - 30, HALF_HEIGHT - 14
    canvas.rect(-x - 14, -y - 6, 40, 12, stroke=look.other, pen=1.2)
    for end in (-24, 36):
        canvas.circle(-x + end, -y, 3, look.other, stroke="none")
    canvas.polygon(arc(-x + 4, y, 12, 200, 340), stroke=look.other, pen=1.2)
    canvas.circle(x + 14, -y, 7, PAPER, stroke=look.other, pen=1.5)
    for number in range(6):
        canvas.rect(-66 + 18 * number, HALF_HEIGHT - 11, 11, 10, COPPER, stroke="none")


def _outline(canvas: Canvas, place: Footprint) -> None:
    if place.round:
        canvas.circle(0, 0, place.half_width, stroke=place.ink)
    else:
        wide, high = place.half_width, place.half_height
        canvas.rect(-wide, -high, 2 * wide, 2 * high, stroke=place.ink)


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
    canvas.line((x - 8, y), (x + 8, y), stroke=place.ink, pen=4)
    canvas.line((x, y - 8), (x, y + 8), stroke=place.ink, pen=4)
    return x - 10 - CLEAR, y


def _minus(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.line((x - 9, y), (x + 9, y), stroke=place.ink, pen=4)
    return x - 11 - CLEAR, y


def _letter(sign: str) -> Callable[[Canvas, Footprint], Point]:
    def draw(canvas: Canvas, place: Footprint) -> Point:
        x, y = place.beside
        canvas.text(x, y, sign, 24, fill=place.ink, bold=True)
        return x - 9 - CLEAR, y

    return draw


def _both_letters(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.text(-x, -y, "A", 24, fill=place.ink, bold=True)
    return _letter("K")(canvas, place)


def _dot(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.circle(x, y, 6, place.ink, stroke="none")
    return x - 6 - CLEAR, y


def _triangle(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.beside
    canvas.polygon([(x - 9, y - 10), (x - 9, y + 10), (x + 9, y)], place.ink, stroke=place.ink)
    return x - 10 - CLEAR, y


def _half_filled(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if place.round:
        canvas.polygon(arc(0, 0, wide, 90, 270), place.ink, stroke=place.ink)
    else:
        canvas.rect(-wide, -high, wide, 2 * high, place.ink, stroke=place.ink)
    return -wide * 0.7, -high * 0.6


def _square_pad(canvas: Canvas, place: Footprint) -> Point:
    x, y = place.pads[0]
    return x - 11, y


def _bar(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    canvas.rect(-wide - 18, -high * 0.8, 10, high * 1.6, PAPER)
    return -wide - 13, -high * 0.5


def _stripe(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if place.round:
        canvas.line(*arc(0, 0, wide + 6, 140, 220), stroke=place.ink, pen=7)
        return -wide - 6, -6
    canvas.line((-wide - 6, -high), (-wide - 6, high), stroke=place.ink, pen=7)
    return -wide - 6, -high * 0.6


def _diode_symbol(canvas: Canvas, place: Footprint) -> Point:
    canvas.line((-30, 0), (30, 0), stroke=place.ink)
    canvas.polygon([(13, -14), (13, 14), (-12, 0)], place.ink, stroke=place.ink)
    canvas.line((-14, -15), (-14, 15), stroke=place.ink, pen=4)
    return -14, -13


def _notch(canvas: Canvas, place: Footprint) -> Point:
    wide = place.half_width
    canvas.line((-wide, -10), (-wide, 10), stroke=place.look.ground, pen=4)
    canvas.line(*arc(-wide, 0, 12, -90, 90), stroke=place.ink)
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
        ],
        stroke=place.ink,
    )
    return -wide + cut / 2, -high + cut / 2


def _flat_side(canvas: Canvas, place: Footprint) -> Point:
    wide, high = place.half_width, place.half_height
    if len(place.pads) == 3:  # a transistor's flat runs along its row of leads
        canvas.polygon(arc(0, 0, wide, 130, 410), stroke=place.ink)
        return -wide * 0.5, high * 0.77
    if place.round:
        canvas.polygon(arc(0, 0, wide, -140, 140), stroke=place.ink)
        return -wide * 0.77, -high * 0.4
    _outline(canvas, place)
    canvas.line((-wide, -high), (-wide, high), stroke=place.ink, pen=5)
    return -wide, -high * 0.5


def _non_polar(canvas: Canvas, place: Footprint) -> Point:
    y = -place.half_height + 18 if place.round else 16 - HALF_HEIGHT
    canvas.text(0, y, "NP", 20, fill=place.ink, bold=True)
    return -17 - CLEAR, y


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
    "letters K and A": _both_letters,
    "figure 1": _letter("1"),
    "NP or BP": _non_polar,
    "no mark": _nothing,
    "something else": _letter("?"),
}
