"""The electrical state of the board: its circuit as it is now, and what flows in it.

Without power the capacitors are what drives it, with power a settled cycle of mains or, where
nothing is a sine, the operating point. What an instrument puts across two points is part of it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from repairlib.bench.conditions import Fault, as_it_acts
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.series_lamp import behind_lamp
from repairlib.bench.state import LAMP, LIFTED, LIGHT, OWN_PLUG, SUPPLY, State
from repairlib.bench.where import loose_ends
from repairlib.circuits import (
    CircuitPart,
    one_cycle,
    operating_point,
    small_signals,
    transient,
)

if TYPE_CHECKING:
    import numpy as np

APART = 1e9  # Ω, from each point to zero: no point of a board floats altogether
LIGHT_LOAD = 0.2  # of the full load
OPENS = ("open", "blown", "pad lifted", "gone")
STEPS = 200  # in a cycle of mains
INSTANT = 1e-7  # s; still shorter, and what floats drowns in the rounding


@dataclass(frozen=True)
class Electric:
    """What there is at each point against the zero point, in V: mean, lowest, highest, the wave.

    `seconds` are the instants of the waves, none where all is at rest. `held` are the volts of
    capacitors.
    """

    mean: Mapping[str, float]
    low: Mapping[str, float]
    high: Mapping[str, float]
    waves: Mapping[str, np.ndarray]
    seconds: np.ndarray | None
    held: Mapping[str, float]

    def between(self, one: str, other: str) -> float:
        """The mean voltage from one point to another."""
        return self.mean[one] - self.mean[other]


def circuit_of(state: State, extra: tuple[CircuitPart, ...] = ()) -> tuple[CircuitPart, ...]:
    """The parts of the circuit as the board is now, with `extra` from an instrument."""
    parts: list[CircuitPart] = []
    for part in state.set.parts:
        parts += _as_it_is(state, part)
        parts += _on_the_bench(state, part)
    parts += _supply(state)
    parts += extra
    ends = {point for part in parts for point in part.nodes}
    points = ends | set(state.set.points)
    parts += [CircuitPart(f"R at {p}", (p, "0"), APART) for p in sorted(points - {"0"})]
    bare = points - ends - {"0"}  # where nothing ends two are due: one alone is no circuit
    parts += [CircuitPart(f"R at bare {p}", (p, "0"), APART) for p in sorted(bare)]
    return tuple(parts)


def electric(state: State, extra: tuple[CircuitPart, ...] = ()) -> Electric:
    """The electrical state of the board at this moment."""
    parts = circuit_of(state, extra)
    if not state.powered:
        return _discharging(parts, dict(state.charges))
    if state.set.ripple and state.feed.kind in (OWN_PLUG, LAMP):
        return _rippled(parts, f"V of {state.set.feed}", *state.set.ripple)
    if any(part.more.get("mains") for part in parts):
        return _cycle(parts)
    point = operating_point(parts)
    held = _held(parts, point.volts)
    return Electric(point.volts, point.volts, point.volts, {}, None, held)


def _as_it_is(state: State, part: BoardPart) -> tuple[CircuitPart, ...]:
    place = state.places[part.name]
    if part.circuit is None or place.fitted is None or place.pads == LIFTED:
        return ()
    made = part.circuit
    if part.name in state.set.loads and state.load == LIGHT:
        made = replace(made, value=made.value * LIGHT_LOAD)
    if part.name == state.set.feed and not _gives(state):
        if (winding := _winding(made)) is None:
            return ()
        made = winding
    elif part.name == state.set.feed:
        return _fed(state, replace(made, value=made.value * state.feed.line), place.fitted.fault)
    if place.fitted.value is not None:
        made = replace(made, value=place.fitted.value)
    return as_it_acts(made, place.fitted.fault, state.warm(part.name))


def _fed(state: State, feed: CircuitPart, fault: Fault | None) -> tuple[CircuitPart, ...]:
    """The feed that gives, with the lamp before it and the ripple on it where there are such."""
    lamp: tuple[CircuitPart, ...] = ()
    if state.feed.kind == LAMP:
        bulb, feed = behind_lamp(feed, state.feed.lamp)
        lamp = (bulb,)
    if state.set.ripple:
        return (*lamp, *_with_ripple(state, feed, fault))
    return (*lamp, *as_it_acts(feed, fault))


def _gives(state: State) -> bool:
    """Whether the set's own feed is on and reaches the board."""
    return state.feed.kind in (OWN_PLUG, LAMP) and not _cut_off(state)


def _cut_off(state: State) -> bool:
    """Whether the part that the feed stands behind, such as the mains fuse, lets nothing pass."""
    if not state.set.behind:
        return False
    place = state.place(state.set.behind)
    if place.fitted is None or place.pads == LIFTED:
        return True
    fault = place.fitted.fault
    return fault is not None and fault.condition in OPENS


def _winding(feed: CircuitPart) -> CircuitPart | None:
    """What is left of a feed that gives nothing: a transformer's copper, of an adapter none."""
    ohm = feed.more.get("series", 0.0)
    if not feed.more.get("mains") or not ohm:
        return None
    return CircuitPart(f"R of {feed.name}", feed.nodes, ohm)


def _with_ripple(state: State, feed: CircuitPart, fault: Fault | None) -> tuple[CircuitPart, ...]:
    """The feed with the small sine that is left on its dc in series."""
    volts, hertz = state.set.ripple or (0.0, 0.0)
    inside = f"inside {feed.name.casefold()}"
    sine = CircuitPart(
        f"V of {feed.name}", (feed.nodes[0], inside), volts, {"mains": hertz, "series": 0.0}
    )
    return (sine, *as_it_acts(replace(feed, nodes=(inside, feed.nodes[1])), fault))


def _on_the_bench(state: State, part: BoardPart) -> tuple[CircuitPart, ...]:
    """A part that was taken out, between its own two ends."""
    taken = state.places[part.name].taken
    if part.circuit is None or taken is None:
        return ()
    made = replace(part.circuit, name=f"{part.circuit.name} taken", nodes=loose_ends(part.name))
    if taken.value is not None:
        made = replace(made, value=taken.value)
    return as_it_acts(made, taken.fault)


def _supply(state: State) -> tuple[CircuitPart, ...]:
    if state.feed.kind != SUPPLY:
        return ()
    one, other = state.set.inlet
    nodes = (one, "0" if other == "0" else other)
    return (CircuitPart("P of the bench", nodes, state.feed.volts, {"limit": state.feed.limit}),)


def _cycle(parts: tuple[CircuitPart, ...]) -> Electric:
    points = sorted({point for part in parts for point in part.nodes})
    cycle = one_cycle(parts, *points, steps=STEPS)
    last = {point: float(cycle.volts[point][-1]) for point in points}
    return Electric(
        {point: float(cycle.volts[point].mean()) for point in points},
        {point: float(cycle.volts[point].min()) for point in points},
        {point: float(cycle.volts[point].max()) for point in points},
        cycle.volts,
        cycle.seconds,
        _held(parts, last),
    )


def _rippled(parts: tuple[CircuitPart, ...], source: str, volts: float, hertz: float) -> Electric:
    """The operating point, with a small sine round it by the slopes that all laws have there."""
    import numpy as np

    point = operating_point(parts).volts
    (by_volt,) = small_signals(parts, source, [hertz])
    turns = np.exp(2j * np.pi * np.arange(1, STEPS + 1) / STEPS)
    peak = volts * np.sqrt(2)
    waves = {name: mean + peak * (by_volt[name] * turns).imag for name, mean in point.items()}
    return Electric(
        point,
        {name: float(wave.min()) for name, wave in waves.items()},
        {name: float(wave.max()) for name, wave in waves.items()},
        waves,
        np.arange(1, STEPS + 1) / STEPS / hertz,
        _held(parts, point),
    )


def _discharging(parts: tuple[CircuitPart, ...], charges: dict[str, float]) -> Electric:
    """The first instant with these charges."""
    run = transient(parts, 2 * INSTANT, INSTANT, charged=charges)
    volts = {point: float(wave[0]) for point, wave in run.volts.items()}
    return Electric(volts, volts, volts, {}, None, charges)


def _held(parts: tuple[CircuitPart, ...], volts: Mapping[str, float]) -> dict[str, float]:
    return {
        part.name: volts[part.nodes[0]] - volts[part.nodes[1]]
        for part in parts
        if part.letter == "C"
    }
