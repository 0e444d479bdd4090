"""An ammeter at a live board: in series it measures, across a supply it is a short."""

from __future__ import annotations

import pytest

from repairlib.bench import Task, demo_set, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.practice_set import DEMO

RADIO = demo_set("desk radio")


def after(*moves, of=RADIO, faults=""):
    return walked(Task(of, read_faults(faults, of) if faults else (), "demo"), moves)


@pytest.mark.from_memory("IEC 60127-2: a time-lag fuse at ten times its rating goes in 0.3 s")
def test_across_the_rail_the_fuse_of_the_set_blows_and_it_is_told_as_damage():
    attempt = after("plug in", "amps rail 0", "volts rail 0", "wait 2 min", "volts rail 0")
    told = attempt.done[1].told
    assert told.alarm and "a short from rail to 0: F1 flashed up" in told.words
    assert attempt.state.place("F1").fitted.fault.condition == "blown"
    assert len(attempt.state.harm) == 1
    assert abs(attempt.done[-1].told.reading.value) < 0.1


@pytest.mark.behaviour
@pytest.mark.parametrize("title", DEMO)
def test_across_the_first_rail_of_every_set_something_gives_way_or_the_supply_holds(title):
    of = demo_set(title)
    attempt = after("plug in", f"amps {of.rails[0].point} 0", "wait 1 min", of=of)
    blown = attempt.state.place("F1").fitted.fault is not None
    assert blown and attempt.done[1].told.alarm


@pytest.mark.behaviour
def test_what_is_held_in_a_fuse_that_is_too_large_for_it_gets_hot():
    moves = ("volts C1", "take out F1 with vacuum", "fit F1 10 A", "plug in", "amps rail 0")
    attempt = after(*moves)
    assert attempt.state.place("F1").fitted.fault is None
    assert attempt.state.heat["V1"] > after(*moves[:-1], "wait 1 min").state.heat["V1"] + 10


@pytest.mark.behaviour
def test_the_fuse_beside_it_is_named_while_it_is_in():
    beside = after("plug in", "amps F1").done[-1].told
    assert "F1 is still in its place" in beside.words
    alone = after("plug in", "amps F1", faults="F1 blown").done[-1].told
    assert "still" not in alone.words and alone.reading.value > 1.3 * beside.reading.value
