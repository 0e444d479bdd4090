"""Which of the readings pointed to a fault: it would have been another on a board without it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from repairlib.bench.attempt import Done
from repairlib.bench.conditions import Fault
from repairlib.bench.moves import Told
from repairlib.bench.state import SOUND, Fitted, State
from repairlib.bench.step import step
from repairlib.core.errors import RepairlibError

# Below these two readings are the same to a person at the bench; choices of this workbook.
SHARE = 0.05
LEAST = {"V": 0.01, "Ω": 0.05, "A": 1e-3, "°C": 3.0}
SEEN = ("look", "smell", "read chip")


def pointed_to(done: Iterable[Done], fault: Fault) -> Done | None:
    """The first that pointed to that part, None when nothing did.

    A reading points to a part when it was taken at the ends of that part (against each other or
    against the zero point) and the part, were it sound, would have made it another. For what lies
    on the mains side, which nobody probes, the ends of the set's feed take their place. What is
    seen of a part counts alike.
    """
    return next((one for one in done if _at(one, fault) and _tells(one, fault)), None)


def _at(one: Done, fault: Fault) -> bool:
    part = one.before.set.part(fault.part)
    if one.told.reading is None:
        named = any(word.casefold() == part.name.casefold() for word in one.move.at)
        return one.move.verb in SEEN and (named or not one.move.at)
    ends = one.before.set.part(one.before.set.feed).nodes if part.mains else part.nodes
    points = _points(one)
    return points <= {*ends, "0"} and bool(points & (set(ends) - {"0"}))


def _points(one: Done) -> set[str]:
    """The points that a reading was taken at; the ends of a part for its name."""
    of = one.before.set
    by_name = {part.name.casefold(): part.nodes for part in of.parts}
    points: set[str] = set()
    for point in filter(None, one.told.reading.points if one.told.reading else ()):
        points |= set(by_name.get(point.casefold(), (point,)))
    return points


def _tells(one: Done, fault: Fault) -> bool:
    """Whether the same move on a board without that fault would have shown something else."""
    try:
        _, told = step(without(one.before, fault), one.move)
    except RepairlibError:
        return True
    return differ(one.told, told)


def without(state: State, fault: Fault) -> State:
    """The state as it would be if that part were sound."""
    fitted = state.place(fault.part).fitted
    sound = Fitted() if fitted is None else replace(fitted, fault=None)
    return state.with_place(fault.part, fitted=sound, pads=SOUND)


def differ(one: Told, other: Told) -> bool:
    """Whether a person would call two readings different."""
    if one.reading is None or other.reading is None:
        return one.words != other.words
    first, second = one.reading.value, other.reading.value
    if first is None or second is None:
        return one.reading.shown != other.reading.shown
    least = LEAST.get(one.reading.unit, 0.0)
    return abs(first - second) > max(SHARE * max(abs(first), abs(second)), least)
