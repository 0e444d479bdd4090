"""A group that answers by itself: for an instructor who tries the evening out before it comes.

Each member knows more or less, tries again after a mistake, and now and then answers dangerously.
All of it is drawn as variants are, so that the same group always answers the same.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from shutil import rmtree
from typing import Any

from repairlib.core.draws import Draw
from repairlib.core.quantity import engineering
from repairlib.core.version import VERSION
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import module_of
from repairlib.learn.files import saying_why
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import KIND, HandedIn, file_name_of, file_of, put_into, receipt_of
from repairlib.learn.home import home
from repairlib.learn.in_words import right_answer
from repairlib.learn.learner import member_of
from repairlib.learn.question import RIGHT, UNSAFE, Choice, Number, Question
from repairlib.learn.remembered import asked_of
from repairlib.learn.tries import Try, as_list

BEGUN = 1_795_550_400_000  # ms since 1970: an evening, 2026-11-24 at 20:00 UTC
MINUTE = 60_000  # ms
MOST_TRIES = 4
GIVEN_UP = "look\ngive up"  # the moves of a repair that went nowhere


def rehearsal_folder() -> Path:
    """A folder of its own for the group that is tried out, empty at first.

    Raises RepairlibError when it cannot be emptied.
    """
    folder = home() / "rehearsal"
    with saying_why(folder):
        if folder.exists():
            rmtree(folder)
        folder.mkdir(parents=True)
    return folder


def rehearse(group: Group, folder: str | Path) -> list[Path]:
    """Put what each member of the group would hand in into a folder; the paths of the files.

    The last member is absent. Raises RepairlibError when nothing can be written there.
    """
    with saying_why(Path(folder)):
        Path(folder).mkdir(parents=True, exist_ok=True)
    return [put_into(folder, handed_in(group, one)) for one in group.members[:-1]]


def handed_in(group: Group, member: Member) -> HandedIn:
    """What one member would hand in after the lessons of the group."""
    lessons: dict[str, dict[str, Any]] = {}
    tries: dict[str, list] = {}
    at = BEGUN
    for lesson in group.lessons:
        lessons[lesson], lines = _lesson(group, member, lesson, at)
        tries[lesson] = [as_list(one) for one in lines]
        at = lines[-1].at
    learner = member_of(group, member)
    content = {"format": 1, "kind": KIND, "name": member.name, "group": group.name}
    content |= {"partner": "", "at": at, "version": VERSION, "lessons": lessons, "tries": tries}
    return HandedIn(file_name_of(learner), file_of(content), receipt_of(content), at)


def _lesson(group: Group, member: Member, lesson: str, at: int) -> tuple[dict[str, Any], list[Try]]:
    """The saved answers to one lesson and the record of tries, begun at that moment."""
    learner = member_of(group, member)
    one_in = Draw(f"rehearsal\n{group.name}\n{member.name}").integer(2, 7)  # answers is wrong
    answers: dict[str, Any] = {}
    asked_then: dict[str, dict[str, str]] = {}
    lines: list[Try] = []
    for asked in asked_of(module_of(lesson, group), learner.draw(lesson)):
        draw = Draw(f"rehearsal\n{group.name}\n{member.name}\n{lesson}\n{asked.id}")
        for one in _tried(asked.question, draw, at, one_in):
            at = one.at
            lines.append(one._replace(typed=asked.question.in_short(one.typed)))
            answers[asked.id] = one.typed
        asked_then[asked.id] = {"fingerprint": asked.fingerprint(), "version": VERSION}
    found = {"answers": answers, "asked": asked_then, "at": {one.id: one.at for one in lines}}
    return found | {"unsafe": sorted({one.id for one in lines if one.state == UNSAFE})}, lines


def _tried(question: Question, draw: Draw, at: int, one_in: int) -> Iterator[Try]:
    """Answers to a question until one is right, or the member gives up.

    One in so many is wrong at first, and fewer with each try.
    """
    for number in range(MOST_TRIES):
        typed = _answer(question, draw.part(f"try {number}"), one_in + number)
        at += draw.integer(15, 90) * 1000
        judged = question.judge(typed)
        yield Try(at, question.id, typed, judged.state, judged.hazards)
        if judged.state == RIGHT or draw.integer(1, 8) == 1:
            return


def _answer(question: Question, draw: Draw, one_in: int) -> Any:
    """An answer that is wrong once in so many times."""
    if isinstance(question, Table):
        return {
            row: {
                column: _answer(cell, draw.part(f"{row} {column}"), one_in * 2)
                for column, cell in cells.items()
            }
            for row, cells in question.cells.items()
        }
    wrong = draw.integer(1, one_in) == 1
    if isinstance(question, Bench):
        return GIVEN_UP if wrong else right_answer(question)
    if isinstance(question, Choice):
        return draw.pick(question.options) if wrong else question.answer
    if isinstance(question, Order):
        steps = list(draw.shuffle(question.steps) if wrong else question.steps)
        return {step: str(steps.index(step) + 1) for step in question.shown}
    assert isinstance(question, Number)
    return engineering(_value(question, draw, wrong), question.unit)


def _value(question: Number, draw: Draw, wrong: bool) -> float:
    """The answer, or a number that a usual mistake gives, or a slip by a factor of ten."""
    if not wrong:
        return question.answer
    usual = [float(one.when) for one in question.mistakes if isinstance(one.when, int | float)]
    return draw.pick([*usual, question.answer * 10])
