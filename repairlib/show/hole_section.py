"""The pieces of a plated hole cut through its middle, and the tools that touch it.

The board lies with its solder side up, as it lies on the bench: the part hangs below. The origin is
the middle of the hole at the upper face of the board; lengths are not to scale.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from repairlib.show.canvas import BOARD, COPPER, INK, METAL, QUIET, Canvas, Point
from repairlib.show.capacitors import ALUMINIUM
from repairlib.show.picture import Picture
from repairlib.show.tools import curve

WIDTH, BELOW = 216, 82  # of one picture, and how far it goes down from the face of the board
WITH_TOOLS, WITHOUT = 86, 66  # how far it goes up
THICK, HOLE, WALL, PAD, COAT = 40, 15, 5, 42, 6
LEAD, LEAD_END, FLANK = 8, -46, -36  # FLANK: how high good solder stands at the lead
BODY = THICK + 22
SOLDER, IRON = "#c9d1d8", "#5f6b75"
PLASTIC, BORE = "#e9e4d6", 13


def section(draw: Callable[[Canvas], None], alt: str, above: float = WITH_TOOLS) -> Picture:
    """The picture of what `draw` draws round the hole."""
    canvas = Canvas(WIDTH, above + BELOW)
    with canvas.at(WIDTH / 2, above):
        draw(canvas)
    return canvas.picture(alt)


def joint(canvas: Canvas, soldered: bool = False) -> None:
    """Board, lead and copper, bare or with good solder."""
    board(canvas)
    if soldered:
        filled(canvas)
        fillet(canvas)
        lower_fillet(canvas)
    lead(canvas)
    copper(canvas)


def board(canvas: Canvas) -> None:
    """The board on both sides of the hole."""
    for x in (-100, HOLE):
        canvas.rect(x, 0, 100 - HOLE, THICK, BOARD, pen=1)


def lead(canvas: Canvas, down: float = 0) -> None:
    """The lead, and the top of the part below the board; down: how far it has come out."""
    canvas.rect(-40, BODY + down, 80, 14, ALUMINIUM, pen=1)
    canvas.rect(-LEAD, LEAD_END + down, 2 * LEAD, BODY - LEAD_END, METAL, pen=1)


def copper(canvas: Canvas, lifted: bool = False) -> None:
    """The plated wall of the hole and its pads; lifted: the upper right pad has let go."""
    for side in (-1, 1):
        outer = side * (HOLE + WALL)
        canvas.rect(min(outer, side * HOLE), 0, WALL, THICK, COPPER, pen=1)
        for y in (-COAT, THICK):
            if lifted and side == 1 and y < 0:
                bent = [(HOLE, -COAT), (26, -COAT), (PAD + 4, -24), (PAD + 7, -18), (28, 0)]
                canvas.polygon([*bent, (HOLE, 0)], COPPER, pen=1)
            else:
                canvas.rect(min(side * HOLE, side * PAD), y, PAD - HOLE, COAT, COPPER, pen=1)


def filled(canvas: Canvas, bottom: float = THICK, fill: str = SOLDER) -> None:
    """Solder in the hole from the upper face of the board down to `bottom`."""
    canvas.rect(-HOLE, 0, 2 * HOLE, bottom, fill, pen=1)


def fillet(canvas: Canvas, reach: float = PAD - 3, rise: float = FLANK) -> None:
    """Hollow flanks from the pad up to the lead, on the solder side."""
    flank = curve((-reach, -COAT), (-20, -COAT - 2), (-LEAD - 3, -18), (-LEAD, rise))
    canvas.polygon([*flank, *mirrored(flank)], SOLDER, pen=1)


def lower_fillet(canvas: Canvas) -> None:
    """What has run through to the side of the part."""
    low = THICK + COAT
    flank = curve((-PAD + 8, low), (-20, low + 1), (-LEAD - 3, low + 5), (-LEAD, low + 12))
    canvas.polygon([*flank, *mirrored(flank)], SOLDER, pen=1)


def mirrored(points: Sequence[tuple[float, float]]) -> list[Point]:
    """The same line on the other side of the lead, on the way back."""
    return [(-x, y) for x, y in reversed(points)]


def wide_tip(canvas: Canvas, away: float = 0.0) -> None:
    """A chisel tip that touches lead and pad; away: lifted off by so much."""
    points = [(-LEAD - 1, -34), (-36, -COAT - 1), (-76, -47), (-49, -74)]
    canvas.polygon([(x - away, y - away) for x, y in points], IRON, pen=1)


def drop(canvas: Canvas) -> None:
    """The solder that fills the corner between tip, lead and pad."""
    canvas.polygon([(-LEAD, -32), (-34, -COAT), (-LEAD, -COAT)], SOLDER, pen=1)


def fine_tip(canvas: Canvas) -> None:
    """A pointed tip that touches the pad in one point."""
    canvas.polygon([(-26, -COAT - 1), (-88, -58), (-66, -78)], IRON, pen=1)


def wire(canvas: Canvas, end: Point = (13, -12)) -> None:
    """Solder wire that comes from the upper right."""
    x, y = end
    for pen, stroke in ((9, INK), (6.5, SOLDER)):
        canvas.line((x, y), (x + 56, y - 44), stroke=stroke, pen=pen)


def nozzle(canvas: Canvas) -> None:
    """A desoldering tip over the lead, cut open: the bore leaves room round the lead."""
    for side in (-1, 1):
        points = ((BORE, -8), (BORE + 11, -8), (BORE + 24, -84), (BORE, -84))
        canvas.polygon([(side * x, y) for x, y in points], IRON, pen=1)


def pump(canvas: Canvas) -> None:
    """The soft nozzle of a hand pump, close to the joint on the other side of the lead."""
    canvas.polygon([(14, -22), (30, -6), (88, -58), (66, -82)], PLASTIC, pen=1)
    canvas.line((22, -14), (62, -54), stroke=QUIET, pen=1.5, dash="4 4")
