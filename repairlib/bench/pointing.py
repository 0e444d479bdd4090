"""Which of the readings pointed to a fault: it would have been another on a board without it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from repairlib.bench.attempt import Attempt, Done
from repairlib.bench.conditions import Fault
from repairlib.bench.information import OFF, believed, learned
from repairlib.bench.moves import Told
from repairlib.bench.state import SOUND, Fitted, State
from repairlib.bench.step import step
from repairlib.bench.suspects import listed_suspects
from repairlib.bench.where import loose_ends
from repairlib.core.errors import RepairlibError

# Below these two readings are the same to a person at the bench; choices of this workbook.
SHARE = 0.05
LEAST = {"V": 0.01, "Ω": 0.05, "A": 1e-3, "°C": 3.0}
LIKELY = 0.5  # of the belief, from which what was measured points to a part without touching it
SEEN = ("look", "smell", "read chip")


def pointed_to(done: Iterable[Done], fault: Fault) -> Done | None:
    """The first that pointed to that part, None when nothing did.

    A reading points to a part when it was taken at the ends of that part (against each other or
    against the zero point) and the part, were it sound, would have made it another. For what lies
    on the mains side, which nobody probes, the ends of the set's feed take their place. What is
    seen of a part counts alike.
    """
    return next((one for one in done if _at(one, fault) and _tells(one, fault)), None)


def left_over(done: Iterable[Done], attempt: Attempt, parts: Iterable[str]) -> float:
    """The share of the belief that blames these parts, after all that was measured.

    Of each reading is asked which faults of the set it fits; that takes seconds.
    """
    task = attempt.task
    belief = believed(listed_suspects(task.set, task.faults))
    read = 0
    for one in done:
        reading = one.told.reading
        if reading is not None and one.move.verb in OFF:
            belief = learned(belief, one.move, reading, one.before)
            read += 1
    asked = set(parts)
    if not read:
        return 0.0
    return sum(
        share
        for suspect, share in zip(belief.suspects, belief.shares, strict=True)
        if asked.intersection(suspect.parts)
    )


def _at(one: Done, fault: Fault) -> bool:
    part = one.before.set.part(fault.part)
    reading = one.told.reading
    if reading is None:
        named = any(word.casefold() == part.name.casefold() for word in one.move.at)
        return one.move.verb in SEEN and (named or not one.move.at)
    if part.name in reading.points:
        return True
    ends = one.before.set.part(one.before.set.feed).nodes if part.mains else part.nodes
    points, own = set(reading.points), {*ends, *loose_ends(part.name)} - {"0"}
    return points <= {*own, "0"} and bool(points & own)


def _tells(one: Done, fault: Fault) -> bool:
    """Whether the same move on a board without that fault would have shown something else."""
    try:
        _, told = step(without(one.before, fault), one.move)
    except RepairlibError:
        return True
    return differ(one.told, told)


def without(state: State, fault: Fault) -> State:
    """The state as it would be if that part were sound."""
    place = state.place(fault.part)
    if place.fitted is None and place.taken is not None:
        return state.with_place(fault.part, taken=replace(place.taken, fault=None))
    sound = Fitted() if place.fitted is None else replace(place.fitted, fault=None)
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
