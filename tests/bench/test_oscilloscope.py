"""The oscilloscope: eight bits, the ripple of a rail, its steps per division."""

import pytest

from repairlib.bench.moves import Trace
from repairlib.bench.multimeter import ac_volts, volts
from repairlib.bench.oscilloscope import AC, HIGH, LEVELS, PER_DIVISION, WIDE, scope
from repairlib.core.errors import RepairlibError
from tests.bench.small_boards import board
from tests.circuits import ngspice

FEED = "V1, in, 0, 9 V rms, 50 Hz 0.5 Ω"
HALF_WAVE = ("D1, in, rail, 10 nA, n 1.8", "C1, rail, 0, 1000 µF, ESR 50 mΩ", "R1, rail, 0, 100 Ω")


@pytest.mark.common_practice
def test_a_sine_is_two_roots_of_two_peak_to_peak():
    # By hand: 10 V r.m.s. are 28.28 V peak to peak.
    sine = board("R1, in, 0, 1 kΩ", feed="V1, in, 0, 10 V rms, 50 Hz 0.1 Ω", on=True)
    reading = scope(sine, "in")
    assert reading.value == pytest.approx(28.28, abs=reading.error)
    assert reading.trace.hertz == 50 and abs(reading.trace.mean) < 0.01
    assert reading.trace.per_division == 5.0, "±14.1 V need four divisions of 5 V up and down"


def test_a_trace_is_what_eight_bits_and_ten_divisions_hold():
    trace = scope(board(*HALF_WAVE, feed=FEED, on=True), "rail").trace
    assert isinstance(trace, Trace) and len(trace.levels) == 400
    assert all(isinstance(one, int) and 0 <= one < LEVELS for one in trace.levels)
    per_cycle = len(trace.levels) / (trace.sweep * WIDE) / 50
    first = trace.levels[: round(per_cycle)]
    second = trace.levels[round(per_cycle) : 2 * round(per_cycle)]
    assert max(abs(a - b) for a, b in zip(first, second, strict=True)) <= 3, "cycle by cycle alike"


def test_the_ripple_of_a_rail_as_ngspice_has_it(tmp_path):
    state = board(*HALF_WAVE, feed=FEED, on=True)
    circuit = """V1 s 0 sin(0 12.7279 50)
R9 s in 0.5
D1 in rail rect
C1 rail x 1000u
R8 x 0 0.05
R1 rail 0 100
"""
    peak, valley, mean = ngspice.settled(tmp_path, circuit, 50, "rail", 1.0, 20e-6)
    coupled = scope(state, "rail", "0", AC)
    assert coupled.value == pytest.approx(peak - valley, abs=coupled.error)
    assert coupled.trace.hertz == 50
    direct = scope(state, "rail")
    assert direct.trace.mean == pytest.approx(mean, rel=0.01)
    assert direct.error > 4 * coupled.error, "dc coupling spends its levels on the dc"
    meter = volts(state, "rail", "0")
    assert meter.value == pytest.approx(mean, abs=meter.error + 0.01 * mean)
    assert ac_volts(state, "rail", "0").value < coupled.value / 2


def test_a_rail_at_rest_is_a_flat_line():
    reading = scope(board("R1, in, 0, 1 kΩ", on=True), "in")
    assert reading.trace.hertz == 0
    assert max(reading.trace.levels) - min(reading.trace.levels) <= 2
    height = (reading.trace.levels[0] - reading.trace.zero) * reading.trace.per_division
    assert height * HIGH / LEVELS == pytest.approx(9.0, rel=0.03)


def test_its_own_time_base_shows_two_cycles():
    quick = board("R1, in, 0, 1 kΩ", feed="V1, in, 0, 10 V rms, 1 kHz 0.1 Ω", on=True)
    trace = scope(quick, "in").trace
    assert trace.sweep == 2e-4 and trace.hertz == pytest.approx(1000, rel=0.02)
    small = board("V2, a, in, 20 mV rms, 50 Hz 0.1 Ω", "R1, a, 0, 1 kΩ", on=True)
    assert "coupled for ac" in scope(small, "a").note and not scope(small, "a", "0", AC).note


def test_steps_typed_by_hand():
    state = board("R1, in, 0, 1 kΩ", on=True)
    coarse = scope(state, "in", per_division=20.0, sweep=1e-3)
    assert (coarse.trace.per_division, coarse.trace.sweep) == (20.0, 1e-3)
    off = scope(state, "in", per_division=0.5)
    assert off.shown == "off the screen" and off.value is None and off.trace.levels[0] == LEVELS - 1
    for wrong in ({"per_division": 3.0}, {"sweep": 0.7}, {"coupling": "gnd"}):
        with pytest.raises(RepairlibError):
            scope(state, "in", **wrong)
    assert PER_DIVISION[0] == 0.01 and PER_DIVISION[-1] == 200.0
