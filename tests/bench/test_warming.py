"""How warm parts become: against the exponential, and the power that goes in against the heat."""

from __future__ import annotations

from dataclasses import replace
from math import exp

import numpy as np
import pytest

from repairlib.bench import Task, walked
from repairlib.bench.conditions import read_faults
from repairlib.bench.electric import circuit_of, electric
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import OWN_PLUG, Feed, begin
from repairlib.bench.warming import BOARD, HOTTEST, WARMEST, Way, warmed, watts, ways_of
from repairlib.circuits import heat_in


def plugged_in(title):
    return replace(begin(demo_set(title), (), "x"), feed=Feed(OWN_PLUG))


@pytest.mark.published("one heat resistance and one heat capacity, as in any textbook of heat")
@pytest.mark.parametrize("lags", [0.1, 1.0, 3.0])
def test_a_part_warms_and_cools_by_e_in_its_time(lags):
    way = Way(50.0, 30.0)
    assert way.after(0.0, 2.0, 30.0 * lags) == pytest.approx(100 * (1 - exp(-lags)))
    assert way.after(80.0, 0.0, 30.0 * lags) == pytest.approx(80 * exp(-lags))


@pytest.mark.published("one heat resistance and one heat capacity, as in any textbook of heat")
def test_many_short_times_are_one_long_one():
    ways, flows = ways_of(demo_set("desk radio")), {"U1": 1.5, "R2": 0.4}
    heat = {}
    for _ in range(24):
        heat = warmed(ways, heat, flows, 5.0)
    assert heat == pytest.approx(warmed(ways, {}, flows, 120.0), rel=1e-6)


@pytest.mark.from_memory("50 to 65 K/W of a regulator and a diode in free air, in data sheets")
def test_a_regulator_and_a_diode_without_a_heat_sink():
    ways = ways_of(demo_set("desk radio"))
    assert 50 < ways["U1"].ohm < 65 and 50 < ways["D1"].ohm < 65


@pytest.mark.published("conservation of energy")
@pytest.mark.parametrize("title", DEMO)
def test_what_goes_in_becomes_heat(title):
    state = plugged_in(title)
    now = electric(state)
    given = heat = 0.0
    for part in circuit_of(state):
        one, other = ((now.waves or now.mean)[node] for node in part.nodes)
        through = now.amps[part.name]
        if part.letter in "VP":
            given -= np.mean((one - other) * through)
        if part.letter != "P":
            heat += np.mean(heat_in(part, dict(now.waves or now.mean), through))
        if part.letter == "V":  # what it gives is counted behind its own resistance here
            heat -= np.mean(heat_in(part, dict(now.waves or now.mean), through))
    assert heat == pytest.approx(given, rel=0.01)


@pytest.mark.behaviour
@pytest.mark.parametrize("title", DEMO)
def test_a_sound_set_stays_as_warm_as_it_was_made_for(title):
    state = plugged_in(title)
    heat = warmed(ways_of(state.set), {}, watts(state), 1e6)
    assert 5 < heat[BOARD] <= WARMEST * 1.001
    assert max(heat.values()) <= (HOTTEST + WARMEST) * 1.001


@pytest.mark.common_practice
@pytest.mark.parametrize("title", ["desk radio", "keyboard", "printer controller"])
def test_behind_a_lamp_the_lamp_takes_the_heat(title):
    """For as long as anybody looks at it: the winding has its copper, the filament the rest."""
    of = demo_set(title)
    attempt = walked(
        Task(of, read_faults("C1 short", of), "demo"), ["plug in with lamp 25 W", "wait 20 min"]
    )
    assert not attempt.state.harm and watts(attempt.state)["V1"] < 5
