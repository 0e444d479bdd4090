"""A map of an image: block by block, how much there is in it, and of what kind it looks.

Entropy is how many bits each byte is worth when only the frequency of the bytes is known: 0 where
all are the same, 8 where all 256 come equally often. Where the kinds begin is our choice.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.firmware.image_file import Image

MOST_BLOCKS = 4096
SMALLEST = 256  # bytes of a block
RUN = 8  # printable characters in a row that are taken for text
BLANK, ZEROS, TEXT, PACKED, OTHER = "blank", "zeros", "text", "packed", "code or data"
BLOCK_KINDS = {
    BLANK: "every byte is FF, as after an erase",
    ZEROS: "every byte is 00",
    TEXT: "half of it or more are words that can be read",
    PACKED: "no byte comes oftener than another: compressed, encrypted or random",
    OTHER: "what is left: programs, tables, pictures",
}
_NEARLY = 0.35  # bits per byte below what random bytes would show, and still packed


class Block(NamedTuple):
    """One block, from `start` up to and without `end`; `text`, `blank`, `zero` are shares of it."""

    start: int
    end: int
    entropy: float
    text: float
    blank: float
    zero: float

    @property
    def kind(self) -> str:
        """A word of BLOCK_KINDS."""
        if self.blank == 1:
            return BLANK
        if self.zero == 1:
            return ZEROS
        if self.text >= 0.5:
            return TEXT
        return PACKED if self.entropy >= _of_random(self.end - self.start) - _NEARLY else OTHER


class BlockMap(NamedTuple):
    """The blocks of an image, all of one size but the last, which may be shorter."""

    name: str
    size: int
    block: int
    blocks: tuple[Block, ...]

    def regions(self) -> list[tuple[int, int, str]]:
        """Neighbours of one kind taken together: start, end and kind of each."""
        found: list[tuple[int, int, str]] = []
        for one in self.blocks:
            if found and found[-1][2] == one.kind:
                found[-1] = (found[-1][0], one.end, one.kind)
            else:
                found.append((one.start, one.end, one.kind))
        return found


def block_map(image: Image, blocks: int = 256) -> BlockMap:
    """The map of an image in at most so many blocks, 1 to 4096, each a power of two of bytes.

    No block is smaller than 256 bytes. Raises RepairlibError for another number of blocks.

    >>> from repairlib.firmware import image_of
    >>> block_map(image_of(bytes(1024) + b"0123456789 " * 93 + b"." + b"\\xff" * 2048)).regions()
    [(0, 1024, 'zeros'), (1024, 2048, 'text'), (2048, 4096, 'blank')]
    """
    if not 1 <= blocks <= MOST_BLOCKS:
        raise RepairlibError(blocks, "not a number of blocks", f"1 to {MOST_BLOCKS}")
    import numpy as np

    size = block_size(image.size, blocks)
    printable = np.zeros(256, np.bool_)
    printable[[9, 10, 13, *range(32, 127)]] = True
    data = image.array()
    starts = range(0, image.size, size)
    made = [_block(data[start : start + size], start, printable) for start in starts]
    return BlockMap(image.name, image.size, size, tuple(made))


def block_size(size: int, blocks: int) -> int:
    """The smallest power of two that cuts so many bytes into at most so many blocks.

    >>> block_size(8 << 20, 256), block_size(100, 256), block_size(65537, 256)
    (32768, 256, 512)
    """
    each = SMALLEST
    while each * blocks < size:
        each *= 2
    return each


def entropy_of(counts: Iterable[int]) -> float:
    """Bits per byte, from how often each byte comes.

    >>> entropy_of([4, 2, 1, 1])
    1.75
    """
    import numpy as np

    often = np.asarray([one for one in counts if one], float)
    share = often / often.sum()
    return float(-(share * np.log2(share)).sum()) + 0.0


_PIECE = 1 << 18  # bytes that are counted at once, so that little memory is taken


def _block(data, start: int, printable) -> Block:
    import numpy as np

    counts, text, size = np.zeros(256, np.int64), 0, len(data)
    for first in range(0, size, _PIECE):
        piece = data[first : first + _PIECE]
        counts += np.bincount(piece, minlength=256)
        text += _in_runs(printable.take(piece)) if len(piece) >= RUN else 0
    whole = entropy_of(counts)
    blank, zero = float(counts[255] / size), float(counts[0] / size)
    return Block(start, start + size, whole, text / size, blank, zero)


def _in_runs(marked) -> int:
    """How many stand in rows of RUN or more: where such a row begins, all of it is counted."""
    import numpy as np

    for step in (1, 2, 4):
        marked = marked[:-step] & marked[step:]
    covered = np.concatenate((marked, np.zeros(RUN - 1, np.bool_)))
    for step in (1, 2, 4):
        covered[step:] |= covered[:-step]
    return int(np.count_nonzero(covered))


def _of_random(size: int) -> float:
    """The entropy that so many random bytes show, which is below 8 where they are few.

    The first term of the bias of the estimate: (256 - 1) / (2 size ln 2).
    """
    return 8 - 255 / (2 * size * 0.6931) if size >= SMALLEST else 8.0
