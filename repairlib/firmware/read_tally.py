"""What differs between two reads, counted over all of it: nothing is left out or estimated.

The counts take the same little memory whatever differs, and the rules of `read_patterns` judge by
them alone.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.firmware.image_file import Image

AT_ONCE = 1 << 18  # bytes: so much is compared at a time, which bounds the memory
BLOCK = 4096  # bytes: the smallest that is erased at once
GAP = 64  # bytes: places farther apart than this are of different bursts
PARTS = 24  # equal parts of what both reads have; eighths and thirds of it are some of these


class Bursts(NamedTuple):
    """Places that differ and lie near each other, taken together.

    They reach from `start` to `end`, and over `span` bytes without what lies between them;
    `longest` is a half-open range of addresses. `squares` is the sum of the squares of the
    distances from each begin to the next.
    """

    many: int = 0
    start: int = 0
    end: int = 0
    span: int = 0
    longest: tuple[int, int] = (0, 0)
    last_start: int = 0
    squares: int = 0

    @property
    def distance(self) -> float:
        """The mean distance from one begin to the next, in bytes; 0 for fewer than two."""
        return (self.last_start - self.start) / (self.many - 1) if self.many > 1 else 0.0

    @property
    def scatter(self) -> float:
        """By how much these distances scatter: their standard deviation in bytes."""
        mean_square = self.squares / (self.many - 1) if self.many > 1 else 0.0
        return max(0.0, mean_square - self.distance**2) ** 0.5


class Side(NamedTuple):
    """How one of the reads looks where the two differ.

    Of the bytes that differ `ones` are FF, `zeros` 00 and `text` readable. Of the blocks that
    differ `blank` are FF throughout, and `left_blank` are FF from the first difference to their
    end. `not_late` counts its wrong bits that are not the bit before, if the other read is right;
    `chance` how many of these there would be if any bits of the same bytes were wrong.
    """

    ones: int = 0
    zeros: int = 0
    text: int = 0
    blank: int = 0
    left_blank: int = 0
    not_late: int = 0
    chance: float = 0.0


class Tally(NamedTuple):
    """What differs between two reads in the `size` bytes that both have.

    `rising` and `falling` count each bit from 0 that is 0 in the first and 1 in the other, or the
    other way round. `parts` counts the bytes that differ in each of PARTS equal parts. `blocks` is
    how many blocks of BLOCK bytes differ. `sides` are the first read and the other.
    """

    size: int
    bytes: int
    rising: tuple[int, ...]
    falling: tuple[int, ...]
    parts: tuple[int, ...]
    blocks: int
    bursts: Bursts
    sides: tuple[Side, Side]

    @property
    def bits(self) -> int:
        """How many bits differ."""
        return sum(self.rising) + sum(self.falling)


def tally(first: Image, other: Image) -> Tally:
    """Count what differs between two reads.

    >>> from repairlib.firmware.image_file import image_of
    >>> found = tally(image_of(b"abcdefgh" * 40), image_of(b"abc" + b"\\xff" * 4 + b"h" * 313))
    >>> found.size, found.bytes, found.sides[1].ones, found.bursts.many
    (320, 277, 4, 1)
    """
    import numpy as np

    size = min(first.size, other.size)
    rows = [image.array()[:size] for image in (first, other)]
    rising, falling = np.zeros(8, np.int64), np.zeros(8, np.int64)
    parts = np.zeros(PARTS, np.int64)
    many = blocks = 0
    bursts, sides = Bursts(), [Side(), Side()]
    for begin in range(0, size, AT_ONCE):
        now = [row[begin : begin + AT_ONCE] for row in rows]
        unequal = now[0] != now[1]
        places = np.flatnonzero(unequal)
        if not len(places):
            continue
        many += len(places)
        bursts = _with(bursts, places + begin)
        parts += np.bincount((places + begin) * PARTS // size, minlength=PARTS)
        values = [row[places] for row in now]
        rising += _bits(values[1] & ~values[0])
        falling += _bits(values[0] & ~values[1])
        starts = np.flatnonzero(np.logical_or.reduceat(unequal, np.arange(0, len(unequal), BLOCK)))
        blocks += len(starts)
        sides = [
            _added(
                side,
                Side(
                    *_held(values[at]),
                    *_blanks(now[at], unequal, (starts * BLOCK).tolist()),
                    *_late(rows[1 - at], values[1 - at], values[at], places + begin),
                ),
            )
            for at, side in enumerate(sides)
        ]
    up, down, spread = (tuple(map(int, each)) for each in (rising, falling, parts))
    return Tally(size, many, up, down, spread, blocks, bursts, (sides[0], sides[1]))


def _added(one: Side, more: Side) -> Side:
    return Side._make(sum(pair) for pair in zip(one, more, strict=True))


def _with(bursts: Bursts, places) -> Bursts:
    """The bursts and those of rising places behind them; the first may go on with the last."""
    import numpy as np

    cuts = np.flatnonzero(np.diff(places) > GAP)
    starts = places[np.concatenate(([0], cuts + 1))]
    ends = places[np.concatenate((cuts, [len(places) - 1]))] + 1
    many, begin, _, span, longest, last, squares = bursts
    if many and starts[0] - bursts.end < GAP:  # it goes on
        span -= bursts.end - last
        starts[0] = last
    elif many:
        squares += int(starts[0] - last) ** 2
        many += 1
    else:
        begin, many = int(starts[0]), 1
    many += len(starts) - 1
    squares += int((np.diff(starts) ** 2).sum())
    lengths = ends - starts
    at = int(lengths.argmax())
    if lengths[at] > longest[1] - longest[0]:
        longest = (int(starts[at]), int(ends[at]))
    span += int(lengths.sum())
    return Bursts(many, begin, int(ends[-1]), span, longest, int(starts[-1]), squares)


def _bits(values):
    """How often each bit from 0 is set."""
    import numpy as np

    often = np.bincount(values, minlength=256)
    return np.array([often[np.arange(256) >> bit & 1 == 1].sum() for bit in range(8)])


def _held(values) -> tuple[int, int, int]:
    """How many are FF, 00 and readable."""
    import numpy as np

    often = np.bincount(values, minlength=256)
    readable = often[32:127].sum() + often[[9, 10, 13]].sum()
    return int(often[255]), int(often[0]), int(readable)


def _blanks(row, unequal, starts: list[int]) -> tuple[int, int]:
    """Of the blocks at `starts`, how many are FF throughout, and from the first difference on."""
    blank = left_blank = 0
    for start in starts:
        block = row[start : start + BLOCK]
        first = int(unequal[start : start + BLOCK].argmax())
        if block[first] == 255 and block[-1] == 255 and (block[first:] == 255).all():
            left_blank += 1
            blank += bool((block[:first] == 255).all())
    return blank, left_blank


def _late(right, good, bad, places) -> tuple[int, float]:
    """Of the wrong bits of `bad`, those that are not the bit before, and how many are so by chance.

    Bits come highest first. `good` is what the read `right` holds at the same places.
    """
    import numpy as np

    last = np.where(places > 0, right[places - 1], 0)
    before = (good >> 1) | (last << 7)
    wrong = good ^ bad
    chance = 0.0
    for level in (good, ~good):
        lost = np.bitwise_count(wrong & level)
        held, alike = np.bitwise_count(level), np.bitwise_count(level & ~(before ^ good))
        often = np.bincount((lost * alike).astype(np.uint16) * 9 + held)
        products, of = np.divmod(np.arange(len(often)), 9)
        chance += float((often * products / np.maximum(of, 1)).sum())
    return int(np.bitwise_count(wrong & (bad ^ before)).sum()), chance
