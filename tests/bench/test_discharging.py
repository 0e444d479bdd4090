"""What capacitors hold after a time without power, against the exponential."""

from dataclasses import replace
from math import exp

import pytest

from repairlib.bench import Task, begin, demo_set, read_fault, walked
from repairlib.bench.discharging import left_after
from repairlib.circuits import CircuitPart
from tests.bench.own_board import BOARD


def charged(*faults, **volts):
    faults = tuple(read_fault(one, BOARD) for one in faults)
    return replace(begin(BOARD, faults, "demo"), charges=volts)


@pytest.mark.published("V = V0 · e^(−t/RC), as in any textbook of circuits")
@pytest.mark.parametrize("seconds", [0.5, 2.0, 5.0, 20.0])
def test_a_lone_capacitor_empties_through_its_bleeder_by_the_exponential(seconds):
    state = charged("U1 open", C1=12.0)
    farad, ohm = BOARD.part("C1").circuit.value, BOARD.part("R1").circuit.value
    held = left_after(state, seconds).get("C1", 0.0)
    assert held == pytest.approx(12.0 * exp(-seconds / (farad * ohm)), rel=0.005, abs=2e-3)


@pytest.mark.behaviour
def test_a_resistor_held_on_empties_it_sooner_and_waiting_twice_is_waiting_once():
    state = charged("U1 open", C1=12.0)
    resistor = CircuitPart("R held on", ("rail", "0"), 100.0)
    assert left_after(state, 0.5, (resistor,))["C1"] < left_after(state, 0.5)["C1"] / 3
    halfway = replace(state, charges=left_after(state, 2.0))
    assert left_after(halfway, 2.0)["C1"] == pytest.approx(left_after(state, 4.0)["C1"], rel=0.005)


@pytest.mark.behaviour
def test_nothing_rings_on_after_the_power_is_gone():
    of = demo_set("network switch")
    attempt = walked(Task(of, (read_fault("C2 gone", of),), "demo"), ["plug in", "unplug"])
    assert all(abs(volts) < 5e-3 for volts in attempt.state.charges.values())
