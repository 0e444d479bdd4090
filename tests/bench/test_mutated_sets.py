"""Whatever an instructor types: a set, a fault, or one clear line; never a traceback."""

import os
from math import isfinite
from random import Random

import pytest

from repairlib.bench import read_faults, read_set
from repairlib.bench.electric import electric
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import OWN_PLUG, Feed, State, begin
from repairlib.core.errors import RepairlibError
from tests.bench.mutated import mutated

MANY = 20_000 if os.environ.get("BENCH") == "all" else 120
SOLVED = 25  # of so many that can be read one is worked out
pytestmark = pytest.mark.behaviour


def _one_line(problem: RepairlibError) -> None:
    said = str(problem)
    assert "\n" not in said and problem.wrong and problem.accepted
    assert len(said) < 900


def _worked_out(state: State) -> None:
    try:
        now = electric(state)
    except RepairlibError as problem:
        _one_line(problem)
        return
    assert all(map(isfinite, [*now.mean.values(), *now.low.values(), *now.high.values()]))


def test_a_mutated_set_is_a_set_or_one_line():
    random, read = Random(140), 0
    for turn in range(MANY):
        text = mutated(demo_set(DEMO[turn % len(DEMO)]).text, random)
        try:
            of = read_set(text)
        except RepairlibError as problem:
            _one_line(problem)
            continue
        read += 1
        if read % SOLVED == 0:
            bare = begin(of, (), "")
            _worked_out(State(of, "", bare.places, Feed(OWN_PLUG), charges={}, heat={}))
    assert MANY / 20 < read < MANY  # both ends were met


def test_a_mutated_fault_is_a_fault_or_one_line():
    random, read = Random(141), 0
    for turn in range(MANY):
        of = demo_set(DEMO[turn % len(DEMO)])
        lines = (*of.faults, *of.together)
        text = mutated(random.choice(lines), random)
        try:
            faults = read_faults(text, of)
        except RepairlibError as problem:
            _one_line(problem)
            continue
        read += 1
        assert read_faults("; ".join(map(str, faults)), of) == faults
        if read % SOLVED == 0:
            state = begin(of, faults, "")
            _worked_out(State(of, "", state.places, Feed(OWN_PLUG), charges={}, heat={}))
    assert MANY / 20 < read < MANY
