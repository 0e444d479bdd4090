"""The five sets against ngspice: sound and with each of their faults, and with a meter on them.

The circuit goes to ngspice part by part (spice_deck.py), and is solved there in time from empty
until it has settled (spice_settled.py), so that nothing of our solution goes in. A meter is its
10 MΩ between two points. `BENCH=all` takes every fault of every set; `pytest -rA` prints for each
how many figures were compared and the worst.
"""

from __future__ import annotations

import os
from dataclasses import replace

import pytest

from repairlib.bench.conditions import read_faults
from repairlib.bench.electric import FINE_STEPS, circuit_of, electric
from repairlib.bench.multimeter import INPUT_OHM
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import OWN_PLUG, Feed, begin
from repairlib.circuits import CircuitPart
from tests.bench.spice_deck import Deck
from tests.bench.spice_settled import settled

ALL = os.environ.get("BENCH") == "all"
SAMPLE = [("label maker", "J1 worn 4 Ω"), ("desk radio", "")]
EVERY = [
    (title, line)
    for title in DEMO
    for line in ("", *demo_set(title).faults, *demo_set(title).together)
]
WITHIN = 0.01  # of what ngspice has
LEAST = 1e-4  # V beside it: the last digit of the meter in its lowest range
MAINS, PROBES = 50.0, 6


@pytest.mark.slow
@pytest.mark.parametrize(("title", "line"), EVERY if ALL else SAMPLE)
def test_a_board_and_a_meter_on_it(title, line, tmp_path):
    of = demo_set(title)
    faults = read_faults(line, of) if line else ()
    state = replace(begin(of, faults, "x"), feed=Feed(OWN_PLUG))
    ours, parts = electric(state, steps=FINE_STEPS), _without_ripple(circuit_of(state))
    probes = _probes(of)
    told = settled(tmp_path, parts, of.inlet, MAINS, INPUT_OHM, probes)
    compared = [(point, ours.mean[point], wave.mean) for point, wave in told.waves.items()]
    if of.ripple:
        compared += _ripples(tmp_path, state, ours, told.held)
    else:
        compared += [
            (f"ripple {point}", ours.high[point] - ours.low[point], wave.ripple)
            for point, wave in told.waves.items()
        ]
    for (one, other), reading in zip(probes, told.readings, strict=True):
        meter = (CircuitPart("R of the meter", (one, other), INPUT_OHM),)
        compared.append(
            (f"volts {one} {other}", electric(state, meter).between(one, other), reading)
        )
    worst = max(compared, key=_off)
    print(
        f"NGSPICE {title} | {line} | {len(compared)} compared, worst {_off(worst):.4f} at {worst}"
    )
    assert _off(worst) <= WITHIN, (worst, sorted(compared, key=_off)[-5:])


def _off(row):
    """How far ours is off theirs, beyond LEAST, as a share of theirs."""
    _, ours, theirs = row
    return max(abs(ours - theirs) - LEAST, 0.0) / max(abs(theirs), LEAST)


def _without_ripple(parts):
    """The small sine on an adapter's dc stands still while the dc comes up."""
    fast = (part for part in parts if part.more.get("mains", 0.0) > 1e3)
    still = {part.name: replace(part, value=1e-9) for part in fast}
    return tuple(still.get(part.name, part) for part in parts)


def _ripples(folder, state, ours, held):
    """The ripple of an adapter at each point, over a hundred of its cycles, in steps of 0.1 µs."""
    _, hertz = state.set.ripple
    waves = Deck(circuit_of(state), held, 1e-3).in_time(folder, hertz, 100 / hertz, 1e-7).waves
    return [
        (f"ripple {point}", ours.high[point] - ours.low[point], wave.ripple)
        for point, wave in waves.items()
    ]


def _probes(of):
    """Six places for the probes: the rails, then across parts from the first on."""
    rails = [(rail.point, "0") for rail in of.rails]
    across = [part.nodes for part in of.parts if part.circuit and not part.mains]
    return list(dict.fromkeys((*rails, *across)))[: max(PROBES, len(rails))]
