"""One good way through a known fault earns all points, on each set and with each plain fault."""

import os

import pytest

from repairlib.bench import Task, demo_set, judge, known_way, lines_of_level, read_fault, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.knowing import mending
from repairlib.bench.practice_set import DEMO

pytestmark = pytest.mark.behaviour
WHOLE = os.environ.get("BENCH") == "all"
EVERY = [(title, line) for title in DEMO for line in lines_of_level(demo_set(title), 1)]


@pytest.mark.parametrize(("title", "line"), EVERY if WHOLE else [("label maker", "D1 open")])
def test_who_knows_the_fault_earns_all_points(title, line):
    of = demo_set(title)
    task = Task(of, (read_fault(line, of),), "known")
    found = judge(walked(task, known_way(task)))
    assert (found.share, found.passed, found.dangers, found.luck) == (1.0, True, (), ())


@pytest.mark.parametrize("title", DEMO)
def test_each_fault_of_a_set_is_gone_once_it_was_mended(title):
    of = demo_set(title)
    for line in (*of.faults, *of.together):
        faults = read_faults(line, of)
        if any(of.part(fault.part).mains for fault in faults):
            continue
        moves = [move for fault in faults for move in mending(of, fault)]
        for name, place in walked(Task(of, faults, "known"), moves).state.places.items():
            assert place.fitted and not place.fitted.fault, (line, name)


def test_what_lies_on_the_mains_side_is_handed_on():
    radio = demo_set("desk radio")
    task = Task(radio, (read_fault("F9 blown", radio),), "known")
    attempt = walked(task, known_way(task))
    assert attempt.state.ended.kind == "handed on" and not attempt.state.harm
    assert judge(attempt).passed
