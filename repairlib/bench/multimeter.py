"""The multimeter of the bench: what it shows, and what it does to the circuit and to itself."""

from __future__ import annotations

from repairlib.bench.electric import electric
from repairlib.bench.moves import Reading
from repairlib.bench.noise import noisy
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart

INPUT_OHM = 10e6


def volts(state: State, one: str, other: str) -> Reading:
    """The dc volts from one point to the other, with the meter's 10 MΩ across them."""
    meter = CircuitPart("R of the meter", (one, other), INPUT_OHM)
    value = noisy(electric(state, (meter,)).between(one, other), 0.005, 1e-3, state, "volts")
    return Reading("multimeter, V dc", (one, other), f"{value:.3f} V", value, "V")
