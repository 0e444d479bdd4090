"""Where reads differ: counted whole, kept only as far as somebody looks at it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.firmware.image_file import Image

AT_ONCE = 1 << 20  # bytes: so much is compared at a time, which bounds the memory
SHOWN_RANGES = 64  # that are kept of all that differ
NEAR = 16  # bytes: places that lie nearer than this are one range


class Differences(NamedTuple):
    """How many bytes and ranges differ between a first read and others, and the first ranges."""

    bytes: int
    in_all: int
    ranges: tuple[tuple[int, int], ...]


def differences(first: Image, others: Sequence[Image]) -> Differences:
    """Where any of `others` differs from `first`; what only one of them has differs too.

    Not more than a few MiB are taken, whatever differs.

    >>> from repairlib.firmware.image_file import image_of
    >>> found = differences(image_of(bytes(100)), [image_of(bytes(40) + b"\\x01" * 2 + bytes(50))])
    >>> found.bytes, found.ranges
    (10, ((40, 42), (92, 100)))
    """
    import numpy as np

    rows = [first.array(), *(other.array() for other in others)]
    common = min(map(len, rows))
    ranges = _Ranges()
    many = 0
    for begin in range(0, common, AT_ONCE):
        parts = [row[begin : min(begin + AT_ONCE, common)] for row in rows]
        unequal = parts[0] != parts[1]
        for part in parts[2:]:
            unequal |= parts[0] != part
        places = np.flatnonzero(unequal)
        if len(places):
            many += len(places)
            ranges.add(places + begin)
    longest = max(map(len, rows))
    if longest > common:
        many += longest - common
        ranges.add_range(common, longest)
    return Differences(many, ranges.in_all, tuple(ranges.first))


class _Ranges:
    """Ranges in rising order, near ones joined, of which the first are kept."""

    def __init__(self) -> None:
        self.first: list[tuple[int, int]] = []
        self.in_all, self.end = 0, -NEAR

    def add(self, places) -> None:
        """Add rising places, all behind what was added before."""
        import numpy as np

        cuts = np.flatnonzero(np.diff(places) >= NEAR)
        starts = places[np.concatenate(([0], cuts + 1))]
        ends = places[np.concatenate((cuts, [len(places) - 1]))] + 1
        self.add_range(int(starts[0]), int(ends[0]))
        room = SHOWN_RANGES - len(self.first)
        self.in_all += len(starts) - 1
        more = zip(starts[1:].tolist(), ends[1:].tolist(), strict=True)
        self.first += [one for one, _ in zip(more, range(room), strict=False)]
        self.end = int(ends[-1])

    def add_range(self, start: int, end: int) -> None:
        """Add one range, joined to the last when it begins near its end."""
        if start - self.end < NEAR and self.in_all:
            if self.in_all == len(self.first):
                self.first[-1] = (self.first[-1][0], end)
        else:
            self.in_all += 1
            if len(self.first) < SHOWN_RANGES:
                self.first.append((start, end))
        self.end = end
