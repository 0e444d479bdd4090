"""The line round what is not to be touched: a double red line, round neighbours together."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.show.box import Box, around
from repairlib.show.canvas import PAPER, POSITIVE, Canvas

DISTANCE = 12.0  # of the outer line from the parts inside
GAP = 5.0  # between the two lines


def fenced(parts: Iterable[Box]) -> list[Box]:
    """One box round each part, and one round those whose boxes would cross.

    >>> len(fenced([Box(0, 0, 10, 10), Box(30, 0, 40, 10), Box(90, 0, 99, 9)]))
    2
    """
    fences: list[Box] = []
    for part in parts:
        new = part.grown(DISTANCE)
        crossing = [fence for fence in fences if fence.overlaps(new)]
        while crossing:
            new = around([new, *crossing])
            fences = [fence for fence in fences if fence not in crossing]
            crossing = [fence for fence in fences if fence.overlaps(new)]
        fences.append(new)
    return fences


def sides_of_fence(part: Box) -> list[Box]:
    """The four sides of the line round one part, as thin boxes."""
    out, into = part.grown(DISTANCE), part.grown(DISTANCE - GAP)
    return [
        Box(out.left, out.top, out.right, into.top),
        Box(out.left, into.bottom, out.right, out.bottom),
        Box(out.left, out.top, into.left, out.bottom),
        Box(into.right, out.top, out.right, out.bottom),
    ]


def draw_fence(canvas: Canvas, box: Box, bare: bool = False) -> None:
    """Draw the double line; `bare` puts white below it, as a dark board needs."""
    if bare:
        line = box.grown(-GAP / 2)
        wide, high = line.right - line.left, line.bottom - line.top
        canvas.rect(line.left, line.top, wide, high, stroke=PAPER, pen=GAP + 6, round=6)
    for inset in (0, GAP):
        line = box.grown(-inset)
        wide, high = line.right - line.left, line.bottom - line.top
        canvas.rect(line.left, line.top, wide, high, stroke=POSITIVE, pen=2, round=8 - inset)
