"""The board of a practice set as it lies on the bench: its parts, its points, what was done to it.

Only what the bare eye sees is drawn, and the words say the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin

from repairlib.bench import (
    BoardPart,
    Look,
    Place,
    PracticeSet,
    Reading,
    State,
    look,
    looks_of,
    on_mains_side,
)
from repairlib.show.box import Box
from repairlib.show.canvas import COPPER, INK, METAL, PAPER, POSITIVE, Canvas, Point, text_width
from repairlib.show.fences import draw_fence
from repairlib.show.looks import look_of
from repairlib.show.picture import Picture
from repairlib.show.practice_bodies import draw_on_board, has_room_inside
from repairlib.show.practice_layout import (
    EDGE,
    LETTERS,
    PAD,
    Layout,
    angle_of,
    lay_out,
    mark_box,
    mark_of,
    marked_node,
    point_box,
)
from repairlib.show.tools import BLACK, RED

LOOK = look_of("green")
BARE = "#b9a26a"  # the board where its copper is gone
WIRE = "#2f6fd0"
DIRTY, LIFTED, WIRED = "solder left on", "lifted", "bridged with a wire"
OF_A_PAD = 6.0  # its radius
MAINS = "mains: hand it on"


def draw_practice_board(
    state: State, reading: Reading | None = None, layout: Layout | None = None
) -> Picture:
    """Draw the board of an attempt as it is now.

    reading: the last one, whose probes are still on the board. layout: of this set, from
    `practice_layout.lay_out`; left out, it is found anew.

    >>> from repairlib.bench import begin, demo_set
    >>> drawn = draw_practice_board(begin(demo_set("desk radio"), (), "demo"))
    >>> "C1, reservoir capacitor" in drawn.alt
    True
    """
    of, layout = state.set, layout or lay_out(state.set)
    canvas = Canvas(layout.wide, layout.high)
    inside = (layout.wide - 2 * EDGE, layout.high - 2 * EDGE)
    canvas.rect(EDGE, EDGE, *inside, LOOK.ground, round=8)
    for fence in layout.fences:
        draw_fence(canvas, fence, bare=True)
    looks = {part.name: looks_of(state, part.name) for part in of.parts}
    for part in of.parts:
        _draw_place(canvas, part, state.places[part.name], looks[part.name], layout)
    for name, point in layout.points.items():
        _draw_point(canvas, name, point)
    for part in of.parts:
        _draw_name(canvas, part, state.places[part.name], layout)
    for fence in layout.fences:
        _draw_mains_word(canvas, fence, layout, of)
    _draw_probes(canvas, layout, reading, state)
    return canvas.picture(_in_words(state, reading))


def _draw_place(canvas: Canvas, part: BoardPart, place: Place, seen: Look, layout: Layout) -> None:
    box, ends = layout.parts[part.name], layout.ends[part.name]
    first = place.pads in (LIFTED, WIRED)
    for number, end in enumerate(ends):
        _draw_pad(canvas, end, place, gone=first and number == marked_node(part))
    canvas.rect(
        box.left,
        box.top,
        box.right - box.left,
        box.bottom - box.top,
        stroke=LOOK.print,
        pen=1.5,
        round=2,
    )
    _draw_mark(canvas, part, box)
    if place.fitted is not None:
        angle = angle_of(part) + 180 * seen.turned
        draw_on_board(canvas, part, box, angle % 360, "", seen.signs)
    if place.leg_up:
        x, y = ends[1]
        canvas.circle(x, y, OF_A_PAD, COPPER, pen=1.2)
        canvas.circle(x, y, 2.5, PAPER, pen=1)
        canvas.line((x + 3, y - 4), (x + 12, y - 18), stroke=INK, pen=3)
    if place.pads == WIRED:
        (x, y), (far, low) = ends[marked_node(part)], layout.points[part.nodes[marked_node(part)]]
        canvas.line((x, y), ((x + far) / 2, (y + low) / 2 - 14), (far, low), stroke=WIRE, pen=4)


def _draw_pad(canvas: Canvas, end: Point, place: Place, gone: bool) -> None:
    x, y = end
    if gone:
        canvas.circle(x, y, OF_A_PAD + 3, BARE, stroke=POSITIVE, pen=2, dash="4 3")
        canvas.circle(x + 12, y - 12, OF_A_PAD - 1, COPPER, pen=1.5)
        return
    canvas.circle(x, y, OF_A_PAD, COPPER, pen=1.2)
    if place.pads == DIRTY:
        canvas.circle(x + 2, y - 1, OF_A_PAD, METAL, pen=1)
        canvas.circle(x - 3, y + 3, OF_A_PAD - 2, METAL, pen=1)
    elif place.fitted is None:
        canvas.circle(x, y, 2.5, PAPER, pen=1)


def _draw_mark(canvas: Canvas, part: BoardPart, box: Box) -> None:
    """What the board's print says of the way round: a plus, a bar at the band, a dot at pin 1."""
    if part.plus is None:
        return
    x, y = mark_of(part, box)
    style = {"stroke": LOOK.print, "pen": 3}
    letter = part.circuit.letter if part.circuit else ""
    if letter == "C":
        canvas.line((x - 6, y), (x + 6, y), **style)
        canvas.line((x, y - 6), (x, y + 6), **style)
    elif letter == "D":
        upright = part.plus % 180 != 0
        across, down = (9, 0) if upright else (0, 9)
        canvas.line((x - across, y - down), (x + across, y + down), **style)
    else:
        canvas.circle(x, y, 4, LOOK.print, stroke="none")


def _draw_point(canvas: Canvas, name: str, point: Point) -> None:
    x, y = point
    canvas.circle(x, y, PAD, COPPER, pen=1.5)
    canvas.circle(x, y, 2.5, INK, stroke="none")
    canvas.text(x + PAD + 3, y, name, LETTERS, "start", LOOK.print)


def _draw_name(canvas: Canvas, part: BoardPart, place: Place, layout: Layout) -> None:
    spot, box = layout.names[part.name], layout.parts[part.name]
    if spot.leader:
        canvas.line(*spot.leader, stroke=LOOK.other, pen=1.2)
    inside = box.left < spot.x < box.right and box.top < spot.y < box.bottom
    on_case = inside and has_room_inside(part) and place.fitted is not None
    canvas.text(spot.x, spot.y, part.name, LETTERS, fill=INK if on_case else LOOK.print, bold=True)


def _draw_mains_word(canvas: Canvas, fence: Box, layout: Layout, of: PracticeSet) -> None:
    """The word of the mains side, at its line: where it hides least."""
    words = [MAINS]
    if text_width(MAINS, LETTERS, True) + 16 > layout.wide - 2 * EDGE - max(fence.left, EDGE):
        words = MAINS.split(": ")
    wide = max(text_width(word, LETTERS, True) for word in words) + 16
    high = len(words) * (LETTERS + 4) + 4
    left = min(max(fence.left, 2 * EDGE), layout.wide - 2 * EDGE - wide)
    tops = [fence.bottom + 3, fence.top - high - 3, fence.bottom - high / 2, fence.top - high / 2]
    spots = [Box(left, top, left + wide, top + high) for top in tops]
    sheet = Box(EDGE, EDGE, layout.wide - EDGE, layout.high - EDGE)
    taken = _kept_off(layout, of)
    within = [one for one in spots if one.inside(sheet)]
    box = min(within, key=lambda one: sum(one.overlaps(other) for other in taken))
    canvas.rect(box.left, box.top, wide, high, PAPER, stroke=POSITIVE, pen=2, round=4)
    for number, word in enumerate(words):
        y = box.top + 4 + (number + 0.5) * (LETTERS + 4) - 2
        canvas.text(box.left + wide / 2, y, word, LETTERS, fill=POSITIVE, bold=True)


def _draw_probes(canvas: Canvas, layout: Layout, reading: Reading | None, state: State) -> None:
    """Where the red and the black probe are, as rings with their sign."""
    red, black = reading.points if reading and reading.points[1] else ("", state.clipped)
    kept_off = _kept_off(layout, state.set)
    for name, colour, sign in ((red, RED, "+"), (black, BLACK, "−")):
        if name not in layout.points:
            continue
        x, y = layout.points[name]
        tip = next((one for one in _tips(x, y) if _is_clear(one, kept_off)), next(_tips(x, y)))
        kept_off.append(Box(tip[0] - 11, tip[1] - 11, tip[0] + 11, tip[1] + 11))
        canvas.line((x, y), tip, stroke=PAPER, pen=7)
        canvas.line((x, y), tip, stroke=colour, pen=4)
        canvas.circle(*tip, 11, colour, stroke=PAPER, pen=2)
        canvas.text(*tip, sign, LETTERS, fill=PAPER, bold=True)


def _tips(x: float, y: float) -> Iterator[Point]:
    """Where the handle of a probe on x, y may be: up to the left first."""
    for far in (33, 46, 60):
        for turn in range(16):
            angle = pi * (1.3 + turn / 8 * (-1) ** turn)
            yield x + far * cos(angle), y + far * sin(angle)


def _is_clear(tip: Point, kept_off: list[Box]) -> bool:
    x, y = tip
    return not any(Box(x - 13, y - 13, x + 13, y + 13).overlaps(one) for one in kept_off)


def _kept_off(layout: Layout, of: PracticeSet) -> list[Box]:
    """What the handle of a probe must not hide: bodies, marks, points and names."""
    taken = list(layout.parts.values())
    taken += [mark_box(part, layout.parts[part.name]) for part in of.parts if part.plus is not None]
    taken += [point_box(spot, name) for name, spot in layout.points.items()]
    for name, spot in layout.names.items():
        half = text_width(name, LETTERS, True) / 2
        taken.append(Box(spot.x - half, spot.y - 10, spot.x + half, spot.y + 10))
    return taken


def _in_words(state: State, reading: Reading | None) -> str:
    of = state.set
    said = [f"Board of the {of.title}, {of.wide:g} mm wide and {of.high:g} mm high, from above."]
    mains = [part.name for part in of.parts if part.mains]
    if mains:
        behind = f"Behind a double red line, marked “{MAINS}”: {', '.join(mains)}"
        theirs = [point for point in of.points if on_mains_side(of, point)]
        said.append(f"{behind}{', with the points ' if theirs else ''}{', '.join(theirs)}.")
    free = [point for point in of.points if not on_mains_side(of, point)]
    said.append(f"Points to probe: {', '.join(free)}.")
    for part in of.parts:
        where = f"{part.x:g} mm from the left, {part.y:g} mm from the top"
        joins = f"joins {part.nodes[0]} and {part.nodes[1]}"
        mains = ["behind the red line of the mains side"] if part.mains else []
        said.append(f"{'; '.join((look(state, part.name).shown, where, joins, *mains))}.")
    if reading and reading.points[1]:
        said.append(f"Probes: red on {reading.points[0]}, black on {reading.points[1]}.")
    if state.clipped:
        said.append(f"The black probe is clipped to {state.clipped}.")
    return " ".join(said)
