"""What capacitors hold a time later, of a circuit at rest, discharging, or fed by mains.

Without a sine: a few runs of equal steps, each longer than those before. In the first, backward
Euler, what is fast comes to rest without ringing; what is slow follows in the later. With a sine:
one cycle tells by how much what is held changes and how that is carried on, so that many cycles are
summed up as if all went like that one. After each such leap the cycle there tells whether it was
right, else it is done again in shorter ones. Source: nodal analysis; following the envelope of a
periodic drive as in L. Petzold, An efficient numerical method for highly oscillatory ordinary
differential equations, SIAM Journal on Numerical Analysis 18 (1981), from memory.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import lru_cache

from repairlib.circuits import BACKWARD_EULER, TRAPEZOIDAL, CircuitPart, Stepper, way_left

FIRST, STEPS = 1e-3, 30  # s of the first step, steps of a run
GROWTH = {TRAPEZOIDAL: 3.0, BACKWARD_EULER: 2.0}  # from run to run, of the steps
CYCLE_STEPS = 60  # of a cycle of mains
LONGER, SHORTER, MOST_LEAPS = 4, 8, 120  # how leaps grow, and shrink where one was wrong
WRONG = 0.02  # of the most that is held, by which a leap may be off
FARTHEST = 1e3  # V or A; what a leap should not come to
LATE, QUICK, UNSEEN = 0.1, 0.15, 1e-3  # of the way left; of that in a cycle; V that do not count
NEAR, NEAR_VOLTS = 3e-3, 3e-3  # of its volts, and V: by which a capacitor has come to its end
COARSE = 0.1  # of its volts: by which steps as long as these may miss that end
FORGETS = 0.5  # of what it held that is left after a cycle: one that is quick follows the others
KEPT = 64


def after_runs(
    parts: tuple[CircuitPart, ...],
    held: dict[str, float],
    seconds: float,
    still: float = 0.0,
    fed: bool = False,
) -> dict[str, float]:
    """What the capacitors of a circuit without a sine hold; {} once none holds more than `still`.

    With `fed` a source may cease to give: backward Euler, which takes nothing past that, all along.

    >>> parts = (CircuitPart("C1", ("a", "0"), 1e-3, {"esr": 0.0}), CircuitPart("R1", ("a", "0"), 1e3))
    >>> round(after_runs(parts, {"C1": 10.0}, 1.0)["C1"], 2)
    3.68
    """  # noqa: E501
    stepper = None
    for step, steps, method in _runs(seconds, BACKWARD_EULER if fed else TRAPEZOIDAL):
        stepper = Stepper(parts, step, method, charged=held, after=stepper)
        stepper.advance(steps)
        held = _charges(parts, stepper.kept())
        if max(map(abs, held.values()), default=0.0) <= still:
            return {}
    return held


def _runs(seconds: float, later: str) -> Iterator[tuple[float, int, str]]:
    """The runs of a time: the step of each, how many steps, by which rule after the first."""
    gone, step, method = 0.0, FIRST, BACKWARD_EULER
    while gone < seconds * (1 - 1e-9):
        step = min(step, (seconds - gone) / STEPS)
        yield step, STEPS, method
        gone, step, method = gone + STEPS * step, step * GROWTH[later], later


def after_cycles(
    parts: tuple[CircuitPart, ...],
    held: dict[str, float],
    seconds: float,
    end: Mapping[str, float] | None = None,
) -> dict[str, float]:
    """What the capacitors of a circuit with a sine hold so many seconds later.

    `end` is what they hold once it has settled; one that would not move any more holds that, and
    one that is quick: it has come to its end whatever the others do.
    """
    cycle = 1 / hertz_of(parts)
    stepper = Stepper(parts, cycle / CYCLE_STEPS, charged=held)
    before, last = stepper.held(), None
    left, leap = max(round(seconds / cycle), 1), 1
    for _ in range(MOST_LEAPS):
        change, carried = _one_cycle(stepper, before)
        if last is not None:
            begun, foreseen, its_leap, its_left = last[0], last[3], last[4], last[5]
            off = _summed(carried, change - foreseen, its_leap)[0]
            if abs(off).max(initial=0.0) > WRONG * max(abs(begun).max(initial=0.0), 1.0):
                before, change, carried, left = begun, last[1], last[2], its_left
                leap = max(its_leap // SHORTER, 1)
        if not left:
            break
        leap = min(leap, left)
        whole, foreseen = _summed(carried, change, leap)
        if abs(whole).max(initial=0.0) > FARTHEST:
            leap, (whole, foreseen) = 1, _summed(carried, change, 1)
        last = (before, change, carried, foreseen, leap, left) if leap > 1 else None
        before, left, leap = before + whole, left - leap, leap * LONGER
    stepper.begin(before)
    found = _charges(parts, stepper.kept())
    if left:
        return found
    way = stepper.named(way_left(change, carried))
    goes_on = stepper.named(carried.diagonal())
    quick = {name for name, share in goes_on.items() if abs(share) < FORGETS}
    return found | _ends(found, way, end or {}, quick)


def _ends(
    held: Mapping[str, float],
    way: Mapping[str, float],
    end: Mapping[str, float],
    quick: set[str],
) -> dict[str, float]:
    """The ends of those that are quick, or have no way left as far as steps so long can tell."""

    def is_there(name: str) -> bool:
        volts = end[name]
        moves = abs(way[name]) > NEAR_VOLTS + NEAR * abs(volts)
        return not moves and abs(held[name] - volts) <= NEAR_VOLTS + COARSE * abs(volts)

    return {name: end[name] for name in held if name in end and (name in quick or is_there(name))}


def apart(held: Mapping[str, float], end: Mapping[str, float]) -> set[str]:
    """Those that do not hold about the same."""
    return {
        name
        for name in held
        if name in end and abs(held[name] - end[name]) > NEAR_VOLTS + NEAR * abs(end[name])
    }


def _one_cycle(stepper: Stepper, before):
    """By how much a cycle changes what is held, and how that is carried into the next."""
    stepper.begin(before)
    stepper.advance(CYCLE_STEPS)
    return stepper.held() - before, stepper.carried()


def _summed(carried, change, cycles: int):
    """What so many cycles come to when each change goes on as `carried`, and the one after them."""
    import numpy as np

    whole, power = np.zeros_like(carried), np.eye(len(change))
    for digit in f"{cycles:b}":
        whole, power = whole + power @ whole, power @ power
        if digit == "1":
            whole, power = whole + power, power @ carried
    return whole @ change, power @ change


def soon_there(
    parts: tuple[CircuitPart, ...], held: Mapping[str, float], end: Mapping[str, float]
) -> bool:
    """Whether a cycle of mains that begins nine tenths on the way leads on quickly from there.

    What is that quick there, a reservoir or a resistor with its capacitor, has been so before.
    """
    near = {
        name: volts + LATE * (held.get(name, volts) - volts) if name in held else volts
        for name, volts in end.items()
    }
    stepper = Stepper(parts, 1 / hertz_of(parts) / CYCLE_STEPS, charged=near)
    stepper.advance(CYCLE_STEPS)
    after = stepper.kept()
    for name in held:
        missing = end.get(name, 0.0) - near.get(name, 0.0)
        gone = after.get(name, 0.0) - near.get(name, 0.0)
        if abs(missing) > UNSEEN and gone / missing < QUICK:
            return False
    return True


def _charges(parts: tuple[CircuitPart, ...], kept: Mapping[str, float]) -> dict[str, float]:
    return {part.name: kept[part.name] for part in parts if part.letter == "C"}


@dataclass(frozen=True)
class _Course:
    """What is asked. What has the same `text` is the same and has one answer."""

    text: str
    parts: tuple[CircuitPart, ...] = field(compare=False)
    held: dict[str, float] = field(compare=False)
    seconds: float = field(compare=False)
    end: dict[str, float] = field(compare=False)


def held_after(
    parts: tuple[CircuitPart, ...],
    held: Mapping[str, float],
    seconds: float,
    end: Mapping[str, float],
) -> dict[str, float]:
    """What the capacitors of a fed circuit hold so many seconds later, remembered.

    `end` is what they hold once it has settled.
    """
    text = repr((parts, sorted(held.items()), seconds))
    return dict(_answer(_Course(text, parts, dict(held), seconds, dict(end))))


@lru_cache(maxsize=KEPT)
def _answer(asked: _Course) -> dict[str, float]:
    if hertz_of(asked.parts):
        return after_cycles(asked.parts, asked.held, asked.seconds, asked.end)
    return after_runs(asked.parts, asked.held, asked.seconds, fed=True)


def forget() -> None:
    """Forget the answers that were kept."""
    _answer.cache_clear()


def hertz_of(parts: tuple[CircuitPart, ...]) -> float:
    """The frequency of the sine in a circuit, 0 without one."""
    return max((part.more.get("mains", 0.0) for part in parts), default=0.0)


def without_ripple(parts: tuple[CircuitPart, ...], source: str) -> tuple[CircuitPart, ...]:
    """The parts with that source silent; longer steps than its cycle would not see it."""
    return tuple(
        replace(part, value=0.0, more={**part.more, "mains": 0.0}) if part.name == source else part
        for part in parts
    )
