"""The mark book of a group: each member, lesson and question, now and at the first try.

It is three files: `marks.csv` for a spreadsheet, `marks.json` for programs and for the next run,
and `room.html` to look at. What `marks.json` said before tells whose points moved although their
answer did not, and why.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from time import time_ns
from typing import Any, NamedTuple

from repairlib.core.version import VERSION
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.asking import names
from repairlib.learn.exercise import module_of
from repairlib.learn.group import Group
from repairlib.learn.marking import points
from repairlib.recap import csv_text
from repairlib.teach.entries import Entry, entries_of, questions_for
from repairlib.teach.items import Item, items_of
from repairlib.teach.marked import Marked
from repairlib.teach.moved import KEPT, Moved, is_mark, is_moved, moves
from repairlib.teach.practise import Due, Next, due_in, next_for
from repairlib.teach.room_view import EVERY, room_view

MINE = 0o600  # names and marks: nobody else's
COLUMNS = (
    "group",
    "word",
    "name",
    "together with",
    "lesson",
    "question",
    "called",
    "state now",
    "points now",
    "out of",
    "first try",
    "points at first try",
    "tries",
    "unsafe answers",
    "last try",
    "handed in",
)


class Written(NamedTuple):
    """What came of writing a mark book: where it is, and what has moved since the last one.

    `there` are the words of those of whom something was marked; `note` is one sentence on a damaged
    mark book that was kept aside, or "".
    """

    folder: Path
    moved: tuple[Moved, ...]
    there: frozenset[str]
    note: str

    def __str__(self) -> str:
        told = [f"Mark book: {self.folder} (room.html, marks.csv, marks.json)", self.note]
        if self.moved:
            told.append(f"{counted(len(self.moved), 'mark')} moved, with the answer as it was:")
        return "\n".join(filter(None, (*told, *map(str, self.moved))))


def write_mark_book(
    folder: Path | str,
    group: Group,
    marked: Iterable[Marked],
    anew: Iterable[str] = (),
    every: int = EVERY,
    at: int | None = None,
) -> Written:
    """Write the mark book of a group into `marks/` of its folder, each file whole or not at all.

    `anew` are the questions that were marked against today's key, as `LESSON:QUESTION`; they are
    remembered, see `marked_anew`. `every` is after how many seconds the page asks for itself again.
    `at` is the time it says, in milliseconds since 1970, else now.
    Raises RepairlibError when a file cannot be written.
    """
    at = time_ns() // 1_000_000 if at is None else at
    asked = questions_for(group)
    due: dict[tuple[str, str], Due] = {}
    entries = entries_of(group, _noting(marked, due), asked)
    items, following = items_of(entries), next_for(group, due)
    place = Path(folder) / "marks"
    kept = place / "marks.json"
    with files.locked(kept):
        before, note = files.settle(kept, is_marks)
        before = before or {"marks": [], "moved": [], "anew": [], "version": VERSION}
        again = sorted({*before["anew"], *anew})
        moved = tuple(moves(before, entries, again, at))
        all_moved = [*(Moved(*one) for one in before["moved"]), *moved]
        content = {"group": group.name, "at": at, "version": VERSION, "anew": again}
        files.put_in_place(kept, _json(content, entries, items, following, all_moved), MINE)
        text, _ = csv_text(_rows(group, entries), COLUMNS)
        files.put_in_place(place / "marks.csv", text.encode("utf-8-sig"), MINE)
        page = room_view(group, entries, asked, items, following, all_moved, at, every)
        files.put_in_place(place / "room.html", page.encode(), MINE)
    return Written(place, moved, frozenset(word for word, _ in due), note)


def _noting(marked: Iterable[Marked], due: dict[tuple[str, str], Due]) -> Iterator[Marked]:
    """What is marked, one after the other, so that no sheet is kept; what it leaves is noted."""
    for one in marked:
        due[one.word, one.lesson] = due_in(one)
        yield one


def marked_anew(folder: Path | str) -> tuple[str, ...]:
    """The questions that earlier runs marked against today's key, as `LESSON:QUESTION`."""
    found, _ = files.read(Path(folder) / "marks" / "marks.json", is_marks)
    return tuple(found["anew"]) if found else ()


def is_marks(found: dict) -> bool:
    """True when a file's content is that of `marks.json`."""
    marks, moved, anew = (found.get(name) for name in ("marks", "moved", "anew"))
    if not (isinstance(marks, list) and isinstance(moved, list) and isinstance(anew, list)):
        return False
    return isinstance(found.get("version"), str) and (
        all(map(is_mark, marks))
        and all(map(is_moved, moved))
        and all(isinstance(one, str) for one in anew)
    )


def _json(
    content: Mapping[str, Any],
    entries: Iterable[Entry],
    items: Iterable[Item],
    following: Iterable[Next],
    moved: Iterable[Moved],
) -> bytes:
    """Everything as JSON, with one line for each mark."""
    lists: dict[str, Iterable] = {
        "columns": KEPT,
        "marks": ([getattr(one, name) for name in KEPT] for one in entries),
        "questions": (one._asdict() for one in items),
        "practise": (one._asdict() for one in following),
        "moved": moved,
    }
    told = [f"{json.dumps(name)}: {json.dumps(value)}" for name, value in content.items()]
    told += [f"{json.dumps(name)}: [{_lines(some)}]" for name, some in lists.items()]
    return (f'{{"format": {files.FORMAT},\n' + ",\n".join(told) + "}\n").encode("ascii")


def _lines(some: Iterable) -> str:
    return "\n" + ",\n".join(map(json.dumps, some))


def _rows(group: Group, entries: Sequence[Entry]) -> Iterator[dict[str, str]]:
    called = {lesson: names(module_of(lesson, group)) for lesson in {one.lesson for one in entries}}
    for one in entries:
        first = "" if one.first_points is None else points(one.first_points)
        cells = (
            group.name,
            one.word,
            one.name,
            one.partner,
            one.lesson,
            one.id,
            called[one.lesson].get(one.id, ""),
            one.state,
            points(one.points),
            points(one.out_of),
            one.first_state,
            first,
            str(one.tries),
            str(one.times_unsafe),
            _moment(one.last),
            _moment(one.handed_in),
        )
        yield dict(zip(COLUMNS, cells, strict=True))


def _moment(at: int) -> str:
    return datetime.fromtimestamp(at / 1000).strftime("%Y-%m-%d %H:%M") if at else ""
