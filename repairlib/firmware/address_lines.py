"""The same content twice: an address line that does not reach the chip, or two copies on purpose.

When a line has no effect, each address shows what stands at the address that differs in this line
alone. With the highest line the halves are equal. Two slots for two versions of the firmware are
equal too when they hold the same version; each slot then ends with space that is left over.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from repairlib.core.plain_file import size_in_words
from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import BLOCK, HALF, LINE, Damage, Look, address
from repairlib.firmware.image_file import Image
from repairlib.firmware.image_table import is_table

AT_ONCE = 1 << 20  # bytes: so much is looked at at a time, which bounds the memory
LEFT_OVER = 16  # bytes of one value at the end of a slot
SEEN = 256  # bytes that must stand there again
FEWEST_PAIRS = 8  # different blocks with content, all twice, which nobody stores on purpose
MOST_COPIES = 8  # more than that are rather a table
PIECE = 4096  # bytes: the block in which repeats are looked for, as chips are erased in it
FEWEST_VALUES = 16  # in a half, below which it is rather a table or filling
VALUES = 32  # different bytes in an image, below which nothing is told of a line
RICH = 100  # values in a block, from which it is no table or filling
LINE_NEXT = (
    "check the address lines or the capacity set in the reader; read again with the chip lifted"
)


def repeats(image: Image) -> Look:
    """Whether halves, blocks or all pairs of blocks are equal, and what that allows to say.

    >>> from repairlib.firmware.image_file import image_of
    >>> half = b"; ".join(b"error %d: no paper in tray %d" % (at, at * 7) for at in range(99))
    >>> [damage.kind for damage in repeats(image_of(half[:2048] * 2)).damages]
    ['repeated half']
    """
    if period := _period(image.array()):
        half = _half(image, period)
        lines = _dead_lines(Image(image.name, image.data[:period]))
        return Look(half.damages + lines.damages, half.doubts + lines.doubts, half.notes)
    lines = _dead_lines(image)
    return lines if lines.damages or lines.doubts else _blocks(image)


def _period(array) -> int:
    """The power of two of bytes behind which all begins anew; 0 where there is none."""
    size = len(array)
    period = 1 << (size - 1).bit_length() - 1
    if size - period < SEEN or not _same(array[period:], array[: size - period]):
        return 0
    while period > 2 * SEEN and _same(array[period // 2 : period], array[: period // 2]):
        period //= 2
    return period


def _same(one, other) -> bool:
    """Whether two arrays are equal; whole images nearly always show at their begin that not."""
    import numpy as np

    return np.array_equal(one[:4096], other[:4096]) and np.array_equal(one, other)


def _half(image: Image, period: int) -> Look:
    where, part = (period, image.size), image.data[:period]
    if not _has_values(image.array()[:period], FEWEST_VALUES):
        return Look(notes=(f"{size_in_words(period)} stand there over and over, with few values.",))
    copies = -(-image.size // period)
    what = "the halves are equal" if image.size == 2 * period else f"at {address(period)} "
    what += "" if image.size == 2 * period else f"it begins anew, {copies} times in all"
    table = copies > MOST_COPIES or is_table(image.array()[:period])
    if table or _left_over(part):
        meant = "a table of a round length" if table else "two slots with the same content"
        why = f"{what}: {meant}, or an address line without effect"
        then = f"find out whether the set keeps it twice; {LINE_NEXT}"
        return Look((), (Damage(HALF, where, why, then),))
    why = (
        f"{what}, and what stands in front of {address(period)} runs up to it, where a slot would "
        "have space left over: an address line without effect, or a chip smaller than was set"
    )
    return Look((Damage(HALF, where, why, LINE_NEXT),))


def _left_over(part: bytes) -> bool:
    end = part[-LEFT_OVER:]
    return end.count(end[:1]) == len(end)


def _dead_lines(image: Image) -> Look:
    """The lines below the highest which have no effect anywhere in the image.

    Two copies of one area on purpose look the same where only few areas are in the image.
    """
    looks = [_dead(image, line) for line in range((image.size - 1).bit_length() - 1)]
    return Look(
        tuple(damage for look in looks for damage in look.damages),
        tuple(doubt for look in looks for doubt in look.doubts),
    )


def _dead(image: Image, line: int) -> Look:
    """Whether this line has no effect, and whether anything else explains what is seen."""
    import numpy as np

    block = 1 << line
    pairs = image.size // (2 * block)
    rows = image.array()[: pairs * 2 * block].reshape(pairs, 2, block)
    # A few rows tell nearly always that it is not so.
    some = rows[:: pairs // 64 | 1, :, :1024]  # an odd step: filling stands at even ones
    if not np.array_equal(some[:, 0], some[:, 1]) or not np.array_equal(rows[:, 0], rows[:, 1]):
        return Look()
    own = rows[:, 0]
    full = list(islice(_full(own), max(FEWEST_PAIRS, SEEN // block)))
    if len(full) * block < SEEN or not _has_values(image.array(), VALUES):
        return Look()
    where = (0, 2 * block * pairs)
    why = (
        f"each block of {size_in_words(block)} stands twice, one behind the other, all over the "
        f"image: address line A{line} has no effect"
    )
    if len(full) >= FEWEST_PAIRS:
        return Look((Damage(LINE, where, why, LINE_NEXT),))
    many = counted(len(full), "block")
    if len(full) > 1 and not all(_left_over(own[at].tobytes()) for at in full):
        why += f"; {many} are no copies on purpose, which would have space left over at their ends"
        return Look((Damage(LINE, where, why, LINE_NEXT),))
    why += f", or {many} with content stand there twice on purpose"
    return Look((), (Damage(LINE, where, why, LINE_NEXT),))


def _full(blocks) -> Iterator[int]:
    """The places of blocks that are not the same as the one before, nor large and one value."""
    import numpy as np

    size = blocks.shape[1]
    step = max(1, AT_ONCE // size)
    for begin in range(0, len(blocks), step):
        first = max(begin, 1)
        now = blocks[first : begin + step]
        new = np.flatnonzero((now != blocks[first - 1 :][: len(now)]).any(axis=1)) + first
        for at in [0] * (begin == 0) + new.tolist():
            if size < SEEN or np.ptp(blocks[at]):
                yield at


def _has_values(array, many: int) -> bool:
    """Whether so many different bytes stand in it."""
    import numpy as np

    seen = np.zeros(256, np.int64)
    for begin in range(0, len(array), AT_ONCE):
        seen += np.bincount(array[begin : begin + AT_ONCE], minlength=256)
        if np.count_nonzero(seen) >= many:
            return True
    return False


def _blocks(image: Image) -> Look:
    """Rich blocks that stand twice, one directly behind the other."""
    import numpy as np

    array = image.array()
    blocks = array[: image.size // PIECE * PIECE].reshape(-1, PIECE)
    alike = (blocks[1:, :16] == blocks[:-1, :16]).all(axis=1)
    found = [
        (at + 1) * PIECE
        for at in np.flatnonzero(alike).tolist()
        if np.array_equal(blocks[at], blocks[at + 1])
    ]
    runs: list[list[int]] = []
    for begin in found:
        if runs and runs[-1][1] == begin:
            runs[-1][1] += PIECE
        else:
            runs.append([begin, begin + PIECE])
    told = []
    for begin, end in runs:
        part = image.data[begin - PIECE : begin]
        rich = len(set(part)) >= RICH and not is_table(array[begin - PIECE : begin])
        if end - begin > PIECE or not rich or _left_over(part):
            continue  # a table of a round length, or copies with space left over
        told.append(begin)
    if not told:
        return Look()
    where = (told[0], told[0] + PIECE)
    why = (
        f"{counted(len(told), 'block')} of {size_in_words(PIECE)} stand twice, one behind the "
        f"other, first at {address(told[0])}: a block was read again in the place of the next, or "
        "it is stored twice"
    )
    then = "read again and compare: a block that was read twice will not repeat itself there"
    return Look((), (Damage(BLOCK, where, why, then),))
