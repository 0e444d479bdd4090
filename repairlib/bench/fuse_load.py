"""What flows through the fuses of a set as it stands, against what they bear."""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.bench.electric import electric
from repairlib.bench.state import State
from repairlib.circuits import CircuitPart

BLOWS = 2.1  # times its rating, at which a fuse of a set blows within two minutes
"""From memory: IEC 60127-2, time-lag fuses open within 2 minutes at 2.1 times their rating."""


def overloads(
    state: State, extra: tuple[CircuitPart, ...] = ()
) -> Iterator[tuple[str, float, float]]:
    """Each fuse that would blow: its name, the current through it and its rating [A], r.m.s.

    `extra` is what an instrument puts across the board.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import OWN_PLUG, Feed, begin
    >>> from dataclasses import replace
    >>> maker = demo_set("label maker")
    >>> on = replace(begin(maker, (read_fault("D2 short", maker),), ""), feed=Feed(OWN_PLUG))
    >>> [(name, round(amps, 1)) for name, amps, rated in overloads(on)]
    [('F1', 3.0)]
    """
    now = electric(state, extra)
    for part in state.set.parts:
        fitted = state.places[part.name].fitted
        if part.what != "fuse" or part.circuit is None or fitted is None or fitted.fault:
            continue
        rated = part.rated if fitted.rated is None else fitted.rated
        amps = now.rms(part.circuit.name)
        if rated and amps > BLOWS * rated:
            yield part.name, amps, rated
