"""The board of a recap plan: every place to scale, its plus, and the way from stop to stop."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from math import inf

from repairlib.core.errors import RepairlibError
from repairlib.recap import (
    HOLD,
    OPPOSITE,
    SOLDER,
    Board,
    Item,
    Plan,
    Position,
    Stop,
    here_on,
    route_of,
    spoken,
    turned_over,
)
from repairlib.show.board import draw_board
from repairlib.show.board_legend import signs_of
from repairlib.show.canvas import COPPER, PAPER, Canvas
from repairlib.show.looks import look_of
from repairlib.show.picture import Picture
from repairlib.show.placed import place as placed_on

ANGLES = {"right": 0, "up": 90, "left": 180, "down": 270}
EDGE_MM = 14.0  # board around the outermost places
USUAL_MM = 6.0  # a place that nobody measured


def draw_recap(
    plan: Plan,
    done: Collection[str] | None = None,
    from_behind: bool = False,
    look: str = "plan",
    captioned: bool = True,
) -> Picture:
    """Draw the plan's board: its stops with their numbers, and which parts are not fitted, or wait
    with a "?".

    `done` holds the references that are fitted: with it the way so far is drawn, and a ring round
    the stop where one is now. `from_behind` shows the board turned over like a page, as it lies
    when it is soldered. `look` is that of the board, a name from LOOKS. `captioned` is False for
    the board alone. Raises RepairlibError for a plan without board, and for one from behind of a
    board whose file does not state its side.

    >>> from repairlib.recap import Board, Position, plan
    >>> board = Board("panel", [Position("C1", "supply", 20, 15, plus="left")])
    >>> "positive end to the left, stop 1, here." in draw_recap(plan("C1,10/16,el", board), []).alt
    True
    """
    board = plan.board
    if board is None or not board.positions:
        raise RepairlibError(
            plan.name, "this plan has no board", "plan(text, board=read_board(...))"
        )
    if from_behind and not board.seen_from:
        wrong = "the board file does not state from which side it is seen"
        raise RepairlibError(board.name, wrong, "a column seen_from in the board file")
    width = max(place.x_mm for place in board.positions) + EDGE_MM
    height = max(place.y_mm for place in board.positions) + EDGE_MM
    if from_behind:
        board = _turned_over(board, width)
    return draw_board(
        _parts_of(plan, board, done),
        width,
        height,
        title=board.name.capitalize(),
        seen=spoken(board.seen_from),
        look=look,
        others=board.others,
        captioned=captioned,
    )


def signs_on_map(plan: Plan) -> list[str]:
    """What the signs of the plan's map mean, each in a sentence; none of a plan without board.

    >>> from repairlib.recap import Board, Position, plan
    >>> signs_on_map(plan("C1,10/16,el", Board("amp", [Position("C1", x_mm=20, plus="left")])))[0]
    '+ beside or in a part: positive lead'
    """
    if plan.board is None:
        return []
    parts = _parts_of(plan, plan.board, None)
    return signs_of([placed_on(part, inf, inf, 1) for part in parts])


def draw_map(board: Board, from_behind: bool = False) -> Picture:
    """Draw a board of which no list is known: each place and its plus, "?" where nobody looked.

    >>> board = Board("amp", [Position("C1", x_mm=20, y_mm=15, seen_from="solder side, fuse down")])
    >>> "seen from the component side" in draw_map(board, from_behind=True).alt
    True
    """
    width = max(place.x_mm for place in board.positions) + EDGE_MM
    height = max(place.y_mm for place in board.positions) + EDGE_MM
    if from_behind:
        board = _turned_over(board, width)
    parts = [_drawn(place, None, "to do") for place in board.positions]
    seen = spoken(board.seen_from)
    return draw_board(parts, width, height, title=board.name, seen=seen)


def component_side_first(board: Board) -> tuple[bool, ...]:
    """Whether each drawing of a board shows it from behind; one alone where no side is stated.

    >>> component_side_first(Board("amp", [Position("C1", seen_from="solder side, fuse down")]))
    (True, False)
    """
    if not board.seen_from:
        return (False,)
    behind = board.seen_from.startswith(SOLDER)
    return behind, not behind


def draw_both_sides(plan: Plan, captioned: bool = True) -> list[Picture]:
    """The board from the component side and then from the solder side; see draw_recap.

    One picture as the board file has it where the file does not state its side, and none of a plan
    without board.
    """
    if plan.board is None or not plan.board.positions:
        return []
    return [
        draw_recap(plan, from_behind=behind, captioned=captioned)
        for behind in component_side_first(plan.board)
    ]


def _turned_over(board: Board, width: float) -> Board:
    seen_from = turned_over(board.seen_from)
    places = [
        replace(
            place,
            x_mm=width - place.x_mm,
            plus=OPPOSITE.get(place.plus, place.plus),
            seen_from=seen_from,
        )
        for place in board.positions
    ]
    others = [other._replace(x_mm=width - other.x_mm) for other in board.others]
    return Board(board.name, places, others)


def _parts_of(plan: Plan, board: Board, done: Collection[str] | None) -> list[dict]:
    """The places of the board as draw_board takes them."""
    items = {item.reference: item for item in plan.all_items}
    states = _states(route_of(plan), done)
    return [
        _drawn(place, items.get(place.reference), *states.get(place.reference, ("keep", 0)))
        for place in board.positions
    ]


def _states(stops: list[Stop], done: Collection[str] | None) -> dict[str, tuple[str, int]]:
    """The state of each stop and its number, by its reference."""
    here = None if done is None else here_on(stops, done)
    states = {}
    for at, stop in enumerate(stops):
        behind = stop.reference in (done or ())
        state = "here" if at == here else "behind" if behind else "to do"
        states[stop.reference] = state, stop.number
    return states


def _drawn(place: Position, item: Item | None, state: str, stop: int = 0) -> dict:
    drawn = {"reference": place.reference, "x_mm": place.x_mm, "y_mm": place.y_mm}
    drawn |= {"state": state, "stop": stop}
    drawn["open"] = item is not None and item.verdict == HOLD
    drawn["handed_on"] = item is not None and item.handed_on
    bipolar = item is not None and item.new is not None and not item.new.polar
    drawn["polarity"] = "non-polar" if bipolar else "none" if place.plus == "none" else "polar"
    drawn["angle_deg"] = ANGLES.get(place.plus)
    can = item.new.can if item is not None and item.new is not None else None
    # The room that was measured, so that the map stays as it is when the list changes.
    diameter = place.max_diameter_mm or (can.diameter if can is not None else USUAL_MM)
    if place.form == "axial":
        long = place.spacing_mm or 2 * diameter
        upright = place.plus in ("up", "down")
        drawn["width_mm"], drawn["height_mm"] = (diameter, long) if upright else (long, diameter)
    elif place.form == "radial":
        drawn["diameter_mm"] = diameter
    else:
        drawn["width_mm"], drawn["height_mm"] = (place.spacing_mm or USUAL_MM) + 2, USUAL_MM / 2
    return drawn


def draw_empty_place(reference: str, plus: str, look: str = "green") -> Picture:
    """Draw the empty place of a radial part: two pads, and a plus printed on the side `plus`.

    look: of the board, a name from LOOKS. Raises RepairlibError for a side that is none of ANGLES.

    >>> draw_empty_place("C23", "left")
    The empty place C23 on a board, seen from the component side. A plus sign is printed to the
    left of its two pads.
    """
    if plus not in ANGLES:
        raise RepairlibError(plus, "not a side", ", ".join(ANGLES))
    right, down = {"right": (1, 0), "up": (0, -1), "left": (-1, 0), "down": (0, 1)}[plus]
    board = look_of(look)
    canvas = Canvas(360, 250)
    canvas.rect(4, 4, 352, 242, board.ground, round=8)
    with canvas.at(180, 125):
        for side, way in (
            (1, [(0, 0), (40, -50), (165, -50)]),
            (-1, [(0, 0), (-40, 50), (-40, 110)]),
        ):
            start = side * 34 * right, side * 34 * down
            canvas.line(start, *way[1:], stroke=board.trace, pen=12)
    canvas.text(20, 28, reference, 20, "start", board.print, bold=True)
    canvas.text(346, 232, "board", 15, "end", board.print)
    with canvas.at(180, 125):
        canvas.circle(0, 0, 74, stroke=board.print)
        for side in (1, -1):
            canvas.circle(side * 34 * right, side * 34 * down, 13, COPPER, pen=1.5)
            canvas.circle(side * 34 * right, side * 34 * down, 5, PAPER, pen=1.5)
        x, y = 97 * right, 97 * down
        canvas.line((x - 10, y), (x + 10, y), stroke=board.print, pen=5)
        canvas.line((x, y - 10), (x, y + 10), stroke=board.print, pen=5)
    where = {"up": "above", "down": "below"}.get(plus, f"to the {plus} of")
    return canvas.picture(
        f"The empty place {reference} on a board, seen from the component side. "
        f"A plus sign is printed {where} its two pads."
    )
