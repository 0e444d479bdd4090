"""repairlib.circuits.settled: circuits that would take minutes, and a search that begins near."""

import numpy as np
import pytest

from repairlib.circuits import CircuitPart, one_cycle, rails, supply
from repairlib.circuits.in_time import Stepper

SUPPLY = supply("bridge", "9 V", "50 Hz", "1000 µF", "0.2 A", regulator="5 V,dropout 2 V")


@pytest.mark.common_practice
@pytest.mark.parametrize(("ohm", "farad"), [(10e3, 10e-3), (1e6, 1e-3), (10e6, 100e-6)])
def test_a_capacitor_behind_a_large_resistance_holds_the_mean(ohm, farad):
    """Minutes are no matter: at the end no current flows on average, and it has the mean."""
    parts = (
        *SUPPLY,
        CircuitPart("R2", ("rail", "slow"), ohm),
        CircuitPart("C2", ("slow", "0"), farad, {"esr": 0.1}),
    )
    volts = one_cycle(parts, steps=200).volts
    assert volts["slow"].mean() == pytest.approx(volts["rail"].mean(), rel=1e-3)
    assert np.ptp(volts["slow"]) < 1e-3


@pytest.mark.common_practice
def test_a_reservoir_without_a_load_charges_to_the_peak_less_its_diode():
    """Only 1 MΩ empties it: some minutes from full to empty, and a search from far above ends."""
    parts = supply("half wave", "9 V", "50 Hz", "1000 µF", "1 MΩ")
    full = rails(parts, "rail", steps=100)["rail"].mean
    assert 9 * 2**0.5 - 0.7 < full < 9 * 2**0.5
    for begin in (0.0, 5.0, 13.0, 20.0, 1000.0):
        found = one_cycle(parts, "rail", steps=100, charged={"C1": begin}).volts["rail"]
        assert found.mean() == pytest.approx(full, rel=1e-3)


@pytest.mark.common_practice
def test_a_choke_is_quiet_once_its_current_stands():
    """The regulator comes out of its dropout with a jolt; 0.5 ms later only the winding drops."""
    parts = (
        *supply("bridge", "9 V", "50 Hz", "220 µF", "0.1 A"),
        CircuitPart("L1", ("rail", "fed"), 22e-6, {"winding": 0.2}),
        CircuitPart("U1", ("fed", "out"), 5.0, {"dropout": 2.0, "own": 0.0}),
        CircuitPart("C2", ("out", "0"), 47e-6, {"esr": 0.4}),
        CircuitPart("R1", ("out", "0"), 20.0),
    )
    volts = one_cycle(parts, steps=200).volts
    regulates = np.isclose(volts["out"], 5.0, atol=1e-4)
    stands = np.all([np.roll(regulates, back) for back in range(6)], axis=0)
    assert 20 < stands.sum() < 200
    dropped = (volts["rail"] - volts["fed"])[stands]
    assert dropped == pytest.approx(5.0 / 20 * 0.2, rel=0.02)


@pytest.mark.behaviour
def test_without_names_every_point_is_there():
    assert set(one_cycle(SUPPLY, steps=100).volts) == {"0", "a", "b", "rail", "out"}


@pytest.mark.behaviour
def test_a_meter_clipped_on_settles_in_two_cycles(monkeypatch):
    held = one_cycle(SUPPLY, steps=200).held
    assert set(held) == {"C1"}
    cycles = []
    advance = Stepper.advance
    monkeypatch.setattr(Stepper, "advance", lambda *given: cycles.append(1) or advance(*given))
    measured = (*SUPPLY, CircuitPart("R9", ("a", "rail"), 10e6))
    near = one_cycle(measured, "rail", steps=200, charged=held)
    assert len(cycles) <= 2
    far = one_cycle(measured, "rail", steps=200)
    assert near.volts["rail"] == pytest.approx(far.volts["rail"], abs=1e-3)
