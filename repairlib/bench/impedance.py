"""What small ac of one frequency meets between two points of the board without power."""

from __future__ import annotations

from repairlib.bench.resting import resting
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart, small_signals


def impedance(state: State, one: str, other: str, hertz: float) -> complex:
    """The impedance [Ω] between two points, all that lies in parallel included.

    Junctions count by their slope at rest: they hardly conduct. `hertz` above 0.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> z = impedance(begin(demo_set("desk radio"), (), "demo"), "rail", "0", 100e3)
    >>> round(z.real, 3)
    0.04
    """
    source = CircuitPart("I of the tester", (other, one), 1e-12)
    (volts,) = small_signals(resting(state, (source,)), source.name, [hertz])
    return complex(volts[one]) - complex(volts[other])
