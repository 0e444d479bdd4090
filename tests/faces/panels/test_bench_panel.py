"""The practice board on the screen: moves by words, kept before they are shown, begun anew."""

import pytest

from repairlib.bench import Task, demo_set, read_fault
from repairlib.core.errors import RepairlibError
from repairlib.faces.panels import PracticeBoard, practice_board
from repairlib.faces.panels.following import turn_to

RADIO = demo_set("desk radio")
TASK = Task(RADIO, (read_fault("C1 open", RADIO),), "demo")


def said(panel):
    return [line["told"] for line in panel.view.told["log"]]


def test_a_move_is_handed_on_before_it_is_shown():
    seen = []
    panel = PracticeBoard(TASK, on_moves=lambda lines: seen.append((lines, said(panel))))
    panel.do("plug in")
    panel.do("volts  out 0")
    assert [lines for lines, _ in seen] == [["plug in"], ["plug in", "volts out 0"]]
    assert [len(shown) for _, shown in seen] == [0, 1]
    assert len(said(panel)) == 2 and panel.moves == ["plug in", "volts out 0"]


def test_what_is_refused_costs_nothing_and_stays_to_be_mended():
    panel = PracticeBoard(TASK)
    before = panel.view.told["facts"]
    panel.do("sing")
    told = panel.view.told
    assert told["refused"]["typed"] == "sing" and "sing" in told["refused"]["why"]
    assert told["facts"] == before and panel.moves == []
    panel.do("plug in")
    assert panel.view.told["refused"] == {}


def test_what_cannot_be_kept_is_shown_with_a_sentence():
    def barred(lines):
        raise RepairlibError("the folder", "is full", "room")

    panel = PracticeBoard(TASK, on_moves=barred)
    panel.do("plug in")
    assert "Not kept" in panel.view.told["note"] and panel.moves == ["plug in"]


def test_moves_that_are_no_longer_understood_are_told():
    panel = PracticeBoard(TASK, ["plug in", "sing", "unplug"])
    assert panel.moves == ["plug in"] and "sing" in panel.view.told["note"]


def test_a_learners_moves_are_there_again_and_another_learner_has_none():
    turn_to("Ada Example", "bench-7")
    panel = practice_board(faults=["C1 open"])
    panel.do("plug in")
    assert practice_board(faults=["C1 open"]).moves == ["plug in"]
    assert practice_board(faults=["C2 open"]).moves == []
    again = practice_board(faults=["C1 open"])
    turn_to("Bo Example", "bench-7")
    assert again.moves == []
    turn_to("Ada Example", "bench-7")
    assert again.moves == ["plug in"]


def test_two_windows_on_one_board_lose_nothing():
    first, second = practice_board(), practice_board()
    first.do("plug in")
    second.do("clip 0")
    assert second.moves == ["plug in"] and "another window" in second.view.told["refused"]["why"]
    second.do("clip 0")
    assert practice_board().moves == ["plug in", "clip 0"]


def test_a_board_begun_anew_is_the_same_and_another_is_not():
    panel = practice_board()
    panel.do("plug in")
    faults = panel.attempt.task.faults
    panel._heard(None, {"anew": "same"}, [])
    assert panel.moves == [] and panel.attempt.task.faults == faults
    panel._heard(None, {"anew": "another"}, [])
    assert practice_board().attempt.task == panel.attempt.task


@pytest.mark.parametrize("faults", [None, ["C1 open"]])
def test_another_board_is_offered_only_where_there_is_one(faults):
    again = practice_board(faults=faults).view.told["again"]
    assert again == (["same", "another"] if faults is None else ["same"])
