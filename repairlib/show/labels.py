"""Finding free places for labels, so that none covers a part or another label."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass


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


@dataclass(frozen=True)
class Spot:
    """The middle of a label; leader: it is so far off that a line must lead to the part."""

    x: float
    y: float
    leader: bool


class Labels:
    """Places labels one after the other on a sheet with things already on it."""

    def __init__(self, sheet: Box, taken: Iterable[Box]) -> None:
        self._sheet = sheet
        self._taken = list(taken)

    def block(self, box: Box) -> None:
        """Keep labels off this box."""
        self._taken.append(box)

    def is_free(self, box: Box) -> bool:
        """True where the box lies on the sheet and covers nothing."""
        return self._fits(box, None)

    def find(self, part: Box, width: float, height: float) -> Spot:
        """The nearest free place for a label of this size; it is then taken."""
        places = list(self._places(part, width, height))
        # Nothing free within reach: the last place tried, rather than no label at all.
        spot, box = next((place for place in places if self._fits(*place[1:])), places[-1])[:2]
        self._taken.append(box)
        return spot

    def _fits(self, box: Box, ignored: Box | None) -> bool:
        others = (other for other in self._taken if other != ignored)
        return box.inside(self._sheet) and not any(box.overlaps(other) for other in others)

    def _places(self, part: Box, width: float, height: float) -> Iterator:
        x, y = (part.left + part.right) / 2, (part.top + part.bottom) / 2
        middle = _around(x, y, width, height)
        if middle.inside(part):
            # Inside its own outline; what else lies there (a plus sign) still counts.
            for shift in (0, 0.5, -0.5, 0.8, -0.8):
                place = _around(x, y + shift * (part.bottom - part.top - height) / 2, width, height)
                yield Spot(x, (place.top + place.bottom) / 2, False), place, part
        half_x = (part.right - part.left + width) / 2
        half_y = (part.bottom - part.top + height) / 2
        for gap in (3, 12, 24, 40, 60, 90, 130):
            for across, down in _DIRECTIONS:
                spot = Spot(x + across * (half_x + gap), y + down * (half_y + gap), gap > 12)
                yield spot, _around(spot.x, spot.y, width, height), None


_DIRECTIONS = (
    (1, 0), (-1, 0), (0, -1), (0, 1),
    (1, -0.6), (1, 0.6), (-1, -0.6), (-1, 0.6),
    (0.5, -1), (-0.5, -1), (0.5, 1), (-0.5, 1),
)  # fmt: skip


def _around(x: float, y: float, width: float, height: float) -> Box:
    return Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
