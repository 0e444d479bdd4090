"""ESR tester and capacitance meter: all in parallel counts, and a charge destroys them."""

from math import pi

import pytest

from repairlib.bench.capacitance_meter import capacitance
from repairlib.bench.conditions import read_fault
from repairlib.bench.counts import DASHES
from repairlib.bench.esr_tester import FREQUENCIES, esr
from repairlib.bench.practice_set import demo_set
from repairlib.bench.resting import resting
from repairlib.bench.state import begin
from repairlib.core.errors import RepairlibError
from tests.bench.resting_deck import ohms_between
from tests.bench.small_boards import board

WORN = "C1, a, 0, 100 µF, ESR 5 Ω"
SOUND = "C2, a, 0, 100 µF, ESR 0.1 Ω"


@pytest.mark.common_practice
def test_a_sound_neighbour_hides_a_worn_one():
    # By hand: 5 Ω beside 0.1 Ω is 0.098 Ω; the reactances, 16 mΩ each, hardly count at 100 kHz.
    alone, both = esr(board(WORN), "a", "0"), esr(board(WORN, SOUND), "a", "0")
    assert alone.value == pytest.approx(5.0, abs=alone.error)
    assert both.value == pytest.approx(0.098, abs=both.error)


@pytest.mark.common_practice
def test_a_small_capacitor_shows_its_reactance():
    # By hand: 1 / (2π × 100 kHz × 100 nF) = 15.9 Ω, and at 1 kHz 1.59 kΩ: over the range.
    reading = esr(board("C1, a, 0, 100 nF"), "a", "0")
    assert reading.value == pytest.approx(1 / (2 * pi * 100e3 * 100e-9), abs=reading.error)
    assert esr(board("C1, a, 0, 100 nF"), "a", "0", 1e3).shown == "OL"


@pytest.mark.common_practice
def test_junctions_do_not_conduct_at_the_small_signal():
    beside = esr(board(WORN, "D1, a, 0, 10 nA, n 1.8"), "a", "0")
    assert beside.value == pytest.approx(5.0, abs=beside.error)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("parts", "farad", "off"),
    [
        ((WORN, SOUND), 200e-6, 0.01),  # as they lie
        (("C1, a, 0, 47 nF", "C2, a, 0, 100 nF"), 147e-9, 0.0),
        (("C1, a, b, 10 µF", "C2, b, 0, 10 µF"), 5e-6, 0.0),
        # By hand, 1 kHz, parallel model: a resistor beside it does not count.
        (("C1, a, 0, 100 nF", "R1, a, 0, 1 kΩ"), 100e-9, 0.0),
    ],
)
def test_capacitances_add_up(parts, farad, off):
    reading = capacitance(board(*parts), "a", "0")
    assert reading.value == pytest.approx(farad, abs=reading.error + off * farad)


def test_resistance_alone_gives_dashes():
    assert capacitance(board("R1, a, 0, 1 kΩ"), "a", "0").shown == DASHES
    assert capacitance(board("C1, a, 0, 100 nF", "R1, a, 0, 10 Ω"), "a", "0").shown == DASHES


@pytest.mark.parametrize("tester", [esr, capacitance])
def test_a_charge_goes_into_the_tester(tester):
    # 2200 µF: 2 V hold 4 mJ, 20 V 0.44 J, 320 V are above what a person may touch.
    def at(volts):
        return tester(board("C1, a, 0, 2200 µF, ESR 40 mΩ", charges={"C1": volts}), "a", "0")

    assert at(2.0).value is not None and not at(2.0).harm
    assert at(20.0).value is None and at(20.0).harm and not at(20.0).hurts
    assert at(320.0).hurts
    live = tester(board("R1, in, 0, 1 kΩ", on=True), "in", "0")
    assert live.value is None and live.harm
    weak = tester(board("R1, in, a, 1 kΩ", "C1, a, 0, 10 µF", on=True), "a", "0")
    assert weak.value is None and not weak.harm, "live, but too little to destroy it"


def test_a_frequency_it_does_not_have():
    with pytest.raises(RepairlibError, match="no such frequency"):
        esr(board(WORN), "a", "0", 50.0)


@pytest.mark.parametrize("hertz", FREQUENCIES)
@pytest.mark.parametrize("fault", ["", "C1 dried out to 30 %, ESR x 8"])
def test_as_ngspice_sees_the_radio(tmp_path, hertz, fault):
    radio = demo_set("desk radio")
    state = begin(radio, (read_fault(fault, radio),) if fault else (), "1")
    rail = radio.part("C1").nodes
    ohm = ohms_between(tmp_path, resting(state), *rail, hertz)
    reading = esr(state, *rail, hertz)
    assert reading.value == pytest.approx(ohm, abs=reading.error)
