"""Check sums that stand inside an image, found because they fit, and whether they still do.

A firmware that checks itself has the sum of a block beside it. Which kind and over which block is
the maker's choice; here the usual ones are tried over the usual blocks.
"""

from __future__ import annotations

import zlib
from binascii import crc_hqx
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from repairlib.firmware.image_file import Image
from repairlib.firmware.keep import Keep
from repairlib.firmware.places import blank

_BLOCKS = (1 << 12, 1 << 16)  # bytes, as chips erase: besides the record and the whole image
_LONGEST_RECORD = 1 << 12
_NOTHING = 16  # bytes of nothing that end a record

OTHER_WAYS = (
    "A firmware can check a block in ways that are not known here: if the set does not start "
    "with this image, try the donor's as it is, and set what was kept in the set's own menu."
)


def _total(data: bytes) -> int:
    """All bytes added up."""
    import numpy as np

    return int(np.frombuffer(data, np.uint8).sum(dtype=np.uint64))


# Width in bytes, words, and how the sum is made of the bytes it covers.
_SUMS = (
    (4, "CRC-32", zlib.crc32),
    (2, "CRC of 16 bits, polynomial 1021, from FFFF", lambda data: crc_hqx(data, 0xFFFF)),
    (2, "CRC of 16 bits, polynomial 1021, from 0", lambda data: crc_hqx(data, 0)),
    (4, "sum of 32 bits", _total),
    (2, "sum of 16 bits", lambda data: _total(data) & 0xFFFF),
    (1, "sum of 8 bits", lambda data: _total(data) & 0xFF),
    (1, "sum of 8 bits to zero", lambda data: -_total(data) & 0xFF),
)


class _Stored(NamedTuple):
    """A check sum that fits: where it stands, what it covers, its width, words and byte order."""

    at: int
    covers: tuple[int, int]
    kind: int
    order: str


def sums_in_doubt(donor: Image, made: Image, keeps: Sequence[Keep]) -> tuple[str, ...]:
    """Sentences on the check sums that fit in the donor's image and not in the one made of it.

    Besides what is found there may be others: the last sentence says so.

    >>> from repairlib.firmware.keep import SERIAL, LIKELY
    >>> record = b"serial=204162".ljust(4092, b"-")
    >>> donor = Image("donor", record + zlib.crc32(record).to_bytes(4))
    >>> made = Image("made", donor.data.replace(b"204162", b"204117"))
    >>> sums_in_doubt(donor, made, [Keep(SERIAL, (7, 13), "204117", "", LIKELY)])[0][:40]
    'The CRC-32 at 0x000FFC over 0x000000 to '
    """
    return (*(told for _, told in broken_sums(donor, made, keeps)), OTHER_WAYS)


def broken_sums(donor: Image, made: Image, keeps: Sequence[Keep]) -> list[tuple[int, str]]:
    """The same check sums, each with its width in bytes: one of a single byte may fit by chance."""
    broken = []
    for stored in dict.fromkeys(_fitting(donor, keeps)):
        width, words, _ = _SUMS[stored.kind]
        due = _due(made, stored)
        have = made.data[stored.at : stored.at + width]
        if have != due:
            first, end = stored.covers
            told = (
                f"The {words} at 0x{stored.at:06X} over 0x{first:06X} to 0x{end - 1:06X} fitted in "
                f"{donor.name}; now {have.hex().upper()} stands there and {due.hex().upper()} "
                "would fit."
            )
            broken.append((width, told))
    return broken


def _fitting(image: Image, keeps: Sequence[Keep]) -> Iterator[_Stored]:
    """The check sums that fit in the image and cover something of what is kept."""
    for first, end in dict.fromkeys(_blocks(image, keeps)):
        for kind, (width, _, _) in enumerate(_SUMS):
            if end - first < 4 * width or (width == 1 and end - first > _LONGEST_RECORD):
                continue
            for at, covers in ((end - width, (first, end - width)), (first, (first + width, end))):
                for order in ("big", "little") if width > 1 else ("big",):
                    stored = _Stored(at, covers, kind, order)
                    have = image.data[at : at + width]
                    if not blank(have) and have == _due(image, stored):
                        yield stored


def _due(image: Image, stored: _Stored) -> bytes:
    """The check sum that would fit."""
    width, _, made = _SUMS[stored.kind]
    covered = image.data[stored.covers[0] : stored.covers[1]]
    number = made(covered) & ((1 << 8 * width) - 1)
    return number.to_bytes(width, "big" if stored.order == "big" else "little")


def _blocks(image: Image, keeps: Sequence[Keep]) -> Iterator[tuple[int, int]]:
    """The blocks that may have a check sum of their own and hold something of what is kept."""
    for keep in keeps:
        start, end = keep.where
        first, last = _record(image.data, start, end)
        yield from ((one, last) for one in {first, start})
        for size in _BLOCKS:
            low, high = start // size * size, min(-(-end // size) * size, image.size)
            yield low, high
            yield low, _without_tail(image.data, low, high)
    yield 0, image.size
    yield 0, _without_tail(image.data, 0, image.size)


def _record(data: bytes, start: int, end: int) -> tuple[int, int]:
    """From nothing to nothing around a place, at most 4 KiB to each side."""
    low, high = max(0, start - _LONGEST_RECORD), min(len(data), end + _LONGEST_RECORD)
    nothing = b"\xff" * _NOTHING, b"\0" * _NOTHING
    first = max(low, *(data.rfind(one, low, start) + _NOTHING for one in nothing))
    last = min(at if (at := data.find(one, end, high)) >= 0 else high for one in nothing)
    return (first if first <= start else low), last


def _without_tail(data: bytes, first: int, end: int) -> int:
    """Where a block ends without the nothing at its end."""
    block = data[first:end]
    return first + len(block.rstrip(b"\xff" if block.endswith(b"\xff") else b"\0"))
