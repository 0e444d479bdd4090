"""Marks of past work stay: a question that has changed since is named and not marked anew."""

import hashlib
import json
import subprocess
import sys

import pytest

from repairlib.faces.panels import answer_form
from repairlib.learn import (
    Choice,
    Learner,
    Mistake,
    Number,
    Order,
    Table,
    mark_file,
    open_exercise,
    saved_answers,
)
from repairlib.learn.exercise import Exercise, questions_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.questions import capacitor_markings
from tests.learn.asking import right_answer

LESSON = "03-capacitor-markings"
CLASS = [Learner(f"Learner {number}", "bench-7") for number in range(40)]


def answered(learner, **instead):
    """The file of a learner who has everything right but what is given."""
    exercise = Exercise(LESSON, learner)
    right = {one.id: right_answer(one) for one in exercise.questions}
    exercise.answer(**right | instead)
    return exercise.saved.path


@pytest.fixture
def one_row_more(monkeypatch):
    """Call it to add one code to the bank of the first question."""

    def add():
        bank = (*capacitor_markings.DISC_CODES, ("103", 10e-9, 103e-12, 10e-6))
        monkeypatch.setattr(capacitor_markings, "DISC_CODES", bank)

    return add


def without_fingerprints(path):
    content = json.loads(path.read_bytes())
    del content["asked"]
    path.write_text(json.dumps(content))
    return path


def test_one_row_added_to_a_bank_costs_no_old_sheet_a_point(one_row_more):
    paths = [answered(learner) for learner in CLASS]
    old = [questions_of(LESSON, learner)[0].picture().alt for learner in CLASS]
    before = [mark_file(path) for path in paths]
    assert all(sheet.points == sheet.out_of == 15 for sheet in before)
    one_row_more()
    changed = 0
    for learner, path, alt, sheet in zip(CLASS, paths, old, before, strict=True):
        now = mark_file(path)
        if questions_of(LESSON, learner)[0].picture().alt == alt:
            assert str(now) == str(sheet)
            continue
        changed += 1
        assert now.points == now.out_of == 14
        assert [line.id for line in now.lines if line.state == "changed"] == ["q1"]
        assert "q1  changed       not counted\n    This question has changed since" in str(now)
        assert str(now).endswith("Total: 14 of 14 points; not counted: 1")
    assert 0 < changed < len(CLASS) / 2


def moved(one_row_more):
    """A learner whose first question changes with one more row, who has answered before."""
    bank = capacitor_markings.DISC_CODES
    paths = {learner: answered(learner) for learner in CLASS}
    one_row_more()
    assert len(capacitor_markings.DISC_CODES) == len(bank) + 1
    return next((learner, path) for learner, path in paths.items() if mark_file(path).out_of == 14)


def test_whoever_marks_may_ask_for_the_questions_of_today(one_row_more):
    _, path = moved(one_row_more)
    sheet = mark_file(path, anew=True)
    assert (sheet.points, sheet.out_of, sheet.lines[0].state) == (14, 15, "wrong")


def test_a_learner_is_told_beside_the_question_and_may_answer_anew(one_row_more):
    learner, path = moved(one_row_more)
    exercise = Exercise(LESSON, learner)
    form = answer_form(exercise)
    typed = form.views["q1"].box.value
    assert typed  # what was typed is still there
    assert "Changed since it was answered: not counted" in form.views["q1"].feedback.value
    assert "<b>14 of 14 points</b>, 9 of 9 questions answered" in form.sheet.value
    form.views["q1"].box.value = right_answer(exercise.questions[0])
    assert "Right, 1 of 1" in form.views["q1"].feedback.value
    assert mark_file(path).points == exercise.sheet().points == 15


def test_a_changed_choice_shows_what_was_chosen_and_none_of_todays_options(monkeypatch):
    exercise = open_exercise("00-start-here")
    exercise.answer(q1="b")
    monkeypatch.setattr("repairlib.learn.exercise.fingerprint", lambda question: "another")
    view = answer_form(exercise).views["q1"]
    assert view.box.value is None
    assert "Answered then: b" in view.feedback.value
    assert exercise.saved.read() == {"q1": "b"}


def test_each_fingerprint_is_of_the_moment_its_answer_was_saved(one_row_more, monkeypatch):
    learner, path = moved(one_row_more)
    before = json.loads(path.read_bytes())["asked"]
    monkeypatch.setattr(saved_answers, "VERSION", "9.9")
    Exercise(LESSON, learner).answer(q2="1 nF")
    after = json.loads(path.read_bytes())["asked"]
    assert {name for name in before if before[name] != after[name]} == {"q2"}
    assert after["q2"] == before["q2"] | {"version": "9.9"}
    assert mark_file(path).lines[0].state == "changed"


def test_the_sheet_names_the_version_a_changed_question_was_answered_in(one_row_more, monkeypatch):
    monkeypatch.setattr(saved_answers, "VERSION", "0.0.7")
    _, path = moved(one_row_more)
    assert "(in version 0.0.7)" in str(mark_file(path))
    path.write_text(path.read_text().replace("0.0.7", ""))
    assert mark_file(path).lines[0].state == "changed"


def test_a_cleared_answer_to_a_changed_question_is_unanswered(one_row_more):
    paths = [answered(learner, q1=" ") for learner in CLASS]
    one_row_more()
    assert {mark_file(path).lines[0].state for path in paths} == {"unanswered"}


def test_a_file_without_fingerprints_is_marked_and_says_so():
    path = without_fingerprints(answered(CLASS[0]))
    sheet = mark_file(path)
    assert sheet.points == 15
    assert "Note: The file carries no fingerprint of the question for any answer" in str(sheet)


def test_new_answers_beside_old_ones_without_fingerprints():
    without_fingerprints(answered(CLASS[0]))
    exercise = Exercise(LESSON, CLASS[0])
    exercise.answer(q1="1 nF")
    named = ", ".join(f"q{number}" for number in range(2, 10))
    assert f"no fingerprint of the question for {named}:" in str(exercise.sheet())
    assert "fingerprint" not in str(mark_file(answered(CLASS[0])))


def test_an_answer_to_a_question_no_longer_asked_is_named():
    exercise = Exercise(LESSON, CLASS[0])
    exercise.saved.save({"q77": "9 V"}, {"q77": "0"})
    assert "no longer asked, so not counted: q77." in str(mark_file(exercise.saved.path))


@pytest.mark.parametrize("asked", [5, {"q1": "x"}, {"q1": {"version": "1"}}, {"q1": {"a": {}}}])
def test_a_file_with_broken_fingerprints_is_kept_aside(asked):
    exercise = open_exercise(LESSON)
    exercise.answer(q1="1 nF")
    content = json.loads(exercise.saved.path.read_bytes()) | {"asked": asked}
    exercise.saved.path.write_text(json.dumps(content))
    assert exercise.saved.read() == {}
    assert "it does not hold what it should" in exercise.saved.note


NINE = Number(id="q1", prompt="How much?", unit="V", answer=9)


def test_a_fingerprint_is_the_start_of_a_plain_hash():
    """The text is written out by hand here: what was asked, as JSON with sorted names."""
    text = (
        '{"answer": "9", "dangers": [["", "mains"]], "kind": "Number", "margin": "0", "picture": '
        '"", "points": "1", "prompt": "How much?", "tolerance": "0.01", "unit": "V"}'
    )
    mistakes = [Mistake(lambda volts: volts > 50, "Far too much.", hazard="mains")]
    asked = Number(prompt="How much?", unit="V", answer=9.0, mistakes=mistakes, hint="Look again.")
    assert fingerprint(asked) == hashlib.sha256(text.encode()).hexdigest()[:12]


@pytest.mark.parametrize(
    "other",
    [
        Number(prompt="How much then?", unit="V", answer=9),
        Number(prompt="How much?", unit="A", answer=9),
        Number(prompt="How much?", unit="V", answer=9.01),
        Number(prompt="How much?", unit="V", answer=9, tolerance=0.02),
        Number(prompt="How much?", unit="V", answer=9, margin=1),
        Number(prompt="How much?", unit="V", answer=9, points=2),
        Number(prompt="How much?", unit="V", answer=9, mistakes=[Mistake(5, "?", hazard="mains")]),
    ],
)
def test_what_changes_a_fingerprint(other):
    assert fingerprint(other) != fingerprint(NINE)


def test_options_steps_and_cells_count_and_hints_do_not():
    both = ("up", "down")
    assert fingerprint(Choice(options=both, answer="up")) != fingerprint(
        Choice(options=both[::-1], answer="up")
    )
    assert fingerprint(Order(steps="abc", shown="bca")) != fingerprint(
        Order(steps="bac", shown="bca")
    )
    assert fingerprint(Table(cells={"C1": {"volts": NINE}})) != fingerprint(
        Table(cells={"C2": {"volts": NINE}})
    )
    told = Number(prompt="How much?", unit="V", answer=9, mistakes=[Mistake(5, "No.")], hint="Hm.")
    assert fingerprint(told) == fingerprint(NINE)


def test_the_same_fingerprints_in_every_run():
    code = (
        "from repairlib.learn import LESSONS, Learner, questions_of\n"
        "from repairlib.learn.fingerprint import fingerprint\n"
        "for lesson in LESSONS:\n"
        "    print(*map(fingerprint, questions_of(lesson, Learner('Ada', 'b'))))"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(runs) == 1 and len(runs.pop().split()) > 80
