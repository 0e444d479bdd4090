"""Holding a lesson and releasing it, for a whole group: what `class hold` and `class release` do.

The file of the group says which lessons are held, with the hash of the word that releases each; the
word itself stays with the instructor. What holding means for a learner: learn/holding.py.
"""

from __future__ import annotations

import random
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.exercise import lessons_known
from repairlib.learn.group import GROUP_FILE, Group, read_group
from repairlib.learn.holding import hash_of
from repairlib.teach.instructor import keep_release_word, release_words
from repairlib.teach.lesson_named import lesson_among
from repairlib.teach.words import NOUNS


class Held(NamedTuple):
    """A lesson that is held or was, with its release word; `new` is False when it was held before.

    `word` is "" where the instructor's file does not have it any more.
    """

    group: str
    lesson: str
    word: str
    new: bool


def hold(folder: str | Path, typed: str) -> Held:
    """Hold a lesson, by its number or name, until it is released; one that is held stays so.

    Raises RepairlibError for no such lesson or folder, and when it cannot be written.
    """
    path = _group_in(folder)
    with files.locked(path):
        group = read_group(path)
        lesson = _meant(typed, group.lessons or lessons_known(group))
        if lesson in group.held:
            return Held(group.name, lesson, release_words(path.parent).get(lesson, ""), new=False)
        word = " ".join(random.SystemRandom().sample(NOUNS, 2))
        keep_release_word(path.parent, lesson, word)
        _write(path, group, {**group.held, lesson: hash_of(word)})
    return Held(group.name, lesson, word, new=True)


def release(folder: str | Path, typed: str) -> Held:
    """Release a lesson that is held. Its word stays with the instructor, to be said aloud.

    Raises RepairlibError for one that is not held, and when it cannot be written.
    """
    path = _group_in(folder)
    with files.locked(path):
        group = read_group(path)
        if not group.held:
            raise RepairlibError(typed, "no lesson is held", "class hold FOLDER LESSON before")
        lesson = _meant(typed, group.held)
        _write(path, group, {name: of for name, of in group.held.items() if name != lesson})
        return Held(group.name, lesson, release_words(path.parent).get(lesson, ""), new=True)


def _meant(typed: str, lessons: Iterable[str]) -> str:
    found = lesson_among(typed, lessons)
    if found is None:
        raise RepairlibError(typed, "no such lesson here", ", ".join(lessons))
    return found


def _group_in(folder: str | Path) -> Path:
    """The file of the group in a folder; a folder without one is refused before a lock makes it."""
    path = Path(folder).expanduser() / GROUP_FILE
    read_group(path)
    return path


def _write(path: Path, group: Group, held: dict[str, str]) -> None:
    files.write(path, group._replace(held=held).to_dict())
