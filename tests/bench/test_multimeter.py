"""The multimeter: its load, its ranges and errors, what ohms make of capacitors and junctions."""

import re
from dataclasses import replace
from math import log

import pytest

from repairlib.bench import begin, demo_set, multimeter, read_faults
from repairlib.bench.counts import DASHES
from repairlib.bench.state import OWN_PLUG, Feed
from tests.bench.small_boards import board
from tests.circuits import ngspice

HIGH = ("R1, in, out, 1 MΩ", "R2, out, 0, 1 MΩ")
DIODE = "D1, a, b, 10 nA, n 1.8"


def test_a_reading_is_within_its_stated_error_for_every_seed():
    seen = {
        multimeter.volts(board(*HIGH, on=True, seed=str(n)), "in", "0").value for n in range(40)
    }
    assert len(seen) > 3
    for value in seen:
        assert abs(value - 9) <= 0.005 * 9 + 2.5 * 0.001 * 10


@pytest.mark.common_practice
def test_ten_megohm_load_a_high_divider():
    # By hand: 10 MΩ beside 1 MΩ is 909.1 kΩ, so 9 V × 909.1 / 1909.1 = 4.286 V, not 4.5 V.
    reading = multimeter.volts(board(*HIGH, on=True), "out", "0")
    assert reading.value == pytest.approx(4.286, abs=reading.error)
    assert abs(reading.value - 4.5) > 5 * reading.error


@pytest.mark.common_practice
def test_true_rms_and_average_agree_on_a_sine_and_part_on_half_a_sine():
    sine = board("R1, in, 0, 1 kΩ", feed="V1, in, 0, 10 V rms, 50 Hz 0.1 Ω", on=True)
    for true_rms in (True, False):
        reading = multimeter.ac_volts(sine, "in", "0", true_rms)
        assert reading.value == pytest.approx(10.0, abs=reading.error + 0.01)
    # By hand, of half a sine of peak p without its mean: r.m.s. p √(1/4 - 1/π²) = 0.3856 p; the
    # mean of what is left, rectified, is twice what lies below: p (1/π)(1 + 2 (θ/π - 1 + cos θ))
    # with sin θ = 1/π, 0.3508 p, times 1.1107.
    half = board(
        "D1, in, out, 1 pA, n 0.5", "R1, out, 0, 10 kΩ", feed="V1, in, 0, 100 V rms, 50 Hz 0.1 Ω",
        on=True,
    )  # fmt: skip
    peak = 141.42 - 0.3
    true, mean = (multimeter.ac_volts(half, "out", "0", way) for way in (True, False))
    assert true.value == pytest.approx(0.3856 * peak, rel=0.015)
    assert mean.value == pytest.approx(0.3508 * peak * 1.1107, rel=0.015)
    assert true.shown != mean.shown


@pytest.mark.published(
    "GVDA Instrument, Introduction to digital multimeter accuracy: leads add 0.2 to 0.5 Ω"
)
def test_leads_are_in_a_low_reading():
    reading = multimeter.ohms(board("R1, a, 0, 1 Ω"), "a", "0")
    assert 1.2 - reading.error <= reading.value <= 1.5 + reading.error


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("parts", "ohm"),
    [
        (("R1, a, 0, 1 kΩ", "R2, a, 0, 1 kΩ"), 500),
        (("R1, a, 0, 10 kΩ", "R2, a, b, 5 kΩ", "R3, b, 0, 5 kΩ"), 5000),
        (("R1, a, 0, 4.7 MΩ",), 4.7e6),
        (("L1, a, 0, 10 mH, winding 33 Ω",), 33),
    ],
)
def test_ohms_see_all_that_lies_in_parallel(parts, ohm):
    reading = multimeter.ohms(board(*parts), "a", "0")
    assert reading.value - 0.2 == pytest.approx(ohm, abs=reading.error + 0.005 * ohm)


@pytest.mark.common_practice
def test_a_junction_conducts_on_the_diode_test_and_hardly_on_ohms():
    one = board(DIODE, "R1, b, 0, 1 MΩ")
    forward, back = multimeter.diode(one, "a", "b"), multimeter.diode(one, "b", "a")
    # By hand: n Vt ln(I / Is) = 1.8 × 25.86 mV × ln((3 - 0.54) V / 2.4 kΩ / 10 nA) = 0.537 V.
    assert forward.value == pytest.approx(0.537, abs=0.01)
    assert back.shown == "OL"
    # In parallel to 220 Ω the same diode takes less than the error of ohms.
    beside = multimeter.ohms(board(DIODE, "R2, a, b, 220 Ω"), "a", "b")
    assert beside.value == pytest.approx(220.2, abs=beside.error)


def test_what_is_open_reads_ol():
    assert multimeter.ohms(board("R1, a, 0, 1 kΩ", "R2, b, 0, 1 kΩ"), "in", "a").value is None
    short = multimeter.ohms(board("R1, a, 0, 1 mΩ"), "a", "0")
    assert short.shown.startswith("0.") and short.seconds == 0


CAPACITOR = ("R1, a, 0, 2.2 kΩ", "C1, a, 0, 2200 µF, ESR 40 mΩ")


@pytest.mark.common_practice
def test_a_capacitor_charges_before_ohms_settle():
    # By hand, 6 kΩ range: known resistor 4 kΩ, τ = (2.2 kΩ ∥ 4 kΩ) 2200 µF = 3.12 s, and
    # ln(1 / 0.005) of them until half a per cent is missing: 16.5 s.
    reading = multimeter.ohms(board(*CAPACITOR), "a", "0")
    assert reading.value == pytest.approx(2200, rel=0.02)
    assert reading.seconds == pytest.approx(2200 * 4000 / 6200 * 2200e-6 * log(200), rel=0.03)
    assert reading.note == f"settled after {reading.seconds:.0f} s"
    long = multimeter.ohms(board("R1, a, 0, 47 kΩ", "C1, a, 0, 4700 µF, ESR 40 mΩ"), "a", "0")
    assert long.note == "still moving after a minute" and long.seconds == 60


def test_ohms_settle_as_they_do_in_ngspice(tmp_path):
    # Two capacitors and a junction between the probes, on the 6 kΩ range: 0.5 V behind 4 kΩ.
    state = board(
        "R1, a, 0, 3.3 kΩ", "C1, a, 0, 1000 µF, ESR 50 mΩ", "R2, a, b, 1 kΩ",
        "C2, b, 0, 470 µF, ESR 0.2 Ω", "D1, b, 0, 10 nA, n 1.8",
    )  # fmt: skip
    reading = multimeter.ohms(state, "a", "0")
    said = ngspice.run(
        tmp_path,
        f"""{ngspice.RECTIFIER}
V1 o 0 0.5
R9 o p 4k
R8 p a 0.2
R1 a 0 3.3k
R11 a c 0.05
C1 c 0 1000u ic=0
R2 a b 1k
R12 b d 0.2
C2 d 0 470u ic=0
D1 b 0 rect
.tran 5m 100 0 5m uic
.meas tran last find v(p) at=100
.meas tran near when v(p)={reading_volts(reading.value) * 0.995:.6g}
""",
    )
    last, near = (
        float(re.search(rf"^{name}\s*=\s*(\S+)", said, re.M)[1]) for name in ("last", "near")
    )
    assert reading.value == pytest.approx(4000 * last / (0.5 - last), rel=0.01)
    assert reading.seconds == pytest.approx(near, rel=0.2)


def reading_volts(ohm: float) -> float:
    """The volts across the probes at that reading on the 6 kΩ range."""
    return 0.5 * ohm / (4000 + ohm)


def test_on_a_charged_circuit_ohms_lie_and_at_high_volts_the_meter_dies():
    sound = multimeter.ohms(board(*CAPACITOR), "a", "0")
    charged = multimeter.ohms(board(*CAPACITOR, charges={"C1": 5.0}), "a", "0")
    assert charged.value != sound.value or charged.seconds > sound.seconds
    against = multimeter.ohms(board("C1, a, 0, 2200 µF, ESR 40 mΩ", charges={"C1": 5.0}), "0", "a")
    assert against.value is None or abs(against.value) != pytest.approx(sound.value, rel=0.5)
    dead = multimeter.ohms(board(*CAPACITOR, charges={"C1": 320.0}), "a", "0")
    assert dead.harm and dead.hurts and dead.shown == DASHES


def test_on_a_live_circuit_ohms_lie():
    live = board("R1, in, out, 1 kΩ", "R2, out, 0, 10 Ω", on=True)
    dead = board("R1, in, out, 1 kΩ", "R2, out, 0, 10 Ω")
    assert multimeter.ohms(dead, "out", "0").value == pytest.approx(10.2, abs=0.5)
    lied = multimeter.ohms(live, "out", "0")
    assert lied.value is None or lied.value > 500


@pytest.mark.common_practice
def test_amps_in_series_and_across():
    # By hand: 9 V through 100 Ω and the meter's 0.03 Ω are 90 mA.
    series = board("R1, out, 0, 100 Ω", on=True)
    reading = multimeter.amps(series, "in", "out")
    assert reading.value == pytest.approx(9 / 100.03, abs=reading.error)
    across = multimeter.amps(board("R1, in, 0, 100 Ω", on=True), "in", "0")
    assert across.value == pytest.approx(1.0, abs=across.error), "the adapter gives 1 A at most"
    ac = board("R1, out, 0, 1 kΩ", feed="V1, in, 0, 10 V rms, 50 Hz 0.1 Ω", on=True)
    through = multimeter.amps(ac, "in", "out")
    assert through.value == pytest.approx(0.01, abs=through.error), "10 V over 1 kΩ, r.m.s."
    strong = board("R1, in, 0, 1 kΩ", feed="V1, in, 0, 12 V, series 0.1 Ω", on=True)
    assert "fuse" in multimeter.amps(strong, "in", "0").harm


@pytest.mark.common_practice
def test_a_meter_across_a_regulator_reads_what_lies_between_its_ends():
    """Also where nothing loads it: its own divider swallows the microamperes."""
    keyboard = demo_set("keyboard")
    broken = begin(keyboard, read_faults("J1 open", keyboard), "demo")
    state = replace(broken, feed=Feed(OWN_PLUG))
    ends = multimeter.volts(state, "rail", "0").value - multimeter.volts(state, "reg9", "0").value
    assert (
        multimeter.volts(state, "rail", "reg9").value == pytest.approx(ends, rel=0.02) and ends > 4
    )
