"""Where the images of two boards differ, as far as that says something about one of the boards.

Between two boards with the same firmware little differs, and what does is worth a look. Between two
firmwares nearly all does, and the same address means nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from repairlib.firmware.image_file import Image

MOST_PLACES = 64  # places that differ, of two boards with the same firmware: our choice
LONGEST = 4096  # bytes of one place: more than that is firmware, and no setting
_BLOCK = 16  # bytes: places that are nearer to each other are one
_ALONE = 256  # bytes without a difference on both sides of a place that stands alone
_CHUNK = 1 << 22


class Place(NamedTuple):
    """Where two boards differ, and the other board's image."""

    start: int
    end: int
    other: Image

    def runs(self, old: Image, gap: int = 0) -> Iterator[tuple[int, int]]:
        """Each run of bytes that differ; up to `gap` equal bytes do not end one."""
        mine, theirs = old.data[self.start : self.end], self.other.data[self.start : self.end]
        begin = last = -1
        for at, (have, want) in enumerate(zip(mine, theirs, strict=True)):
            if have == want:
                continue
            if begin >= 0 and at - last > gap + 1:
                yield self.start + begin, self.start + last + 1
                begin = at
            elif begin < 0:
                begin = at
            last = at
        if begin >= 0:
            yield self.start + begin, self.start + last + 1


def telling_places(old: Image, other: Image) -> list[Place]:
    """The places where two images differ that say something; none where too much differs.

    A place ends where 16 bytes or more are equal. With more than 64 of them, only those that stand
    alone count; with more than 64 of these, none.

    >>> from repairlib.firmware.image_file import image_of
    >>> [place[:2] for place in telling_places(image_of(bytes(99)), image_of(bytes(98) + b"1"))]
    [(98, 99)]
    """
    import numpy as np

    shortest = min(old.size, other.size)
    differs = np.zeros(-(-shortest // _BLOCK), bool)
    for begin in range(0, shortest, _CHUNK):
        end = min(begin + _CHUNK, shortest)
        different = old.array()[begin:end] != other.array()[begin:end]
        edges = np.arange(0, end - begin, _BLOCK)
        differs[begin // _BLOCK : -(-end // _BLOCK)] = np.logical_or.reduceat(different, edges)
    bounds = np.flatnonzero(np.diff(np.concatenate(([False], differs, [False])))) * _BLOCK
    starts, ends = bounds[::2], np.minimum(bounds[1::2], shortest)
    if len(starts) > MOST_PLACES:
        before = starts - np.concatenate(([-_ALONE], ends[:-1]))
        after = np.concatenate((starts[1:], [shortest + _ALONE])) - ends
        alone = (before >= _ALONE) & (after >= _ALONE)
        starts, ends = starts[alone], ends[alone]
    if len(starts) > MOST_PLACES:
        return []
    return [
        _trimmed(old, other, int(start), int(end))
        for start, end in zip(starts, ends, strict=True)
        if end - start <= LONGEST
    ]


def _trimmed(old: Image, other: Image, start: int, end: int) -> Place:
    """The place from its first byte that differs to its last."""
    while old.data[start] == other.data[start]:
        start += 1
    while old.data[end - 1] == other.data[end - 1]:
        end -= 1
    return Place(start, end, other)


def blank(data: bytes) -> bool:
    """Whether nothing stands there: ones only, or zeros only.

    >>> blank(b"\\xff\\xff"), blank(b"\\xff\\x00")
    (True, False)
    """
    return not data.strip(b"\xff") or not data.strip(b"\0")
