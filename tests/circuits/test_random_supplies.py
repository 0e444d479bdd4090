"""No supply that a bench may have is without an answer: drawn at random, whole and broken."""

import math
import os
from random import Random

import numpy as np
import pytest

from repairlib.circuits import FAULTS, one_cycle, operating_point, small_signals, transient
from repairlib.circuits.symptoms import small_supply
from tests.circuits.random_supplies import random_fault, random_supply

MANY = 5000 if os.environ.get("BENCH") == "all" else 25


def drawn(seed: int):
    random = Random(seed)
    parts = random_supply(random)
    assert len({part.name for part in parts}) == len(parts)
    return random_fault(random, parts) if seed % 10 else parts


@pytest.mark.behaviour
@pytest.mark.parametrize("seed", range(MANY))
def test_every_supply_has_an_answer(seed):
    parts = drawn(seed)
    point = operating_point(parts)
    assert all(map(math.isfinite, (*point.volts.values(), *point.amps.values())))
    sources = [part.name for part in parts if part.letter == "V"]
    for source in sources:
        for found in small_signals(parts, source, (50.0, 10e3)):
            assert all(map(math.isfinite, map(abs, found.values())))
    if sources:
        cycle = one_cycle(parts, steps=200)
        assert set(cycle.volts) == set(point.volts)
        assert all(np.isfinite(wave).all() for wave in cycle.volts.values())


@pytest.mark.common_practice
@pytest.mark.parametrize("seed", range(0, MANY, 5))
def test_currents_add_up_at_every_point(seed):
    """Kirchhoff's first law, and each straight part its own, at rest."""
    parts = drawn(seed)
    point = operating_point(parts)
    into = dict.fromkeys(point.volts, 0.0)
    for part in parts:
        one, other = part.nodes
        amps = point.amps[part.name]
        if part.letter == "R":
            across = point.volts[one] - point.volts[other]
            assert amps == pytest.approx(across / part.value, rel=1e-6, abs=1e-9)
        into[one] -= amps
        into[other if part.letter != "U" else "0"] += amps
        if part.letter == "U":  # its output, which the third leg does not carry
            given = amps - _own(part, point.volts[one])
            into[other] += given
            into["0"] -= given
    largest = max(map(abs, point.amps.values()))
    assert max(map(abs, into.values())) <= 1e-6 * largest + 1e-9


def _own(regulator, volts: float) -> float:
    return regulator.more["own"] * min(max(volts, 0.0), 1.0)


@pytest.mark.behaviour
@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_of_the_small_supply_has_an_answer(fault):
    """With the ESR left inside the capacitor."""
    cycle = one_cycle(FAULTS[fault](small_supply()), "rail", "out", steps=100)
    assert cycle.volts["out"].max() < cycle.volts["rail"].max() + 1e-6


@pytest.mark.common_practice
@pytest.mark.parametrize("seed", range(0, MANY, 5))
def test_a_settled_cycle_goes_on_as_it_is(seed):
    """Step by step from what is held at its end, the next cycle is the same."""
    parts = drawn(seed)
    if not any(part.letter == "V" for part in parts):
        pytest.skip("on a bench supply nothing cycles")
    cycle = one_cycle(parts, steps=200)
    seconds = float(cycle.seconds[-1])
    again = transient(parts, seconds, seconds / 200, charged=cycle.held)
    for point, wave in cycle.volts.items():
        assert again.volts[point][1:] == pytest.approx(wave, abs=1e-3 * (0.1 + np.ptp(wave)))
