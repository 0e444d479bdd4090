"""Where reads of one chip differ, from its first address to its last."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.plain_file import size_in_words
from repairlib.core.wording import counted
from repairlib.firmware import Image, differing
from repairlib.show.cell_map import STRONG, Cell, draw_cells, places_said
from repairlib.show.picture import Picture

EQUAL, SOME, MOST = Cell(0), Cell(0.4, "≠", STRONG), Cell(1, "≠", STRONG)
ABSENT = Cell(0.15, "−")
MOSTLY = 0.5  # of the bytes of a box
MEANT = {
    EQUAL: "equal, byte for byte",
    SOME: "some bytes differ",
    MOST: "half or more of its bytes differ",
    ABSENT: "not in every read",
}


def draw_two_reads(reads: Sequence[Image]) -> Picture:
    """Draw each block of the reads as a box that says whether they are equal there.

    Raises RepairlibError for fewer than two reads.

    >>> from repairlib.firmware import image_of
    >>> draw_two_reads([image_of(bytes(512), "one"), image_of(bytes(511) + b"a", "other")])
    one and other, 2 blocks of 256 bytes: 1 equal; 1 where some bytes differ: 0x000100.
    """
    seen = differing(reads)
    cells = [_cell(share) for share in seen.shares]
    named = f"{', '.join(seen.names[:-1])} and {seen.names[-1]}"
    legend = [(cell, words) for cell, words in MEANT.items() if cell in cells]
    each = size_in_words(seen.block)
    said = [f"{cells.count(EQUAL)} equal"] if EQUAL in cells else []
    for cell in (SOME, MOST, ABSENT):
        starts = [at * seen.block for at, one in enumerate(cells) if one == cell]
        if starts:
            where = "" if cell is ABSENT else "where "
            said.append(f"{len(starts)} {where}{MEANT[cell]}: {places_said(starts)}")
    alt = f"{named}, {counted(len(cells), 'block')} of {each}: {'; '.join(said)}."
    return draw_cells(f"{named}: each box is {each}", cells, seen.block, legend, alt)


def _cell(share: float | None) -> Cell:
    if share is None:
        return ABSENT
    return EQUAL if share == 0 else MOST if share >= MOSTLY else SOME
