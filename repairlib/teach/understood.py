"""What was understood of an own lesson, in plain text, for whoever typed it to read.

Each question stands there as a learner sees it, with its right answer and what a wrong one gets.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from repairlib.core.draws import DemoDraw
from repairlib.core.quantity import engineering
from repairlib.core.wording import counted
from repairlib.learn.arranging import Order, Table
from repairlib.learn.in_words import choices_in_words
from repairlib.learn.marking import points
from repairlib.learn.own import OwnLesson
from repairlib.learn.own.asked import OwnQuestion, shuffled
from repairlib.learn.question import Mistake, Number, Question


def understood(lesson: OwnLesson) -> str:
    """The whole lesson as it was understood."""
    graded = [one for one in lesson.asked if one.graded]
    takes = f", about {lesson.minutes} minutes" if lesson.minutes else ""
    worth = _points(sum(one.points for one in graded))
    lines = [
        f"{lesson.name}: {lesson.title}{takes}",
        f"{counted(len(graded), 'question')}, {worth}, and "
        f"{len(lesson.asked) - len(graded)} to practise on",
        f"Cautions: {', '.join(lesson.hazards()) or 'none'}",
    ]
    number = 0
    for one in lesson.asked:
        number += one.graded
        lines += ["", *_question(one, f"Question {number}" if one.graded else "Practice")]
    return "\n".join(lines)


def _question(asked: OwnQuestion, title: str) -> Iterator[str]:
    """A question in its first variant, then what is another in each further one."""
    worth = f", {_points(asked.points)}" if asked.graded else ""
    (values, first), *others = asked.variants.items()
    question = shuffled(first, DemoDraw("understood"))
    yield f"{title}{worth} (line {asked.line})"
    yield from (f"  {line}" for line in _as_asked(question))
    if others:
        yield f"  {len(others) + 1} variants. This one has {' | '.join(values)}. The others:"
        for row, variant in others:
            yield f"    {' | '.join(row)}: right is {right_in_words(variant)}"


def _points(number: float) -> str:
    return f"{points(number)} point{'s' * (number != 1)}"


def _as_asked(question: Question) -> Iterator[str]:
    yield from question.prompt.split("\n\n")
    if question.picture:
        yield f"Picture: {question.picture()!r}"
    yield from choices_in_words(question)
    yield f"Right: {right_in_words(question)}"
    yield from mistakes_in_words(question)
    if question.hint:
        yield f"Any other wrong answer: {question.hint}"


def right_in_words(question: Question) -> str:
    """The right answer, and how far off it may be.

    >>> right_in_words(Number(answer=100e-9, unit="F", tolerance=0.05)).replace("\\xa0", " ")
    '100 nF (95 nF to 105 nF)'
    """
    if isinstance(question, Number):
        return f"{_number(question.answer, question.unit)}{_accepted(question)}"
    if isinstance(question, Order):
        return " > ".join(question.steps)
    if isinstance(question, Table):
        return "; ".join(
            f"{row}, {column}: {right_in_words(cell)}"
            for row, cells in question.cells.items()
            for column, cell in cells.items()
        )
    return str(getattr(question, "answer", ""))


def _accepted(question: Number) -> str:
    off = max(question.tolerance * abs(question.answer), question.margin)
    if not off:
        return " (exactly)"
    ends = (_number(question.answer + sign * off, question.unit) for sign in (-1, 1))
    return f" ({' to '.join(ends)})"


def _number(value: float, unit: str) -> str:
    return engineering(float(f"{value:.6g}"), unit)


def mistakes_in_words(question: Question, place: str = "") -> Iterator[str]:
    """What each usual mistake gets, one line each; those of the cells of a table too."""
    if isinstance(question, Table):
        for row, cells in question.cells.items():
            for column, cell in cells.items():
                yield from mistakes_in_words(cell, f"{row}, {column}: ")
    for one in question.mistakes:
        kind = f"Danger ({one.hazard}), no points" if one.hazard else "Wrong"
        yield f"{kind}: {place}{_when(one, question)} -> {one.hint}"


def _when(one: Mistake, question: Question) -> Any:
    if isinstance(one.when, float):
        return _number(one.when, getattr(question, "unit", ""))
    return getattr(one.when, "said", one.when)
