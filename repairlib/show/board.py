"""A board plan: parts to scale, seen from one side, each plus in its place."""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, pi, sin
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted
from repairlib.show.anatomy import arc
from repairlib.show.board_legend import LETTERS, legend_of
from repairlib.show.box import Box
from repairlib.show.canvas import (
    INK,
    NEGATIVE,
    PAPER,
    POSITIVE,
    Canvas,
    text_width,
)
from repairlib.show.fences import draw_fence, fenced, sides_of_fence
from repairlib.show.labels import Labels, Spot
from repairlib.show.looks import Look, look_of
from repairlib.show.other_parts import draw_others
from repairlib.show.picture import Picture
from repairlib.show.placed import Placed, field, place
from repairlib.show.way import badge_room, draw_badge, draw_here, draw_way

PLAN_WIDTH = 1000
MARGIN = 24
HEADER = 40
LINE = 34  # from one line of the legend to the next
LABEL_SIZE = 17
EDGE = 4  # round a board that stands without a caption
TALLEST = 900  # of the board itself, so that a narrow board does not fill three screens

NEGATIVE_SIDE = "#44586a"


def draw_board(
    parts: Iterable,
    width_mm: float,
    height_mm: float,
    *,
    title: str = "Board",
    seen: str = "seen from the component side",
    look: str = "plan",
    others: Iterable = (),
    captioned: bool = True,
) -> Picture:
    """Draw a board with every part to scale; `seen` says from which side.

    parts: dicts or objects with reference, x_mm, y_mm (centre, from the top left corner, y
    downwards), diameter_mm or width_mm and height_mm as they lie on the board, and optionally
    polarity ("polar", "non-polar" or "none"), angle_deg (where the positive end points: 0 right,
    90 up, 180 left, 270 down; absent when not known, then shown as "?") and state ("to do",
    "here", "behind" or "keep"), stop (its number in the order of work, in a badge before its name),
    open (true for a part that still waits for an answer: a "?" stands beside its reference) and
    handed_on (true on the mains or at a dangerous voltage: a double red line runs round it). Where
    a name stands does not depend on the states, so that nothing jumps on the way.
    look: of the board, a name from LOOKS; "plan" is pale, for paper. others: what else is on the
    board, to find one's way by: dicts with kind (a name from OTHERS), x_mm, y_mm, width_mm,
    height_mm. They are drawn as thin outlines without a name. captioned: with its title above and
    what its signs mean below; without, the board alone.

    Raises RepairlibError for a part without place or size, one that is off the board, and one that
    is placed twice, and for a look or a kind that is not drawn.

    >>> part = dict(reference="C1", x_mm=20, y_mm=15, diameter_mm=10, polarity="polar",
    ...             angle_deg=180, state="here", stop=1)
    >>> draw_board([part], 60, 40)
    Board, 60 mm wide and 40 mm high, seen from the component side. 1 part. C1: 20 mm from the
    left, 15 mm from the top, positive end to the left, stop 1, here.
    """
    parts = list(parts)
    if not (width_mm > 0 and height_mm > 0):
        raise RepairlibError(f"{width_mm} x {height_mm} mm", "not a board size", "lengths above 0")
    scale = min((PLAN_WIDTH - 2 * MARGIN) / width_mm, TALLEST / height_mm)
    placed = [place(part, width_mm, height_mm, scale) for part in parts]
    _check_once([part.reference for part in placed])
    wide, high = width_mm * scale, height_mm * scale
    legend = legend_of(placed, PLAN_WIDTH - 2 * MARGIN) if captioned else []
    if captioned:
        canvas = Canvas(PLAN_WIDTH, HEADER + high + LINE * len(legend) + 12)
        canvas.text(MARGIN, 20, f"{title}, {seen}", 19, "start", bold=True)
    else:
        canvas = Canvas(wide + 2 * EDGE, high + 2 * EDGE)
    painted = look_of(look)
    with canvas.at((canvas.width - wide) / 2, HEADER if captioned else EDGE):
        canvas.rect(0, 0, wide, high, painted.ground, round=6)
        draw_others(canvas, others, width_mm, height_mm, scale, painted)
        for fence in fenced(part.box for part in placed if part.handed_on):
            draw_fence(canvas, fence, painted.bare)
        draw_way(canvas, placed)
        labels = Labels(
            Box(2, 2, wide - 2, high - 2), [(part.reference, part.box) for part in placed]
        )
        for part in placed:
            if part.handed_on:
                for side in sides_of_fence(part.box):
                    labels.block(part.reference, side)
            _draw_part(canvas, part, labels, painted)
        # Large parts first: their label goes inside, and small parts get the free places.
        by_size = sorted(placed, key=lambda part: -part.half_width * part.half_height)
        spots = labels.place([(part.reference, _room(part)) for part in by_size], LABEL_SIZE - 1)
        for part in placed:
            _draw_label(canvas, part, spots[part.reference], painted)
    for row, (line, colour) in enumerate(legend):
        canvas.text(MARGIN, HEADER + high + 24 + LINE * row, line, LETTERS, "start", colour)
    return canvas.picture(
        _words(f"{title}, {width_mm:g} mm wide and {height_mm:g} mm high, {seen}", parts, placed)
    )


def _check_once(references: list[str]) -> None:
    twice = next((one for one in references if references.count(one) > 1), None)
    if twice is not None:
        raise RepairlibError(twice, "placed twice on the board", "each part once")


def _draw_part(canvas: Canvas, part: Placed, labels: Labels, look: Look) -> None:
    style: dict[str, Any] = {"pen": 2, "stroke": look.outline}
    if part.state == "keep":
        style["dash"] = "6 5"
    box = part.box
    if part.round:
        canvas.circle(part.x, part.y, part.half_width, PAPER, **style)
    else:
        canvas.rect(box.left, box.top, box.right - box.left, box.bottom - box.top, PAPER, **style)
    if part.polarity == "polar":
        _draw_polarity(canvas, part, labels, look)
    if part.polarity == "non-polar" and part.room_inside:
        canvas.text(part.x, part.y - 6, "NP", 12, bold=True)
    size = min(12, max(5, min(part.half_width, part.half_height) * 0.42))
    labels.block(part.reference, Box(part.x - size, part.y - size, part.x + size, part.y + size))
    if part.state == "here":
        draw_here(canvas, part)


def _draw_polarity(canvas: Canvas, part: Placed, labels: Labels, look: Look) -> None:
    if part.angle is None:
        canvas.text(part.x, part.y, "?", LABEL_SIZE, fill=POSITIVE, bold=True)
        return
    across, up = cos(part.angle), -sin(part.angle)
    if part.round:
        back = 180 - part.angle * 180 / pi
        segment = arc(part.x, part.y, part.half_width, back - 50, back + 50)
        canvas.polygon(segment, NEGATIVE_SIDE, stroke=look.outline)
        xs, ys = [x for x, _ in segment], [y for _, y in segment]
        labels.block(part.reference, Box(min(xs), min(ys), max(xs), max(ys)))
    reach = abs(across) * part.half_width + abs(up) * part.half_height
    # A small part has no room inside: its plus stands just outside the outline.
    # Where a neighbour is in the way it goes inside after all, drawn smaller.
    arm, distance = 6, reach * 0.66 if reach >= 22 else reach + 9
    plus = _around_plus(part, across, up, distance, arm)
    if reach < 22 and not labels.is_free(plus):
        arm, distance = 4, reach * 0.4
        plus = _around_plus(part, across, up, distance, arm)
    x, y = (plus.left + plus.right) / 2, (plus.top + plus.bottom) / 2
    if look.bare and not plus.inside(part.box):
        canvas.circle(x, y, arm + 2, PAPER, stroke="none")
    for dx, dy in ((arm, 0), (0, arm)):
        canvas.line((x - dx, y - dy), (x + dx, y + dy), stroke=POSITIVE, pen=arm / 2 + 0.5)
    labels.block(part.reference, plus)
    if not part.round and reach >= 22:
        # No dark bar here: on a flat chip a bar would be read as positive.
        minus = _around_plus(part, -across, -up, distance, arm)
        y = (minus.top + minus.bottom) / 2
        canvas.line((minus.left + 2, y), (minus.right - 2, y), stroke=NEGATIVE, pen=3.5)
        labels.block(part.reference, minus)


def _around_plus(part: Placed, across: float, up: float, distance: float, arm: float) -> Box:
    x, y = part.x + across * distance, part.y + up * distance
    return Box(x - arm - 2, y - arm - 2, x + arm + 2, y + arm + 2)


def _room(part: Placed) -> float:
    """The width that its label takes, whether it waits for an answer or not."""
    words = part.label if part.open or part.stop else f"{part.label}?"
    return badge_room(part) + text_width(words, LABEL_SIZE, True) + 4


def _draw_label(canvas: Canvas, part: Placed, spot: Spot, look: Look) -> None:
    if spot.leader:
        canvas.line(*spot.leader, stroke=look.other, pen=1.2)
    box = part.box
    inside = box.left < spot.x < box.right and box.top < spot.y < box.bottom
    draw_badge(canvas, part, spot.x - _room(part) / 2, spot.y)
    middle = spot.x + badge_room(part) / 2
    colour = INK if inside else look.print
    canvas.text(middle, spot.y, part.label, LABEL_SIZE, fill=colour, bold=True)


def _words(title: str, parts, placed: list[Placed]) -> str:
    head = f"{title}. {counted(len(placed), 'part')}."
    lines = []
    for part, raw in zip(placed, parts, strict=True):
        place = (
            f"{part.reference}: {float(field(raw, 'x_mm')):g} mm from the left, "
            f"{float(field(raw, 'y_mm')):g} mm from the top"
        )
        said = [place, _end_in_words(part), f"stop {part.stop}" if part.stop else ""]
        said.append(part.state if part.state != "to do" else "")
        said.append("on hold" if part.open else "")
        said.append("on the mains or above 60 V dc" if part.handed_on else "")
        lines.append(", ".join(word for word in said if word) + ".")
    return " ".join([head, *lines])


def _end_in_words(part: Placed) -> str:
    if part.polarity == "non-polar":
        return "non-polar, either way round"
    if part.polarity == "none":
        return ""
    if part.angle is None:
        return "positive end not known"
    degrees = part.angle * 180 / pi % 360
    sides = ("right", "upper right", "top", "upper left", "left", "lower left", "bottom")
    return f"positive end to the {(*sides, 'lower right')[round(degrees / 45) % 8]}"
