"""The board of a practice set as it lies on the bench: its parts, its points, what was done to it.

Only what an eye sees is drawn, and the words say the same.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import cos, pi, sin

from repairlib.bench import PracticeSet, State
from repairlib.show.box import Box
from repairlib.show.canvas import COPPER, INK, PAPER, Canvas, Point, text_width
from repairlib.show.fences import draw_fence, fenced
from repairlib.show.labels import Labels
from repairlib.show.looks import look_of
from repairlib.show.picture import Picture

PER_MM = 8.0
LETTERS = 20.0  # 12 px where the board is three fifths of its size
PAD = 7.0  # radius of a point to probe
EDGE = 4.0
STEP = 8.0  # between two places that are tried for a point


class BoardPicture(Picture):
    """The board drawn, and where on it everything is, in units of the drawing.

    wide, high: of the whole. parts: the box of each part. points: the middle of each point.
    """

    def __init__(
        self,
        drawn: Picture,
        size: tuple[float, float],
        parts: Mapping[str, Box],
        points: Mapping[str, Point],
    ) -> None:
        super().__init__(drawn.svg, drawn.alt)
        self.wide, self.high = size
        self.parts, self.points = parts, points


def draw_practice_board(state: State) -> BoardPicture:
    """Draw the board of an attempt as it is now.

    >>> from repairlib.bench import begin, demo_set
    >>> drawn = draw_practice_board(begin(demo_set("desk radio"), (), "demo"))
    >>> "C1, reservoir capacitor" in drawn.alt, sorted(drawn.points)[:2]
    (True, ['0', 'a'])
    """
    of = state.set
    boxes = {part.name: _box(part) for part in of.parts}
    wide, high = of.wide * PER_MM + 2 * EDGE, of.high * PER_MM + 2 * EDGE
    canvas = Canvas(wide, high)
    look = look_of("green")
    points = _points(of, boxes, Box(EDGE, EDGE, wide - EDGE, high - EDGE))
    canvas.rect(EDGE, EDGE, wide - 2 * EDGE, high - 2 * EDGE, look.ground, round=8)
    for fence in fenced(boxes[part.name] for part in of.parts if part.mains):
        draw_fence(canvas, fence, bare=True)
    labels = Labels(Box(EDGE, EDGE, wide - EDGE, high - EDGE), boxes.items())
    for name, (x, y) in points.items():
        labels.block(f"point {name}", _round_point(x, y, name))
    for part in of.parts:
        box, place = boxes[part.name], state.places[part.name]
        sides = (box.left, box.top, box.right - box.left, box.bottom - box.top)
        if place.fitted is None:
            canvas.rect(*sides, stroke=look.print, dash="6 5", round=3)
        else:
            canvas.rect(*sides, PAPER, stroke=INK, round=3)
    for name, (x, y) in points.items():
        canvas.circle(x, y, PAD, COPPER, pen=1.5)
        canvas.text(x + PAD + 3, y, name, LETTERS, "start", look.print)
    by_size = sorted(of.parts, key=lambda part: -part.wide * part.high)
    wanted = [(part.name, text_width(part.name, LETTERS, True) + 4) for part in by_size]
    for name, spot in labels.place(wanted, LETTERS).items():
        box = boxes[name]
        inside = box.left < spot.x < box.right and box.top < spot.y < box.bottom
        dark = inside and state.places[name].fitted is not None
        if spot.leader:
            canvas.line(*spot.leader, stroke=look.other, pen=1.2)
        canvas.text(spot.x, spot.y, name, LETTERS, fill=INK if dark else look.print, bold=True)
    return BoardPicture(canvas.picture(_in_words(state)), (wide, high), boxes, points)


def _box(part) -> Box:
    x, y = part.x * PER_MM + EDGE, part.y * PER_MM + EDGE
    wide, high = part.wide * PER_MM / 2, part.high * PER_MM / 2
    return Box(x - wide, y - high, x + wide, y + high)


def _round_point(x: float, y: float, name: str) -> Box:
    right = x + PAD + 5 + text_width(name, LETTERS)
    return Box(x - PAD - 2, y - LETTERS / 2 - 1, right, y + LETTERS / 2 + 1)


def _points(of: PracticeSet, boxes: Mapping[str, Box], sheet: Box) -> dict[str, Point]:
    """A free place for each point, as near as can be to the parts that it joins."""
    taken = [box.grown(3) for box in boxes.values()]
    found: dict[str, Point] = {}
    for name in of.points:
        at = [boxes[part.name] for part in of.parts if name in part.nodes]
        x = sum(box.left + box.right for box in at) / 2 / len(at)
        y = sum(box.top + box.bottom for box in at) / 2 / len(at)
        spot = next(one for one in _around(x, y) if _is_free(one, name, sheet, taken))
        found[name] = spot
        taken.append(_round_point(*spot, name).grown(2))
    return found


def _around(x: float, y: float) -> Iterator[Point]:
    """Places round that one, the nearest first."""
    for ring in range(200):
        for turn in range(max(1, 6 * ring)):
            angle = 2 * pi * turn / max(1, 6 * ring)
            yield x + STEP * ring * cos(angle), y + STEP * ring * sin(angle)


def _is_free(spot: Point, name: str, sheet: Box, taken: list[Box]) -> bool:
    box = _round_point(*spot, name)
    return box.inside(sheet) and not any(box.overlaps(it) for it in taken)


def _in_words(state: State) -> str:
    of = state.set
    said = [f"Board of the {of.title}, {of.wide:g} mm wide and {of.high:g} mm high, from above."]
    for part in of.parts:
        where = f"{part.x:g} mm from the left, {part.y:g} mm from the top"
        joins = f"joins {part.nodes[0]} and {part.nodes[1]}"
        empty = ", its place is empty" if state.places[part.name].fitted is None else ""
        mains = ", on the mains side" if part.mains else ""
        said.append(f"{part.name}, {part.what}, {where}, {joins}{mains}{empty}.")
    return " ".join(said)
