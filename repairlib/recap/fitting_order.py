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
    "of the board down and from left to right (without a board: by number)."
)


@dataclass(eq=False, slots=True)
class Step:
    """A step of the fitting order: its title and its items in board order."""

    title: str
    items: list[Item]


def in_steps(items: list[Item], board: Board | None) -> list[Step]:
    """The items in steps of the fitting order (see ORDER_RULE)."""
    areas = _areas_in_order(board)
    steps: dict[tuple[int, bool], list[Item]] = {}
    for item in items:
        area = item.place.area if item.place is not None else ""
        steps.setdefault((areas.get(area, len(areas)), _is_high(item)), []).append(item)
    names = {rank: area for area, rank in areas.items()}
    return [
        Step(_title(names.get(rank, ""), high), sorted(steps[rank, high], key=_board_order))
        for rank, high in sorted(steps)
    ]


def _areas_in_order(board: Board | None) -> dict[str, int]:
    areas = board.areas if board is not None else ()
    supply_first = sorted(areas, key=lambda area: not _is_supply(area))
    return {area: rank for rank, area in enumerate(supply_first)}


def _is_supply(area: str) -> bool:
    return "supply" in area.lower() or "psu" in area.lower().split()


def _is_high(item: Item) -> bool:
    """Whether the new part stands high, by its usual can or else by the room on the board."""
    can = item.new.can if item.old.form != "axial" else None
    room = item.place.max_height_mm if item.place is not None else None
    height = can.length if can is not None else room
    return height is not None and height > LOW_PROFILE_MM


def _title(area: str, high: bool) -> str:
    height = f"{'over' if high else 'up to'} {LOW_PROFILE_MM:g} mm high"
    return f"{area}, {height}" if area else height


def _board_order(item: Item) -> tuple:
    if item.place is None:
        return (1, 0.0, 0.0, in_natural_order(item.reference))
    return (0, item.place.y_mm, item.place.x_mm, in_natural_order(item.reference))
