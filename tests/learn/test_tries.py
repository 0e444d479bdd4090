"""What counts as a try: the rules at the top of the module, one by one."""

import json

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import DEMO, Learner, open_exercise, set_learner
from repairlib.learn.tries import (
    QUICK,
    Try,
    note_try,
    path_of,
    read_tries,
    stories,
)
from tests.learn.test_saved_answers import dangerous_and_right

LESSON = "00-start-here"
TABLES = "01-a-safe-bench"


def story(*lines):
    """The story of one question from (seconds, typed, state)."""
    return stories(Try(1 + round(at * 1000), "q1", *said) for at, *said in lines)["q1"]


def kept(lines):
    return [one.typed for one in lines]


@pytest.fixture
def clock(monkeypatch):
    """Set the computer's clock, in seconds."""

    def at(seconds: float) -> None:
        monkeypatch.setattr("time.time_ns", lambda: int(seconds * 1e9))

    at(1000)
    return at


@pytest.mark.behaviour
def test_a_choice_is_a_try_at_once_also_when_clicked_in_a_hurry():
    told = story((0, "a", "unsafe", ("stored charge",)), (0.1, "c", "wrong"), (0.2, "b", "right"))
    assert (told.first.typed, told.tries, told.last.typed) == ("a", 3, "b")
    assert kept(told.unsafe) == ["a"]


@pytest.mark.behaviour
def test_typing_further_is_one_try_whose_answer_is_the_last():
    told = story((0, "1", "unsafe"), (0.5, "10", "unsafe"), (1.1, "100 nF", "right"))
    assert (told.first.typed, told.tries, told.unsafe) == ("100 nF", 1, ())


@pytest.mark.behaviour
def test_what_is_typed_further_after_a_while_is_another_try():
    told = story((0, "1 V", "unsafe"), (QUICK / 1000 + 0.01, "1 V dc", "right"))
    assert (told.tries, kept(told.unsafe)) == (2, ["1 V"])


@pytest.mark.behaviour
def test_what_is_met_while_deleting_is_no_try_and_what_was_answered_before_is():
    told = story((0, "16 V", "wrong"), (1, "16", "wrong"), (2, "1", "unsafe"), (3, "25 V", "right"))
    assert (told.first.typed, told.tries, told.unsafe) == ("16 V", 2, ())


@pytest.mark.behaviour
def test_an_answer_that_was_shortened_and_then_left_is_a_try():
    assert story((0, "12", "wrong"), (4, "1", "right")).tries == 2


@pytest.mark.behaviour
def test_a_table_is_a_try_when_it_is_full_and_its_danger_stays():
    first, second = {"C1": {"volts": "6"}}, {"C1": {"volts": "6", "fit": "a"}}
    told = story((0, first, "unsafe"), (60, second, "unsafe"))
    assert (told.tries, len(told.unsafe)) == (1, 1)
    other = {"C1": {"volts": "25", "fit": "a"}}
    told = story((0, first, "unsafe"), (60, {"C1": {"volts": "25"}}, "unfinished"))
    assert (told.tries, len(told.unsafe)) == (1, 1)
    told = story((0, second, "wrong"), (1, other, "right"))
    assert told.tries == 2
    typing = {"C1": {"volts": "63"}}
    told = story((0, first, "unsafe"), (1, typing, "unfinished"), (90, other, "right"))
    assert (told.tries, told.unsafe) == (1, ())


@pytest.mark.behaviour
def test_blank_and_unreadable_answers_are_none():
    assert stories([Try(1, "q1", "x", "cannot read"), Try(2, "q1", "", "unanswered")]) == {}


@pytest.mark.behaviour
def test_answers_by_code_are_noted_in_short_and_not_again_when_the_cell_runs_again():
    bad, good = dangerous_and_right("q3")
    exercise = open_exercise(LESSON)
    for _ in range(3):
        exercise.answer(q3=bad, q7="1 nF")
    exercise.answer(q3=good)
    told = stories(read_tries(LESSON, DEMO))
    letters = [exercise.by_id["q3"].in_short(one) for one in (bad, good)]
    assert (told["q3"].first.typed, told["q3"].last.typed) == tuple(letters)
    assert (told["q3"].tries, len(told["q3"].unsafe), told["q7"].tries) == (2, 1, 1)
    assert told["q3"].unsafe[0].hazards == ("stored charge",)


@pytest.mark.behaviour
def test_an_unfinished_table_given_by_code_is_no_try():
    exercise = open_exercise(TABLES)
    ask = next(one for one in exercise.questions if hasattr(one, "cells"))
    whole = {
        row: {column: cell.answer for column, cell in cells.items()}
        for row, cells in ask.cells.items()
    }
    first = dict([next(iter(whole.items()))])
    exercise.answer(**{ask.id: first})
    assert stories(read_tries(TABLES, DEMO)) == {}
    exercise.answer(**{ask.id: whole})
    (told,) = stories(read_tries(TABLES, DEMO)).values()
    assert (told.tries, told.first.state) == (1, "right")


@pytest.mark.behaviour
def test_where_the_clock_is_behind_a_later_line_is_never_earlier(clock):
    note_try(LESSON, DEMO, "q1", "a", "wrong")
    clock(10)
    note_try(LESSON, DEMO, "q2", "b", "wrong")
    assert [one.at for one in read_tries(LESSON, DEMO)] == [1_000_000, 1_000_000]
    assert kept(read_tries(LESSON, DEMO)) == ["a", "b"]


@pytest.mark.behaviour
def test_a_torn_line_and_a_strange_one_block_nothing():
    note_try(LESSON, DEMO, "q1", "a", "wrong")
    path = path_of(LESSON, DEMO)
    with path.open("ab") as file:
        file.write(b'{"at": "noon"}\n[1]\n{"at": 5, "id": "q1", "typ')
    note_try(LESSON, DEMO, "q1", "b", "right")
    assert kept(read_tries(LESSON, DEMO)) == ["a", "b"]
    assert path.read_bytes().count(b"\n") == 5


@pytest.mark.behaviour
def test_the_record_is_only_added_to_and_each_learner_has_their_own():
    exercise = open_exercise(LESSON)
    exercise.answer(q7="1 nF")
    before = path_of(LESSON, DEMO).read_bytes()
    exercise.answer(q7="2 nF")
    assert path_of(LESSON, DEMO).read_bytes().startswith(before)
    set_learner("Ada Example", "bench-7")
    assert read_tries(LESSON, Learner("Ada Example", "bench-7")) == []


@pytest.mark.behaviour
def test_an_old_record_with_lines_that_are_no_answers_is_read():
    path = path_of(LESSON, DEMO)
    path.parent.mkdir(parents=True)
    deep = {"a": {"b": {"c": "d"}}}
    for typed in (5, None, ["a"], deep):
        line = {"at": 1, "id": "q1", "typed": typed, "state": "wrong", "hazards": []}
        path.write_text(json.dumps(line) + "\n")
        assert read_tries(LESSON, DEMO) == []


@pytest.mark.behaviour
def test_a_record_that_cannot_be_written_is_one_clear_line():
    path_of(LESSON, DEMO).mkdir(parents=True)
    with pytest.raises(RepairlibError, match="this is a folder"):
        note_try(LESSON, DEMO, "q1", "a", "wrong")
