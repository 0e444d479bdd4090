"""What was read back from a chip after it was written, against what was meant to be in it."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.firmware.image_file import Image
from repairlib.firmware.runs import runs_of

MOST_RANGES = 32  # places that are told; the count is of all
_ENOUGH = 8  # bytes that differ in one bit before a line is blamed: our choice
_SAMPLE = 64  # bytes that are looked for at other places
_CHUNK = 1 << 22  # bytes that are looked at together

SAME = "as intended"
SHORT, LONG = "too short", "too long"
NO_ANSWER, NOT_WRITTEN, OLD = "no answer", "not written", "old content"
NOT_ERASED, STUCK, MOVED = "not erased", "stuck bit", "moved"
ZEROS, ONES, MIXED = "zeros where ones were meant", "ones where zeros were meant", "mixed"

_WHY = {
    SAME: "Every byte is as it was meant.",
    SHORT: "The read ends before the image does.",
    LONG: "The read goes on behind the end of the image.",
    NO_ANSWER: "Every byte of the read is the same: the chip does not answer, or is blank.",
    NOT_WRITTEN: "Where it differs, the read holds only ones: these places are erased and not "
    "written.",
    OLD: "Where it differs, the read holds what was there before: nothing was done there.",
    NOT_ERASED: "Where it differs, the read holds the old content and the new one laid over each "
    "other: these places were written without an erase.",
    STUCK: "One and the same bit of every byte never changes.",
    MOVED: "The read holds the image at another place.",
    ZEROS: "Only zeros stand where ones were meant: it was written over something that was not "
    "erased, or a line was low.",
    ONES: "Only ones stand where zeros were meant: not all was written, or a line was high.",
    MIXED: "Some bits are 1 and some are 0 where the other was meant.",
}
_NEXT = {
    SAME: "Store the read beside the image. Then fit the chip, or take the clip off.",
    SHORT: "Set the programmer to the capacity of the chip and read again.",
    LONG: "Set the programmer to the capacity of the chip and read again; compare the image with "
    "that capacity.",
    NO_ANSWER: "Check supply, contact and pin 1, and read the identity before anything else.",
    NOT_WRITTEN: "Write these places again. If they stay blank, look for a write protection and "
    "at the supply while it writes.",
    OLD: "Look for a write protection: the pin for it, and the bits of the status register.",
    NOT_ERASED: "Erase these sectors, write them again, and read back.",
    STUCK: "Clean and press the contact of that data line, read twice again, and only then judge "
    "the chip.",
    MOVED: "Compare where the programmer began to write and to read.",
    ZEROS: "Read again. If it stays, erase these sectors, write them again, and read back.",
    ONES: "Read again. If it stays, write these places again with the supply measured meanwhile.",
    MIXED: "Read twice again and compare: if the reads differ, it is the contact; if they are "
    "equal, erase and write once more.",
}


class ReadBack(NamedTuple):
    """How a read compares with what was meant.

    `differing` counts bytes, those that one has and the other has not too; `ranges` are the first
    MOST_RANGES places and `places` their whole count; `bits` the bits of a byte, 0 to 7, that were
    ever wrong; `pattern` one of the words of this module, `why` and `next` sentences.
    """

    equal: bool
    differing: int
    ranges: tuple[tuple[int, int], ...]
    places: int
    bits: tuple[int, ...]
    pattern: str
    why: str
    next: str


def check_read_back(intended: Image, read: Image, old: Image | None = None) -> ReadBack:
    """Where a read differs from what was written, and what that looks like.

    With the `old` content of the chip it can be told what was not erased or not touched at all.

    >>> from repairlib.firmware.image_file import image_of
    >>> told = check_read_back(image_of(b"\\x55\\xff\\x12"), image_of(b"\\x55\\xff\\x12"))
    >>> told.equal, told.pattern
    (True, 'as intended')
    >>> check_read_back(image_of(b"\\x55\\x12\\x31"), image_of(b"\\x55\\xff\\xff")).ranges
    ((1, 3),)
    """
    wrong = _Wrong.found(intended, read)
    if read.size != intended.size:
        pattern = SHORT if read.size < intended.size else LONG
    elif not wrong.differing:
        pattern = SAME
    else:
        pattern = _pattern(intended, read, old, wrong)
    why = _WHY[pattern]
    if pattern == STUCK:
        bit, level = _stuck(intended, read) or (0, 0)
        why += f" It is bit {bit}, counted from 0, and it reads {level}."
    elif pattern == MOVED:
        why += f" It is moved by {_moved(intended, read):+,} bytes."
    extra = abs(read.size - intended.size)
    ends = ((min(read.size, intended.size), max(read.size, intended.size)),) if extra else ()
    ranges = (*wrong.ranges, *ends)[:MOST_RANGES]
    bits = tuple(bit for bit in range(8) if (wrong.high | wrong.low) >> bit & 1)
    count, places = wrong.differing + extra, wrong.places + len(ends)
    return ReadBack(not count, count, ranges, places, bits, pattern, why, _NEXT[pattern])


class _Wrong(NamedTuple):
    """The bytes that differ, and the bits that are high or low where they should not be."""

    differing: int
    ranges: tuple[tuple[int, int], ...]
    places: int
    high: int
    low: int

    @classmethod
    def found(cls, intended: Image, read: Image) -> _Wrong:
        """What differs over the length that both have."""
        import numpy as np

        count, places, high, low = 0, 0, 0, 0
        ranges: list[tuple[int, int]] = []
        last = -1  # where the last range ends
        for begin, want, have in _pieces(intended, read):
            differs = want != have
            if not differs.any():
                continue
            count += int(np.count_nonzero(differs))
            high |= int(np.bitwise_or.reduce(have & ~want))
            low |= int(np.bitwise_or.reduce(want & ~have))
            starts, stops = (edges + begin for edges in runs_of(differs))
            places += len(starts) - (int(starts[0]) == last)
            for start, stop in zip(starts[: MOST_RANGES + 1], stops, strict=False):
                if ranges and ranges[-1][1] == start:
                    ranges[-1] = (ranges[-1][0], int(stop))
                elif len(ranges) < MOST_RANGES:
                    ranges.append((int(start), int(stop)))
            last = int(stops[-1])
        return cls(count, tuple(ranges), places, high, low)


def _pieces(*images: Image):
    """The same pieces of several images, with the address of each, over what all of them have."""
    shortest = min(image.size for image in images)
    arrays = [image.array()[:shortest] for image in images]
    for begin in range(0, shortest, _CHUNK):
        yield begin, *(array[begin : begin + _CHUNK] for array in arrays)


def _pattern(intended: Image, read: Image, old: Image | None, wrong: _Wrong) -> str:
    """The word for what differs between two images of one size."""
    if _one_byte(read):
        return NO_ANSWER
    if old is not None and old.size == intended.size:
        if _holds(intended, read, old, lambda want, was: was):
            return OLD
        if _holds(intended, read, old, lambda want, was: want & was):
            return NOT_ERASED
    if _holds(intended, read, read, lambda want, was: want | 0xFF):
        return NOT_WRITTEN
    if wrong.differing >= _ENOUGH and _stuck(intended, read):
        return STUCK
    if _moved(intended, read):
        return MOVED
    if not wrong.high:
        return ZEROS
    return MIXED if wrong.low else ONES


def _holds(intended: Image, read: Image, old: Image, rule) -> bool:
    """Whether each byte that differs is what `rule` makes of the intended and the old one."""
    return not any(
        ((have != want) & (have != rule(want, was))).any()
        for _, want, have, was in _pieces(intended, read, old)
    )


def _one_byte(image: Image) -> bool:
    """Whether the image is one byte over and over, all ones or all zeros."""
    return image.data[0] in (0x00, 0xFF) and image.data.count(image.data[0]) == image.size


def _stuck(intended: Image, read: Image) -> tuple[int, int] | None:
    """The bit that never changes in the whole read, and its level, when it explains all."""
    import numpy as np

    ever_high, ever_low = 0, 0
    for _, have in _pieces(read):
        ever_high |= int(np.bitwise_or.reduce(have))
        ever_low |= int(np.bitwise_or.reduce(~have))
    for bit in range(8):
        mask = 1 << bit
        if not (ever_high & ever_low & mask):
            level = ever_high >> bit & 1
            rule = (lambda want, was, m=mask: want | m) if level else _cleared(mask)
            if _holds(intended, read, read, rule):
                return bit, level
    return None


def _cleared(mask: int):
    """The rule that a bit is 0."""
    return lambda want, was: want & (0xFF ^ mask)


def _moved(intended: Image, read: Image) -> int:
    """By how many bytes the read is moved against the image; 0 when it is not."""
    starts = range(intended.size // 2, intended.size - _SAMPLE, _SAMPLE)
    start = next((at for at in starts if len(set(_cut(intended, at))) > _SAMPLE // 4), None)
    if start is None:
        return 0
    found = read.data.find(_cut(intended, start))
    if found < 0 or found == start:
        return 0
    by = found - start
    if by > 0:
        same = read.data[by:] == intended.data[:-by]
    else:
        same = read.data[:by] == intended.data[-by:]
    return by if same else 0


def _cut(image: Image, at: int) -> bytes:
    return image.data[at : at + _SAMPLE]
