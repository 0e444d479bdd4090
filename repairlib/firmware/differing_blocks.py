"""How much of each block differs between reads of one chip: what a picture of them shows."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.firmware.blocks import block_size
from repairlib.firmware.image_file import Image


class Differing(NamedTuple):
    """For each block of `block` bytes the share that differs from the first read, 0 to 1.

    It is None where not every read reaches.
    """

    names: tuple[str, ...]
    size: int
    block: int
    shares: tuple[float | None, ...]


def differing(reads: Sequence[Image], blocks: int = 256) -> Differing:
    """Where reads differ, in at most so many blocks, each a power of two of bytes, 256 or more.

    Raises RepairlibError for fewer than two reads.

    >>> from repairlib.firmware import image_of
    >>> one, other = image_of(bytes(512)), image_of(bytes(511) + b"a")
    >>> differing([one, other]).shares
    (0.0, 0.00390625)
    """
    if len(reads) < 2:
        raise RepairlibError(f"{len(reads)} reads", "they cannot be compared", "two reads or more")
    import numpy as np

    size, whole = max(read.size for read in reads), min(read.size for read in reads)
    block = block_size(size, blocks)
    first, *others = (read.array() for read in reads)
    shares: list[float | None] = []
    for start in range(0, size, block):
        end = min(start + block, whole)
        if end <= start or end < min(start + block, size):
            shares.append(None)
            continue
        differs = np.zeros(end - start, np.bool_)
        for other in others:
            differs |= first[start:end] != other[start:end]
        shares.append(float(differs.mean()))
    return Differing(tuple(read.name for read in reads), size, block, tuple(shares))
