"""The key of a lesson for all members: which answer is right on whose sheet, as it stands there.

It is for the instructor alone.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core.html import row, table, text
from repairlib.learn.bench_question import Bench
from repairlib.learn.group import Member
from repairlib.learn.in_words import right_answer
from repairlib.learn.marking import points
from repairlib.learn.question import Question
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import KEY_STYLE

ALONE = "Instructor only"


Asked = Sequence[tuple[Member, Sequence[Question]]]  # the members, each with their questions


def key_sheet(asked: Asked, lesson: str, group: str) -> Sheet:
    """The answers of one lesson: a row for each member, a column for each question."""
    _, first = asked[0]
    heads = [f"{number} ({points(one.points)})" for number, one in enumerate(first, 1)]
    rows = [
        row((f"{member.name} · {member.word}", *map(as_typed, questions)), first="th")
        for member, questions in asked
    ]
    parts = (
        f"<h1>{text(lesson)}: key</h1><p><b>{ALONE}.</b> Letters as on each sheet; behind each "
        "number of a question its points. Cells of a table row by row, from left to right.</p>",
        table(rows, row(("member", *heads), tag="th")),
    )
    return Sheet(
        f"Key: {lesson}", f"{ALONE} · key · {lesson} · {group}", parts, KEY_STYLE, across=True
    )


def as_typed(question: Question) -> str:
    """The right answer as it stands in the key: the cells of a table behind each other.

    Of a repair it is what is wrong with the set; its mark goes by the moves.

    >>> from repairlib.learn import Choice, Number, Table
    >>> plus = Choice(options=("left", "right"), answer="right")
    >>> print(as_typed(Table(cells={"C3": {"volts": Number(answer=25, unit="V"), "plus": plus}})))
    25 V, b
    """
    if isinstance(question, Bench):
        return question.answer
    right = right_answer(question)
    if isinstance(right, str):
        return right
    return ", ".join(answer for cells in right.values() for answer in cells.values())
