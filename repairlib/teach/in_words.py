"""Questions and answers in words, for whoever has no sheet of that learner before them."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError, as_printed
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.question import UNSAFE, Choice, Question
from repairlib.show.sheets.sheet_pieces import short

LONGEST = 150


def asked_in_words(question: Question, limit: int = LONGEST) -> str:
    """What a question asks, on one line.

    >>> from repairlib.learn import Number
    >>> asked_in_words(Number(prompt="Marked `104`.\\n\\nWhat is it?", unit="F", answer=1e-7))
    'Marked 104. What is it?'
    """
    return short(question.prompt.replace("`", ""), limit)


def answer_in_words(question: Question, typed: object, limit: int = LONGEST) -> str:
    """What was answered: an option by its text, steps in their order, else as it was typed.

    Of a table the dangerous cells, or all where none is; of a repair how it ended.
    """
    if isinstance(question, Table):
        return short(_cells(question, typed), limit)
    if isinstance(question, Bench):
        return question.in_a_word(typed)
    try:
        read = question.read(typed)
    except RepairlibError:
        return short(as_printed(typed), limit)
    if isinstance(question, Order):
        return short(" > ".join(read), limit)
    return short(read if isinstance(question, Choice) else as_printed(typed), limit)


def _cells(question: Table, typed: object) -> str:
    given = [one for one in question.given(typed) if not one[1].is_blank(one[2])]
    dangerous = [one for one in given if one[1].judge(one[2]).state == UNSAFE]
    return "; ".join(
        f"{at}: {answer_in_words(cell, text)}" for at, cell, text in dangerous or given
    )
