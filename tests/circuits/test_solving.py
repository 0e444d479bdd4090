"""repairlib.circuits at rest, for small signals and in time: by hand, and against a closed form."""

import math

import pytest

from repairlib.circuits import (
    BACKWARD_EULER,
    TRAPEZOIDAL,
    operating_point,
    read_circuit,
    small_signals,
    transient,
)
from repairlib.health import look_at, read_neighbourhood
from tests.circuits import ngspice

HEAD = "part,from,to,value,more\n"


def rest(lines):
    return operating_point(read_circuit(HEAD + lines))


@pytest.mark.common_practice
def test_a_bench_supply_holds_its_voltage_and_then_its_current():
    for ohm, volts, amps in ((100, 12, 0.12), (24, 12, 0.5), (10, 5, 0.5), (0.01, 0.005, 0.5)):
        point = rest(f"P1,a,0,12 V,limit 0.5 A\nR1,a,0,{ohm},")
        assert point.volts["a"] == pytest.approx(volts)
        assert -point.amps["P1"] == pytest.approx(amps)
    backwards = rest("P1,a,0,5 V,limit 1 A\nV1,a,0,12 V,1 Ω")
    assert backwards.amps["P1"] == pytest.approx(0, abs=1e-9)


@pytest.mark.common_practice
def test_a_lamp_is_cold_first_and_hot_at_its_rated_power():
    # 60 W at 24 V: 9.6 Ω hot. At 24 V it takes 2.5 A; at little voltage it is nearly cold.
    lamp = "H1,a,0,9.6 Ω,cold 0.8 Ω 60 W"
    assert rest(f"V1,a,0,24 V,\n{lamp}").amps["H1"] == pytest.approx(2.5)
    assert rest(f"V1,a,0,1 mV,\n{lamp}").amps["H1"] == pytest.approx(1.25e-3, rel=1e-3)
    series = rest("V1,a,0,24 V,\nH1,a,b,9.6 Ω,cold 0.8 Ω 60 W\nR1,b,0,10 mΩ,")
    assert series.amps["H1"] == pytest.approx(2.5, rel=0.01)  # a short behind it: it is hot


@pytest.mark.common_practice
def test_a_regulator_holds_until_it_drops_out():
    for volts, out in ((12, 5), (7.5, 5), (6.5, 4.5), (1.5, 0)):
        point = rest(f"V1,in,0,{volts} V,\nU1,in,out,5 V,dropout 2 V own 5 mA\nR1,out,0,50,")
        assert point.volts["out"] == pytest.approx(out, abs=1e-9)
        assert point.amps["U1"] == pytest.approx(out / 50 + 5e-3)


@pytest.mark.common_practice
def test_a_diode_keeps_its_law():
    # I = Is (exp(V / n Vt) - 1); n = 1, Vt = 25.865 mV at 27 °C.
    point = rest("V1,a,0,1 V,\nR1,a,b,1k,\nD1,b,0,1e-14 A,n 1")
    volts, amps = point.volts["b"], point.amps["D1"]
    assert amps == pytest.approx((1 - volts) / 1000, rel=1e-6)
    assert volts == pytest.approx(0.0258649 * math.log(amps / 1e-14 + 1), rel=1e-4)


# The reference is a program, ngspice.
def test_points_at_rest_against_ngspice(tmp_path):
    ours = rest(
        "V1,a,0,12 V,\nR1,a,b,470,\nD1,b,c,10 nA,n 1.8\nR2,c,0,1k,\nR3,b,0,2k2,\n"
        "D2,0,c,10 nA,n 1.8\nR4,a,d,10k,\nD3,d,0,10 nA,n 1.8"
    )
    said = ngspice.run(
        tmp_path,
        f"{ngspice.RECTIFIER}\nV1 a 0 12\nR1 a b 470\nD1 b c rect\nR2 c 0 1k\nR3 b 0 2200\n"
        "D2 0 c rect\nR4 a d 10k\nD3 d 0 rect\n.op\n.print op v(b) v(c) v(d)",
    )
    theirs = {}
    for line in said.splitlines():
        words = line.split()
        if len(words) == 2 and words[0] in "bcd":
            theirs[words[0]] = float(words[1])
    assert len(theirs) == 3, said
    for point, volts in theirs.items():
        assert ours.volts[point] == pytest.approx(volts, rel=1e-3)


@pytest.mark.common_practice
def test_small_signals_agree_with_the_meter_of_health():
    rows = "C1,a,0,220u,0.2\nL1,a,b,47u,0.08\nC2,b,0,220u,0.15\nR1,b,0,22,"
    parts = read_circuit(f"{HEAD}I1,0,a,1 A,\n{rows}")
    for hertz in (100.0, 10e3, 1e6):
        (found,) = small_signals(parts, "I1", [hertz])
        seen, _ = look_at(read_neighbourhood(HEAD + rows), "C1", hertz)
        assert found["a"] == pytest.approx(seen.z, rel=1e-9)


@pytest.mark.common_practice
def test_a_diode_is_its_slope_to_a_small_signal():
    parts = read_circuit(f"{HEAD}V1,a,0,10 V,\nR1,a,b,9.3k,\nD1,b,0,1e-14 A,n 1")
    (found,) = small_signals(parts, "V1", [1e3])
    slope = 0.0258649 / operating_point(parts).amps["D1"]
    assert found["b"].real == pytest.approx(slope / (9300 + slope), rel=1e-3)


@pytest.mark.common_practice
@pytest.mark.parametrize(("method", "order"), [(TRAPEZOIDAL, 2), (BACKWARD_EULER, 1)])
def test_error_falls_with_the_step_and_is_stated(method, order):
    """A tank of L, C and R against its closed form: the order of the method, and the error told."""
    parts = read_circuit(f"{HEAD}C1,a,0,100u,\nL1,a,b,10m,\nR1,b,0,2,")
    damping, omega = 2 / (2 * 10e-3), math.sqrt(1 / (10e-3 * 100e-6) - 100**2)

    def exact(t):
        return 10 * math.exp(-damping * t) * (
            math.cos(omega * t) + damping / omega * math.sin(omega * t)
        )  # fmt: skip

    misses = []
    for step in (4e-5, 2e-5, 1e-5):
        run = transient(parts, 20e-3, step, method, charged={"C1": 10})
        miss = max(
            abs(volts - exact(t)) for t, volts in zip(run.seconds, run.volts["a"], strict=True)
        )
        assert miss <= run.error
        misses.append(miss)
    assert math.log2(misses[1] / misses[2]) == pytest.approx(order, abs=0.25)


@pytest.mark.published("a converter's data sheet on output capacitors: ESR adds Ipp × ESR")
def test_what_esr_adds_at_once():
    # 2 A through 50 mΩ: 0.10 V, before the capacitance has moved.
    parts = read_circuit(f"{HEAD}I1,0,a,2 A,\nC1,a,0,10 mF,50 mΩ\nR1,a,0,1M,")
    assert transient(parts, 1e-6, 1e-7).volts["a"][0] == pytest.approx(0.10, rel=1e-3)


@pytest.mark.common_practice
def test_a_rail_discharges_by_its_load():
    # 12 V, 100 mA from 1000 µF: 1 V in 10 ms.
    parts = read_circuit(f"{HEAD}C1,a,0,1000u,\nI1,a,0,100 mA,load\nR1,a,0,10M,")
    run = transient(parts, 10e-3, 1e-4, charged={"c1": 12})
    assert run.volts["a"][0] == pytest.approx(12, rel=1e-5)
    assert run.volts["a"][-1] == pytest.approx(11, rel=1e-4)
