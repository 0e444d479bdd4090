"""What time does: cracks that open warm, fuses that blow again, parts that burst or burn."""

from __future__ import annotations

from dataclasses import replace

import pytest

from repairlib.bench import Task, begin, demo_set, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.electric import electric
from repairlib.bench.looks import BURST, looks_of
from repairlib.bench.passing import passing
from repairlib.bench.state import HARMED, OWN_PLUG, Feed

RADIO, MAKER = demo_set("desk radio"), demo_set("label maker")


def after(*moves, faults="", of=RADIO):
    return walked(Task(of, read_faults(faults, of) if faults else (), "demo"), moves)


def new(name, how=""):
    return f"take out {name} with vacuum", f"fit {name} {how}".strip()


@pytest.mark.behaviour
def test_without_power_nothing_warms_and_what_was_warm_cools():
    warm = after("plug in", "wait 20 min", "unplug").state
    cool = after("plug in", "wait 20 min", "unplug", "wait 2 h").state
    assert warm.heat["U1"] > 20 and not cool.heat
    assert not after("wait 2 h").state.heat


@pytest.mark.behaviour
def test_a_cracked_joint_opens_warm_and_closes_again():
    state = replace(begin(MAKER, read_faults("J1 cracked", MAKER), ""), feed=Feed(OWN_PLUG))
    seen = []
    for _ in range(60):
        state, events = passing(state, 15.0)
        seen.append(electric(state).mean["head"] > 5)
        assert not events
    assert all(seen[:4]) and not all(seen)
    assert seen.index(True, seen.index(False)) > 0


@pytest.mark.behaviour
def test_a_fuse_blows_again_while_its_cause_is_there():
    attempt = after(*new("F1"), "plug in", faults="D2 short; F1 blown", of=MAKER)
    assert attempt.done[-1].told.alarm and "F1" in attempt.done[-1].told.words
    assert attempt.state.place("F1").fitted.fault.condition == "blown"
    mended = after(*new("D2"), *new("F1"), "plug in", faults="D2 short; F1 blown", of=MAKER)
    assert mended.state.place("F1").fitted.fault is None and not mended.done[-1].told.alarm


@pytest.mark.behaviour
def test_too_large_a_fuse_holds_and_something_else_burns():
    state = after(*new("F1", "10 A"), "plug in", "wait 10 min", faults="C1 short; F1 blown").state
    assert state.place("F1").fitted.fault is None
    assert any("smoked" in one for one in state.harm)


@pytest.mark.behaviour
@pytest.mark.parametrize(("name", "how"), [("C3", "turned"), ("C1", "2200 µF 10 V")])
def test_an_electrolytic_fitted_wrong_bursts_after_its_time_and_ends_the_attempt(name, how):
    at_once = after(*new(name, how), "plug in")
    assert at_once.state.ended is None
    state = at_once.after("wait 10 min").state
    assert state.ended.kind == HARMED and state.ended.hazard == "flying leads and eyes"
    assert f"{name} swelled and burst" in state.ended.why
    assert BURST in looks_of(state, name).signs


@pytest.mark.behaviour
@pytest.mark.parametrize("how", ["", "2200 µF 16 V"])
def test_one_that_is_right_lives(how):
    state = after(*new("C1", how), "plug in", "wait 2 h").state
    assert state.ended is None and not state.harm


@pytest.mark.behaviour
@pytest.mark.parametrize("line", [*RADIO.faults, *RADIO.together][::6])
def test_what_came_faulty_stands_it(line):
    state = replace(begin(RADIO, read_faults(line, RADIO), ""), feed=Feed(OWN_PLUG, line=1.1))
    end, events = passing(state, 3600.0)
    assert all("hisses" in told for told in events)
    assert not end.harm and end.ended is None
