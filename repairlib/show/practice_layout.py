"""Where everything is on the board of a practice set: bodies, pads, points, names, fences.

It hangs on the set alone, so nothing jumps while a board is repaired.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, pi, sin

from repairlib.bench import BoardPart, PracticeSet, on_mains_side
from repairlib.show.box import Box, around
from repairlib.show.canvas import Point, text_width
from repairlib.show.fences import fenced
from repairlib.show.labels import Labels, Spot
from repairlib.show.practice_bodies import has_room_inside, is_long

PER_MM, WIDEST = 8.0, 968.0  # so large, and no wider: the letters stay 12 px on 600 px
LETTERS = 20.0
PAD = 8.0  # radius of a point to probe
EDGE = 4.0
STEP = 8.0  # between two places that are tried for a point
ROOM = 14.0  # between the mains side and the line round it


@dataclass(frozen=True)
class Layout:
    """All places in units of the drawing.

    parts: the box of each body. ends: the middle of each part's two pads, in the order of its
    nodes. points: the middle of each point to probe. names: where the name of each part stands.
    fences: what lies inside is the mains side.
    """

    wide: float
    high: float
    parts: dict[str, Box]
    ends: dict[str, tuple[Point, Point]]
    points: dict[str, Point]
    names: dict[str, Spot]
    fences: tuple[Box, ...]


def lay_out(of: PracticeSet) -> Layout:
    """Find the places for a set.

    >>> from repairlib.bench import demo_set
    >>> layout = lay_out(demo_set("desk radio"))
    >>> set(layout.points) == set(demo_set("desk radio").points)
    True
    """
    per_mm = min(PER_MM, (WIDEST - 2 * EDGE) / of.wide)
    wide, high = of.wide * per_mm + 2 * EDGE, of.high * per_mm + 2 * EDGE
    sheet = Box(EDGE, EDGE, wide - EDGE, high - EDGE)
    boxes = {part.name: _box(part, per_mm) for part in of.parts}
    ends = {part.name: _ends(part, boxes[part.name]) for part in of.parts}
    taken = [box.grown(7) for box in boxes.values()]
    taken += [mark_box(part, boxes[part.name]) for part in of.parts if part.plus is not None]
    mains = [name for name in of.points if on_mains_side(of, name)]
    inside = _points(of, mains, ends, sheet, taken)
    fences = _fences(of, boxes, inside)
    if len(fences) > 1:
        sides = [side for fence in fences for side in _sides(fence)]
        inside = _points(of, mains, ends, sheet, taken + sides)
    others = [name for name in of.points if name not in mains]
    taken += [fence.grown(4) for fence in fences]
    points = {**_points(of, others, ends, sheet, taken), **inside}
    points = {name: points[name] for name in of.points}
    names = _names(of, boxes, points, ends, sheet, fences)
    return Layout(wide, high, boxes, ends, points, names, fences)


def angle_of(part: BoardPart) -> float:
    """Where the end of a part with a mark points, in degrees; without one, its second end."""
    if part.plus is not None:
        return part.plus
    return 0.0 if part.wide >= part.high else 270.0


def marked_node(part: BoardPart) -> int:
    """Which of its nodes is at the end with the mark: the band of a diode is at its second."""
    is_diode = part.circuit is not None and part.circuit.letter == "D"
    return 1 if is_diode or part.plus is None else 0


def point_box(spot: Point, name: str) -> Box:
    """The room of a point with its name at the right of it."""
    x, y = spot
    right = x + PAD + 5 + text_width(name, LETTERS)
    return Box(x - PAD - 2, y - LETTERS / 2 - 1, right, y + LETTERS / 2 + 1)


def mark_of(part: BoardPart, box: Box) -> Point:
    """Where the board's print says the way round: at the band of a diode, else beside the pad."""
    angle = angle_of(part) * pi / 180
    across, down = cos(angle), -sin(angle)
    x = (box.left + box.right) / 2 + across * ((box.right - box.left) / 2 + 13)
    y = (box.top + box.bottom) / 2 + down * ((box.bottom - box.top) / 2 + 13)
    if part.circuit and part.circuit.letter == "D":
        return x, y
    return x + 13 * abs(down), y - 13 * abs(across)


def mark_box(part: BoardPart, box: Box) -> Box:
    """The room of that print."""
    x, y = mark_of(part, box)
    return Box(x - 9, y - 9, x + 9, y + 9)


def _box(part: BoardPart, per_mm: float) -> Box:
    """The box of its body; a long body lies along the way that it points."""
    x, y = part.x * per_mm + EDGE, part.y * per_mm + EDGE
    wide, high = part.wide * per_mm / 2, part.high * per_mm / 2
    upright = angle_of(part) % 180 != 0
    if is_long(part) and upright != (high > wide):
        wide, high = high, wide
    return Box(x - wide, y - high, x + wide, y + high)


def _ends(part: BoardPart, box: Box) -> tuple[Point, Point]:
    """The middles of its two pads, at the edge of its body."""
    angle = angle_of(part) * pi / 180
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    across, down = cos(angle) * (box.right - box.left) / 2, -sin(angle) * (box.bottom - box.top) / 2
    marked, other = (x + across, y + down), (x - across, y - down)
    return (other, marked) if marked_node(part) else (marked, other)


def _fences(of: PracticeSet, boxes, points) -> tuple[Box, ...]:
    """One line round all of the mains side, or several where another part stands between."""
    mains = [boxes[part.name] for part in of.parts if part.mains]
    others = [boxes[part.name] for part in of.parts if not part.mains]
    if not mains:
        return ()
    whole = around([*mains, *(point_box(spot, name) for name, spot in points.items())])
    whole = whole.grown(ROOM)
    return tuple(fenced(mains)) if any(whole.overlaps(one) for one in others) else (whole,)


def _sides(fence: Box) -> list[Box]:
    """The four sides of a fence, as thin boxes."""
    out, into = fence.grown(3), fence.grown(-9)
    return [
        Box(out.left, out.top, out.right, into.top),
        Box(out.left, into.bottom, out.right, out.bottom),
        Box(out.left, out.top, into.left, out.bottom),
        Box(into.right, out.top, out.right, out.bottom),
    ]


def _points(of: PracticeSet, names, ends, sheet: Box, taken: list[Box]) -> dict[str, Point]:
    """A free place for each point, as near as can be to the middle of the pads that it joins."""
    taken = list(taken)
    found: dict[str, Point] = {}
    for name in names:
        joined = list(_pads(of, ends, name))
        x = sum(x for x, _ in joined) / len(joined)
        y = sum(y for _, y in joined) / len(joined)
        spot = next(one for one in _around(x, y) if _is_free(one, name, sheet, taken))
        found[name] = spot
        taken.append(point_box(spot, name).grown(2))
    return found


def _pads(of: PracticeSet, ends, name: str) -> Iterator[Point]:
    for part in of.parts:
        for node, end in zip(part.nodes, ends[part.name], strict=True):
            if node == name:
                yield end


def _around(x: float, y: float) -> Iterator[Point]:
    """Places round that one, the nearest first."""
    for ring in range(300):
        for turn in range(max(1, 6 * ring)):
            angle = 2 * pi * turn / max(1, 6 * ring)
            yield x + STEP * ring * cos(angle), y + STEP * ring * sin(angle)


def _is_free(spot: Point, name: str, sheet: Box, taken: list[Box]) -> bool:
    box = point_box(spot, name)
    return box.inside(sheet.grown(-3)) and not any(box.overlaps(it) for it in taken)


def _names(of: PracticeSet, boxes, points, ends, sheet: Box, fences) -> dict[str, Spot]:
    labels = Labels(sheet, boxes.items())
    for name, (x, y) in points.items():
        labels.block(f"point {name}", point_box((x, y), name))
    for fence in fences:
        for side in _sides(fence):
            labels.block("the fence", side)
    for part in of.parts:
        if part.plus is not None:
            labels.block(part.name, mark_box(part, boxes[part.name]))
        if not has_room_inside(part):
            labels.block(part.name, boxes[part.name].grown(-0.5))
        for x, y in ends[part.name]:
            labels.block(part.name, Box(x - 5, y - 5, x + 5, y + 5))
    by_size = sorted(of.parts, key=lambda part: -part.wide * part.high)
    wanted = [(part.name, text_width(part.name, LETTERS, True) + 4) for part in by_size]
    return labels.place(wanted, LETTERS)
