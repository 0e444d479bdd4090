"""No supply that a bench may have is without an answer: drawn at random, whole and broken."""

import math
import os
from random import Random

import pytest

from repairlib.circuits import FAULTS, one_cycle, operating_point, small_signals
from repairlib.circuits.symptoms import small_supply
from tests.circuits.random_supplies import random_fault, random_supply

MANY = 5000 if os.environ.get("BENCH") == "all" else 40


def drawn(seed: int):
    random = Random(seed)
    parts = random_supply(random)
    return random_fault(random, parts) if seed % 10 else parts


@pytest.mark.behaviour
@pytest.mark.parametrize("seed", range(MANY))
def test_every_supply_comes_to_rest(seed):
    parts = drawn(seed)
    point = operating_point(parts)
    assert all(map(math.isfinite, (*point.volts.values(), *point.amps.values())))
    for source in [part.name for part in parts if part.letter == "V"]:
        for found in small_signals(parts, source, (50.0, 10e3)):
            assert all(map(math.isfinite, map(abs, found.values())))


@pytest.mark.behaviour
@pytest.mark.parametrize("fault", FAULTS)
def test_every_fault_of_the_small_supply_has_an_answer(fault):
    """With the ESR left inside the capacitor."""
    cycle = one_cycle(FAULTS[fault](small_supply()), "rail", "out", steps=100)
    assert cycle.volts["out"].max() < cycle.volts["rail"].max() + 1e-6
