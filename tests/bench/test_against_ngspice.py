"""The five sets against ngspice: sound and with each of their faults, and with a meter on them.

The circuit goes to ngspice part by part (spice_deck.py), and is solved there in time from empty, so
that nothing of our solution goes in. A meter is its 10 MΩ between two points; those runs go on from
where ngspice itself had come to. `BENCH=all` takes every fault of every set; `pytest -rA` prints
for each how many figures were compared and the worst.
"""

from __future__ import annotations

import os
from dataclasses import replace

import pytest

from repairlib.bench.conditions import read_faults
from repairlib.bench.electric import circuit_of, electric
from repairlib.bench.multimeter import INPUT_OHM
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import OWN_PLUG, Feed, begin
from repairlib.circuits import CircuitPart
from tests.bench.spice_deck import Deck

ALL = os.environ.get("BENCH") == "all"
SAMPLE = [("label maker", "J1 worn 4 Ω"), ("desk radio", "")]
EVERY = [
    (title, line)
    for title in DEMO
    for line in ("", *demo_set(title).faults, *demo_set(title).together)
]
WITHIN, LEAST = 0.01, 5e-4  # of what ngspice has, and V beside it
SETTLES = {"desk radio": 4.0, "keyboard": 12.0, "printer controller": 1.5}  # s from empty
DC_SETTLES, AFTER_THE_METER = 0.6, 0.2  # s
MAINS, PROBES = 50.0, 6


@pytest.mark.slow
@pytest.mark.parametrize(("title", "line"), EVERY if ALL else SAMPLE)
def test_a_board_and_a_meter_on_it(title, line, tmp_path):
    of = demo_set(title)
    faults = read_faults(line, of) if line else ()
    state = replace(begin(of, faults, "x"), feed=Feed(OWN_PLUG))
    ours, parts = electric(state), _without_ripple(circuit_of(state))
    step = 50e-6 if title not in SETTLES else 25e-6
    seconds = SETTLES.get(title, DC_SETTLES)
    if not ALL and title in SETTLES:
        step, seconds = 50e-6, 1.0  # the sound radio is there by then
    theirs = Deck(parts).in_time(tmp_path, MAINS, seconds, step)
    compared = []
    for point, wave in theirs.items():
        compared.append((point, ours.mean[point], wave.mean))
        if not of.ripple:
            compared.append((f"ripple {point}", ours.high[point] - ours.low[point], wave.ripple))
    held = _held(parts, theirs)
    if of.ripple:
        compared += _ripples(tmp_path, state, ours, held)
    for one, other in _probes(of):
        meter = (CircuitPart("R of the meter", (one, other), INPUT_OHM),)
        reading = electric(state, meter).between(one, other)
        deck = Deck((*parts, *meter), held)
        found = deck.in_time(tmp_path, MAINS, AFTER_THE_METER, step)
        compared.append((f"volts {one} {other}", reading, found[one].mean - found[other].mean))
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


def _held(parts, waves):
    return {
        part.name: waves[part.nodes[0]].last - waves[part.nodes[1]].last
        for part in parts
        if part.letter == "C"
    }


def _ripples(folder, state, ours, held):
    """The ripple of an adapter at each point, over a hundred of its cycles, in steps of 0.1 µs."""
    _, hertz = state.set.ripple
    waves = Deck(circuit_of(state), held, 1e-3).in_time(folder, hertz, 100 / hertz, 1e-7)
    return [
        (f"ripple {point}", ours.high[point] - ours.low[point], wave.ripple)
        for point, wave in waves.items()
    ]


def _probes(of):
    """Six places for the probes: the rails, then across parts from the first on."""
    rails = [(rail.point, "0") for rail in of.rails]
    across = [part.nodes for part in of.parts if part.circuit and not part.mains]
    return list(dict.fromkeys((*rails, *across)))[: max(PROBES, len(rails))]
