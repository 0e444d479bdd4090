"""Polarity and orientation: what the mark on a part shows, and whether it is fitted right."""

from repairlib.polarity.checker import FITTED, check_polarity
from repairlib.polarity.rules import (
    board_marks,
    families,
    marks_of,
    part_mark,
    part_mark_names,
    part_marks,
)

__all__ = [
    "FITTED",
    "board_marks",
    "check_polarity",
    "families",
    "marks_of",
    "part_mark",
    "part_mark_names",
    "part_marks",
]
