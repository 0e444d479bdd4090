"""With the power on a board goes on from the charge there was."""

from __future__ import annotations

from dataclasses import replace
from math import exp

import pytest

from repairlib.bench import Task, begin, demo_set, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.electric import circuit_of, come_up, electric
from repairlib.bench.over_time import CYCLE_STEPS, after_cycles, after_runs
from repairlib.bench.state import OWN_PLUG, SUPPLY, Feed
from repairlib.circuits import CircuitPart, Stepper

PLUG, KEYBOARD = Feed(OWN_PLUG), demo_set("keyboard")
IDLE = "U1 open; U2 open; R1 open"  # of the keyboard: nothing is left that empties its reservoir


def fed(title, faults="", feed=PLUG):
    of = demo_set(title)
    return replace(begin(of, read_faults(faults, of) if faults else (), "x"), feed=feed)


@pytest.mark.published("the same circuit, each of its cycles worked out one after the other")
@pytest.mark.parametrize(("title", "faults"), [("keyboard", ""), ("keyboard", IDLE)])
@pytest.mark.parametrize("begun", [0.0, 25.0])
def test_leaps_over_cycles_come_to_what_the_cycles_come_to(title, faults, begun):
    parts, cycles = circuit_of(fed(title, faults)), 24
    held = {part.name: begun * (part.name == "C1") for part in parts if part.letter == "C"}
    stepper = Stepper(parts, 0.02 / CYCLE_STEPS, charged=held)
    for _ in range(cycles):
        stepper.begin(stepper.held())
        stepper.advance(CYCLE_STEPS)
    plain, found = stepper.kept(), after_cycles(parts, held, cycles * 0.02)
    assert found == pytest.approx({name: plain[name] for name in held}, rel=0.01, abs=0.05)


@pytest.mark.published("V = V0 e^(-t/RC), as in any textbook of circuits")
def test_runs_and_the_exponential():
    parts = (CircuitPart("C1", ("a", "0"), 1e-3, {"esr": 0.0}), CircuitPart("R1", ("a", "0"), 1e3))
    assert after_runs(parts, {"C1": 8.0}, 2.5)["C1"] == pytest.approx(8 * exp(-2.5), rel=0.005)


@pytest.mark.published("I = C dV/dt, as in any textbook of circuits")
@pytest.mark.parametrize("seconds", [0.25, 0.5, 1.0])
def test_a_supply_at_its_limit_brings_a_reservoir_up_in_a_line(seconds):
    empty = fed("keyboard", IDLE, Feed(SUPPLY, 16.0, 20e-3))
    state = come_up(replace(empty, charges={"C1": 0.0}), seconds)
    assert state.charges["C1"] == pytest.approx(20e-3 * seconds / 2200e-6, rel=0.01)
    assert electric(state).mean["rail"] == pytest.approx(state.charges["C1"], rel=0.01)
    assert not come_up(state, 60.0).charges


@pytest.mark.behaviour
def test_a_rail_without_load_neither_follows_a_lower_line_nor_rises_without_power():
    of = demo_set("keyboard")
    moves = ("line high", "plug in", "volts rail 0", "line low", "volts rail 0", "unplug")
    attempt = walked(Task(of, read_faults(IDLE, of), "demo"), [*moves, "volts rail 0"])
    read = [one.told.reading.value for one in attempt.done if one.told.reading]
    assert read[0] == pytest.approx(read[1], rel=0.005) and read[2] <= read[1] * 1.001


@pytest.mark.behaviour
def test_a_rail_with_its_load_follows_the_line_at_once():
    moves = ("line high", "plug in", "line low", "volts rail 0")
    task = Task(demo_set("desk radio"), (), "demo")
    fresh = walked(task, ["line low", "plug in", "volts rail 0"]).done[-1].told.reading.value
    assert walked(task, moves).done[-1].told.reading.value == pytest.approx(fresh, rel=0.003)


@pytest.mark.behaviour
def test_a_reservoir_far_too_large_takes_its_time():
    state = fed("desk radio")
    state = state.with_place("C1", fitted=replace(state.place("C1").fitted, value=100.0))
    first = come_up(replace(state, charges={"C1": 0.0}), 10.0)
    then = come_up(first, 600.0)
    assert 0 < first.charges["C1"] < 1.5 and first.charges["C1"] < then.charges["C1"] < 14


@pytest.mark.behaviour
@pytest.mark.parametrize("faults", ["", "C1 open", "C1 gone; C5 leaks 15 kΩ"])
def test_at_last_all_have_come_to_the_end_that_the_settled_circuit_has(faults):
    """Also where steps as long as those of a leap would end somewhere else."""
    broken = read_faults(faults, KEYBOARD) if faults else ()
    attempt = walked(Task(KEYBOARD, broken, "demo"), ["plug in with lamp", "wait 2 min"])
    assert attempt.state.charges == {}


@pytest.mark.behaviour
def test_what_is_late_goes_on_and_the_rest_stays_at_its_end():
    """The reset's capacitors take seconds; the reservoir was there long before."""
    settled = electric(fed("keyboard")).held
    late = come_up(replace(fed("keyboard"), charges=dict.fromkeys(settled, 0.0)), 0.5)
    assert {"C5", "C6"} == set(late.charges)
    after = come_up(late, 0.02)
    assert late.charges["C5"] < after.charges["C5"] < settled["C5"]
    assert electric(after).mean["rail"] == pytest.approx(
        electric(fed("keyboard")).mean["rail"], rel=0.005
    )


@pytest.mark.behaviour
def test_what_follows_within_a_cycle_is_never_late():
    """Without a reservoir the 3.3 V swing to 0 in each cycle: held there they would be a short."""
    printer = demo_set("printer controller")
    moves = ["plug in", "line low", "line usual", "wait 1 min"]
    attempt = walked(Task(printer, read_faults("C1 open", printer), "demo"), moves)
    assert attempt.state.charges == {} and not any(done.told.alarm for done in attempt.done)
