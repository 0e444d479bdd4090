"""One stop of the route, large: its place on the board, its plus, and the edge that tells up."""

from __future__ import annotations

from repairlib.recap import Stop, spoken
from repairlib.show.anatomy import arc
from repairlib.show.canvas import BOARD, INK, NEGATIVE, PAPER, POSITIVE, Canvas
from repairlib.show.picture import Picture

WIDE, HIGH, EDGE = 300, 190, 26
RADIUS = 42
WAYS = {"right": (1, 0), "up": (0, -1), "left": (-1, 0), "down": (0, 1)}
NEGATIVE_SIDE = "#44586a"


def draw_stop(stop: Stop) -> Picture:
    """Draw where the plus of the new part goes, with the edge of the board that is named.

    A "?" stands where nobody looked, and "no plus" in a bipolar part.

    >>> from repairlib.recap import Board, Position, plan, route_of
    >>> place = Position("C1", plus="left", seen_from="component side, fuse edge down")
    >>> draw_stop(route_of(plan("C1,10/16,el", Board("amp", [place])))[0])
    C1: plus left, seen from the component side with the fuse edge down.
    """
    place = stop.item.place
    seen_from = place.seen_from if place is not None else ""
    polar = stop.item.new is None or stop.item.new.polar
    way = WAYS.get(place.plus) if place is not None and polar else None
    canvas = Canvas(WIDE, HIGH + 22)
    canvas.rect(3, 3, WIDE - 6, HIGH - 6, BOARD, round=8)
    _draw_edge(canvas, seen_from)
    long = place is not None and place.form == "axial"
    off = {" down": -EDGE / 2, " up": EDGE / 2}  # beside the edge, which takes room
    middle = HIGH / 2 + next((by for end, by in off.items() if seen_from.endswith(end)), 0)
    with canvas.at(WIDE / 2, middle):
        (_draw_long if long else _draw_round)(canvas, way)
        if way is None:
            canvas.text(0, 0, "?" if polar else "no plus", 30 if polar else 17, fill=POSITIVE)
        else:
            _draw_signs(canvas, way, long)
    told = spoken(seen_from).partition(" with ")[0] if seen_from else "side not stated"
    canvas.text(WIDE / 2, HIGH + 10, told, 15)
    return canvas.picture(f"{stop.reference}: {stop.plus}.")


def _draw_edge(canvas: Canvas, seen_from: str) -> None:
    """The named edge as a dark bar with its name, on its side of the board."""
    edge = seen_from.partition(", ")[2]
    name, _, lies = edge.rpartition(" ")
    if lies not in WAYS:
        return
    right, down = WAYS[lies]
    if down:
        top = HIGH - 3 - EDGE if down > 0 else 3
        canvas.rect(3, top, WIDE - 6, EDGE, INK, round=6)
        canvas.fitted_text(WIDE / 2, top + EDGE / 2, [name], WIDE - 20, 16, fill=PAPER)
        return
    canvas.rect(WIDE - 15 if right > 0 else 3, 3, 12, HIGH - 6, INK, round=4)
    at, anchor = (WIDE - 22, "end") if right > 0 else (22, "start")
    canvas.text(at, 22, name, 16, anchor)


def _draw_round(canvas: Canvas, way: tuple[int, int] | None) -> None:
    canvas.circle(0, 0, RADIUS, PAPER, pen=3)
    if way is not None:
        back = {(1, 0): 180, (0, -1): 90, (-1, 0): 0, (0, 1): 270}[way]
        canvas.polygon(arc(0, 0, RADIUS, back - 50, back + 50), NEGATIVE_SIDE)


def _draw_long(canvas: Canvas, way: tuple[int, int] | None) -> None:
    right, _ = way or (1, 0)
    wide, high = (2.4 * RADIUS, 1.2 * RADIUS) if right else (1.2 * RADIUS, 2 * RADIUS)
    canvas.rect(-wide / 2, -high / 2, wide, high, PAPER, pen=3, round=6)


def _draw_signs(canvas: Canvas, way: tuple[int, int], long: bool) -> None:
    right, down = way
    reach = RADIUS + (28 if long and right else 18)
    x, y = reach * right, reach * down
    canvas.line((x - 10, y), (x + 10, y), stroke=POSITIVE, pen=6)
    canvas.line((x, y - 10), (x, y + 10), stroke=POSITIVE, pen=6)
    canvas.line((-x - 10, -y), (-x + 10, -y), stroke=NEGATIVE, pen=6)
