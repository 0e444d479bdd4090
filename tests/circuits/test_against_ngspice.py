"""repairlib.circuits against ngspice: twelve supplies as they should be, twelve with a fault.

And the examples of the docstrings, whose figures are those of ngspice.

The circuits of ngspice are typed by hand, with its own diode, not made from our tables.
"""

import pytest

from repairlib.circuits import (
    aged,
    opened,
    rails,
    read_circuit,
    rectifier_supply,
    scaled,
    shorted,
    supply,
)
from tests.circuits.ngspice import settled

# ngspice: a load that draws its current while there is voltage, and a regulator of 5 V.
LOAD = "Bload {point} 0 I={amps}*tanh(V({point})/0.1)"
REGULATOR = (
    "Breg out0 0 V=max(min({volts},V(rail)-{dropout}),0)\nVsense out0 out 0\nBin rail 0 I=I(Vsense)"
)


def half_wave(volts, hertz, winding, capacitor, load):
    return f"V1 s 0 SIN(0 {volts * 2**0.5} {hertz})\nRw s a {winding}\nD1 a rail rect\n" + _rest(
        capacitor, load
    )


def bridge(volts, hertz, winding, capacitor, load):
    return (
        f"V1 s b SIN(0 {volts * 2**0.5} {hertz})\nRw s a {winding}\nD1 a rail rect\n"
        f"D2 b rail rect\nD3 0 a rect\nD4 0 b rect\n" + _rest(capacitor, load)
    )


def centre_tap(volts, hertz, winding, capacitor, load):
    return (
        f"V1 s 0 SIN(0 {volts * 2**0.5} {hertz})\nRw s a {winding}\n"
        f"V2 0 t SIN(0 {volts * 2**0.5} {hertz})\nRx t b {winding}\n"
        f"D1 a rail rect\nD2 b rail rect\n" + _rest(capacitor, load)
    )


def _rest(capacitor, load):
    farad, ohm = capacitor
    if not farad:
        return load
    inside = f"C1 rail c {farad}\nResr c 0 {ohm}" if ohm else f"C1 rail 0 {farad}"
    return f"{inside}\n{load}"


def amps(current, point="rail"):
    return LOAD.format(point=point, amps=current)


def regulated(current, volts=5, dropout=2):
    return REGULATOR.format(volts=volts, dropout=dropout) + "\n" + amps(current, "out")


# Name: (ours, theirs, Hz, seconds until it has settled, point)
SUPPLIES = {
    "half wave, 50 Hz, small reservoir": (
        supply("half wave", "9 V", "50 Hz", "220 µF", "50 mA"),
        half_wave(9, 50, 0.2, (220e-6, 0), amps(0.05)), 50, 0.3, "rail",
    ),
    "half wave, 60 Hz, large reservoir": (
        supply("half wave", "12 V", "60 Hz", "4700 µF", "120 Ω", winding="1 Ω"),
        half_wave(12, 60, 1, (4700e-6, 0), "R1 rail 0 120"), 60, 1, "rail",
    ),
    "half wave with ESR": (
        supply("half wave", "12 V", "50 Hz", "1000 µF", "200 mA", esr="0.3 Ω", winding="0.5 Ω"),
        half_wave(12, 50, 0.5, (1e-3, 0.3), amps(0.2)), 50, 0.4, "rail",
    ),
    "half wave with a weak winding": (
        supply("half wave", "15 V", "60 Hz", "470 µF", "330 Ω", winding="22 Ω"),
        half_wave(15, 60, 22, (470e-6, 0), "R1 rail 0 330"), 60, 1, "rail",
    ),
    "bridge, 50 Hz, small reservoir": (
        supply("bridge", "12 V", "50 Hz", "470 µF", "0.5 A"),
        bridge(12, 50, 0.2, (470e-6, 0), amps(0.5)), 50, 0.3, "rail",
    ),
    "bridge, 60 Hz, large reservoir": (
        supply("bridge", "18 V", "60 Hz", "10000 µF", "1 A", winding="0.4 Ω"),
        bridge(18, 60, 0.4, (10e-3, 0), amps(1)), 60, 0.7, "rail",
    ),
    "bridge with ESR": (
        supply("bridge", "12 V", "50 Hz", "2200 µF", "1 A", esr="0.15 Ω", winding="0.3 Ω"),
        bridge(12, 50, 0.3, (2200e-6, 0.15), amps(1)), 50, 0.4, "rail",
    ),
    "bridge with a regulator, its rail": (
        supply("bridge", "9 V", "50 Hz", "4700 µF", "0.5 A", regulator="5 V,dropout 2 V"),
        bridge(9, 50, 0.2, (4700e-6, 0), regulated(0.5)), 50, 0.4, "rail",
    ),
    "bridge with a regulator that drops out, its output": (
        supply("bridge", "9 V", "50 Hz", "680 µF", "0.5 A", regulator="5 V,dropout 2 V"),
        bridge(9, 50, 0.2, (680e-6, 0), regulated(0.5)), 50, 0.4, "out",
    ),
    "centre tap, 50 Hz": (
        supply("centre tap", "12 V", "50 Hz", "2200 µF", "15 Ω"),
        centre_tap(12, 50, 0.2, (2200e-6, 0), "R1 rail 0 15"), 50, 0.4, "rail",
    ),
    "centre tap, 60 Hz, ESR and winding": (
        supply("centre tap", "15 V", "60 Hz", "1000 µF", "0.4 A", esr="0.1 Ω", winding="2 Ω"),
        centre_tap(15, 60, 2, (1e-3, 0.1), amps(0.4)), 60, 0.4, "rail",
    ),
    "centre tap, 60 Hz, large reservoir, regulator": (
        supply("centre tap", "15 V", "60 Hz", "6800 µF", "1 A", winding="0.5 Ω",
               regulator="12 V,dropout 2.5 V"),
        centre_tap(15, 60, 0.5, (6800e-6, 0), regulated(1, 12, 2.5)), 60, 0.6, "rail",
    ),
}  # fmt: skip

GOOD = supply("bridge", "12 V", "50 Hz", "2200 µF", "0.5 A", esr="50 mΩ", winding="0.5 Ω")
TAP = supply("centre tap", "12 V", "50 Hz", "2200 µF", "0.5 A", esr="50 mΩ", winding="0.5 Ω")
WITH_5 = supply("bridge", "9 V", "50 Hz", "2200 µF", "0.5 A", regulator="5 V,dropout 2 V")
SOUND = (2200e-6, 0.05)
LIMITED = (
    "part,from,to,value,more\nP1,a,0,12 V,limit 0.5 A\nV1,a,b,3 V,100 Hz 1 Ω\nD1,b,rail,10 nA,n 1.8"
    "\nC1,rail,0,470 µF,\nR1,rail,0,20 Ω,"
)
# The bench supply of ngspice: a source that gives its voltage less a hair to the limit and no more.
LIMITED_DECK = (
    "Bp 0 a I=min(max((12-V(a))/0.001,0),0.5)\nV1 s b SIN(0 {peak} 100)\nRs a s 1\n"
    "D1 b rail rect\nC1 rail 0 470u\nR1 rail 0 20"
)
FAULTS = {
    "reservoir aged to 30 %": (
        aged(GOOD, "C1", capacitance=0.3),
        bridge(12, 50, 0.5, (660e-6, 0.05), amps(0.5)), 50, 0.3, "rail",
    ),
    "ESR ten times": (
        aged(GOOD, "C1", esr=10), bridge(12, 50, 0.5, (2200e-6, 0.5), amps(0.5)), 50, 0.4, "rail",
    ),
    "reservoir open": (
        opened(GOOD, "C1"), bridge(12, 50, 0.5, (0, 0), amps(0.5)), 50, 0.1, "rail",
    ),
    "one diode of the bridge open": (
        opened(GOOD, "D1"),
        bridge(12, 50, 0.5, SOUND, amps(0.5)).replace("D1 a rail rect", "Rd1 a rail 100meg")
, 50, 0.5, "rail",
    ),
    "one diode of the bridge short, a winding of 10 Ω": (
        shorted(supply("bridge", "12 V", "50 Hz", "2200 µF", "0.1 A", winding="10 Ω"), "D1"),
        bridge(12, 50, 10, (2200e-6, 0), amps(0.1)).replace("D1 a rail rect", "Rd1 a rail 0.01"),
        50, 1.2, "rail",
    ),
    "load shorted": (
        shorted(GOOD, "I1"), bridge(12, 50, 0.5, SOUND, "Rs rail 0 0.01"), 50, 0.2, "rail",
    ),
    "load doubled": (
        scaled(GOOD, "I1", 2), bridge(12, 50, 0.5, SOUND, amps(1)), 50, 0.3, "rail",
    ),
    "low mains": (
        scaled(GOOD, "V1", 0.85), bridge(12 * 0.85, 50, 0.5, SOUND, amps(0.5)), 50, 0.4, "rail",
    ),
    "half of the centre tap dead": (
        opened(TAP, "D2"),
        centre_tap(12, 50, 0.5, SOUND, amps(0.5)).replace("D2 b rail rect", "Rd2 b rail 100meg"),
        50, 0.5, "rail",
    ),
    "a joint of 3 Ω in the winding": (
        supply("bridge", "12 V", "50 Hz", "2200 µF", "0.5 A",
                                           esr="50 mΩ", winding="3.5 Ω"),
        bridge(12, 50, 3.5, SOUND, amps(0.5)), 50, 0.6, "rail",
    ),
    "aged reservoir before a regulator": (
        aged(WITH_5, "C1", capacitance=0.3),
        bridge(9, 50, 0.2, (660e-6, 0), regulated(0.5)), 50, 0.3, "out",
    ),
    # It limits in a part of each cycle and gives nothing in the rest: the rail swings by over 1 V.
    "an overload behind a bench supply that limits": (
        read_circuit(LIMITED), LIMITED_DECK.format(peak=3 * 2**0.5), 100, 0.2, "rail",
    ),
}  # fmt: skip


def compare(folder, ours, theirs, hertz, seconds, point):
    rail = rails(ours, point)[point]
    peak, valley, mean = settled(folder, theirs, hertz, point, seconds)
    size = max(abs(mean), 1e-6)
    assert rail.mean == pytest.approx(mean, rel=0.01)
    assert rail.peak == pytest.approx(peak, rel=0.01, abs=1e-3 * size)
    assert rail.valley == pytest.approx(valley, rel=0.01, abs=1e-3 * size)
    assert rail.ripple == pytest.approx(peak - valley, rel=0.01, abs=1e-4 * size)
    assert rail.error <= 0.01 * max(size, rail.ripple)


# The reference is a program, ngspice.
@pytest.mark.slow
@pytest.mark.parametrize("name", SUPPLIES)
def test_a_supply_as_it_should_be(name, tmp_path):
    compare(tmp_path, *SUPPLIES[name])


@pytest.mark.slow
@pytest.mark.parametrize("name", FAULTS)
def test_a_supply_with_a_fault(name, tmp_path):
    compare(tmp_path, *FAULTS[name])


# The reference is a program, ngspice.
@pytest.mark.slow
def test_a_filter_that_swings_while_it_settles(tmp_path):
    ours = read_circuit(
        "part,from,to,value,more\nV1,a,0,12 V,50 Hz 0.2 Ω\nD1,a,rail,10 nA,n 1.8\n"
        "C1,rail,0,470 µF,\nL1,rail,f,100 mH,2 Ω\nC2,f,0,1000 µF,\nR1,f,out,5 Ω,\n"
        "C3,out,0,220 µF,\nR2,out,0,100 Ω,"
    )
    theirs = half_wave(12, 50, 0.2, (470e-6, 0), "L1 rail i 0.1\nRl i f 2\nC2 f 0 1000u")
    theirs += "\nR1 f out 5\nC3 out 0 220u\nR2 out 0 100"
    compare(tmp_path, ours, theirs, 50, 1.5, "out")


# 0.8 V at 1 A with n = 1.8: Is = 1 A / (exp(0.8 / (1.8 × 25.865 mV)) - 1) = 34.5 nA.
OF_0_8_V = ".model of08 D(Is=34.5n N=1.8)"


# The reference is a program, ngspice.
def test_the_example_of_the_calculator(tmp_path):
    finding = rectifier_supply("12 V", "bridge", "4700 µF", "1 A", esr="30 mΩ")
    deck = bridge(12, 50, 0.2, (4700e-6, 0.03), amps(1)).replace(" rect", " of08")
    peak, valley, mean = settled(tmp_path, f"{OF_0_8_V}\n{deck}", 50, "rail", 0.4)
    assert (finding.peak, finding.valley, finding.mean) == pytest.approx(
        (peak, valley, mean), rel=1e-3
    )
    assert finding.ripple == pytest.approx(peak - valley, rel=5e-3)
    assert f"{valley:.1f} V {peak - valley:.2f} V" == "13.0 V 1.58 V"  # as its docstring has it


# The reference is a program, ngspice.
def test_the_example_of_settled_rails(tmp_path):
    deck = half_wave(9, 50, 0.2, (1e-3, 0), "R1 rail 0 100")
    peak, valley, _ = settled(tmp_path, deck, 50, "rail", 0.8)
    assert f"{valley:.1f} to {peak:.1f} V" == "9.9 to 11.9 V"  # as its docstring has it


def test_there_are_twelve_of_each():
    assert len(SUPPLIES) == len(FAULTS) == 12
