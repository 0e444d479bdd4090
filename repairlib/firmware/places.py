"""Where the images of two boards differ, as far as that says something about one of the boards.

Between two boards with the same firmware little differs, and what does is worth a look. Between two
firmwares nearly all does, and the same address means nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from repairlib.firmware.image_file import Image
from repairlib.firmware.runs import runs_of

MOST_PLACES = 64  # places amid other data that are looked at: our choice
MOST_APART = 256  # places that stand apart, as settings do
FEW_PLACES = 6  # of two boards with one firmware; with more, a place alone tells little: our choice
LONGEST = 4096  # bytes of one place: more than that is no setting
_MOST_LONG = 4  # one part in so many of an image may differ in long places; more is other firmware
_BLOCK = 16  # bytes: places that are nearer to each other are one
_NOTHING = 4  # blocks in which one image has only ones and the other only zeros: they part places
_NEAR = 48  # bytes before and behind a place in which nothing may begin
_CHUNK = 1 << 22


class Place(NamedTuple):
    """Where two boards differ, the other board's image, and what makes the place tell something.

    `few` is whether little else differs, `apart` whether nothing stands beside it, as with
    settings.
    """

    start: int
    end: int
    other: Image
    few: bool
    apart: bool

    @property
    def telling(self) -> bool:
        """Whether the place says anything by itself."""
        return self.few or self.apart

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


def places_that_differ(old: Image, other: Image) -> list[Place]:
    """The places where two images differ, those that stand apart first: at most 256 of
    these, and of the others as many as fill up 64.

    A place ends where 16 bytes or more are equal, and where neither image holds anything for 64
    bytes or more, ones here and zeros there. One of more than 4 KiB is left out.

    >>> from repairlib.firmware.image_file import image_of
    >>> two = image_of(bytes(99)), image_of(bytes(98) + b"1")
    >>> [place[:2] for place in places_that_differ(*two)]
    [(98, 99)]
    """
    starts, ends = _bounds(old, other)
    every = [(int(start), int(end)) for start, end in zip(starts, ends, strict=True)]
    short = [(start, end) for start, end in every if end - start <= LONGEST]
    long = [(start, end) for start, end in every if end - start > LONGEST]
    few = (
        len(every) <= FEW_PLACES
        and sum(end - start for start, end in short) <= LONGEST
        and all(_mostly_blank(old.data[start:end]) for start, end in long)
    )
    sides: dict[bool, list[tuple[int, int]]] = {True: [], False: []}
    for bounds in short:
        sides[_beside_nothing(old, *bounds)].append(bounds)
    apart = sides[True][:MOST_APART]
    amid = sides[False][: max(0, MOST_PLACES - len(apart))]
    return [
        _trimmed(Place(*bounds, other, few, beside), old)
        for beside, several in ((True, apart), (False, amid))
        for bounds in several
    ]


def long_places(old: Image, other: Image) -> list[tuple[int, int]]:
    """The places of more than 4 KiB that two images of one firmware differ in.

    None where a quarter of the image or more differs so: then it is other firmware. Where most of
    a place is erased in `old` there is nothing to keep.
    """
    starts, ends = _bounds(old, other)
    every = [(int(start), int(end)) for start, end in zip(starts, ends, strict=True)]
    long = [(start, end) for start, end in every if end - start > LONGEST]
    if _MOST_LONG * sum(end - start for start, end in long) >= old.size:
        return []
    return [(start, end) for start, end in long if not _mostly_blank(old.data[start:end])]


def _bounds(old: Image, other: Image):
    """Where places begin and end, in blocks of 16 bytes, as two arrays."""
    import numpy as np

    shortest = min(old.size, other.size)
    blocks = -(-shortest // _BLOCK)
    differs, nothing = np.zeros(blocks, bool), np.zeros(blocks, bool)
    for begin in range(0, shortest, _CHUNK):
        end = min(begin + _CHUNK, shortest)
        mine, theirs = (one.array()[begin:end] for one in (old, other))
        different = mine != theirs
        if not different.any():
            continue
        edges = np.arange(0, end - begin, _BLOCK)
        part = slice(begin // _BLOCK, -(-end // _BLOCK))
        differs[part] = np.logical_or.reduceat(different, edges)
        opposite = (mine ^ theirs == 0xFF) & ((mine == 0) | (mine == 0xFF))
        nothing[part] = np.logical_and.reduceat(opposite, edges)
    for first, last in zip(*runs_of(nothing), strict=True):
        if last - first >= _NOTHING:
            differs[first:last] = False
    starts, ends = runs_of(differs)
    return starts * _BLOCK, np.minimum(ends * _BLOCK, shortest)


def _beside_nothing(old: Image, start: int, end: int) -> bool:
    """Whether 16 bytes of nothing, or the end of the image, lie close before or behind a place."""
    before, after = old.data[max(0, start - _NEAR) : start], old.data[end : end + _NEAR]
    nothing = b"\xff" * _BLOCK, b"\0" * _BLOCK
    return any(one in side for one in nothing for side in (before, after))


def _mostly_blank(data: bytes) -> bool:
    """Whether most of it is erased: damage then, and no other firmware."""
    return 2 * max(data.count(0xFF), data.count(0)) > len(data)


def _trimmed(place: Place, old: Image) -> Place:
    """The place from its first byte that differs to its last."""
    start, end, other = place[:3]
    while old.data[start] == other.data[start]:
        start += 1
    while old.data[end - 1] == other.data[end - 1]:
        end -= 1
    return place._replace(start=start, end=end)


def blank(data: bytes) -> bool:
    """Whether nothing stands there: ones only, or zeros only.

    >>> blank(b"\\xff\\xff"), blank(b"\\xff\\x00")
    (True, False)
    """
    return not data.strip(b"\xff") or not data.strip(b"\0")
