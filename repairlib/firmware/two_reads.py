"""Two or more reads of one chip beside each other: where they differ, and what that pattern means.

Nothing is written to a chip before two reads of its old content are equal and stored. Reads that
differ are not voted on: what made them differ is found and put right, and the chip is read anew.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted
from repairlib.firmware.image_file import Image
from repairlib.firmware.read_differences import differences
from repairlib.firmware.read_moved import moved
from repairlib.firmware.read_patterns import (
    EQUAL,
    ONE_SHORT,
    SAID,
    pattern_of,
)
from repairlib.firmware.read_tally import tally

MOST_READS = 16


class Reads(NamedTuple):
    """What reads of one chip say of each other.

    `ranges` are the first half-open ranges of addresses that differ, near ones joined; `in_all` is
    how many there are, and `bytes_differ` how many bytes. `bits` is, for each bit of a byte from
    bit 0, how often it is 0 in the first read and 1 in the first that differs from it, and how
    often the other way round. `pattern` is one of PATTERNS of `read_patterns`, `means` what it
    means and `next` what to do. `alike` holds the places of equal reads in
    groups, that of the first read first.
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
    alike: tuple[tuple[int, ...], ...]


def compare_reads(reads: Sequence[Image]) -> Reads:
    """Whether reads of one chip are equal; else where they differ, and what that pattern means.

    With more than two, the ranges are those where any of them differs from the first; the pattern
    is that of the first that does. Raises RepairlibError for fewer than 2 reads and more than 16.

    >>> from repairlib.firmware import image_of
    >>> compare_reads([image_of(b"abcd"), image_of(b"abcd")]).pattern
    'equal'
    >>> compare_reads([image_of(b"abcdefgh"), image_of(b"abcd")]).pattern
    'one is short'
    """
    if not 2 <= len(reads) <= MOST_READS:
        raise RepairlibError(counted(len(reads), "read"), "this compares nothing", "2 to 16 reads")
    names, sizes = tuple(read.name for read in reads), tuple(read.size for read in reads)
    alike = _alike(reads)
    if len(alike) == 1:
        none = ((0, 0),) * 8
        return Reads(names, sizes, True, (), 0, 0, none, EQUAL, *SAID[EQUAL], alike)
    first, other = reads[0], reads[alike[1][0]]
    found = differences(first, [reads[group[0]] for group in alike[1:]])
    pair = tally(first, other)
    short, long = sorted((first, other), key=lambda read: read.size)
    if short.size < long.size and long.data.startswith(short.data):
        pattern, (means, then) = ONE_SHORT, SAID[ONE_SHORT]
        means = f"{short.name} ends after {short.size:,} bytes and is equal so far: {means}"
    else:
        pattern, means, then = moved(first, other) or pattern_of(pair, first, other)
        if short.size < long.size:
            whole = counted(f"{short.size:,}", "byte")
            means += f". {short.name} is short too: {whole} of {long.size:,}"
    if len(alike) < len(reads):
        same = next(group for group in alike if len(group) > 1)
        means += f". Equal to each other are {', '.join(names[place] for place in same)}"
    bits = tuple(zip(pair.rising, pair.falling, strict=True))
    ranges, many = found.ranges, found.in_all
    return Reads(names, sizes, False, ranges, many, found.bytes, bits, pattern, means, then, alike)


def _alike(reads: Sequence[Image]) -> tuple[tuple[int, ...], ...]:
    """The places of the reads in groups of equal ones; the first read's group first."""
    groups: list[list[int]] = []
    for place, read in enumerate(reads):
        for group in groups:
            if reads[group[0]].data == read.data:
                group.append(place)
                break
        else:
            groups.append([place])
    return tuple(map(tuple, groups))
