"""Whether a set works again: all rails, at all loads and lines, cold and warm, tried to the end."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from repairlib.bench.board_part import NO_CURRENT
from repairlib.bench.electric import Electric, circuit_of, electric
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.state import FULL, LIGHT, LINES, OWN_PLUG, Feed, State

WARMED = 40.0  # K above the room; a choice of this workbook


def misses(state: State) -> tuple[str, ...]:
    """Where the set misses its rails when it is plugged in as it is now; none when it works.

    Each is one line: the load, the line, cold or warm, the rail and what it is there.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> radio = demo_set("desk radio")
    >>> misses(begin(radio, (read_fault("U1 open", radio),), "demo"))[0]
    'full load, line 90 %, cold: +9 V is 0 V'
    """
    return tuple(each_miss(state))


def each_miss(state: State) -> Iterator[str]:
    """The lines of `misses` one by one, worked out as they are asked for.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> printer = demo_set("printer controller")
    >>> next(each_miss(begin(printer, (read_fault("M1 corrupt", printer),), "demo")))
    'M1 holds no program that runs'
    """
    for part in state.set.parts:
        fitted = state.places[part.name].fitted
        if part.what in NO_CURRENT and (fitted is None or fitted.fault is not None):
            yield f"{part.name} holds no program that runs"
    rested = replace(state, charges={}, heat={}, clipped="", ended=None)
    warmed = replace(rested, heat={part.name: WARMED for part in state.set.parts})
    tried: dict[str, Electric] = {}
    for heat, here in (("cold", rested), ("warm", warmed)):
        for load in (FULL, LIGHT):
            for line in LINES:
                fed = replace(here, load=load, feed=Feed(OWN_PLUG, line=line))
                where = f"{load} load, line {line:.0%}, {heat}".replace("%", " %")
                circuit = repr(circuit_of(fed))
                if circuit not in tried:
                    tried[circuit] = electric(fed)
                for miss in _missed(state.set, tried[circuit]):
                    yield f"{where}: {miss}"


def _missed(of: PracticeSet, now: Electric) -> list[str]:
    found = []
    for rail in of.rails:
        volts = now.mean[rail.point]
        ripple = now.high[rail.point] - now.low[rail.point]
        if not rail.low <= volts <= rail.high:
            found.append(f"{rail.name} is {round(volts, 2) + 0.0:.3g} V")
        elif rail.ripple is not None and ripple > rail.ripple:
            found.append(f"{rail.name} has {ripple * 1e3:.3g} mV of ripple")
    return found
