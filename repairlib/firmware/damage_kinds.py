"""The words for what is wrong with an image, and what one look at it returns."""

from __future__ import annotations

from typing import NamedTuple


class Damage(NamedTuple):
    """What is wrong with an image, or may be.

    `kind` is one of KINDS. `where` is a half-open range of addresses in bytes. `why` says what was
    seen, and `next` what to do or to measure.
    """

    kind: str
    where: tuple[int, int]
    why: str
    next: str

    def __str__(self) -> str:
        return f"{self.kind}: {self.why}. Next: {self.next}"


class Look(NamedTuple):
    """What one look found: certain damage, doubts that have a sound explanation too, and notes."""

    damages: tuple[Damage, ...] = ()
    doubts: tuple[Damage, ...] = ()
    notes: tuple[str, ...] = ()


SHORT, LONG = "short read", "longer than the chip"
BLANK, ALL_ZERO, ONE_VALUE = "blank", "all zero", "one value only"
FRONT = "padding at the front"
HALF, BLOCK, LINE = "repeated half", "repeated block", "address line stuck"
SWAPPED, REVERSED, INVERTED = "swapped bytes", "reversed bits", "inverted bits"
STUCK = "stuck bit"
KINDS = (
    *(SHORT, LONG, BLANK, ALL_ZERO, ONE_VALUE, FRONT),
    *(HALF, BLOCK, LINE, SWAPPED, REVERSED, INVERTED, STUCK),
)


def address(place: int) -> str:
    """An address as people write it down.

    >>> address(4096)
    '0x001000'
    """
    return f"0x{place:06X}"
