"""Ohms, diode test and ESR on the demo sets and their faults, as ngspice works them out.

A few of them; all with BENCH=all.
"""

import os

import pytest

from repairlib.bench import multimeter
from repairlib.bench.conditions import read_fault
from repairlib.bench.esr_tester import esr
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.resting import resting
from repairlib.bench.state import begin
from repairlib.bench.where import on_mains_side
from repairlib.circuits import CircuitPart
from tests.bench.resting_deck import ohms_between, volts_between

CASES = [(title, fault) for title in DEMO for fault in ("", *demo_set(title).faults)]
SAMPLE = CASES if os.environ.get("BENCH") == "all" else CASES[3::40]
RED = "red"


@pytest.mark.parametrize(("title", "fault"), SAMPLE)
def test_readings_of_a_dead_board(tmp_path, title, fault):
    made = demo_set(title)
    state = begin(made, (read_fault(fault, made),) if fault else (), "1")
    for part in _probed(made):
        one, other = part.nodes
        _check_meter(tmp_path, state, one, other)
        z = ohms_between(tmp_path, resting(state), one, other, 100e3)
        reading = esr(state, one, other)
        if reading.value is None:
            assert z > 99
        else:
            assert reading.value == pytest.approx(z, abs=reading.error + 0.005 * z)


def _probed(made):
    parts = [
        p for p in made.parts if p.circuit and not any(on_mains_side(made, n) for n in p.nodes)
    ]
    return parts if os.environ.get("BENCH") == "all" else parts[1::4]


def _check_meter(tmp_path, state, one, other):
    reading = multimeter.ohms(state, one, other)
    if reading.note.startswith("still"):
        return
    span = next((s for s in multimeter.OHMS if s.said == reading.range), multimeter.OHMS[-1])
    known = span.full * 2 / 3
    across = _with_source(tmp_path, state, one, other, 0.5, known)
    ohm = known * across / max(0.5 - across, 1e-12)
    if reading.value is None:
        assert ohm > 0.99 * span.full
    else:
        assert reading.value == pytest.approx(ohm, abs=reading.error + 0.01 * ohm)
    tested = multimeter.diode(state, one, other)
    volts = _with_source(tmp_path, state, one, other, 3.0, 2400.0)
    if tested.value is None:
        assert volts > 1.98
    elif not tested.note.startswith("still"):
        assert tested.value == pytest.approx(volts, abs=tested.error + 0.01 * volts + 3e-3)


def _with_source(tmp_path, state, one, other, volts, ohm) -> float:
    """What stands across the probes, the leads of 0.2 Ω with them."""
    more = {"mains": 0.0, "series": ohm}
    source = CircuitPart("V of the check", (RED, other), volts, more)
    leads = CircuitPart("R of the check", (RED, one), 0.2)
    return volts_between(tmp_path, (*resting(state, (leads,)), source), RED, other)
