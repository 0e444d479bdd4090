"""The order in which the new parts are fitted, and its rule in words."""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.typed.references import in_natural_order
from repairlib.recap.board import Board
from repairlib.recap.item import Item

LOW_PROFILE_MM = 13.0
ORDER_RULE = (
    "Power supply first, so that its rails can be tested before the rest; then the other areas as "
    "the board lists them. In each area low parts before high ones; in each step from the top "
    "of the board down and from left to right (without a board: by number). The height is that of "
    "the part chosen from the catalogue, else of the usual can. Parts of unknown size "
    "come after both; parts above 60 V dc or on the mains stand apart, for a qualified person."
)
LOW, HIGH, UNKNOWN = 0, 1, 2
NOT_YOURS = (
    "Do not touch these, also with the plug pulled: they may hold a deadly charge. What is to be "
    "fitted stands here for the qualified person who does it."
)
HAND_ON = "above 60 V dc or on the mains: leave these to a qualified person"


@dataclass(eq=False, slots=True)
class Step:
    """A step of the fitting order: its title and its items in board order.

    `handed_on` says that its parts are left to a qualified person and not ticked off here.
    """

    title: str
    items: list[Item]
    handed_on: bool = False


def in_steps(items: list[Item], board: Board | None) -> list[Step]:
    """The items in steps of the fitting order (see ORDER_RULE)."""
    areas = _areas_in_order(board)
    steps: dict[tuple[int, int], list[Item]] = {}
    for item in items:
        if not item.handed_on:
            area = item.place.area if item.place is not None else ""
            steps.setdefault((areas.get(area, len(areas)), _height(item)), []).append(item)
    names = {rank: area for area, rank in areas.items()}
    own = [
        Step(_title(names.get(rank, ""), height), sorted(steps[rank, height], key=_board_order))
        for rank, height in sorted(steps)
    ]
    others = sorted((item for item in items if item.handed_on), key=_board_order)
    return [*own, Step(HAND_ON, others, handed_on=True)] if others else own


def _areas_in_order(board: Board | None) -> dict[str, int]:
    areas = board.areas if board is not None else ()
    supply_first = sorted(areas, key=lambda area: not is_supply(area))
    return {area: rank for rank, area in enumerate(supply_first)}


def is_supply(area: str) -> bool:
    """Whether an area of a board is its power supply, by its name."""
    return "supply" in area.lower() or "psu" in area.lower().split()


def _height(item: Item) -> int:
    """Whether the new part stands low or high.

    By the part chosen from the catalogue, or else its usual can, or else the room there.
    """
    bought = item.selection.part if item.selection is not None else None
    can = item.new.can if item.old.form != "axial" else None
    room = item.place.max_height_mm if item.place is not None else None
    height = can.length if can is not None else room
    if bought is not None and bought.height is not None:
        height = bought.height
    if height is None:
        return UNKNOWN
    return HIGH if height > LOW_PROFILE_MM else LOW


def _title(area: str, height: int) -> str:
    said = {
        LOW: f"up to {LOW_PROFILE_MM:g} mm high",
        HIGH: f"over {LOW_PROFILE_MM:g} mm high",
        UNKNOWN: "size not known: measure the room first",
    }[height]
    return f"{area}, {said}" if area else said


def _board_order(item: Item) -> tuple:
    if item.place is None:
        return (1, 0.0, 0.0, in_natural_order(item.reference))
    return (0, item.place.y_mm, item.place.x_mm, in_natural_order(item.reference))
