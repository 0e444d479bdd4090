"""The questions of an exercise to read, for those who answer by code."""

from __future__ import annotations

from repairlib.core.html import escape
from repairlib.faces.panels.look import STYLE
from repairlib.faces.panels.question_view import question_html
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import Exercise
from repairlib.learn.in_words import choices_in_words
from repairlib.learn.marking import worth
from repairlib.learn.question import Choice, Question


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
    """One question as plain text: all that the form shows, and how to answer by code.

    >>> print(question_text(Choice(id="q1", prompt="Which?", options=("a", "b"), answer="a")))
    q1 (1 point)
    Which?
    a) a
    b) b
    Choose one.
    By code: ex.answer(q1="b"), with the letter of your choice.
    """
    lines = [f"{question.id} ({worth(question)})", question.prompt]
    if question.picture:
        lines.append(f"[{question.picture()!r}]")
    return "\n".join([*lines, *choices_in_words(question), question.how(), _by_code(question)])


def _by_code(question: Question) -> str:
    if isinstance(question, Order):
        return f'By code: ex.answer({question.id}="c a b"), with all letters in the right order.'
    if isinstance(question, Choice):
        return f'By code: ex.answer({question.id}="b"), with the letter of your choice.'
    if isinstance(question, Table):
        rows = ", ".join(f'"{row}": "{" | ".join(cells)}"' for row, cells in question.cells.items())
        return (
            f"By code: ex.answer({question.id}={{{rows}}}), with your entries in place of the "
            "names of the columns. A letter is enough for what is chosen; a row can be given alone."
        )
    if isinstance(question, Bench):
        return (
            f'By code: ex.answer({question.id}="look; unplug; …"), all moves with ; between them.'
        )
    return f'By code: ex.answer({question.id}="…"), with what you would type.'


def _listed(question: Question) -> str:
    lines = (*choices_in_words(question), _by_code(question))
    return "".join(f"<div>{escape(line)}</div>" for line in lines)
