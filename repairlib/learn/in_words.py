"""A question as lines of plain text: what stands to choose, to put in order or to fill in."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.learn.arranging import Order, Table
from repairlib.learn.question import LETTERS, Choice, Question


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
    if isinstance(question, Choice):
        return _lettered(question.options)
    return _lettered(question.shown) if isinstance(question, Order) else []


def _lettered(listed: Sequence[str]) -> list[str]:
    return [f"{letter}) {text}" for letter, text in zip(LETTERS, listed, strict=False)]
