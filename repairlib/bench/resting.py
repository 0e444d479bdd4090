"""The board without power as the small test voltages of an instrument see it.

A load that draws its current at its volts draws next to nothing at some tenths of a volt; what an
ohmmeter finds there is the chip's own resistance, and the diode that every chip has from its zero
pin to its supply pin. A regulator is then its divider and the diode from its output to its input.
How much they have is a choice of this workbook, that they are there is common practice.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.electric import circuit_of
from repairlib.bench.state import Feed, State
from repairlib.bench.where import is_loose
from repairlib.circuits import CircuitPart

LOAD_VOLTS = 1e3  # over its current: the resistance in Ω of a load at rest
DIVIDER_OHM, INPUT_OHM = 5e3, 20e3  # of a regulator at rest
JUNCTION = (1e-12, {"n": 1.2})  # of a chip: 0.64 V at 1 mA


def resting(state: State, extra: tuple[CircuitPart, ...] = ()) -> tuple[CircuitPart, ...]:
    """The parts of the unpowered board at small voltages, with `extra` from the instrument.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> parts = resting(begin(demo_set("desk radio"), (), "demo"))
    >>> [part.name for part in parts if "I1" in part.name]
    ['R inside I1', 'D inside I1']
    """
    parts: list[CircuitPart] = []
    for part in circuit_of(state, extra):
        parts += _at_rest(part)
    return tuple(parts)


def met_at(state: State, point: str) -> State:
    """The state as a probe at that point meets it: what lies on the bench has no power."""
    return replace(state, feed=Feed(), charges={}) if is_loose(state, point) else state


def _at_rest(part: CircuitPart) -> tuple[CircuitPart, ...]:
    one, other = part.nodes
    if part.letter == "I" and part.load:
        return (
            CircuitPart(f"R inside {part.name}", part.nodes, LOAD_VOLTS / part.value),
            _junction(part, other, one),
        )
    if part.letter == "U":
        return (
            CircuitPart(f"R before {part.name}", (one, "0"), INPUT_OHM),
            CircuitPart(f"R inside {part.name}", (other, "0"), DIVIDER_OHM),
            _junction(part, other, one),
        )
    return (part,)


def _junction(part: CircuitPart, anode: str, cathode: str) -> CircuitPart:
    value, more = JUNCTION
    return CircuitPart(f"D inside {part.name}", (anode, cathode), value, dict(more))
