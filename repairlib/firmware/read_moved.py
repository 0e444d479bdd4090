"""Is one read the other, moved along: by bytes, by a bit, or with its bytes in another order?"""

from __future__ import annotations

from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import address
from repairlib.firmware.image_file import Image
from repairlib.firmware.read_patterns import OFFSET, OTHER, SPEED

NEEDLE = 32  # bytes that are looked for in the other read
FARTHEST = 1 << 14  # bytes: so far is looked for them
PROOF = 1 << 15  # bytes behind, nearly all of which must agree then
AGREE, UNMOVED = 0.95, 0.6  # shares of equal bytes: moved, at least; as it is, less than this
LOOKS = 10  # places that are tried
AGAIN = "lower the clock, shorten the leads, fit a capacitor at the chip's supply, and read again"


def moved(first: Image, other: Image) -> tuple[str, str, str] | None:
    """The pattern, what it means and what is next, when one read is the other in another place.

    >>> from repairlib.firmware.image_file import image_of
    >>> whole = bytes(range(256)) + bytes(range(255, -1, -1))
    >>> moved(image_of(whole), image_of(whole[:50] + whole[51:]))[1]
    'from 0x000032 on the second read stands 1 byte too near the front: it lost a byte there'
    """
    import numpy as np

    a, b = first.array(), other.array()
    common = min(len(a), len(b))
    start = _first_unequal(a, b, common)
    whose = other.name if other.name != first.name else "the second read"
    for place in _tries(a, b, start, common):
        if how := _slipped(a, b, place):
            means = (
                f"from {address(start)} on {whose} is the other moved by one bit: a clock "
                f"edge was {how}, so the clock is too fast for the wiring or its contact is bad"
            )
            return SPEED, means, AGAIN
        if by := _moved_by(first.data, other.data, a, b, place):
            lost = by > 0
            many = "a byte" if abs(by) == 1 else counted(abs(by), "byte")
            far = counted(abs(by), "byte")
            near = "near the front" if lost else "far along"
            how = f"{'lost' if lost else 'took in'} {many} there"
            means = f"from {address(start)} on {whose} stands {far} too {near}: it {how}"
            return OFFSET, means, AGAIN
    for order, turned in (
        ("its bytes swapped in pairs", lambda row: row[: len(row) & ~1].reshape(-1, 2)[:, ::-1]),
        ("the bits of each byte in reverse order", lambda row: _reversed()[row]),
        ("every bit inverted", lambda row: ~row),
    ):
        window = slice(start & ~1, (start & ~1) + 65536)
        there, here = turned(b[window]).ravel(), a[window][: len(b[window]) & ~1]
        size = min(len(there), len(here))
        if size < 16:
            continue
        as_it_is = np.mean(a[window][:size] == b[window][:size])
        if np.mean(there[:size] == here[:size]) > AGREE and as_it_is < UNMOVED:
            means = f"{whose} is the other with {order}: the reads were made or saved in two ways"
            return OTHER, means, "find out which order is the chip's, then read twice in it"
    return None


def _first_unequal(a, b, common: int) -> int:
    import numpy as np

    for begin in range(0, common, 1 << 20):
        unequal = a[begin : begin + (1 << 20)][: common - begin]
        unequal = unequal != b[begin : begin + (1 << 20)][: common - begin]
        if unequal.any():
            return begin + int(np.argmax(unequal))
    return common


def _tries(a, b, start: int, common: int):
    """Places behind `start` where what stands there could be found again: no filling."""
    import numpy as np

    found, step = 0, NEEDLE
    place = start
    while place + NEEDLE <= common and found < LOOKS:
        rich = all(len(np.unique(row[place : place + NEEDLE])) >= NEEDLE // 4 for row in (a, b))
        if rich and _agree(a[place:], b[place:]) < UNMOVED:
            yield place
            found += 1
        place += step
        step += step // 2


def _agree(a, b) -> float:
    """The share of equal bytes in what comes next, filling left out."""
    import numpy as np

    many = min(len(a), len(b), PROOF)
    a, b = a[:many], b[:many]
    content = (np.minimum(a, b) > 0) & (np.maximum(a, b) < 255)
    return float(np.mean(a[content] == b[content])) if content.any() else 0.0


def _moved_by(data: bytes, other: bytes, a, b, place: int) -> int:
    """By how many bytes what stands at `place` of the second stands farther along in the first."""
    needle, low = other[place : place + NEEDLE], max(0, place - FARTHEST)
    found: list[int] = []
    there = low - 1
    while len(found) < LOOKS and there < place + FARTHEST:
        there = data.find(needle, there + 1, place + FARTHEST)
        if there < 0:
            break
        if _agree(a[there:], b[place:]) > AGREE:
            found.append(there - place)
    return min(found, key=abs, default=0)


def _slipped(a, b, place: int) -> str:
    """Whether the bits of the second are the first's a clock later or earlier."""
    import numpy as np

    many = min(PROOF, len(a) - place, len(b) - place)
    a, b = a[place : place + many], b[place : place + many]
    for how, ahead, behind in (("lost", a, b), ("counted twice", b, a)):
        later = np.packbits(np.unpackbits(ahead)[1:])
        if _agree(later[:-1], behind[:-1]) > AGREE:
            return how
    return ""


def _reversed():
    """For each byte, the byte with its bits in reverse order."""
    import numpy as np

    return np.packbits(np.unpackbits(np.arange(256, dtype=np.uint8)).reshape(-1, 8)[:, ::-1])
