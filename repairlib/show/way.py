"""The way over a board: numbered stops, the line between them, and a ring where one stands."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from repairlib.show.canvas import INK, PAPER, Canvas, text_width
from repairlib.show.placed import Placed

WAY = "#7a5c9e"
HERE = "#0b5cad"
NUMBER_SIZE = 15
BADGE_HIGH = 19


def badge_room(part: Placed) -> float:
    """The width that the badge takes before a name; 0 for a part that is no stop."""
    return text_width(str(part.stop), NUMBER_SIZE, True) + 12 if part.stop else 0


def draw_badge(canvas: Canvas, part: Placed, left: float, y: float) -> None:
    """The number of a stop; dark while it lies ahead, light when it lies behind."""
    if not part.stop:
        return
    ground, ink = (PAPER, INK) if part.state == "behind" else (WAY, PAPER)
    ground = HERE if part.state == "here" else ground
    wide = badge_room(part) - 3
    canvas.rect(left, y - BADGE_HIGH / 2, wide, BADGE_HIGH, ground, stroke=INK, pen=1, round=9)
    canvas.text(left + wide / 2, y, str(part.stop), NUMBER_SIZE, fill=ink, bold=True)


def draw_way(canvas: Canvas, placed: Sequence[Placed]) -> None:
    """The line from stop to stop: broken ahead, whole as far as one has come."""
    stops = sorted((part for part in placed if part.stop), key=lambda part: part.stop)
    for one, other in pairwise(stops):
        come = one.state == "behind"
        style = {} if come else {"dash": "3 7"}
        canvas.line((one.x, one.y), (other.x, other.y), stroke=WAY, pen=3 if come else 2, **style)


def draw_here(canvas: Canvas, part: Placed) -> None:
    """The ring round the stop where one stands."""
    radius = max(part.half_width, part.half_height) + 7
    if part.round:
        canvas.circle(part.x, part.y, radius, "none", stroke=HERE, pen=5)
        return
    box = part.box.grown(6)
    wide, high = box.right - box.left, box.bottom - box.top
    canvas.rect(box.left, box.top, wide, high, "none", stroke=HERE, pen=5, round=5)
