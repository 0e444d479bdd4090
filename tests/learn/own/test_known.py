"""Own lessons of a group, wherever lessons are: asked, saved, marked and told like the others."""

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import (
    LESSONS,
    Learner,
    files,
    lessons_known,
    mark_file,
    open_exercise,
    questions_of,
    set_learner,
    warm_up,
)
from repairlib.learn.asking import names
from repairlib.learn.exercise import Exercise, module_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import Group, Member
from repairlib.learn.progress import DONE, next_lesson, number_of, standings, stated
from repairlib.learn.remembered import asked_of
from repairlib.learn.tries import read_tries
from tests.learn.asking import right_answer
from tests.learn.own.typed import EXAMPLE

LESSON = "own-fuses"
ADA = Learner("Ada Example", "Tuesday bench")


@pytest.fixture
def group(home):
    """Call it to put the own lessons of a group on this computer; at first it has fuses.txt."""

    def known(**own: str) -> Group:
        texts = {f"{name}.txt": text for name, text in own.items()}
        made = Group(ADA.group, (Member(ADA.name, "kite"),), ("00-start-here",), own=texts)
        home.mkdir(exist_ok=True)
        files.write(home / "group.json", made.to_dict())
        return made

    known(fuses=EXAMPLE)
    return known


def all_right(lesson=LESSON):
    exercise = Exercise(lesson, ADA)
    exercise.answer(**{one.id: right_answer(one) for one in exercise.questions})
    return exercise.saved.path


def test_without_a_group_there_are_the_lessons_of_the_workbook():
    assert lessons_known() == LESSONS
    with pytest.raises(RepairlibError, match="no own lesson of this group"):
        questions_of(LESSON)


def test_own_lessons_come_after_those_of_the_workbook(group):
    given = group(fuses=EXAMPLE, leads=EXAMPLE)
    assert lessons_known() == lessons_known(given) == (*LESSONS, LESSON, "own-leads")
    assert next_lesson(LESSONS[-1]) == LESSON
    assert next_lesson("own-leads") is None
    assert (number_of(LESSON), stated(LESSON)) == (LESSON, ("A fuse has blown", 15))


def test_answers_are_saved_judged_and_marked_like_any_others(group):
    set_learner(ADA.name, ADA.group)
    exercise = open_exercise(LESSON)
    wrong = next(one for one in exercise.questions[0].options if "with the plug in" in one)
    assert "Danger (mains)" in exercise.answer(q1=wrong)
    assert "unsafe        0 of 2" in str(exercise.sheet())
    path = all_right()
    sheet = mark_file(path)
    assert (sheet.points, sheet.out_of) == (10, 10)
    assert "answered unsafely first" in str(sheet)
    (standing,) = [one for one in standings(ADA) if one.lesson == LESSON]
    assert (standing.state, standing.points) == (DONE, 10)
    assert "unsafe" in {one.state for one in read_tries(LESSON, ADA)}


def test_the_instructor_marks_by_a_group_that_this_computer_does_not_know(group, home):
    given = group(fuses=EXAMPLE)
    path = all_right()
    (home / "group.json").unlink()
    with pytest.raises(RepairlibError):
        mark_file(path)
    assert mark_file(path, group=given).points == 10


def test_what_is_remembered_of_a_group_asks_the_same(group):
    for learner in (ADA, Learner("Ben Example", ADA.group), Learner("Cy Example", ADA.group)):
        asked = asked_of(module_of(LESSON), learner.draw(LESSON))
        questions = questions_of(LESSON, learner)
        assert [one.fingerprint() for one in asked] == [fingerprint(one) for one in questions]
        assert [(one.id, one.points) for one in asked] == [(q.id, q.points) for q in questions]
        for one, question in zip(asked, questions, strict=True):
            assert one.judge(right_answer(question)).state == "right"


def test_a_draw_that_is_thrown_anew_gives_another_variant(group):
    part = names(module_of(LESSON))["q2"]
    asked = {
        questions_of(LESSON, Learner(ADA.name, ADA.group, apart={LESSON: {part: n}}))[1].answer
        for n in range(12)
    }
    assert asked == {2.0, 0.5, 1.6}


def test_what_comes_before_the_exercise_is_not_marked(group):
    (practised,) = warm_up(LESSON)(ADA.draw("practice"))
    assert practised.answer == 0.5
    assert len(questions_of(LESSON)) == 4


OLD = "This question has changed since"


@pytest.mark.parametrize(
    "now",
    [
        EXAMPLE + "\nQuestion\nOne more?\nAnswer: 5\n",
        EXAMPLE.replace("Say: It will blow like", "Say: Look, it will blow like"),
        EXAMPLE.replace("A fuse has blown\n", "My fuse has blown\n"),
    ],
    ids=["a question more", "another hint", "another title"],
)
def test_what_changes_nothing_that_was_asked_costs_no_old_answer_a_point(group, now):
    path = all_right()
    group(fuses=now)
    assert mark_file(path).points == 10
    assert OLD not in str(mark_file(path))


@pytest.mark.parametrize(
    "was, now, name",
    [
        ("Stop, and look for", "Stop and look for", "q1"),
        ("more than 100 A", "more than 3 A", "q2"),
        ("Take the old fuse out and read it", "Take the old fuse out", "q3"),
        ("Row: T2A 250V | 2 A", "Row: T2A 250V | 3 A", "q4"),
    ],
)
def test_a_changed_question_is_named_and_not_marked(group, was, now, name):
    path = all_right()
    group(fuses=EXAMPLE.replace(was, now))
    changed = [line.id for line in mark_file(path).lines if line.state == "changed"]
    assert changed == [name]
    assert {one.lesson: one for one in standings(ADA)}[LESSON].points < 10  # told at once too


def test_an_own_lesson_that_cannot_be_read_stops_no_other(group):
    group(fuses="Fuses\n\nQuestion\nWhy?\nAnwser: 5")
    assert open_exercise("00-start-here").questions
    with pytest.raises(RepairlibError, match="1 error"):
        open_exercise(LESSON)


def test_saved_answers_of_an_own_lesson_are_one_file_beside_the_others(group):
    path = all_right()
    assert path.name == "own-fuses.json"
    assert json.loads(path.read_bytes())["asked"].keys() == {"q1", "q2", "q3", "q4"}
