"""What capacitors still hold after a time without power, through all that lies across them.

A few runs of equal steps, each three times as long as those before. In the first, backward Euler,
what is fast comes to rest without ringing; what is slow follows in the later, by the trapezoidal
rule. Source: nodal analysis.
"""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.bench.electric import circuit_of
from repairlib.bench.state import State
from repairlib.circuits import BACKWARD_EULER, TRAPEZOIDAL, CircuitPart, Stepper

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
    for step, steps, method in _runs(seconds):
        if held:
            held = _after_run(parts, held, step, steps, method)
    return {name: float(f"{volts:.9g}") for name, volts in held.items()}


def _runs(seconds: float) -> Iterator[tuple[float, int, str]]:
    """The runs of a time: the step of each, how many steps, by which rule."""
    gone, step, method = 0.0, FIRST, BACKWARD_EULER
    while gone < seconds * (1 - 1e-9):
        step = min(step, (seconds - gone) / STEPS)
        yield step, STEPS, method
        gone, step, method = gone + STEPS * step, step * GROWTH, TRAPEZOIDAL


def _after_run(
    parts: tuple[CircuitPart, ...], held: dict[str, float], step: float, steps: int, method: str
) -> dict[str, float]:
    """What capacitors hold after a run; nothing where none holds what counts."""
    stepper = Stepper(parts, step, method, charged=held)
    stepper.advance(steps)
    kept = stepper.kept()
    held = {part.name: kept[part.name] for part in parts if part.letter == "C"}
    return held if max(map(abs, held.values()), default=0.0) > STILL else {}
