"""Lessons whose marks are told later: the form saves, and does not say what is right or wrong.

The instructor holds a lesson in the file of the group, and releases it for all at once: there, or
by a word said aloud where the computers have no network. A dangerous answer is told at once all
the same: safety goes first.

This is practice and no examination. The answers are in the library, on the learner's own computer,
and who can program can find them.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import replace

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import known_group
from repairlib.learn.home import home
from repairlib.learn.marking import Line, Sheet
from repairlib.learn.question import HELD, PARTLY, RIGHT, WRONG, Judgement, Question

TELLING = (RIGHT, PARTLY, WRONG)
PRACTICE = (
    "This is practice and no examination: who can program can find the answers on this computer."
)


def is_held(lesson: str) -> bool:
    """True while the marks of a lesson are not to be told. Raises RepairlibError when barred."""
    held = _held(lesson)
    return bool(held) and _released().get(lesson) != held


def release_here(lesson: str, word: str) -> None:
    """Let the marks of a lesson be told on this computer, given the word that was said aloud.

    Capitals and spaces around it make no difference. Raises RepairlibError for another word, and
    when it cannot be remembered.
    """
    held = _held(lesson)
    if not held:
        return
    if hash_of(word) != held:
        wrong = "this does not release the lesson"
        raise RepairlibError(word, wrong, "the release word, as your instructor says it")
    path = home() / "released.json"
    with files.locked(path):
        found, _ = files.settle(path, _is_released)
        released = found["released"] if found else {}
        files.write(path, {"released": {**released, lesson: held}})


def hash_of(word: str) -> str:
    """What the file of a group says of a release word. It is no secret kept well: see above.

    >>> hash_of(" Kite ") == hash_of("kite")
    True
    """
    return hashlib.sha256(normal(word).encode("utf-8", "surrogatepass")).hexdigest()


def held_back(sheet: Sheet, questions: Sequence[Question], answers: Mapping[str, object]) -> Sheet:
    """A sheet that does not say what is right or wrong; what is dangerous it says."""
    by_id = {one.id: one for one in questions}
    lines = tuple(line_held(line, by_id[line.id], answers.get(line.id, "")) for line in sheet.lines)
    return replace(sheet, lines=lines)


def line_held(line: Line, question: Question, typed: object) -> Line:
    """A line that does not say whether the answer is right. What cannot be read it says."""
    if line.state not in TELLING:
        return line
    said = Judgement(HELD, says=question.unreadable_parts(typed))
    return replace(line, points=0, judgement=said)


def _held(lesson: str) -> str:
    """The hash of the word that releases a lesson, "" where it is not held."""
    group, _ = known_group()
    return group.held.get(lesson, "") if group else ""


def _released() -> dict[str, str]:
    found, _ = files.read_or_keep_aside(home() / "released.json", _is_released)
    return found["released"] if found else {}


def _is_released(found: dict) -> bool:
    released = found.get("released")
    return isinstance(released, dict) and all(isinstance(one, str) for one in released.values())
