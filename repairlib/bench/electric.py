"""The electrical state of the board: its circuit as it is now, and what flows in it.

Without power the capacitors are what drives it, with power a settled cycle of mains or, where
nothing is a sine, the operating point; capacitors that have not come so far stand in it with the
volts that they hold. What an instrument puts across two points is part of it. Against a cycle of
1600 steps the means of the demo sets are off by 0.2 % in FEW_STEPS, 0.11 % in STEPS and 0.02 % in
FINE_STEPS, and a ripple by 9 %, 1.9 % and 0.8 %.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import chain
from typing import TYPE_CHECKING, Any

from repairlib.bench import over_time
from repairlib.bench.conditions import Fault, as_it_acts
from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.bench.series_lamp import behind_lamp
from repairlib.bench.state import (
    LAMP,
    LIFTED,
    LIGHT,
    OWN_PLUG,
    SUPPLY,
    Feed,
    Fitted,
    State,
    begin,
)
from repairlib.bench.strain import family_of, most_volts, paths_beyond
from repairlib.bench.where import lifted_ends, loose_ends
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
FEW_STEPS, STEPS, FINE_STEPS = 100, 200, 400  # in a cycle of mains
GONE = (*OPENS, "short", "burst", "reversed")  # there is no strain above the rating in these
MORE_VOLTS = 1.1  # times its own feed's: more than a set gets from its own plug
KEPT = 64  # answers that are remembered, some 60 kB each, twice that in fine steps
HOLDS = "V of "  # before the name of a capacitor that stands in the circuit as a source
SOON, MEANWHILE = 1.0, 2.0  # s: what is quick has settled; how long an instrument is on by then
LEG_OHM = 1e-3  # of the leg that is still in the board
INSTANT = 1e-7  # s; still shorter, and what floats drowns in the rounding


@dataclass(frozen=True)
class Electric:
    """What there is at each point against the zero point, in V: mean, lowest, highest, the wave.

    `seconds` are the instants of the waves, none where all is at rest. `held` are the volts of
    capacitors. `amps` flow through the parts of the circuit, by name, one figure or a wave; none
    without power.
    """

    mean: Mapping[str, float]
    low: Mapping[str, float]
    high: Mapping[str, float]
    waves: Mapping[str, np.ndarray]
    seconds: np.ndarray | None
    held: Mapping[str, float]
    amps: Mapping[str, Any] = field(default_factory=dict)

    def between(self, one: str, other: str) -> float:
        """The mean voltage from one point to another."""
        return self.mean[one] - self.mean[other]

    def rms(self, name: str) -> float:
        """The r.m.s. current through a part of the circuit; 0 for one that is not in it."""
        import numpy as np

        return float(np.sqrt(np.mean(np.square(self.amps.get(name, 0.0)))))


@dataclass(frozen=True)
class _Question:
    """A circuit to be solved. What has the same `text` is the same and has one answer.

    `charges` are what capacitors hold without power, or where a search for the settled cycle
    begins; None begins it afresh.
    """

    text: str
    parts: tuple[CircuitPart, ...] = field(compare=False)
    powered: bool = field(compare=False)
    ripple: tuple[str, float, float] | None = field(compare=False)
    charges: Mapping[str, float] | None = field(compare=False)
    steps: int = field(compare=False, default=STEPS)


def circuit_of(state: State, extra: tuple[CircuitPart, ...] = ()) -> tuple[CircuitPart, ...]:
    """The parts of the circuit as the board is now, with `extra` from an instrument."""
    return _circuit_with(state, (*chain(*beyond(state).values()), *extra))


def _circuit_with(state: State, extra: tuple[CircuitPart, ...]) -> tuple[CircuitPart, ...]:
    """The parts of the circuit with these, as if nothing stood above its rating."""
    parts: list[CircuitPart] = []
    for part in state.set.parts:
        parts += as_it_is(state, part)
        parts += _on_the_bench(state, part, extra)
        parts += _with_leg_up(state, part)
    parts += _supply(state)
    parts += extra
    ends = {point for part in parts for point in part.nodes}
    points = ends | set(state.set.points)
    parts += [CircuitPart(f"R at {p}", (p, "0"), APART) for p in sorted(points - {"0"})]
    bare = points - ends - {"0"}  # where nothing ends two are due: one alone is no circuit
    parts += [CircuitPart(f"R at bare {p}", (p, "0"), APART) for p in sorted(bare)]
    return tuple(parts)


def electric(
    state: State, extra: tuple[CircuitPart, ...] = (), afresh: bool = False, steps: int = STEPS
) -> Electric:
    """The electrical state of the board at this moment, with `extra` from an instrument.

    With an instrument a cycle of mains is sought from what the board holds without it, which is
    near, and what does not follow the instrument soon holds what it held; `afresh` spares the board
    without it, for one who asks nothing else of this state. Where some have not come to their end
    yet it is sought from that end. `steps` of a cycle are more for who asks how large a ripple is,
    fewer for who asks what may be.
    """
    slow, parts = dict(state.charges), circuit_of(state, extra)
    if not state.powered:
        return _solved(parts, None, slow)
    now = None
    if extra and not afresh:
        now = electric(state)
    elif slow and not extra:
        now = electric(replace(state, charges={}))
    found = _in_power(state, parts, slow, now, min(steps, STEPS))
    if extra and now and over_time.apart(now.held, found.held):
        slow = not_settled(state, now.held, found.held, MEANWHILE, extra)
        found = _in_power(state, parts, slow, now)
    return _in_power(state, parts, slow, found, steps) if steps > STEPS else found


def _in_power(
    state: State,
    parts: tuple[CircuitPart, ...],
    slow: Mapping[str, float],
    near: Electric | None = None,
    steps: int = STEPS,
) -> Electric:
    """With power, those capacitors `slow` at their volts; the search begins from what is near."""
    parts = tuple(_holding(part, slow[part.name]) if part.name in slow else part for part in parts)
    ripple = _ripple_of(state, parts)
    cycles = not ripple and _has_sine(parts)
    begins = near.held if near and cycles else None
    found = _solved(parts, ripple, begins, True, steps if cycles else STEPS)
    if not slow:
        return found
    amps = {name.removeprefix(HOLDS): one for name, one in found.amps.items()}
    return replace(found, held={**found.held, **slow}, amps=amps)


def _holding(part: CircuitPart, volts: float) -> CircuitPart:
    """A capacitor so large or so slow that it holds its volts: a source behind its ESR."""
    return CircuitPart(
        f"{HOLDS}{part.name}", part.nodes, volts, {"mains": 0.0, "series": part.more["esr"] + 1e-3}
    )


def come_up(state: State, seconds: float, extra: tuple[CircuitPart, ...] = ()) -> State:
    """The state with its power on once its capacitors have gone on for so long.

    What has come to its end by a second stays there, and the rest goes on from that.
    """
    for part in (min(seconds, SOON), seconds - SOON):
        if state.charges and part > 0:
            end = electric(replace(state, charges={}), extra).held
            late = not_settled(state, state.charges, end, part, extra)
            state = replace(state, charges=late)
    return state


def not_settled(
    state: State,
    held: Mapping[str, float],
    end: Mapping[str, float],
    seconds: float,
    extra: tuple[CircuitPart, ...] = (),
) -> dict[str, float]:
    """The capacitors that are not at their `end` so many seconds after they `held` that, in V.

    The board has power. What is not in `held` is at its end.
    """
    parts = circuit_of(state, extra)
    if ripple := _ripple_of(state, parts):
        parts = over_time.without_ripple(parts, ripple[0])
    names = {part.name for part in parts if part.letter == "C"}
    begun = {name: held.get(name, end.get(name, 0.0)) for name in names}
    if not over_time.apart(begun, end) or (
        _has_sine(parts) and seconds >= SOON and over_time.soon_there(parts, begun, end)
    ):
        return {}
    after = over_time.held_after(parts, begun, seconds, end)
    late = over_time.apart(after, end)
    return {name: float(f"{volts:.9g}") for name, volts in after.items() if name in late}


def holds(state: State, extra: tuple[CircuitPart, ...] = ()) -> dict[str, float]:
    """What each capacitor of the board holds now, in V, with `extra` from an instrument."""
    held = electric(state, extra).held if state.powered else dict(state.charges)
    parts = circuit_of(state, extra)
    return {part.name: held.get(part.name, 0.0) for part in parts if part.letter == "C"}


def _ripple_of(state: State, parts: tuple[CircuitPart, ...]) -> tuple[str, float, float] | None:
    """The sine on the dc of its own plug, where that is there: its source, V r.m.s. and Hz."""
    source = f"V of {state.set.feed}"
    if state.set.ripple is None or all(part.name != source for part in parts):
        return None
    return (source, *state.set.ripple)


def _solved(
    parts: tuple[CircuitPart, ...],
    ripple: tuple[str, float, float] | None,
    charges: Mapping[str, float] | None,
    powered: bool = False,
    steps: int = STEPS,
) -> Electric:
    asked = (parts, powered, ripple, charges, steps)
    return _answer(_Question(repr(asked), *asked))


@lru_cache(maxsize=KEPT)
def _answer(asked: _Question) -> Electric:
    """The answer to it, kept for whoever asks the same of the same circuit."""
    if not asked.powered:
        return _discharging(asked.parts, dict(asked.charges or {}))
    if asked.ripple:
        return _rippled(asked.parts, *asked.ripple)
    if _has_sine(asked.parts):
        return _cycle(asked.parts, asked.charges, asked.steps)
    point = operating_point(asked.parts)
    held = _held(asked.parts, point.volts)
    return Electric(point.volts, point.volts, point.volts, {}, None, held, point.amps)


def forget() -> None:
    """Forget the answers that were kept; a benchmark asks as if for the first time."""
    _answer.cache_clear()
    over_time.forget()


def _has_sine(parts: tuple[CircuitPart, ...]) -> bool:
    return any(part.more.get("mains") for part in parts)


def sound(of: PracticeSet) -> Electric:
    """The set as it was made: no fault, on its own plug, at full load; in fewer steps of time.

    For what a place is made for.
    """
    state = replace(begin(of, (), ""), feed=Feed(OWN_PLUG))
    parts = circuit_of(state)
    if not _has_sine(parts) or of.ripple:
        return electric(state)
    text = repr((parts, FEW_STEPS))
    return _answer(_Question(text, parts, True, None, {}, FEW_STEPS))


def as_it_is(state: State, part: BoardPart) -> tuple[CircuitPart, ...]:
    """The parts of the circuit that a part of the board comes to in its place as it is now."""
    place = state.places[part.name]
    if part.circuit is None or place.fitted is None or place.pads == LIFTED or place.leg_up:
        return ()
    made = part.circuit
    if part.name in state.set.loads and state.load == LIGHT:
        made = replace(made, value=made.value * LIGHT_LOAD)
    if part.name == state.set.feed and not _gives(state):
        if (winding := _winding(made)) is None:
            return ()
        made = winding
    elif part.name == state.set.feed:
        line = state.feed.line if part.follows_line else 1.0
        return _fed(state, replace(made, value=made.value * line), place.fitted.fault)
    if place.fitted.value is not None:
        made = replace(made, value=place.fitted.value)
    return as_it_acts(made, place.fitted.fault, state.warm(part.name), family_of(part))


def beyond(state: State) -> dict[str, tuple[CircuitPart, ...]]:
    """What parts let through because more stands at them than they bear, by part.

    What was always there has lived with what the set's own plug brings; that is a choice.
    """
    doubtful = [part for part in state.set.parts if may_be_strained(state, part)]
    if not doubtful:
        return {}
    now = _in_power(state, _circuit_with(state, ()), dict(state.charges))
    found = {}
    for part in doubtful:
        fitted = state.places[part.name].fitted
        if fitted and part.circuit and volts_at(part, now) > most_volts(part, fitted.rated):
            made = replace(part.circuit, value=fitted.value or part.circuit.value)
            found[part.name] = paths_beyond(part, made, fitted.rated)
    return found


def volts_at(part: BoardPart, now: Electric) -> float:
    """The most volts that stand at a part in the way that counts for its rating.

    Of a capacitor from its first end, of a diode in its blocking way, of a regulator its input.
    """
    one, other = part.nodes
    if part.circuit is not None and part.circuit.letter == "D":
        one, other = other, one
    if part.circuit is not None and part.circuit.letter == "U":
        other = "0"
    if now.waves:
        return float((now.waves[one] - now.waves[other]).max())
    return now.between(one, other)


def is_used_to_it(state: State, fitted: Fitted) -> bool:
    """Whether a part was always there and gets no more than the set's own plug brings."""
    of, feed = state.set, state.feed
    more = feed.kind == SUPPLY and feed.volts > MORE_VOLTS * of.feed_volts
    return not (fitted.new or fitted.turned or more)


def may_be_strained(state: State, part: BoardPart) -> bool:
    """Whether more than a part bears may stand at it, without a look at the circuit."""
    place = state.places[part.name]
    if not state.powered or place.fitted is None or not family_of(part):
        return False
    if place.pads == LIFTED or place.leg_up:
        return False
    fault = place.fitted.fault
    if is_used_to_it(state, place.fitted) or (fault and fault.condition in GONE):
        return False
    return most_volts(part, place.fitted.rated) < _highest_volts(state, place.fitted)


def _highest_volts(state: State, fitted: Fitted) -> float:
    """What a feed can bring at most; of a sine twice its peak, as a doubler of it."""
    if state.feed.kind == SUPPLY:
        return state.feed.volts
    feed = state.set.part(state.set.feed).circuit
    peak = feed.peak * state.feed.line if feed else 0.0
    return 2 * peak if feed and feed.more.get("mains") and fitted.rated is not None else peak


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


def _on_the_bench(
    state: State, part: BoardPart, extra: tuple[CircuitPart, ...]
) -> tuple[CircuitPart, ...]:
    """A part that was taken out, between its own two ends, where something touches it there.

    A feed gives nothing there; of a transformer its copper is left.
    """
    taken = state.places[part.name].taken
    touched = {point for one in extra for point in one.nodes}
    if part.circuit is None or taken is None or not touched.intersection(loose_ends(part.name)):
        return ()
    made = _winding(part.circuit) if part.name == state.set.feed else part.circuit
    if made is None:
        return ()
    made = replace(made, name=f"{made.name} taken", nodes=loose_ends(part.name))
    if taken.value is not None:
        made = replace(made, value=taken.value)
    return as_it_acts(made, taken.fault)


def _with_leg_up(state: State, part: BoardPart) -> tuple[CircuitPart, ...]:
    """A part with one leg lifted: between two ends of its own, the first joined to the board.

    A capacitor hangs free, or a steady state would charge it through what is nearly no path.
    """
    place = state.places[part.name]
    if part.circuit is None or place.fitted is None or not place.leg_up:
        return ()
    one, other = lifted_ends(part.name)
    made = replace(part.circuit, nodes=(one, other))
    if place.fitted.value is not None:
        made = replace(made, value=place.fitted.value)
    acts = as_it_acts(made, place.fitted.fault, state.warm(part.name), family_of(part))
    if part.circuit.letter == "C":
        return acts
    return (CircuitPart(f"R leg of {part.name}", (part.nodes[0], one), LEG_OHM), *acts)


def _supply(state: State) -> tuple[CircuitPart, ...]:
    if state.feed.kind != SUPPLY:
        return ()
    one, other = state.set.inlet
    nodes = (one, "0" if other == "0" else other)
    return (CircuitPart("P of the bench", nodes, state.feed.volts, {"limit": state.feed.limit}),)


def _cycle(
    parts: tuple[CircuitPart, ...], near: Mapping[str, float] | None, steps: int
) -> Electric:
    cycle = one_cycle(parts, steps=steps, charged=None if near is None else dict(near))
    return Electric(
        {point: float(wave.mean()) for point, wave in cycle.volts.items()},
        {point: float(wave.min()) for point, wave in cycle.volts.items()},
        {point: float(wave.max()) for point, wave in cycle.volts.items()},
        cycle.volts,
        cycle.seconds,
        cycle.held,
        cycle.amps,
    )


def _rippled(parts: tuple[CircuitPart, ...], source: str, volts: float, hertz: float) -> Electric:
    """The operating point, with a small sine round it by the slopes that all laws have there."""
    import numpy as np

    at_rest = operating_point(parts)
    point = at_rest.volts
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
        at_rest.amps,
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
