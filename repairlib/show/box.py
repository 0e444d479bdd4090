"""An upright rectangle on a drawing: where things are, and how far apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import hypot


@dataclass(frozen=True)
class Box:
    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box) -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def inside(self, other: Box) -> bool:
        return (
            self.left >= other.left
            and self.right <= other.right
            and self.top >= other.top
            and self.bottom <= other.bottom
        )

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def distance(self, other: Box) -> float:
        """How far apart their outlines are; 0 where they touch."""
        return hypot(
            max(0, self.left - other.right, other.left - self.right),
            max(0, self.top - other.bottom, other.top - self.bottom),
        )


def around(boxes: Iterable[Box]) -> Box:
    """The smallest box round all of them; an empty one at the origin where there is none.

    >>> around([Box(0, 0, 2, 1), Box(5, -3, 6, 0)])
    Box(left=0, top=-3, right=6, bottom=1)
    """
    boxes = list(boxes) or [Box(0.0, 0.0, 0.0, 0.0)]
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    )
