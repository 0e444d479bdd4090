"""What an image holds, from its first address to its last: blank, text, code, packed."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.plain_file import size_in_words
from repairlib.core.wording import counted
from repairlib.firmware import BLOCK_KINDS, Block, BlockMap, address
from repairlib.show.cell_map import Cell, draw_cells, places_said
from repairlib.show.picture import Picture

LETTER = {"blank": "", "zeros": "0", "text": "T", "packed": "P", "code or data": ""}
SHOWN_AS = {"blank": 0.0, "zeros": 0.0, "text": 0.55, "packed": 1.0, "code or data": 0.75}
MOST_REGIONS = 20  # in the words for those who cannot see the picture
_LOWEST = 0.12  # so that a box of one byte over and over is not taken for a blank one


def draw_image_map(drawn: BlockMap, marked: Iterable[tuple[int, int]] = ()) -> Picture:
    """Draw each block as a box, filled as high as its entropy of 8 bits a byte, with a letter.

    marked: ranges of addresses whose boxes get a thick outline, such as those of a list beside it.

    >>> from repairlib.firmware import block_map, image_of
    >>> draw_image_map(block_map(image_of(bytes(512) + b"\\xff" * 512, "new.bin")))
    Map of new.bin: 4 blocks of 256 bytes. 0x000000 to 0x0001FF: zeros. 0x000200 to 0x0003FF: blank.
    """
    ranges = list(marked)
    cells = [
        _cell(one, any(start < one.end and one.start < end for start, end in ranges))
        for one in drawn.blocks
    ]
    kinds = {one.kind for one in drawn.blocks}
    legend = [
        (_sample(kind), f"{kind}: {BLOCK_KINDS[kind]}") for kind in BLOCK_KINDS if kind in kinds
    ]
    if any(one.marked for one in cells):
        legend.append((Cell(0, marked=True), "thick outline: something here stands in the list"))
    each = size_in_words(drawn.block)
    title = (
        f"{drawn.name}, {size_in_words(drawn.size)}: each box is {each}, fuller where less repeats"
    )
    return draw_cells(title, cells, drawn.block, legend, _in_words(drawn, cells))


def _cell(block: Block, marked: bool) -> Cell:
    level = max(_LOWEST, block.entropy / 8) if SHOWN_AS[block.kind] else 0.0
    return Cell(level, LETTER[block.kind], marked=marked)


def _sample(kind: str) -> Cell:
    return Cell(SHOWN_AS[kind], LETTER[kind])


def _in_words(drawn: BlockMap, cells: list[Cell]) -> str:
    count = counted(len(drawn.blocks), "block")
    said = [f"Map of {drawn.name}: {count} of {size_in_words(drawn.block)}."]
    regions = drawn.regions()
    for start, end, kind in regions[:MOST_REGIONS]:
        said.append(f"{address(start)} to {address(end - 1)}: {kind}.")
    if len(regions) > MOST_REGIONS:
        said.append(f"Then {len(regions) - MOST_REGIONS} more regions.")
    outlined = [one.start for one, cell in zip(drawn.blocks, cells, strict=True) if cell.marked]
    if outlined:
        said.append(f"Outlined: the blocks at {places_said(outlined)}.")
    return " ".join(said)
