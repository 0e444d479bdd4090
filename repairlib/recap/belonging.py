"""Which places and readings belong to a typed list: those of its own board, and no other's.

Where a part sits, which way round it goes and what was read on it holds for the board that was
looked at. Carried to another board, it makes an electrolytic burst.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.core.errors import RepairlibError
from repairlib.health import MeasuredTable
from repairlib.recap.board import Board
from repairlib.recap.parts import read_parts

# A list with fewer unchanged lines than this share of the first is the list of another board.
SAME_SHARE = 0.8
ANOTHER_LIST = (
    "Your own list: nobody looked at your board here. No place, no polarity and no reading of the "
    "board shown before is used for it."
)
CHANGED_LINES = "Changed by you, so place and readings of the board shown are not used for"


def unchanged(text: str, first: str) -> frozenset[str] | None:
    """The references whose line stands as in the list `first`; None when this is another list.

    >>> first = "C1,10/16,elect\\nC2,47/25,elect\\nC3,100/16,elect\\nC4,1/50,elect\\nC5,22/35,elect"
    >>> sorted(unchanged(first.replace("47/25", "47/35"), first))
    ['C1', 'C3', 'C4', 'C5']
    >>> unchanged("C1,10/16,elect\\nC2,220/16,elect", first) is None
    True
    """
    was, now = _lines(first), _lines(text)
    same = frozenset(name for name, line in was.items() if now.get(name) == line)
    return same if len(same) >= SAME_SHARE * len(was) else None


def places_of(board: Board, same: frozenset[str], first: str) -> Board:
    """The board without the places of parts whose line is no longer that of `first`."""
    listed = set(_lines(first))
    kept = [one for one in board.positions if one.reference in same or one.reference not in listed]
    return Board(board.name, kept, board.others)


def readings_of(measured: MeasuredTable, same: frozenset[str]) -> MeasuredTable:
    """The measured parts whose line in the list is unchanged."""
    return replace(measured, parts=[part for part in measured.parts if part.reference in same])


def _lines(text: str) -> dict[str, str]:
    """The line that names each reference, without spaces and capitals, and what was read in it.

    What was read counts too: a ditto mark stays as it was where the line above is changed.
    """
    try:
        read = read_parts(text)
    except RepairlibError:
        return {}
    found: dict[str, str] = {}
    for name, line, part in zip(read.references, read.part_lines, read.capacitors, strict=True):
        text = "".join(read.text_of(line).split()).casefold()
        found[name] = f"{found.get(name, '')}{text} {part.same_part()}"
    return found
