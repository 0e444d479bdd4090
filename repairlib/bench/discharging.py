"""What capacitors still hold after a time without power, through all that lies across them."""

from __future__ import annotations

from repairlib.bench.electric import circuit_of
from repairlib.bench.over_time import after_runs
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart

STILL = 1e-3  # V, below which a capacitor counts as empty; a choice of this workbook


def left_after(
    state: State, seconds: float, extra: tuple[CircuitPart, ...] = ()
) -> dict[str, float]:
    """The volts that capacitors hold so many seconds later, with `extra` put across the board.

    >>> from dataclasses import replace
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> state = replace(begin(demo_set("desk radio"), (), "demo"), charges={"C1": 10.0})
    >>> left_after(state, 3600.0)
    {}
    """
    held = {name: volts for name, volts in dict(state.charges).items() if abs(volts) > STILL}
    if held:
        held = after_runs(circuit_of(state, extra), held, seconds, STILL)
    return {name: float(f"{volts:.9g}") for name, volts in held.items()}
