"""Marks that moved while the answer stayed: whose, from how many points to how many, and why.

A key that is corrected moves marks without anybody having answered again. Whoever is told of it
must see it in a list.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from repairlib.core.version import VERSION
from repairlib.learn.marking import points
from repairlib.learn.question import CHANGED
from repairlib.learn.times import LATEST
from repairlib.teach.entries import Entry


def _is_text(found: object) -> bool:
    return isinstance(found, str)


def _is_count(found: object) -> bool:
    return isinstance(found, int) and _is_number(found)


def _is_number(found: object) -> bool:
    return isinstance(found, int | float) and not isinstance(found, bool) and 0 <= found < LATEST


def _is_number_or_none(found: object) -> bool:
    return found is None or _is_number(found)


# What `marks.json` says of each mark, in this order, and whether it can be that.
_KEPT: dict[str, Callable[[object], bool]] = {
    **dict.fromkeys(("word", "lesson", "id", "state"), _is_text),
    **dict.fromkeys(("points", "out_of"), _is_number),
    "first_state": _is_text,
    "first_points": _is_number_or_none,
    **dict.fromkeys(("tries", "times_unsafe", "last", "handed_in"), _is_count),
}
KEPT = tuple(_KEPT)


class Moved(NamedTuple):
    """Points that moved while the answer stayed: whose, where, from what to what, and why."""

    at: int
    word: str
    name: str
    lesson: str
    id: str
    was: str
    now: str
    why: str

    def __str__(self) -> str:
        return f"{self.name}, {self.lesson} {self.id}: {self.was} → {self.now}, {self.why}"


def is_mark(found: object) -> bool:
    """True for what `marks.json` says of one mark: a list in the order of KEPT."""
    return _fits(found, _KEPT.values())


def is_moved(found: object) -> bool:
    """True for what `marks.json` says of one mark that moved: a list in the order of Moved."""
    return _fits(found, (_is_count, *(_is_text for _ in Moved._fields[1:])))


def _fits(found: object, kinds: Collection[Callable[[object], bool]]) -> bool:
    if not isinstance(found, list) or len(found) != len(kinds):
        return False
    return all(fits(one) for fits, one in zip(kinds, found, strict=True))


def moves(
    before: Mapping[str, Any], entries: Iterable[Entry], anew: Sequence[str], at: int
) -> Iterator[Moved]:
    """Whose points are others than before, although the answer is the same as it was."""
    then = {tuple(one[:3]): dict(zip(KEPT, one, strict=True)) for one in before["marks"]}
    for one in entries:
        old = then.get((one.word, one.lesson, one.id))
        if old is None or (old["points"], old["out_of"]) == (one.points, one.out_of):
            continue
        same_file = bool(one.handed_in) and old["handed_in"] == one.handed_in
        if not same_file and not (one.last and old["last"] == one.last):
            continue  # answered since
        was, now = _of(old["points"], old["out_of"]), _of(one.points, one.out_of)
        why = _why(old["state"], one, anew, before["version"])
        yield Moved(at, one.word, one.name, one.lesson, one.id, was, now, why)


def _of(earned: float, out_of: float) -> str:
    return f"{points(earned)} of {points(out_of)}" if out_of else "not counted"


def _why(before: str, one: Entry, anew: Sequence[str], version: str) -> str:
    if one.state == CHANGED:
        return "the question has changed since it was answered"
    if f"{one.lesson}:{one.id}" in anew:
        return "marked against today's key"
    if before == CHANGED:
        return "the question is again as it was when it was answered"
    library = f" (library {version}, now {VERSION})" if version != VERSION else ""
    return f"this question is marked otherwise than before{library}"
