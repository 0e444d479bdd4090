"""What became of each question on the way: the first answer, the tries, every dangerous answer.

Beside the answers of a lesson lies its record, `<lesson>.tries.jsonl`: one line of JSON for every
answer that was judged, in a form or by code, with its time. A line is added at the end and none is
ever changed; it is on the disk before anything goes on. What is left of a line that was cut short
blocks nothing before or behind it.

What counts as a try
--------------------
1. A choice that is clicked is a try at once.
2. Typing further is one try, whose answer is the last: "1", "10", "100 nF", each within
   QUICK of the one before. So is what is met while an answer is being deleted.
3. A table is no try until each of its cells is filled in, an order none until each step stands
   there once. What is blank or cannot be read is none.
4. The same answer again is no further try.
5. A dangerous answer is kept for good, and is a try also in a table that is not filled in yet.
   Only half a number, typed further at once, was no answer.
6. Where a clock is behind, a later line is never earlier than the one before it.

The record holds answers in short: what was chosen or put in order by its letters, as one would
answer by code; other text as it was typed.
"""

from __future__ import annotations

import json
import time
from collections.abc import Iterable, Sequence
from operator import attrgetter
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.saving import add_line, sync_folder
from repairlib.core.typed.textfile import bytes_of
from repairlib.learn import files
from repairlib.learn.learner import Demo, Learner
from repairlib.learn.question import UNANSWERED, UNREADABLE
from repairlib.learn.question import UNSAFE as DANGEROUS
from repairlib.learn.saved_answers import SavedAnswers, is_texts
from repairlib.learn.times import is_time

UNFINISHED = "unfinished"  # the state of a table with empty cells and nothing dangerous in it
NO_TRY = (UNANSWERED, UNREADABLE, UNFINISHED)
QUICK = 5000  # ms between two states of one text that is being typed


class Try(NamedTuple):
    """One judged answer: when (ms since 1970), to which question, in short, and the judgement."""

    at: int
    id: str
    typed: Any
    state: str
    hazards: tuple[str, ...] = ()


class Story(NamedTuple):
    """How one question went: the first answer, how many tries, the dangerous ones, the last."""

    first: Try | None
    tries: int
    unsafe: tuple[Try, ...]
    last: Try | None


def stories(tries: Iterable[Try]) -> dict[str, Story]:
    """How each question went that was answered, by id.

    >>> typed = [Try(0, "q7", "1 n", "wrong"), Try(900, "q7", "1 nF", "wrong"),
    ...          Try(9000, "q7", "10 nF", "right")]
    >>> story = stories(typed)["q7"]
    >>> story.first.typed, story.tries, story.last.state
    ('1 nF', 2, 'right')
    """
    told = {}
    for name, lines in _by_question(sorted(tries, key=_moment)).items():
        if kept := _answers(lines):
            unsafe = tuple([one for one in kept if one.state == DANGEROUS])
            told[name] = Story(kept[0], len(kept), unsafe, kept[-1])
    return told


def answers_among(tries: Iterable[Try]) -> list[Try]:
    """The lines that are tries, in the order of time: without what was only typed through."""
    kept: list[Try] = []
    for lines in _by_question(sorted(tries, key=_moment)).values():
        kept += _answers(lines)
    return sorted(kept, key=_moment)


def read_tries(lesson: str, learner: Learner | Demo, folder: Path | None = None) -> list[Try]:
    """The whole record of a learner in one lesson, in the order of time; [] where there is none.

    What is no line of a record is left out. Raises RepairlibError when it may not be read.
    """
    return tries_in(_content(path_of(lesson, learner, folder)))


def note_try(
    lesson: str,
    learner: Learner | Demo,
    name: str,
    typed: Any,
    state: str,
    hazards: Sequence[str] = (),
    folder: Path | None = None,
) -> Try:
    """Add an answer that was judged to the record, unless it is the last one to this question.

    `typed` is the answer in short, see `Question.in_short`. Gives the line that is on the disk when
    this returns. Raises RepairlibError when it cannot be noted.
    """
    path = path_of(lesson, learner, folder)
    with files.locked(path):
        before = _content(path)
        earlier = tries_in(before)
        last = next((one for one in reversed(earlier) if one.id == name), None)
        if last is not None and (last.typed, last.state) == (typed, state):
            return last
        moment = max([time.time_ns() // 1_000_000, *(one.at for one in earlier[-1:])])
        made = Try(moment, name, typed, state, tuple(hazards))
        _add(path, _line(made), before)
    return made


def join_tries(path: Path, brought: Iterable[Try]) -> None:
    """Add those lines of another computer to the record at `path` that it has not yet."""
    with files.locked(path):
        before = _content(path)
        here = {_line(one) for one in tries_in(before)}
        new = [line for line in map(_line, brought) if line not in here]
        if new:
            _add(path, b"\n".join(new), before)


def path_of(lesson: str, learner: Learner | Demo, folder: Path | None = None) -> Path:
    """Where the record of a learner in one lesson lies: beside the answers."""
    return SavedAnswers(lesson, learner, folder).path.with_name(f"{lesson}.tries.jsonl")


def tries_in(content: bytes) -> list[Try]:
    """The lines of a record, in the order of time. What is none is left out."""
    found = (_read_line(line) for line in content.split(b"\n"))
    return sorted((one for one in found if one is not None), key=lambda one: one.at)


def try_of(at: object, name: object, typed: object, state: object, hazards: object) -> Try | None:
    """The line that these values make, or None when one of them is not what it should be.

    >>> try_of(1, "q1", "b", "right", [])
    Try(at=1, id='q1', typed='b', state='right', hazards=())
    >>> try_of("noon", "q1", "b", "right", []) is None
    True
    """
    if not is_time(at) or not isinstance(name, str) or not isinstance(state, str):
        return None
    if not (isinstance(typed, str) or is_texts(typed, depth=2)):
        return None
    if not isinstance(hazards, list) or (hazards and not _are_texts(hazards)):
        return None
    return Try(at, name, typed, state, tuple(hazards))


def _are_texts(found: list) -> bool:
    return all(isinstance(one, str) for one in found)


def as_list(one: Try) -> list:
    """A line as it stands in a file that goes to others: [at, id, typed, state, hazards]."""
    return [*one[:-1], list(one.hazards)]


def from_list(line: object) -> Try | None:
    """The line that a list of five makes, or None when it makes none."""
    return try_of(*line) if isinstance(line, list) and len(line) == len(Try._fields) else None


def typed_further(before: Any, after: Any) -> bool:
    """True when text is only typed further, in a box or a cell: half a number is no answer yet.

    >>> typed_further("12", "120 s"), typed_further("12 s", "60 s")
    (True, False)
    >>> typed_further({"C3": {"volts": "1"}}, {"C3": {"volts": "16 V", "fits": "a"}})
    True
    """
    then = _texts(after)
    return all(then.get(place, "").startswith(text) for place, text in _texts(before).items())


_moment = attrgetter("at")


def _answers(lines: Sequence[Try]) -> list[Try]:
    """Those lines of one question that are answers of their own."""
    around = zip((None, *lines[:-1]), lines, (*lines[1:], None), strict=True)
    return [
        one
        for before, one, after in around
        if one.state not in NO_TRY and not _passed(before, one, after)
    ]


def _passed(before: Try | None, one: Try, after: Try | None) -> bool:
    """True when a line was only met on the way to the next one."""
    if after is None:
        return False
    if _filled_further(one.typed, after.typed):
        return True
    if after.at - one.at > QUICK:
        return False
    deleting = before is not None and typed_further(one.typed, before.typed)
    return typed_further(one.typed, after.typed) or deleting


def _filled_further(before: Any, after: Any) -> bool:
    """True for a table in which only cells that were empty have been filled in."""
    return not isinstance(before, str) and _texts(before).items() <= _texts(after).items()


def _texts(typed: Any, place: tuple[str, ...] = ()) -> dict[tuple[str, ...], str]:
    """Each text of an answer that is not blank, by its row and column."""
    if isinstance(typed, str):
        return {place: typed} if typed.strip() else {}
    return {
        where: text
        for key, value in typed.items()
        for where, text in _texts(value, (*place, key)).items()
    }


def _by_question(tries: Iterable[Try]) -> dict[str, list[Try]]:
    by_question: dict[str, list[Try]] = {}
    for one in tries:
        by_question.setdefault(one.id, []).append(one)
    return by_question


def _content(path: Path) -> bytes:
    with files.saying_why(path):
        try:
            return bytes_of(path)
        except FileNotFoundError:
            return b""


def _add(path: Path, line: bytes, before: bytes) -> None:
    with files.saying_why(path):
        if not path.exists():
            path.touch(mode=0o600)  # it is between the learner and the instructor
            sync_folder(path.parent)
        add_line(path, line, before)


def _line(one: Try) -> bytes:
    return json.dumps(one._asdict()).encode("ascii")


def _read_line(line: bytes) -> Try | None:
    try:
        found = json.loads(line)
    except (ValueError, RecursionError):
        return None
    return try_of(*map(found.get, Try._fields)) if isinstance(found, dict) else None
