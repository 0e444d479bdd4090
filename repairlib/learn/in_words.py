"""A question as plain text: what stands to choose, to put in order or to fill in; what is right."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.quantity import Quantity, engineering
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench, as_lines
from repairlib.learn.question import LETTERS, RIGHT, Choice, Number, Question


def choices_in_words(question: Question) -> list[str]:
    """The options, the steps or the cells that a form shows; none for a number.

    >>> choices_in_words(Choice(options=("film", "disc"), answer="disc"))
    ['a) film', 'b) disc']
    """
    if isinstance(question, Table):
        return [
            f"{row}, {column}: {cell.how()} {'  '.join(choices_in_words(cell))}".rstrip()
            for row, cells in question.cells.items()
            for column, cell in cells.items()
        ]
    return [f"{letter}) {text}" for letter, text in lettered(question)]


def lettered(question: Question) -> list[tuple[str, str]]:
    """The options, or the steps as they are shown, each with its letter; none for others.

    >>> lettered(Choice(options=("film", "disc"), answer="disc"))
    [('a', 'film'), ('b', 'disc')]
    """
    offered: Sequence[str] = ()
    if isinstance(question, Choice):
        offered = question.options
    elif isinstance(question, Order):
        offered = question.shown
    return list(zip(LETTERS, offered, strict=False))


def right_answer(question: Question) -> str | dict[str, dict[str, str]]:
    """The right answer as it can be typed: letters, a number with its unit, or row by row.

    Of a repair it is one way of many that mends it.

    >>> right_answer(Choice(options=("film", "disc"), answer="disc"))
    'b'
    >>> print(right_answer(Number(answer=100e-9, unit="F")))
    100 nF
    """
    if isinstance(question, Table):
        return {
            row: {column: str(right_answer(cell)) for column, cell in cells.items()}
            for row, cells in question.cells.items()
        }
    letter_of = {offered: letter for letter, offered in lettered(question)}
    if isinstance(question, Order):
        return " ".join(letter_of[step] for step in question.steps)
    if isinstance(question, Choice):
        return letter_of[question.answer]
    if isinstance(question, Bench):
        return as_lines(question.one_way())
    assert isinstance(question, Number)
    short = str(Quantity(question.answer, question.unit))
    right = question.judge(short).state == RIGHT
    return short if right else engineering(question.answer, question.unit)
