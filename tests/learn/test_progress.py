"""How far a learner is: from their own saved answers alone, and what to practise from mistakes."""

import json

import pytest

from repairlib.learn import LESSONS, Learner, open_exercise, questions_of, set_learner
from repairlib.learn.marking import Line
from repairlib.learn.progress import (
    DONE,
    MINUTES,
    NOT_BEGUN,
    OPEN,
    again,
    go_on_with,
    next_lesson,
    standings,
    stated,
)
from repairlib.learn.question import Judgement
from tests.learn.test_answered import ANSWERED

ADA = Learner("Ada Example", "bench-7")
FIRST = LESSONS[0]


def right_answers(lesson):
    rows = json.loads((ANSWERED / f"{lesson}-right.json").read_text(encoding="utf-8"))
    return {name: row["answer"] for name, row in rows.items()}


def standing(lesson):
    learner = open_exercise(lesson).learner
    return next(one for one in standings(learner) if one.lesson == lesson)


def test_at_first_nothing_is_begun_and_the_first_lesson_comes_next():
    all_of_them = standings(ADA)
    assert [one.lesson for one in all_of_them] == list(LESSONS)
    assert {one.state for one in all_of_them} == {NOT_BEGUN}
    assert go_on_with(all_of_them).lesson == FIRST
    assert all(one.again == () and one.points == 0 for one in all_of_them)


def test_points_and_state_follow_the_answers():
    answers = right_answers(FIRST)
    open_exercise(FIRST).answer(q1=answers.pop("q1"))
    assert (standing(FIRST).state, standing(FIRST).points) == (OPEN, 1)
    open_exercise(FIRST).answer(**answers)
    assert standing(FIRST).state == DONE
    assert standing(FIRST).points == standing(FIRST).out_of == 13
    assert go_on_with(standings(open_exercise(FIRST).learner)).lesson == LESSONS[1]


def test_what_is_begun_comes_before_what_is_not():
    open_exercise("04-polarity").answer(q1="a")
    assert go_on_with(standings(open_exercise(FIRST).learner)).lesson == "04-polarity"


def test_all_done_leaves_nothing_to_go_on_with():
    for lesson in LESSONS:
        open_exercise(lesson).answer(**right_answers(lesson))
    all_of_them = standings(open_exercise(FIRST).learner)
    assert {one.state for one in all_of_them} == {DONE}
    assert go_on_with(all_of_them) is None


def test_mistakes_are_to_practise_and_dangers_stay_noted():
    ask = open_exercise(FIRST).by_id
    unsafe = next(one for one in ask["q3"].options if ask["q3"].judge(one).state == "unsafe")
    wrong = next(one for one in ask["q8"].options if ask["q8"].judge(one).state == "wrong")
    open_exercise(FIRST).answer(q2="", q3=unsafe, q7="22", q8=wrong)
    open_exercise(FIRST).answer(q1=ask["q1"].answer)
    assert [one.id for one in standing(FIRST).again] == ["q3", "q7", "q8"]
    assert [one.state for one in standing(FIRST).again] == ["unsafe", "cannot read", "wrong"]
    assert all(one.hint for one in standing(FIRST).again)
    open_exercise(FIRST).answer(q3=ask["q3"].answer, q8=ask["q8"].answer)
    now = {one.id: one for one in standing(FIRST).again}
    assert set(now) == {"q3", "q7"}
    assert now["q3"].state == "right" and "answered unsafely first" in now["q3"].hint


def test_the_dangerous_comes_first():
    wrong, unsafe = (
        Line(name, 0, 1, Judgement(state, says=("Look again.",)))
        for name, state in (("q1", "wrong"), ("q2", "unsafe"))
    )
    assert [one.id for one in again([wrong, unsafe])] == ["q2", "q1"]


def test_nobody_sees_what_somebody_else_did():
    set_learner("Ben Example", "bench-7")
    open_exercise(FIRST).answer(q8="a")
    assert {one.state for one in standings(ADA)} == {NOT_BEGUN}


def test_a_damaged_file_is_noted_and_the_rest_is_shown():
    saved = open_exercise(FIRST).saved
    saved.path.parent.mkdir(parents=True)
    saved.path.write_bytes(b"{")
    first, *others = standings(open_exercise(FIRST).learner)
    assert "It is kept as " in first.notes[0] and first.state == NOT_BEGUN
    assert not any(one.notes for one in others)


def test_no_picture_is_drawn_for_it(monkeypatch):
    """Else a page over all lessons would load the drawing libraries."""
    for lesson in LESSONS:
        open_exercise(lesson).answer(q1="x")

    def drawn(question):
        raise AssertionError("a picture was drawn")

    monkeypatch.setattr("repairlib.learn.exercise.fingerprint", drawn)
    assert {one.state for one in standings(open_exercise(FIRST).learner)} == {OPEN}


def test_a_question_answered_in_another_version_is_looked_at(monkeypatch):
    monkeypatch.setattr("repairlib.learn.saved_answers.VERSION", "0.0.1")
    open_exercise(FIRST).answer(q8="a")
    monkeypatch.setattr("repairlib.learn.exercise.fingerprint", lambda question: "another")
    assert [one.state for one in standing(FIRST).again] == ["changed"]


@pytest.mark.parametrize("lesson", LESSONS)
def test_every_lesson_has_its_title(lesson):
    title, minutes = stated(lesson)
    assert title and not title.startswith("#")
    assert minutes is None or 5 <= minutes <= 60


def test_minutes_are_read_as_a_lesson_states_them():
    assert MINUTES.search("About 25 minutes. First: lesson 03.")[1] == "25"
    assert not MINUTES.search("Wait 5 minutes.")


def test_lessons_follow_each_other():
    assert [next_lesson(one) for one in LESSONS] == [*LESSONS[1:], None]


def test_points_are_those_of_the_questions():
    for one in standings(ADA):
        assert one.out_of == sum(ask.points for ask in questions_of(one.lesson, ADA))
