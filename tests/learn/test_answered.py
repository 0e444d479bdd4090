"""The answer files in tests/answered/: worked by hand from the sources, marked as a class would be.

LESSON-right.json says how each answer was worked, LESSON-wrong.json which words the sheet must
show for it:

    {"q1": {"answer": "100 nF", "worked": "10 and four zeros, in pF; IEC 60062"}, ...}
    {"q1": {"answer": "100 pF", "hint": "Check the prefix."}, ...}
"""

import json
from pathlib import Path

import pytest

from repairlib.learn import LESSONS, mark, questions_of

ANSWERED = Path(__file__).parent.parent / "answered"

every_lesson = pytest.mark.parametrize("lesson", LESSONS)


def rows_and_sheet(lesson, kind):
    """The rows of an answer file, and the sheet of the demo variant answered so."""
    rows = json.loads((ANSWERED / f"{lesson}-{kind}.json").read_text(encoding="utf-8"))
    questions = questions_of(lesson)
    answers = {one.id: one.as_typed(rows[one.id]["answer"]) for one in questions}
    assert set(rows) == set(answers)
    return rows, mark(questions, answers, lesson, "the demo variant")


@every_lesson
def test_right_answers_score_full_marks_and_say_how_they_were_worked(lesson):
    rows, sheet = rows_and_sheet(lesson, "right")
    assert sheet.points == sheet.out_of > 0
    assert all(row["worked"] for row in rows.values())


@every_lesson
def test_wrong_answers_lose_marks_and_get_their_hints(lesson):
    rows, sheet = rows_and_sheet(lesson, "wrong")
    assert sheet.points < sheet.out_of
    assert not [row["hint"] for row in rows.values() if row["hint"] not in str(sheet)]
