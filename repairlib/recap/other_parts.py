"""What else is on a board, so that one finds one's way on its picture: chips, holes, edges.

Nothing is planned for these parts; they have no names.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.table import with_point
from repairlib.core.typed.textfile import read_text

OTHER_KINDS = (
    "chip",
    "transistor",
    "resistor",
    "connector",
    "edge contacts",
    "heat sink",
    "transformer",
    "screw hole",
)


class OtherPart(NamedTuple):
    """Its kind, its middle from the top left corner, and its size as it lies; all in mm."""

    kind: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float


def read_others(path) -> tuple[OtherPart, ...]:
    """The other parts of a table with the headings of OtherPart.

    Raises RepairlibError for a file that is not such a table, a kind that is not in OTHER_KINDS and
    a length that is no number.
    """
    path = Path(path)
    headings = OtherPart._fields
    table = read_headed(read_text(path), path.name, headings, headings)
    parts = []
    for row in table.rows_below():
        where = f"{path.name} line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, "one part on each line")
        kind, *lengths = table.by_heading(row, headings).values()
        if kind not in OTHER_KINDS:
            raise RepairlibError(kind, f"not another part ({where})", ", ".join(OTHER_KINDS))
        parts.append(OtherPart(kind, *(_length(length, where) for length in lengths)))
    return tuple(parts)


def _length(text: str, where: str) -> float:
    try:
        length = float(with_point(text))
    except ValueError:
        length = -1.0
    if not 0 <= length < 10_000:
        raise RepairlibError(text, f"not a length in mm ({where})", "a number from 0")
    return length
