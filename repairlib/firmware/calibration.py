"""Tables of calibration: numbers that two boards have at the same place, alike and never the same.

Trim values of two boards of one kind are neighbours; two pieces of code are not. So a place that
differs is a table when its numbers, taken in one width and byte order, lie close to those of the
other board throughout.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from repairlib.firmware.image_file import Image
from repairlib.firmware.keep import CALIBRATION, LIKELY, VERY_LIKELY, Keep, overlap
from repairlib.firmware.places import Place, blank

_SHARE = 0.85  # of the numbers have to lie close; by chance each does so one time in eight
_CLOSE = 1 / 8  # of the larger one of two numbers; signed ones lie within a sixteenth of the scale
_CLOSE_BYTES = 1 / 5  # for numbers of 8 bits, of which more are needed
_MISALIGNED = 0.05  # how much less a table counts that begins at no multiple of its width
_LONGEST_SUM = 8  # bytes at an end of a table that may be a check sum
_ALIKE_GAP = 32  # bytes between two tables that are one
_FLOAT_RANGE = (1e-6, 1e6)  # what a trim may be

# In the order in which they are tried: forms of numpy, words, and the fewest numbers that differ.
_FORMS = (
    ((">f4", "<f4"), "with a decimal point", 4),
    ((">u2", "<u2"), "of 16 bits", 6),
    ((">u4", "<u4"), "of 32 bits", 6),
    ((">i2", "<i2"), "of 16 bits with a sign", 6),
    (("|u1",), "of 8 bits", 12),
    (("|i1",), "of 8 bits with a sign", 12),
)
_WORDS = {form: words for forms, words, _ in _FORMS for form in forms}
_ORDERS = {">": ", high byte first", "<": ", low byte first", "|": ""}


class _Table(NamedTuple):
    """Numbers of one form that stand at a place."""

    where: tuple[int, int]
    form: str
    closeness: float
    low: float
    high: float
    numbers: int


def calibrations(
    old: Image, places: Iterable[Place], taken: Iterable[tuple[int, int]]
) -> list[Keep]:
    """The tables in which `old` differs from other boards; `taken` is explained otherwise."""
    spoken_for = list(taken)
    found: list[tuple[_Table, set[str]]] = []
    for place in places:
        for start, end in _left(old, place, spoken_for):
            table = _table(old, place.other, start, end)
            if table is None:
                continue
            same = next((one for one in found if overlap(one[0].where, table.where)), None)
            if same is None:
                found.append((table, {place.other.name}))
            else:
                found.remove(same)
                found.append(
                    (_wider(old, place.other, same[0], table), same[1] | {place.other.name})
                )
    return [_told(table, boards) for table, boards in _joined(found)]


def _left(old: Image, place: Place, taken: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """What differs at a place and is not spoken for: stretches between what is."""
    begin, left = place.start, []
    for first, end in sorted(one for one in taken if overlap(one, (place.start, place.end))):
        if first > begin:
            left.append((begin, first))
        begin = max(begin, end)
    if begin < place.end:
        left.append((begin, place.end))
    return left


def _table(old: Image, other: Image, start: int, end: int) -> _Table | None:
    """The table that stands there, in the first form that fits and its closest byte order."""
    cuts = old.data[start:end], other.data[start:end]
    if any(blank(cut) or (cut.isascii() and cut.decode().isprintable()) for cut in cuts):
        return None
    for forms, _, fewest in _FORMS:
        tables = [
            table
            for form in forms
            for shift in range(int(form[-1]))
            if (table := _in_form(old, other, start - shift, end, form, fewest)) is not None
        ]
        if tables:
            return max(tables, key=lambda one: one.closeness)
    return None


def _in_form(
    old: Image, other: Image, first: int, end: int, form: str, fewest: int
) -> _Table | None:
    """The table that begins at `first`, read in one form; None when it is no table in that form."""
    import numpy as np

    width = int(form[-1])
    last = first + -(-(end - first) // width) * width
    if first < 0 or last > min(old.size, other.size):
        return None
    with np.errstate(all="ignore"):
        mine, theirs = (
            np.frombuffer(one.data[first:last], form).astype(np.float64) for one in (old, other)
        )
        differ = np.flatnonzero(mine != theirs)
        if len(differ) < fewest or _is_half_of_wider(differ, form):
            return None
        mine, theirs = (one[differ[0] : differ[-1] + 1] for one in (mine, theirs))
        apart = _apart(mine, theirs, form)
    first += int(differ[0]) * width
    limit = _CLOSE_BYTES if width == 1 else _CLOSE
    inner = _without_sums(apart <= limit, width)
    told, close = mine[inner], (apart <= limit)[inner]
    differing = (mine != theirs)[inner]
    if np.count_nonzero(differing & close) < fewest or np.mean(close[differing]) < _SHARE:
        return None
    closeness = -float(np.median(apart[inner][differing])) - _MISALIGNED * (first % width != 0)
    where = (first, first + len(mine) * width)
    low, high = float(told[close].min()), float(told[close].max())
    return _Table(where, form, closeness, low, high, len(told))


def _without_sums(close, width: int) -> slice:
    """The numbers without those at both ends that are far apart, as check sums are."""
    most = _LONGEST_SUM // width
    ends = []
    for side in (close, close[::-1]):
        far = next((at for at in range(min(most + 1, len(side))) if side[at]), 0)
        ends.append(far)
    return slice(ends[0], len(close) - ends[1])


def _apart(mine, theirs, form: str):
    """How far each two numbers lie from each other; endless where the form cannot be meant."""
    import numpy as np

    scale = np.maximum(np.abs(mine), np.abs(theirs))
    meant = np.isfinite(scale)
    if form[1] == "i":  # trims around zero: small against the full scale
        full = 256.0 ** int(form[-1]) / 16
        meant &= scale <= full
        scale = np.full_like(scale, full)
    low, high = _FLOAT_RANGE
    if form[1] == "f":
        meant &= (scale > low) & (scale < high)
    apart = np.where(mine == theirs, 0.0, np.abs(mine - theirs) / scale)
    return np.where(meant, apart, np.inf)


def _is_half_of_wider(differ, form: str) -> bool:
    """Whether only every other number of 16 bits differs: then the numbers have 32 bits."""
    return form[1:] == "u2" and len(set((differ % 2).tolist())) == 1


def _wider(old: Image, other: Image, one: _Table, two: _Table) -> _Table:
    """One table that reaches over both, as two other boards show it."""
    start, end = min(one.where[0], two.where[0]), max(one.where[1], two.where[1])
    return _table(old, other, start, end) or max(one, two, key=lambda table: table.numbers)


def _joined(found: list[tuple[_Table, set[str]]]) -> list[tuple[_Table, set[str]]]:
    """Neighbouring tables of one form as one."""
    joined: list[tuple[_Table, set[str]]] = []
    for table, boards in sorted(found, key=lambda one: one[0].where):
        before = joined[-1][0] if joined else None
        gap = table.where[0] - before.where[1] if before else 0
        if before and before.form == table.form and 0 <= gap <= _ALIKE_GAP:
            where = (before.where[0], table.where[1])
            low, high = min(before.low, table.low), max(before.high, table.high)
            numbers = (where[1] - where[0]) // int(table.form[-1])
            whole = _Table(where, table.form, before.closeness, low, high, numbers)
            joined[-1] = (whole, joined[-1][1] | boards)
        else:
            joined.append((table, boards))
    return joined


def _told(table: _Table, boards: set[str]) -> Keep:
    """The table as something to keep."""
    form = _WORDS[table.form] + _ORDERS[table.form[0]]
    value = f"{table.numbers} numbers {form}, {table.low:g} to {table.high:g}"
    have = "has" if len(boards) == 1 else "have"
    names = " and ".join(sorted(boards))
    why = f"{names} {have} other numbers there, each close to the one here: a table of trims"
    return Keep(CALIBRATION, table.where, value, why, VERY_LIKELY if len(boards) > 1 else LIKELY)
