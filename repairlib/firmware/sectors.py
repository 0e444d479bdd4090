"""Which sectors of a chip differ from an intended image, and which of them must be erased first.

A flash chip is programmed from 1 to 0 only. Whatever has to become 1 again takes an erase, and an
erase takes the whole sector.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.plain_file import size_in_words
from repairlib.firmware.capacity import read_size
from repairlib.firmware.image_file import Image

EQUAL, PROGRAM, ERASE = "equal", "program only", "erase first"
KINDS = (EQUAL, PROGRAM, ERASE)  # by the number that stands for each in Sectors.states
SECTOR = 4096  # bytes: the smallest erase of most serial flash chips
_SMALLEST = 64  # bytes that a chip erases at once: from memory
_CHUNK = 1 << 22  # bytes that are looked at together


class Sectors(NamedTuple):
    """What has to be done to each sector of a chip so that it holds the new image.

    `size` and `erase` are bytes, of the images and of one sector; the last sector may be shorter.
    `states` has one number for each sector, in order: its place in KINDS.
    """

    size: int
    erase: int
    states: bytes

    def count(self, kind: str) -> int:
        """How many sectors are of that kind, one of KINDS.

        >>> Sectors(8192, 4096, bytes([0, 2])).count(ERASE)
        1
        """
        return self.states.count(KINDS.index(kind))

    def ranges(self, kind: str) -> tuple[tuple[int, int], ...]:
        """From where to where the sectors of that kind reach, neighbours taken together.

        >>> Sectors(12288, 4096, bytes([0, 2, 2])).ranges(ERASE)
        ((4096, 12288),)
        """
        together = re.finditer(rb"%c+" % KINDS.index(kind), self.states)
        return tuple(
            (run.start() * self.erase, min(run.end() * self.erase, self.size)) for run in together
        )

    @property
    def why(self) -> str:
        """What the sectors come to, in one sentence."""
        told = ", ".join(f"{self.count(kind):,} {_SAID[kind]}" for kind in KINDS)
        sectors = "sector" if len(self.states) == 1 else "sectors"
        return f"Of {len(self.states):,} {sectors} of {size_in_words(self.erase)}: {told}."

    @property
    def next(self) -> str:
        """What to do next."""
        if not self.count(PROGRAM) and not self.count(ERASE):
            return "Nothing has to be written: the chip would hold what it holds already."
        if not self.count(ERASE):
            return (
                "Every change is from 1 to 0 and needs no erase. Where the chip keeps an error "
                "code over each page, it takes one write only: then erase all the same."
            )
        return (
            "Before anything is erased: two equal reads of the old content, stored, and the list "
            "of what only this board has. Then erase these sectors, write, read back and compare."
        )


_SAID = {EQUAL: "equal", PROGRAM: "to be programmed without an erase", ERASE: "to be erased first"}


def sectors_that_differ(old: Image, new: Image, erase: int = SECTOR) -> Sectors:
    """What has to be done to each sector so that a chip with `old` in it comes to hold `new`.

    `erase` is the size in bytes of what the chip erases at once. Raises RepairlibError for images
    of two sizes and for an erase size that is no whole number of bytes from 1 on.

    >>> from repairlib.firmware.image_file import image_of
    >>> old, new = image_of(b"\\xff\\x0f\\x55\\x00"), image_of(b"\\xff\\x00\\x55\\x01")
    >>> found = sectors_that_differ(old, new, erase=1)
    >>> found.ranges(PROGRAM), found.ranges(ERASE)
    (((1, 2),), ((3, 4),))
    """
    import numpy as np

    step = _whole(erase)
    if old.size != new.size:
        wrong = f"it has {new.size:,} bytes, and {old.name} has {old.size:,}"
        raise RepairlibError(new.name, wrong, "two images of the whole chip, equally long")
    states = np.zeros(-(-old.size // step), np.uint8)
    for begin in range(0, old.size, _CHUNK):
        have, want = (one.array()[begin : begin + _CHUNK] for one in (old, new))
        if np.array_equal(have, want):
            continue
        needed = np.where(~have & want, np.uint8(2), (have != want).astype(np.uint8))
        first = begin // step
        edges = np.maximum(np.arange(first, (begin + len(have) - 1) // step + 1) * step - begin, 0)
        worst = np.maximum.reduceat(needed, edges)
        part = states[first : first + len(worst)]
        np.maximum(part, worst, out=part)
    return Sectors(old.size, step, states.tobytes())


def read_erase(typed: str) -> int:
    """The size of what a chip erases at once, as people type it, in bytes.

    From 64 bytes on (pages of old parallel chips) and a multiple of 8, as pages of 264 bytes are.
    Raises RepairlibError for another size, and for what is none.

    >>> read_erase("4 KiB"), read_erase("264")
    (4096, 264)
    """
    size = read_size(typed)
    if size < _SMALLEST or size % 8:
        raise RepairlibError(typed, "no chip erases so much at once", "256, 4 KiB, 64 KiB …")
    return size


def _whole(erase: object) -> int:
    """The erase size as a number; RepairlibError when it is none."""
    if isinstance(erase, bool) or not isinstance(erase, int) or erase < 1:
        raise RepairlibError(erase, "no size of a sector", "whole bytes from 1 on, usually 4096")
    return erase
