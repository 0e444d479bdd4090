"""A lesson that is held tells nothing of right and wrong until it is released; dangers it does."""

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import files, mark_file, open_exercise
from repairlib.learn.group import Group, Member
from repairlib.learn.holding import hash_of, release_here
from repairlib.learn.progress import standings
from tests.learn.test_answered import ANSWERED
from tests.learn.test_saved_answers import dangerous_and_right

LESSON, WORD = "00-start-here", "chef duet"
MARKINGS = "03-capacitor-markings"
TELLS = (" right ", "wrong", "partly", "Total")


@pytest.fixture
def known(home):
    """Put the group's file in its place, with these lessons held."""

    def put(**held: str) -> None:
        held = {lesson: hash_of(word) for lesson, word in held.items()}
        group = Group("Tuesday bench", (Member("Ada Example", "kite"),), (LESSON,), held)
        home.mkdir(exist_ok=True)
        files.write(home / "group.json", group.to_dict())

    return put


@pytest.fixture
def held(known):
    known(**{LESSON: WORD})
    return open_exercise(LESSON)


def answers(which: str, lesson=LESSON) -> dict:
    rows = json.loads((ANSWERED / f"{lesson}-{which}.json").read_text(encoding="utf-8"))
    return {name: row["answer"] for name, row in rows.items()}


@pytest.mark.behaviour
def test_the_sheet_of_right_and_of_wrong_answers_reads_alike(known):
    known(**{MARKINGS: WORD})
    exercise = open_exercise(MARKINGS)
    right = answers("right", MARKINGS)
    wrong = {
        name: answer
        for name, answer in answers("wrong", MARKINGS).items()
        if exercise.by_id[name].judge(exercise.by_id[name].as_typed(answer)).state == "wrong"
    }
    shown = []
    for given in (wrong, {name: right[name] for name in wrong}):
        told = exercise.answer(**given)
        shown.append(f"{told}\n{exercise.sheet()}")
    assert shown[0] == shown[1]
    assert not [one for one in TELLS if one in shown[0]]
    count = len(exercise.questions)
    assert f"Answered: {len(wrong)} of {count}. Points are told later." in shown[0]
    assert len(wrong) > 4


@pytest.mark.behaviour
def test_a_dangerous_answer_is_told_at_once_all_the_same(held):
    bad, good = dangerous_and_right("q3")
    assert "Danger (stored charge)" in held.answer(q3=bad)
    assert "q3  unsafe" in str(held.sheet())
    held.answer(q3=good)
    assert "q3  told later" in str(held.sheet())
    assert "answered unsafely first" in str(held.sheet())


@pytest.mark.behaviour
def test_progress_tells_nothing_either(held):
    held.answer(**answers("right"))
    (standing,) = (one for one in standings(held.learner) if one.lesson == LESSON)
    assert (standing.held, standing.state, standing.points, standing.again) == (True, "open", 0, ())


@pytest.mark.behaviour
def test_what_cannot_be_read_is_said_while_held_also_in_a_table(known):
    known(**{"01-a-safe-bench": WORD})
    exercise = open_exercise("01-a-safe-bench")
    ask, row, column = next(
        (one, row, column)
        for one in exercise.questions
        if hasattr(one, "cells")
        for row, cells in one.cells.items()
        for column, cell in cells.items()
    )
    exercise.answer(**{ask.id: {row: {column: "?!"}}})
    sheet = str(exercise.sheet())
    assert f"{row}, {column}" in sheet and "'?!'" in sheet


@pytest.mark.behaviour
def test_the_word_releases_this_lesson_on_this_computer_and_only_the_right_one(held):
    held.answer(**answers("right"))
    with pytest.raises(RepairlibError, match="does not release"):
        release_here(LESSON, "chef due")
    assert held.is_held()
    release_here(LESSON, " Chef  DUET ")
    assert not held.is_held() and "Total: 13 of 13 points" in str(held.sheet())


@pytest.mark.behaviour
def test_the_group_file_releases_and_a_lesson_held_anew_is_held(held, known):
    release_here(LESSON, WORD)
    known(**{LESSON: "wasp trek"})
    assert held.is_held()
    known()
    assert not held.is_held()
    release_here(LESSON, "any word")  # nothing to release: no error


@pytest.mark.behaviour
def test_other_lessons_and_whoever_marks_see_everything(held):
    held.answer(**answers("right"))
    assert not open_exercise("01-a-safe-bench").is_held()
    assert "Total: 13 of 13" in str(mark_file(held.saved.path))


@pytest.mark.behaviour
def test_a_damaged_note_of_what_was_released_holds_on(held, home):
    (home / "released.json").write_text('{"format": 1, "released": 5}')
    assert held.is_held()
