"""Bytes or bits in another order than the chip's: told by text that reads only when it is undone.

Code and tables have no order of their own that could be told: with high byte first they are as
sound as with low byte first. So an image without text says nothing here.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import NamedTuple

from repairlib.core.wording import counted
from repairlib.firmware.damage_kinds import INVERTED, REVERSED, SWAPPED, Damage, Look
from repairlib.firmware.image_file import Image
from repairlib.firmware.image_stuck import MOST_BITS, constant_bits
from repairlib.firmware.image_text import Legible, Reader

PIECE = 1 << 13  # bytes that are judged at a time: text stands together
LOOKED_AT = 96  # pieces of a large image: those with the largest share of letters
STRIDE = 61  # one byte of so many decides which pieces these are
READS = 0.08  # mean score of a pair of letters, from which words read as text
BETTER = 0.15  # by which undoing must gain at least
DISORDER = -0.2  # the score of what is no text at all
SPREAD = 0.75  # of the scores of single pairs, around their mean
LETTERS = 15  # of the alphabet, which text has soon and code by chance has not
SURE = 1.8  # times the uncertainty by which it must gain
FEWEST, FEWEST_STUCK = 60, 120  # pairs of letters: as they are, with a bit of theirs lost
ENOUGH = 400  # pairs of letters that read as they are
LOST = 0.6  # of what text scores above disorder is left when a bit of its letters is lost
STEP = 8  # pairs of a piece, from which the piece says anything

_REVERSED = bytes(int(f"{byte:08b}"[::-1], 2) for byte in range(256))
_INVERTED = bytes(255 - byte for byte in range(256))


class Order(NamedTuple):
    """A way in which an image may be turned: what undoes it, and what it means at the bench."""

    kind: str
    undone: Callable[[bytes], bytes]
    how: str
    next: str


def _swapped(data: bytes, size: int = 2) -> bytes:
    turned = bytearray(data[: len(data) // size * size])
    whole = bytes(turned)
    for place in range(size):
        turned[place::size] = whole[size - 1 - place :: size]
    return bytes(turned)


ORDERS = (
    Order(
        SWAPPED,
        _swapped,
        "the two bytes of each pair are swapped",
        "set the reader to the chip's own order of bytes and read again; else swap in a new file",
    ),
    Order(
        SWAPPED,
        lambda data: _swapped(data, 4),
        "the four bytes of each group of four stand in reverse order",
        "set the reader to the chip's own order of bytes and read again; else turn in a new file",
    ),
    Order(
        REVERSED,
        lambda data: data.translate(_REVERSED),
        "the bits of each byte stand in reverse order",
        "set the reader to take the highest bit first, or check the order of the data lines",
    ),
    Order(
        INVERTED,
        lambda data: data.translate(_INVERTED),
        "every bit is inverted",
        "look for an inverting buffer between chip and reader, or a setting of the program",
    ),
)


def order(image: Image) -> Look:
    """Whether bytes or bits stand in another order than the text in the image asks for.

    Where a bit is the same in all bytes, letters are weighed as that changes them.

    >>> from repairlib.firmware.image_file import image_of
    >>> text = (
    ...     b"Press any key to continue. Paper tray is empty. Please close the cover again. "
    ...     b"Temperature of the head too high. Waiting for the network connection. 8 settings lost"
    ... )
    >>> order(image_of(text)).damages, order(image_of(_swapped(text))).damages[0].kind
    ((), 'swapped bytes')
    """
    constant = _constant(image.data)
    as_it_is = Reader(*(constant or ()))
    after = [_after(one, constant) for one in ORDERS]
    readers = [Reader(*(bit or ())) for bit in after]
    plain = nothing = Legible(0, 0.0)
    sums = [(nothing, nothing)] * len(ORDERS)
    for piece in _pieces(image.data):
        now = as_it_is.weigh(_without(piece, constant))
        for at, one in enumerate(ORDERS):
            undone = readers[at].weigh(_without(one.undone(piece), after[at]))
            if any(half.pairs >= STEP and half.score >= 0 for half in (now, undone)):
                sums[at] = (_joined(sums[at][0], now), _joined(sums[at][1], undone))
        plain = _joined(plain, now)
        if plain.pairs >= ENOUGH and plain.score >= READS:
            return Look()  # it reads as it is
    lost = constant is not None and constant != (7, 0)
    best = max(range(len(ORDERS)), key=lambda at: _gain(*sums[at], lost))
    now, undone = sums[best]
    one = ORDERS[best]
    fewest = LETTERS // 2 if lost else LETTERS
    if _gain(now, undone, lost) < SURE or len(readers[best].letters) < fewest:
        return Look()
    why = (
        f"{one.how}: undone, {counted(undone.pairs, 'pair')} of letters read as words do "
        f"({undone.score:+.2f} on average), and as it is they do not ({now.score:+.2f})"
    )
    return Look((Damage(one.kind, (0, image.size), why, one.next),))


def _gain(now: Legible, undone: Legible, lost: bool = False) -> float:
    """By how many times its uncertainty the score gains when undone; 0 where that says nothing.

    `lost` says whether letters have lost a bit, so that all scores lie nearer to each other.
    """
    share = LOST if lost else 1.0
    if undone.pairs < (FEWEST_STUCK if lost else FEWEST) or undone.score < share * READS:
        return 0.0
    before = now.score if now.pairs >= FEWEST else DISORDER
    gain = undone.score - before
    if gain < share * BETTER:
        return 0.0
    uncertain = share * SPREAD * math.sqrt(1 / undone.pairs + 1 / max(now.pairs, 100))
    return gain / uncertain


def _joined(one: Legible, other: Legible) -> Legible:
    pairs = one.pairs + other.pairs
    total = one.pairs * one.score + other.pairs * other.score
    return Legible(pairs, total / pairs if pairs else 0.0)


def _constant(data: bytes) -> tuple[int, int] | None:
    """A bit that is the same in each byte, and its level; that of letters first."""
    whole = [one for one in constant_bits(data) if one.half is None]
    return (whole[0].bit, whole[0].level) if 0 < len(whole) <= MOST_BITS else None


def _after(one: Order, constant: tuple[int, int] | None) -> tuple[int, int] | None:
    """Where that bit is, and which, when the order is undone."""
    if constant is None:
        return None
    bit, level = constant
    return (7 - bit if one.kind == REVERSED else bit, level ^ (one.kind == INVERTED))


def _without(data: bytes, stuck: tuple[int, int] | None) -> bytes:
    """Data with a stuck bit 5, 6 or 7 set as letters have it, small ones where both are letters."""
    if stuck is None or stuck[0] < 5:
        return data
    bit = 1 << stuck[0]
    return data.translate(bytes(byte & ~bit if bit == 128 else byte | bit for byte in range(256)))


def _pieces(data: bytes) -> Iterator[bytes]:
    """The image piece by piece; of a large one those in which text is likeliest, in any order."""
    import numpy as np

    many = len(data) // PIECE
    if many <= LOOKED_AT:
        for begin in range(0, len(data), PIECE):
            yield data[begin : begin + PIECE]
        return
    seen = np.frombuffer(data, np.uint8, many * PIECE).reshape(many, PIECE)[:, ::STRIDE].tobytes()
    taken = set()
    for turned in (bytes(range(256)), _REVERSED, _INVERTED):
        letters = bytes(chr(byte).isalpha() and byte < 128 for byte in turned)
        share = np.frombuffer(seen.translate(letters), np.uint8).reshape(many, -1).sum(axis=1)
        taken |= set(np.argsort(share, kind="stable")[-LOOKED_AT // 3 :].tolist())
    for at in sorted(taken):
        yield data[at * PIECE : (at + 1) * PIECE]
