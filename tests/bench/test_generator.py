"""Boards for learners: always the same, of the level, and typed again as they are."""

import os
from dataclasses import replace

import pytest

from repairlib.bench import (
    LEVELS,
    begin,
    lines_of_level,
    read_fault,
    read_set,
    task,
    unfair_fault,
)
from repairlib.bench.fuse_load import overloads
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import OWN_PLUG, Feed
from repairlib.bench.still_works import each_miss
from repairlib.core.draws import DemoDraw, Draw
from repairlib.core.errors import RepairlibError

pytestmark = pytest.mark.behaviour
MANY = 60
ALL = os.environ.get("BENCH") == "all"


def boards(of, level, many=MANY):
    return [task(of, "bench-7", f"Learner {number}", level) for number in range(many)]


def test_the_same_learner_gets_the_same_board():
    one, other = (task("keyboard", "Bench-7", name, 3) for name in ("Ada Example", " ada  EXAMPLE"))
    assert one == other
    assert [str(fault) for fault in task("keyboard", "bench-7", "Ada Example", 3).faults] == [
        "R3 open",
        "C5 leaks 12 kΩ",
    ]


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("title", DEMO)
def test_faults_are_listed_ones_or_worse_and_can_be_typed_again(title, level):
    of = demo_set(title)
    kinds = {(one.part, one.condition) for line in of.faults for one in [read_fault(line, of)]}
    for board in boards(of, level, 20):
        assert (board.set.text, board.level) == (of.text, level)
        assert [read_fault(str(fault), of) for fault in board.faults] == list(board.faults)
        if level != 2:
            assert {(one.part, one.condition) for one in board.faults} <= kinds
            assert len(board.faults) == len({one.part for one in board.faults}) == 1 + (level == 3)


def test_many_learners_meet_many_faults_and_seeds():
    drawn = boards(demo_set("desk radio"), 1)
    assert len({str(board.faults[0]) for board in drawn}) > 10
    assert len({board.seed for board in drawn}) == MANY


def test_a_fuse_comes_with_its_cause_at_level_2_alone():
    assert "D1 short; F1 blown" in lines_of_level(demo_set("desk radio"), 2)
    both = {len(board.faults) for board in boards(demo_set("desk radio"), 2)}
    assert both == {1, 2}


def test_the_mains_side_is_never_one_of_two():
    for title in ("desk radio", "keyboard", "printer controller"):
        of = demo_set(title)
        assert not any(
            of.part(one.part).mains for board in boards(of, 3, 30) for one in board.faults
        )


def test_one_fault_more_moves_few():
    radio = demo_set("desk radio")
    more = read_set(radio.text.replace("fault: C1 open", "fault: C1 open\nfault: R1 short"))
    pairs = zip(boards(radio, 1), boards(more, 1), strict=True)
    moved = [new for old, new in pairs if old.faults != new.faults]
    assert all(str(board.faults[0]) == "R1 short" for board in moved)
    assert len(moved) < MANY / 4


def test_the_demo_draw_takes_the_first_line():
    of = demo_set("label maker")
    drawn = task(of, level=2, draw=DemoDraw.of("14-the-whole-job"))
    assert str(drawn.faults[0]).startswith("J1 worn")
    assert task(of, draw=Draw("a")).faults == task(of, "b", "c", draw=Draw("a")).faults


@pytest.mark.parametrize("level", [0, 4, None, "1"])
def test_no_such_level(level):
    with pytest.raises(RepairlibError, match="no such level"):
        task("keyboard", "bench-7", "Ada", level)


def test_a_set_without_faults_for_a_level_says_so():
    text = demo_set("label maker").text
    bare = read_set("\n".join(line for line in text.split("\n") if "fault:" not in line))
    with pytest.raises(RepairlibError, match="no fault for level 1"):
        task(bare, "bench-7", "Ada", 1)


@pytest.mark.skipif(not ALL, reason="minutes: BENCH=all")
@pytest.mark.parametrize("title", DEMO)
def test_a_fault_is_fair_however_bad_it_is_drawn(title):
    of = demo_set(title)
    drawn = {"; ".join(map(str, one.faults)) for n in (1, 2) for one in boards(of, n, 150)}
    assert [reason for line in sorted(drawn) for reason in unfair_fault(of, line)] == []


@pytest.mark.parametrize("title", DEMO if ALL else ["network switch"])
def test_two_faults_neither_cancel_nor_blow_a_fuse_that_is_whole(title):
    of = demo_set(title)
    for board in boards(of, 3, 120 if ALL else 3):
        state = begin(of, board.faults, "")
        assert next(each_miss(state), None) is not None, board.faults
        assert list(overloads(replace(state, feed=Feed(OWN_PLUG)))) == [], board.faults
