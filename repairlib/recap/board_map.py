"""The map of a board as a learner makes it, all of it text as typed, and the board that it says.

A map holds the name of the board, its width, from which side it is looked at, one edge that tells
where up is, and its places with the headings of a board file. Nothing is made up: a plus that
nobody looked at stays unknown, and a map whose side is not stated is no board yet.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.references import names_alone
from repairlib.recap.board import Board, Position
from repairlib.recap.board_file import COLUMNS, read_position
from repairlib.recap.board_side import COMPONENT, SOLDER

USUAL_WIDTH = 100  # mm; the map of a board that nobody measured is drawn as wide as this
NOT_TO_SCALE = f"not to scale: taken as {USUAL_WIDTH} mm wide"
SIDES = (COMPONENT, SOLDER)
EMPTY = {"board": "", "side": "", "edge": "", "edge_lies": "", "width_mm": "", "height_mm": ""}


def board_of_map(typed: Mapping[str, Any]) -> Board:
    """The board that a map says. Raises RepairlibError for the first thing that is missing.

    >>> place = {"reference": "c1", "x_mm": "20", "y_mm": "15,5", "plus": "left"}
    >>> fixed = {"side": "component side", "edge": "fuse edge", "edge_lies": "down"}
    >>> board = board_of_map({**fixed, "board": "amp", "width_mm": "120", "places": [place]})
    >>> board["C1"].where_plus
    'plus left, seen from the component side with the fuse edge down'
    """
    seen_from = _seen_from(typed)
    places: dict[str, Position] = {}
    for number, cells in enumerate(typed.get("places", ()), 1):
        place = _place(cells, number, seen_from)
        if place.reference in places:
            wrong = "stands twice on the map"
            raise RepairlibError(place.reference, wrong, "each name once: C1, C2, C3")
        places[place.reference] = place
    if not places:
        raise RepairlibError("The map", "no capacitor is on it yet", "a click, or Add, for each")
    name = typed.get("board", "").strip() or "My board"
    scale = "" if typed.get("width_mm", "").strip() else f" ({NOT_TO_SCALE})"
    return Board(name + scale, places.values())


def map_of_board(board: Board, width_mm: float) -> dict[str, Any]:
    """The map that says this board, `width_mm` wide; of a board file that is opened again.

    >>> board = Board("amp", [Position("C1", x_mm=20, y_mm=15, plus="left")])
    >>> map_of_board(board, 60)["places"][0]["x_mm"], map_of_board(board, 60)["side"]
    ('20', '')
    """
    side, _, edge = board.seen_from.partition(", ")
    words, _, lies = edge.rpartition(" ")
    typed: dict[str, Any] = {**EMPTY, "board": board.name, "side": side}
    typed |= {"edge": words, "edge_lies": lies, "width_mm": f"{width_mm:g}"}
    typed["places"] = [
        {
            "reference": place.reference,
            "area": place.area,
            "x_mm": f"{place.x_mm:g}",
            "y_mm": f"{place.y_mm:g}",
            "form": place.form,
            "lead_spacing_mm": _length(place.spacing_mm),
            "max_diameter_mm": _length(place.max_diameter_mm),
            "max_height_mm": _length(place.max_height_mm),
            "plus": place.plus,
        }
        for place in board.positions
    ]
    return typed


def plus_not_known(board: Board) -> list[str]:
    """The places whose plus nobody has looked at.

    >>> plus_not_known(Board("amp", [Position("C1"), Position("C2", plus="none")]))
    ['C1']
    """
    return [place.reference for place in board.positions if not place.plus]


def _seen_from(typed: Mapping[str, Any]) -> str:
    side, lies = typed.get("side", ""), typed.get("edge_lies", "")
    edge = " ".join(typed.get("edge", "").split())
    if side not in SIDES:
        accepted = "component side or solder side"
        raise RepairlibError("Side you look at", "not chosen yet", accepted)
    if not edge or lies not in ("up", "down", "left", "right"):
        accepted = "such as: connector edge, down"
        raise RepairlibError("A fixed edge", "not said yet, or not where it lies", accepted)
    return f"{side}, {edge} {lies}"


def _place(cells: Mapping[str, str], number: int, seen_from: str) -> Position:
    name = cells.get("reference", "").strip()
    where = f"row {number} of the map"
    if len(names_alone(name)) != 1:
        raise RepairlibError(name or where, f"no name of a part ({where})", "a name such as C5")
    read = {heading: cells.get(heading, "").strip() for heading in COLUMNS}
    return read_position({**read, "reference": name, "seen_from": seen_from}, where)


def _length(length: float | None) -> str:
    return "" if length is None else f"{length:g}"
