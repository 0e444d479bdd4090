"""Each question as text says all that the form shows, and can be answered from the text alone."""

import re

import pytest

from repairlib.faces.panels import question_page
from repairlib.faces.panels.exercise_page import question_text
from repairlib.learn import (
    LESSONS,
    Choice,
    Learner,
    Number,
    Order,
    Table,
    open_exercise,
    questions_of,
)
from repairlib.learn.bench_question import Bench

LEARNERS = [Learner(f"Learner {number}", "bench-7") for number in range(6)]
every_lesson = pytest.mark.parametrize("lesson", LESSONS)


def read_off(text: str, wanted: str) -> str:
    """The letter that stands before an option in the text."""
    (letter,) = re.findall(rf"(?:^|\s)([a-z])\) {re.escape(wanted)}(?=\n|  [a-z]\) |$)", text)
    return letter


def wanted_from_text(question):
    """The right answer in the form that the text asks for, found in the text alone."""
    text = question_text(question)
    if isinstance(question, Choice):
        return read_off(text, question.answer)
    if isinstance(question, Order):
        return " ".join(read_off(text, step) for step in question.steps)
    if isinstance(question, Number):
        return f"{question.answer:.12g} {question.unit}"
    asked = re.search(r"ex\.answer\(q\d+=\{(.*)\}\)", text)[1]
    answer = {}
    for row, columns in re.findall(r'"([^"]*)": "([^"]*)"', asked):
        entries = []
        for column in columns.split(" | "):
            cell = question.cells[row][column]
            (line,) = (ln for ln in text.split("\n") if ln.startswith(f"{row}, {column}: "))
            if isinstance(cell, Choice):
                entries.append(read_off(line.removeprefix(f"{row}, {column}: "), cell.answer))
            else:
                entries.append(f"{cell.answer:.12g} {cell.unit}")
        answer[row] = " | ".join(entries)
    return answer


@every_lesson
def test_every_variant_is_answered_right_from_its_text(lesson):
    for learner in LEARNERS:
        for question in questions_of(lesson, learner):
            if isinstance(question, Bench):
                continue  # its answer is a repair, which no text holds: test_bench_question.py
            given = question.as_typed(wanted_from_text(question))
            assert question.judge(given).state == "right", (question.id, learner, given)


@every_lesson
def test_the_text_has_all_rows_columns_and_options(lesson):
    for question in questions_of(lesson):
        text = question_text(question)
        assert question.prompt in text and f"ex.answer({question.id}=" in text
        if isinstance(question, Table):
            for row, cells in question.cells.items():
                for column, cell in cells.items():
                    assert f"{row}, {column}: " in text
                    assert all(option in text for option in getattr(cell, "options", ()))


def test_a_table_as_text():
    fit = Choice(options=("radial", "axial"), answer="axial")
    volts = Number(answer=25, unit="V")
    ask = Table(id="q7", prompt="Fill in.", cells={"C3": {"voltage": volts, "fit": fit}})
    lines = question_text(ask).split("\n")
    assert lines[2] == "C3, voltage: Type a number with its unit, for example 82 V."
    assert lines[3] == "C3, fit: Choose one. a) radial  b) axial"
    assert 'By code: ex.answer(q7={"C3": "voltage | fit"})' in lines[-1]


def test_a_row_can_be_given_alone():
    exercise = open_exercise("07-plan-a-recap")
    ask = next(one for one in exercise.questions if isinstance(one, Table))
    whole = wanted_from_text(ask)
    for row in whole:
        exercise.answer(**{ask.id: {row: whole[row]}})
    (line,) = (one for one in exercise.sheet().lines if one.id == ask.id)
    assert line.state == "right"


def test_the_page_has_the_same_words():
    page = question_page(open_exercise("07-plan-a-recap"))
    assert all("ex.answer(" in part for part in repr(page).split("\n\nq"))
    assert page._repr_html_().count("By code: ex.answer(") == len(page.exercise.questions)
