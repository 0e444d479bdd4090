"""The own lessons that a group brings: which there are, each of them read, and its questions asked.

The questions are entered like those of a module of the workbook. So all that asks, draws, marks and
compares questions takes them as it takes the others.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from hashlib import sha256

from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError
from repairlib.learn.asking import enter_all
from repairlib.learn.group import Group, known_group
from repairlib.learn.own.asked import OwnQuestion
from repairlib.learn.own.lesson import OwnLesson, lesson_name, read_own
from repairlib.learn.question import Question


def own_files(group: Group | None) -> dict[str, str]:
    """The file of each own lesson of a group, by the lesson's name. Nothing is read for it.

    >>> own_files(Group("Tuesday bench", own={"fuses.txt": "..."}))
    {'own-fuses': 'fuses.txt'}
    """
    return {lesson_name(file): file for file in (group.own if group else ())}


def own_lesson(lesson: str, group: Group | None = None) -> OwnLesson:
    """An own lesson of this group, or else of the group that this computer knows.

    Raises RepairlibError when the group has no such lesson, or its text cannot be read.
    """
    return read_own(*_typed(lesson, group))


def own_module(lesson: str, group: Group | None = None) -> str:
    """The name under which the questions of an own lesson are entered. Raises as `own_lesson`.

    Another text of the lesson has another name, so that two groups can be marked side by side.
    """
    return _entered(*_typed(lesson, group))


def _typed(lesson: str, group: Group | None) -> tuple[str, str]:
    """The text of an own lesson, and the name of its file."""
    group = group or known_group()[0]
    files = own_files(group)
    if group is None or lesson not in files:
        accepted = ", ".join(files) or "a lesson that class add has put into the group"
        raise RepairlibError(lesson, "no own lesson of this group has this name", accepted)
    return group.own[files[lesson]], files[lesson]


@lru_cache(32)
def _entered(text: str, file: str) -> str:
    lesson = read_own(text, file)
    module = f"{lesson.name} {sha256(text.encode('utf-8', 'surrogatepass')).hexdigest()}"
    asks = {f"question_{n}": (_function(one), one.points) for n, one in _counted(lesson, True)}
    practised = {f"practice_{n}": _function(one) for n, one in _counted(lesson, False)}
    enter_all(module, asks, practised)
    return module


def _counted(lesson: OwnLesson, graded: bool) -> Iterator[tuple[int, OwnQuestion]]:
    return enumerate((one for one in lesson.asked if one.graded == graded), start=1)


def _function(asked: OwnQuestion) -> Callable[[Draw], Question]:
    """A function that asks the question, as a module has it."""

    def ask(draw: Draw) -> Question:
        return asked.ask(draw)

    return ask
