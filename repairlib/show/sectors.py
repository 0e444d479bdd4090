"""Which sectors of a chip have to be erased, which only programmed, and which stay."""

from __future__ import annotations

from repairlib.core.plain_file import size_in_words
from repairlib.firmware import EQUAL, ERASE, PROGRAM, Sectors
from repairlib.show.cell_map import STRONG, Cell, draw_cells, places_said
from repairlib.show.picture import Picture

MOST_BOXES = 256
LOOKS = {EQUAL: Cell(0), PROGRAM: Cell(0.45, "P"), ERASE: Cell(1, "E", STRONG)}  # as in `states`
MEANT = {
    EQUAL: "equal: left alone",
    PROGRAM: "program only: each change is from 1 to 0",
    ERASE: "erase first, then program",
}


def draw_sectors(drawn: Sectors, name: str = "Sectors") -> Picture:
    """Draw the sectors as boxes; where there are many, a box is several and shows the worst.

    >>> draw_sectors(Sectors(12288, 4096, bytes([0, 2, 2])), "new.bin")
    new.bin: Of 3 sectors of 4 KiB: 1 equal, 0 to be programmed without an erase, 2 to be erased
    first. Erase first: 0x001000 to 0x002FFF.
    """
    together = 1
    while len(drawn.states) > MOST_BOXES * together:
        together *= 2
    worst = [
        max(drawn.states[first : first + together])
        for first in range(0, len(drawn.states), together)
    ]
    kinds = list(LOOKS)
    cells = [LOOKS[kinds[state]] for state in worst]
    each = drawn.erase * together
    title = f"{name}: each box is {size_in_words(each)}"
    if together > 1:
        title += f", {together} sectors, and shows the worst"
    legend = [(LOOKS[kind], MEANT[kind]) for kind in kinds if LOOKS[kind] in cells]
    return draw_cells(title, cells, each, legend, f"{name}: {drawn.why}{_ranges_said(drawn)}")


def _ranges_said(drawn: Sectors) -> str:
    said = ""
    for kind in (PROGRAM, ERASE):
        ranges = drawn.ranges(kind)
        if ranges:
            said += f" {kind.capitalize()}: {places_said(ranges)}."
    return said
