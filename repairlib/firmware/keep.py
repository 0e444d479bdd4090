"""One thing that only this board has: what it is, where it stands, and how sure that is."""

from __future__ import annotations

from typing import NamedTuple

ADDRESS, SERIAL = "network address", "serial number"
CALIBRATION, REGION = "calibration", "data of its own"
VERY_LIKELY, LIKELY, POSSIBLE = "very likely", "likely", "possible"
KEEP_KINDS = (ADDRESS, SERIAL, CALIBRATION, REGION)
HOW_SURE = (VERY_LIKELY, LIKELY, POSSIBLE)

_NEXT = {
    ADDRESS: "Compare it with the label on the case or the board, then keep it.",
    SERIAL: "Compare it with the label on the case or the board, then keep it.",
    CALIBRATION: "Keep it: nobody can read it off a label, and measuring it anew takes the maker's "
    "jig.",
    REGION: "Compare with one more board of this kind. Until then keep a copy of it, and try the "
    "set with it before you do without.",
}


class Keep(NamedTuple):
    """Something in the old content that a donor's image would overwrite.

    `kind` is one of KEEP_KINDS, `where` from which address to which in bytes (half open), `value`
    how a person reads it, `why` what speaks for it, `sure` one of HOW_SURE.
    """

    kind: str
    where: tuple[int, int]
    value: str
    why: str
    sure: str

    @property
    def next(self) -> str:
        """What to do about it.

        >>> Keep(ADDRESS, (64, 70), "02:5A:C3:10:41:17", "it stands twice", LIKELY).next[:21]
        'Compare it with the l'
        """
        return _NEXT[self.kind]

    def __str__(self) -> str:
        first, end = self.where
        return f"{self.kind} {self.value} at 0x{first:06X} to 0x{end - 1:06X}: {self.sure}"


def overlap(one: tuple[int, int], other: tuple[int, int]) -> bool:
    """Whether two ranges have a byte in common.

    >>> overlap((0, 4), (4, 8)), overlap((0, 5), (4, 8))
    (False, True)
    """
    return one[0] < other[1] and other[0] < one[1]


def rank(keep: Keep) -> tuple[int, int, int]:
    """By what a list of these is put in order: the surest first, then by kind and address."""
    return HOW_SURE.index(keep.sure), KEEP_KINDS.index(keep.kind), keep.where[0]
