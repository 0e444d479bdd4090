"""Two or more reads of one chip beside each other: where they differ, and what that pattern means.

Nothing is written to a chip before two reads of its old content are equal and stored. Reads that
differ are not voted on: what made them differ is found and put right, and the chip is read anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.firmware.image_file import Image

SHOWN_RANGES = 64  # that are told of all that differ
MOST_READS = 16


class Reads(NamedTuple):
    """What reads of one chip say of each other.

    `ranges` are the first half-open ranges of addresses that differ, neighbours joined; `in_all`
    is how many there are, and `bytes_differ` how many bytes. `bits` is, for each bit of a byte from
    bit 0, how often it went from 0 to 1 and from 1 to 0 between the first read and another.
    `pattern` is one of PATTERNS, `means` what it means and `next` what to do.
    """

    names: tuple[str, ...]
    sizes: tuple[int, ...]
    equal: bool
    ranges: tuple[tuple[int, int], ...]
    in_all: int
    bytes_differ: int
    bits: tuple[tuple[int, int], ...]
    pattern: str
    means: str
    next: str


EQUAL, ONE_SHORT, OFFSET = "equal", "one is short", "offset"
CONTACT, SPEED, SUPPLY = "contact", "speed", "supply"
OTHER, UNKNOWN = "another chip or content", "cannot tell"
PATTERNS = (EQUAL, ONE_SHORT, OFFSET, CONTACT, SPEED, SUPPLY, OTHER, UNKNOWN)


def compare_reads(reads: Sequence[Image]) -> Reads:
    """Whether reads of one chip are equal; else where they differ, and what that pattern means.

    Raises RepairlibError for fewer than two reads and for more than 16.

    >>> from repairlib.firmware import image_of
    >>> compare_reads([image_of(b"abcd"), image_of(b"abcd")]).pattern
    'equal'
    """
    if not 2 <= len(reads) <= MOST_READS:
        raise RepairlibError(f"{len(reads)} reads", "they cannot be compared", "2 to 16 reads")
    names = tuple(read.name for read in reads)
    sizes = tuple(read.size for read in reads)
    if all(read.data == reads[0].data for read in reads[1:]):
        return Reads(names, sizes, True, (), 0, 0, ((0, 0),) * 8, EQUAL, *SAID[EQUAL])
    return Reads(names, sizes, False, (), 0, 0, ((0, 0),) * 8, UNKNOWN, *SAID[UNKNOWN])


SAID = {
    EQUAL: (
        "the reads repeat, byte for byte. A line that is stuck repeats too",
        "store both before anything is written, and check the image by itself",
    ),
    UNKNOWN: ("the pattern tells no cause", "set the clip anew, slow the clock, and read again"),
}
