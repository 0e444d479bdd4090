"""The practice board on the screen: moves by words, kept before they are shown, begun anew."""

import pytest

from repairlib.bench import DOES, Task, demo_set, read_fault, read_move
from repairlib.bench.practice_set import DEMO
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity
from repairlib.faces.panels import PracticeBoard, practice_board
from repairlib.faces.panels.bench_offers import lines_of
from repairlib.faces.panels.following import turn_to

RADIO = demo_set("desk radio")
TASK = Task(RADIO, (read_fault("C1 open", RADIO),), "demo")
CHIP = {"read chip", "write chip"}  # which not every board has


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


@pytest.mark.parametrize("typed", ["hand back", "done", "hand on", "hand on: not mine", "give up"])
def test_what_ends_the_attempt_is_asked_once_more(typed):
    panel = PracticeBoard(TASK, ["look"])
    panel._heard(None, {"do": typed}, [])
    refused = panel.view.told["refused"]
    assert refused["asks"] and refused["typed"] == typed and "Sure?" in refused["why"]
    assert ("Nothing is said yet" in refused["why"]) == (typed == "hand on")
    assert panel.moves == ["look"] and not panel.view.told["ended"]
    panel._heard(None, {"do": "volts out 0"}, [])  # which is no yes
    panel._heard(None, {"do": typed}, [])
    assert not panel.view.told["ended"]
    panel._heard(None, {"do": typed}, [])
    assert panel.view.told["ended"] and panel.moves[-1] == typed


def test_a_button_that_has_asked_is_not_asked_again():
    panel = PracticeBoard(TASK)
    panel._heard(None, {"do": "give up", "sure": True}, [])
    assert panel.view.told["ended"]


@pytest.mark.parametrize("title", DEMO)
def test_each_line_that_is_listed_is_a_move_of_that_board(title):
    of = demo_set(title)
    lines = [line for those in lines_of(of).values() for line in those]
    assert {read_move(line, of).verb for line in lines} >= set(DOES) - CHIP
    assert not {part.name for part in of.parts if part.mains} & set(" ".join(lines).split())


@pytest.mark.parametrize("title", DEMO)
def test_the_service_sheet_names_each_rail_its_point_and_its_window(title):
    panel = PracticeBoard(Task(demo_set(title), (), "demo"))
    sheet, example = panel.view.board["sheet"], panel.view.board["example"]
    assert [row[:2] for row in sheet["rows"]] == [
        [r.name, r.point] for r in panel.attempt.task.set.rails
    ]
    for row, rail in zip(sheet["rows"], panel.attempt.task.set.rails, strict=True):
        low, high = (read_quantity(side, "V").value for side in row[3].split(" to "))
        assert (low, high) == pytest.approx((rail.low, rail.high), rel=0.01)
        assert low < read_quantity(row[2], "V").value < high
    panel.do(example)
    assert panel.moves == [example]


def test_behind_the_line_of_the_mains_side_there_is_only_look_and_hand_on():
    panel = PracticeBoard(TASK)
    board = panel.view.board
    for one in (*board["parts"], *board["points"]):
        words = [offer["words"] for _, offers in one["offers"] for offer in offers]
        behind = one["name"] in ("F9", "C9", "R9", "l", "l1", "n")
        offered = ["hand on: "], [f"look {one['name']}", "hand on: "]
        assert (words in offered) == behind
    assert "mains: hand it on" in board["svg"] and "mains: hand it on”: F9" in board["alt"]
    assert "Points to probe: 0, a, a1, b, out, pre, rail, reg." in board["alt"]
