"""Whether a set works again: all rails, at all loads and lines, cold and warm, tried to the end."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import lru_cache

from repairlib.bench.board_part import NO_CURRENT
from repairlib.bench.electric import FINE_STEPS, Electric, electric
from repairlib.bench.passing import passing
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.state import FULL, LIGHT, LINES, OWN_PLUG, WARM, Feed, State
from repairlib.core.quantity import engineering

KEPT = 100  # boards that are remembered: a class repairs the same set
SOAK, STEP = 900.0, 60.0  # s on its own plug at full load and high line; choices of this workbook

OPENED = 1.001 * WARM  # K above the room, at which a crack is open


def misses(state: State) -> tuple[str, ...]:
    """Where the set fails when it is plugged in as it is now; none when it works.

    It is tried at each load and line, left on for a quarter of an hour, and tried again as warm as
    it became. Each failure is one line: when, and the rail with what it is then, or what happened.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> maker = demo_set("label maker")
    >>> misses(begin(maker, (), "demo"))
    ()
    >>> misses(begin(maker, (read_fault("U1 open", maker),), "demo"))[0]
    'full load, line 90 %, cold: +5 V is 0 V'
    """
    return tuple(each_miss(state))


@dataclass(frozen=True)
class _Board:
    """A set as it is fitted now. What has the same `text` is the same board and works alike."""

    text: str
    state: State = field(compare=False)


def first_miss(state: State) -> str:
    """The first line of `misses`, "" where it works; remembered for the next board like it.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> first_miss(begin(demo_set("label maker"), (), "demo"))
    ''
    """
    fitted = [(name, place.fitted, place.pads) for name, place in state.places.items()]
    return _first_miss(_Board(repr((state.set.text, fitted)), state))


@lru_cache(maxsize=KEPT)
def _first_miss(board: _Board) -> str:
    return next(each_miss(board.state), "")


def each_miss(state: State) -> Iterator[str]:
    """The lines of `misses` one by one, worked out as they are asked for.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> printer = demo_set("printer controller")
    >>> next(each_miss(begin(printer, (read_fault("M1 corrupt", printer),), "demo")))
    'M1 holds no program that runs'
    """
    yield from _empty_chips(state)
    rested = replace(state, charges={}, heat={}, clipped="", ended=None, harm=())
    yield from _tried(rested, "cold")
    heat, events = _soaked(rested)
    yield from (f"full load, line 110 %, left on: {event.rstrip('.')}" for event in events)
    if not events:
        yield from _tried(replace(rested, heat=heat), "warm")


def _empty_chips(state: State) -> Iterator[str]:
    """What has no volts to miss: a chip that is not there or holds something else."""
    for part in state.set.parts:
        fitted = state.places[part.name].fitted
        if part.what in NO_CURRENT and (fitted is None or fitted.fault is not None):
            yield f"{part.name} holds no program that runs"


def _tried(state: State, heat: str) -> Iterator[str]:
    for load in (FULL, LIGHT):
        for line in LINES:
            on = replace(state, load=load, feed=Feed(OWN_PLUG, line=line), charges={})
            now = electric(on, steps=FINE_STEPS)
            where = f"{load} load, line {line * 100:.0f} %, {heat}"
            yield from (f"{where}: {miss}" for miss in _missed(state.set, now))


def _soaked(state: State) -> tuple[dict[str, float], tuple[str, ...]]:
    """The most K above the room that each part reaches, and what happened meanwhile."""
    on = replace(state, load=FULL, feed=Feed(OWN_PLUG, line=max(LINES)), charges={})
    most: dict[str, float] = {}
    for _ in range(round(SOAK / STEP)):
        on, events = passing(on, STEP)
        for name, kelvin in dict(on.heat).items():
            once = OPENED if name in on.warmed else 0.0  # a crack that opened has cooled since
            most[name] = max(most.get(name, 0.0), kelvin, once)
        if events:
            return most, events
    return most, ()


def _missed(of: PracticeSet, now: Electric) -> Iterator[str]:
    for rail in of.rails:
        volts = now.mean[rail.point]
        ripple = now.high[rail.point] - now.low[rail.point]
        if not rail.low <= volts <= rail.high:
            yield f"{rail.name} is {round(volts, 2) + 0.0:.3g} V"
        elif rail.ripple is not None and ripple > rail.ripple:
            yield f"{rail.name} has {engineering(ripple, 'V', 3)} of ripple"
