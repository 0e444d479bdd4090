"""Whether the parts of a set have room on its board, and their names as well."""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.bench.board_part import BoardPart
from repairlib.bench.practice_set import PracticeSet

APART = 2.0  # mm between two parts; a choice of this workbook
NAME_HIGH, LETTER_WIDE = 3.0, 2.0  # mm that a name takes above its part; a choice of this workbook

Box = tuple[float, float, float, float]  # left, top, right, bottom


def without_room(of: PracticeSet) -> Iterator[str]:
    """What has no room on the board, a line each: parts over its edge, parts or names that touch.

    A name stands above its part where the part is too small to hold it.

    >>> from repairlib.bench.practice_set import demo_set
    >>> list(without_room(demo_set("desk radio")))
    []
    """
    for part in of.parts:
        left, top, right, bottom = _box(part)
        if left < 0 or top < 0 or right > of.wide or bottom > of.high:
            yield f"{part.name} stands over the edge of the board, {of.wide:g} x {of.high:g} mm"
    for at, part in enumerate(of.parts):
        for other in of.parts[at + 1 :]:
            if _touch(_box(part), _box(other), APART):
                yield f"{part.name} and {other.name} are less than {APART:g} mm apart"
    for part in of.parts:
        name = _name_box(part)
        for other in of.parts:
            if other is not part and name and _touch(name, _box(other), 0.0):
                yield f"the name {part.name} above its part runs into {other.name}"


def _box(part: BoardPart) -> Box:
    wide, high = part.wide / 2, part.high / 2
    return part.x - wide, part.y - high, part.x + wide, part.y + high


def _name_box(part: BoardPart) -> Box | None:
    """Where the name stands, None where it has room inside the part."""
    wide = LETTER_WIDE * len(part.name)
    if part.wide >= wide + 1 and part.high >= NAME_HIGH + 1:
        return None
    _, top, _, _ = _box(part)
    return part.x - wide / 2, top - NAME_HIGH, part.x + wide / 2, top


def _touch(one: Box, other: Box, apart: float) -> bool:
    near = apart - 1e-9
    return (
        one[0] - other[2] < near
        and other[0] - one[2] < near
        and one[1] - other[3] < near
        and other[1] - one[3] < near
    )
