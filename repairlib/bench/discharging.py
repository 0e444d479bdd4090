"""What capacitors still hold after a time without power, through all that lies across them.

The trapezoidal rule in a few runs of equal steps, each three times as long as those before: what is
fast comes to rest in the first run, what is slow follows in the later. Source: nodal analysis.
"""

from __future__ import annotations

from repairlib.bench.electric import circuit_of
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart, Stepper

FIRST, STEPS, GROWTH = 1e-3, 30, 3.0  # s of the first step, steps of a run, how the steps grow
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
    parts = circuit_of(state, extra) if held else ()
    capacitors = {part.name for part in parts if part.letter == "C"}
    gone, step = 0.0, FIRST
    while held and gone < seconds:
        step = min(step, (seconds - gone) / STEPS)
        stepper = Stepper(parts, step, charged=held)
        stepper.advance(STEPS)
        held = {name: volts for name, volts in stepper.kept().items() if name in capacitors}
        held = held if max(map(abs, held.values()), default=0.0) > STILL else {}
        gone, step = gone + STEPS * step, step * GROWTH
    return {name: float(f"{volts:.9g}") for name, volts in held.items()}
