"""The questions of an exercise to read, for those who answer by code."""

from __future__ import annotations

from html import escape

from repairlib.faces.panels.look import STYLE
from repairlib.faces.panels.question_view import question_html
from repairlib.learn.arranging import Order, Table
from repairlib.learn.exercise import Exercise
from repairlib.learn.marking import worth
from repairlib.learn.question import LETTERS, Choice, Question


def question_page(exercise: Exercise) -> ExercisePage:
    """The questions of an exercise to read, with their pictures, for those who answer by code."""
    return ExercisePage(exercise)


class ExercisePage:
    """The questions in words, and in a notebook with their pictures."""

    def __init__(self, exercise: Exercise):
        self.exercise = exercise

    def __repr__(self) -> str:
        return "\n\n".join(question_text(one) for one in self.exercise.questions)

    def _repr_html_(self) -> str:
        cards = [
            f'<div class="rl-card">{question_html(one, one.id)}{_listed(one)}</div>'
            for one in self.exercise.questions
        ]
        return f'{STYLE}<div class="rl-panel">{"".join(cards)}</div>'


def question_text(question: Question) -> str:
    """One question as plain text, with its letters and how to type the answer."""
    lines = [f"{question.id} ({worth(question)})", question.prompt]
    if question.picture:
        lines.append(f"[{question.picture()!r}]")
    return "\n".join([*lines, *_lettered(question), question.how(), *_by_code(question)])


def _lettered(question: Question) -> list[str]:
    if isinstance(question, Choice):
        listed = question.options
    else:
        listed = question.shown if isinstance(question, Order) else ()
    return [f"{letter}) {text}" for letter, text in zip(LETTERS, listed, strict=False)]


def _by_code(question: Question) -> list[str]:
    if isinstance(question, Order):
        return ['By code: the letters in the right order, such as "c a b".']
    if isinstance(question, Table):
        columns = " | ".join(question.columns())
        return [f'By code: {{"{row}": "{columns}"}}.' for row in list(question.cells)[:1]]
    return []


def _listed(question: Question) -> str:
    return "".join(
        f"<div>{escape(line)}</div>" for line in _lettered(question) + _by_code(question)
    )
