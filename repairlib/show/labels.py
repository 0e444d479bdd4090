"""Finding free places for labels: none covers a part or another label, each is seen to be its
part's."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from repairlib.show.box import Box

CLEAR = 8.0  # nearer than that to another part, a label may be taken for that one's
MISLEADING = 30.0  # what it costs to stand nearer to another part than to its own
ROUNDS = 3
FAR = 12.0  # farther than that from its part, a line must lead there


@dataclass(frozen=True)
class Spot:
    """The middle of a label, and the line that must lead to its part, if it needs one."""

    x: float
    y: float
    leader: tuple[tuple[float, float], tuple[float, float]] | None


class Labels:
    """Places labels on a sheet with things already on it.

    `taken` are the outlines of the parts by their names; `wanted` in `place` are the widths.
    """

    def __init__(self, sheet: Box, taken: Iterable[tuple[str, Box]]) -> None:
        self._sheet = sheet
        self._taken = list(taken)
        self._outlines = dict(self._taken)
        self._labels: dict[str, Box] = {}

    def block(self, owner: str, box: Box) -> None:
        """Keep labels off this box, which belongs to the part `owner`."""
        self._taken.append((owner, box))

    def is_free(self, box: Box) -> bool:
        """True where the box lies on the sheet and covers nothing."""
        return box.inside(self._sheet) and not any(box.overlaps(it) for _, it in self._taken)

    def place(self, wanted: Iterable[tuple[str, float]], height: float) -> dict[str, Spot]:
        """A free place for the label of each part and its width: near its own, clear of others."""
        choices = {owner: self._choices(owner, width, height) for owner, width in wanted}
        order = sorted(choices, key=lambda one: _good(choices[one]))
        # Again, now that the others have theirs: a better place may have become free.
        for owner in order * ROUNDS:
            self._labels.pop(owner, None)
            taken = list(self._labels.values())
            free = (box for _, box in choices[owner] if not any(box.overlaps(it) for it in taken))
            # Nothing free within reach: the best place, rather than no label at all.
            self._labels[owner] = next(free, choices[owner][0][1])
        return {owner: self._spot(owner, box) for owner, box in self._labels.items()}

    def _choices(self, owner: str, width: float, height: float) -> list[tuple[float, Box]]:
        """Its places that cover no part, the best first."""
        part = self._outlines[owner]
        places = list(_places(part, width, height))
        free = [box for box in places if self._fits(box, part)] or places[-1:]
        costs = [(self._cost(box, owner, part), box) for box in free]
        return sorted(costs, key=lambda choice: choice[0])

    def _fits(self, box: Box, part: Box) -> bool:
        """Whether it is free; inside its own outline only what else lies there counts."""
        others = (it for _, it in self._taken if it != part or not box.inside(part))
        return box.inside(self._sheet) and not any(box.overlaps(it) for it in others)

    def _cost(self, box: Box, owner: str, part: Box) -> float:
        if box.inside(part):
            return 0
        own, near = box.distance(part), self._nearest(box, owner)
        misleading = MISLEADING if near < own else 0
        return own + 3 * max(0, CLEAR - near) + misleading

    def _nearest(self, box: Box, owner: str) -> float:
        """How far the nearest other part is, its signs included."""
        return min((box.distance(it) for name, it in self._taken if name != owner), default=CLEAR)

    def _spot(self, owner: str, box: Box) -> Spot:
        part = self._outlines[owner]
        own = box.distance(part)
        far = own > FAR or self._nearest(box, owner) < own
        x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
        return Spot(x, y, _between(box, part) if far else None)


def _good(choices: list[tuple[float, Box]]) -> int:
    """How many good places there are: who has few chooses first."""
    return sum(cost <= FAR for cost, _ in choices)


def _places(part: Box, width: float, height: float) -> Iterator[Box]:
    x, y = (part.left + part.right) / 2, (part.top + part.bottom) / 2
    if _around(x, y, width, height).inside(part):
        for shift in (0, 0.5, -0.5, 0.8, -0.8):
            yield _around(x, y + shift * (part.bottom - part.top - height) / 2, width, height)
    half_x = (part.right - part.left + width) / 2
    half_y = (part.bottom - part.top + height) / 2
    for gap in (3, 6, 12, 24, 40, 60, 90, 130):
        for across, down in _DIRECTIONS:
            yield _around(x + across * (half_x + gap), y + down * (half_y + gap), width, height)


_DIRECTIONS = (
    (1, 0), (-1, 0), (0, -1), (0, 1),
    (1, -0.6), (1, 0.6), (-1, -0.6), (-1, 0.6),
    (0.5, -1), (-0.5, -1), (0.5, 1), (-0.5, 1),
)  # fmt: skip


def _around(x: float, y: float, width: float, height: float) -> Box:
    return Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _between(label: Box, part: Box) -> tuple[tuple[float, float], tuple[float, float]]:
    """The shortest line from the label to the part."""
    x, y = (label.left + label.right) / 2, (label.top + label.bottom) / 2
    end = _clamped(x, part.left, part.right), _clamped(y, part.top, part.bottom)
    return (
        _clamped(end[0], label.left, label.right),
        _clamped(end[1], label.top, label.bottom),
    ), end


def _clamped(value: float, low: float, high: float) -> float:
    return min(max(value, low), high)
