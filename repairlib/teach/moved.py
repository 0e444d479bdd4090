"""Marks that moved while the answer stayed: whose, from how many points to how many, and why.

A key that is corrected moves marks without anybody having answered again. Whoever is told of it
must see it in a list.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from repairlib.core.version import VERSION
from repairlib.learn.marking import points
from repairlib.learn.question import CHANGED
from repairlib.teach.entries import Entry

# What `marks.json` says of each mark, in this order.
KEPT = (
    *("word", "lesson", "id", "state", "points", "out_of", "first_state", "first_points"),
    *("tries", "times_unsafe", "last", "handed_in"),
)


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
