"""How far a learner has come in all lessons, and what to practise next from the mistakes made.

Everything is worked out anew from the saved answers of this learner alone.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from functools import cache
from typing import NamedTuple

from repairlib.core.tables import LESSON_FOLDER
from repairlib.core.version import VERSION
from repairlib.learn.exercise import ONE_EVENING, Exercise, lessons_known
from repairlib.learn.group import Group
from repairlib.learn.learner import Demo, Learner
from repairlib.learn.marking import Line, Sheet
from repairlib.learn.own import OWN, own_lesson
from repairlib.learn.question import HELD, RIGHT, UNANSWERED, UNSAFE

DONE, OPEN, NOT_BEGUN = "done", "open", "not begun"
MINUTES = re.compile(r"\bAbout (\d+) minutes\b")


class Again(NamedTuple):
    """A question to look at again: its id, the state of its answer, and the hint."""

    id: str
    state: str
    hint: str


class Standing(NamedTuple):
    """Where a learner stands in one lesson. `minutes` are what it states, None if it does not.

    `held`: its points are told later.
    """

    lesson: str
    title: str
    minutes: int | None
    state: str
    points: float
    out_of: float
    again: tuple[Again, ...]
    notes: tuple[str, ...]
    held: bool = False

    @property
    def number(self) -> str:
        """What the lesson is called in short: "03"."""
        return number_of(self.lesson)

    @property
    def in_one_evening(self) -> bool:
        """True when the lesson is on the short way through the workbook."""
        return self.lesson in ONE_EVENING


def standings(learner: Learner | Demo) -> list[Standing]:
    """Where the learner stands in each lesson, in their order. Raises RepairlibError when barred.

    A question answered in this version of the library is taken as unchanged.
    """
    return [
        _standing(Exercise(lesson, learner).sheet(trusted=VERSION)) for lesson in lessons_known()
    ]


def next_lesson(lesson: str) -> str | None:
    """The lesson after this one, None after the last."""
    lessons = lessons_known()
    after = lessons[lessons.index(lesson) + 1 :]
    return after[0] if after else None


def go_on_with(standing: Sequence[Standing]) -> Standing | None:
    """The first lesson begun and not done, else the first not begun, None when all are done."""
    return {one.lesson: one for one in standing}.get(
        first_to_do({one.lesson: one.state for one in standing})
    )


def first_to_do(states: Mapping[str, str]) -> str:
    """Of lessons with their states the first begun and not done, else the first not begun, or "".

    >>> first_to_do({"00": DONE, "01": NOT_BEGUN, "02": OPEN}), first_to_do({"00": DONE})
    ('02', '')
    """
    by_state = sorted(states, key=lambda one: (OPEN, NOT_BEGUN, DONE).index(states[one]))
    return by_state[0] if by_state and states[by_state[0]] != DONE else ""


def state_of(sheet: Sheet) -> str:
    """Whether a lesson is done, open or not begun, by its sheet."""
    return DONE if is_done(sheet) else OPEN if sheet.answered else NOT_BEGUN


def is_done(sheet: Sheet) -> bool:
    """True when every question is right."""
    return all(line.state == RIGHT for line in sheet.lines)


def again(lines: Sequence[Line]) -> tuple[Again, ...]:
    """What to look at again, the dangerous first; also what was dangerous once and is right now."""
    due = [
        Again(line.id, line.state, " ".join(line.says))
        for line in lines
        if line.state not in (RIGHT, UNANSWERED, HELD) or line.unsafe_first
    ]
    return tuple(sorted(due, key=lambda one: one.state != UNSAFE))


def number_of(lesson: str) -> str:
    """What a lesson is called in short: by its number, an own lesson by its name.

    >>> number_of("03-capacitor-markings"), number_of("own-fuses")
    ('03', 'own-fuses')
    """
    return lesson if lesson.startswith(OWN) else lesson.partition("-")[0]


def stated(lesson: str, group: Group | None = None) -> tuple[str, int | None]:
    """The title of a lesson and the minutes that it says it takes; own ones are of that group.

    >>> stated("00-start-here")[0]
    'Start here'
    """
    if lesson.startswith(OWN):
        own = own_lesson(lesson, group)
        return own.title, own.minutes
    return _stated((LESSON_FOLDER / f"{lesson}.ipynb").read_text(encoding="utf-8"))


@cache
def _stated(notebook: str) -> tuple[str, int | None]:
    cells = json.loads(notebook)["cells"]
    prose = "\n".join("".join(one["source"]) for one in cells if one["cell_type"] == "markdown")
    said = MINUTES.search(prose)
    title = prose.partition("\n")[0].removeprefix("# ").partition(":")[0]
    return title, int(said[1]) if said else None


def _standing(sheet: Sheet) -> Standing:
    title, minutes = stated(sheet.lesson)
    return Standing(
        sheet.lesson,
        title,
        minutes,
        state_of(sheet),
        sheet.points,
        sheet.out_of,
        again(sheet.lines),
        sheet.notes,
        sheet.held,
    )
