"""Which of the readings pointed to a fault: outside what the set allows, or telling it from others.

A reading points to a part when it was taken at its ends and shows what a good part cannot: a rail
outside its window, another point far off what it should be, a test of the dead part beyond what the
meter may be off. What was measured elsewhere points when hardly another fault of the set is left. A
sign that eyes or nose found, and a rail that fails by this fault, are hints.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from math import sqrt
from typing import NamedTuple

from repairlib.bench.attempt import Done, Task
from repairlib.bench.conditions import Fault
from repairlib.bench.information import OFF, believed, learned, predicted
from repairlib.bench.moves import Move, Reading
from repairlib.bench.oscilloscope import AC
from repairlib.bench.practice_set import PracticeSet, Rail
from repairlib.bench.state import ROOM, SOUND, Fitted, State
from repairlib.bench.step import at_once
from repairlib.bench.suspects import Suspect, listed_suspects
from repairlib.bench.warming import usual_heat
from repairlib.bench.where import lifted_ends, loose_ends
from repairlib.core.errors import RepairlibError

# Choices of this workbook.
HINT = 0.5  # of what a reading that points is worth
FAR = 0.2  # of a voltage or a current that has no window, from which it is far off
HOTTER = 10.0  # °C, from which a part is oddly hot
LIKELY = 0.5  # of the belief, from which what was measured points to a part without touching it
LEAST_PEAKS = 2 * sqrt(2)  # of the r.m.s. value: a sine; every other ripple has more
LIVE = ("volts", "ac volts", "scope", "amps")
EYES, CHIP = ("look", "smell"), "read chip"
SEEN_AS_IT_IS = ("gone", "pad lifted", "blown", "burst")  # what a look tells without a doubt
NOTHING_WRONG = Suspect("", (), 1.0)


class Pointer(NamedTuple):
    """How much pointed to a fault: 1 for a reading, HINT for a hint, 0 for nothing; and what."""

    share: float
    words: str


def pointer(done: Iterable[Done], fault: Fault, task: Task) -> Pointer:
    """What pointed best to that fault. Where only readings elsewhere might, that takes seconds."""
    done = tuple(done)
    for one in done:
        if _points_at(one, fault):
            return Pointer(1.0, f"{_said(one)} pointed to it.")
    if left_over(done, task, [fault.part]) >= LIKELY:
        return Pointer(1.0, "what was measured left hardly anything else.")
    for number, one in enumerate(done, start=1):
        if _hints_at(one, fault):
            what = f"{one.move.verb}, move {number}" if one.move.verb in EYES else _said(one)
            return Pointer(HINT, f"{what}: a hint, and no reading made sure of it.")
    return Pointer(0.0, "it is mended, but nothing pointed to it before.")


def _said(one: Done) -> str:
    return one.told.words.rstrip(".")


def left_over(done: Iterable[Done], task: Task, parts: Iterable[str]) -> float:
    """The share of the belief that blames these parts, after all that was measured.

    Of each reading is asked which faults of the set it fits. Readings which a sound set shows too
    blame nothing: without one that is wrong the share is 0.
    """
    read = [(one, one.told.reading) for one in done if one.told.reading and one.move.verb in OFF]
    if not any(_is_wrong(one) for one, _ in read):
        return 0.0
    belief = believed(listed_suspects(task.set, task.faults))
    for one, reading in read:
        belief = learned(belief, one.move, reading, one.before)
    asked = set(parts)
    return sum(
        share
        for suspect, share in zip(belief.suspects, belief.shares, strict=True)
        if asked.intersection(suspect.parts)
    )


def _is_wrong(one: Done) -> bool:
    """Whether a reading shows that something is wrong with the set."""
    inside = is_inside(one)
    if inside is not None:
        return not inside
    due = predicted(one.before, NOTHING_WRONG, one.move)
    return due is not None and _far(one, None if isinstance(due, str) else due)


def _points_at(one: Done, fault: Fault) -> bool:
    part = one.before.set.part(fault.part)
    if one.told.reading is None or one.move.verb in EYES:
        named = any(word.casefold() == part.name.casefold() for word in one.move.at)
        if one.move.verb == CHIP:
            return named and _tells(one, fault)
        return one.move.verb == "look" and (
            (fault.condition in SEEN_AS_IT_IS and _tells(one, fault))
            or (fault.condition == "reversed" and named)
        )
    return _is_at(one, fault) and is_inside(one) is not True and _tells(one, fault)


def _hints_at(one: Done, fault: Fault) -> bool:
    if one.move.verb in EYES:
        named = one.before.set.part(fault.part).name.casefold()
        elsewhere = one.move.at and all(word.casefold() != named for word in one.move.at)
        return not elsewhere and _tells(one, fault)
    return is_inside(one) is False and _tells(one, fault)


def _is_at(one: Done, fault: Fault) -> bool:
    """Whether the probes were at the ends of that part, against each other or the zero point.

    For what lies on the mains side, which nobody probes, the ends of the feed take their place.
    """
    of, reading = one.before.set, one.told.reading
    part = of.part(fault.part)
    if reading is None:
        return False
    if part.name in reading.points:
        return True
    ends = of.part(of.feed).nodes if part.mains else part.nodes
    points, own = (
        set(reading.points),
        {*ends, *loose_ends(part.name), *lifted_ends(part.name)} - {"0"},
    )
    return points <= {*own, "0"} and bool(points & own)


def _tells(one: Done, fault: Fault) -> bool:
    """Whether the same move on a board without that fault would have shown something else."""
    try:
        _, told = at_once(without(one.before, fault), one.move)
    except RepairlibError:
        return True
    if one.told.reading is None or told.reading is None or one.move.verb in EYES:
        return one.told.words != told.words
    if one.move.verb == "temperature":
        return _is_hot(one)
    return _far(one, told.reading.value)


def _is_hot(one: Done) -> bool:
    """Whether a part is hotter than it becomes in the sound set, however long that is on."""
    reading = one.told.reading
    if reading is None or reading.value is None:
        return False
    usual = usual_heat(one.before.set).get(reading.points[0], 0.0)
    return reading.value > ROOM + usual + HOTTER


def without(state: State, fault: Fault) -> State:
    """The state as it would be if that part were sound."""
    place = state.place(fault.part)
    if place.fitted is None and place.taken is not None:
        return state.with_place(fault.part, taken=replace(place.taken, fault=None))
    sound = Fitted() if place.fitted is None else replace(place.fitted, fault=None)
    return state.with_place(fault.part, fitted=sound, pads=SOUND)


def _far(one: Done, due: float | None) -> bool:
    """Whether a reading is farther off what was due than a good part and the meter may be.

    None is what is over the range. Live tests of a dead part, and volts of one at rest, say nothing
    of a part.
    """
    reading, verb = one.told.reading, one.move.verb
    if reading is None:
        return False
    if verb not in OFF or one.before.powered != (verb in LIVE):
        return False
    if reading.value is None or due is None:
        return reading.value is not due
    apart, most = abs(reading.value - due), max(abs(reading.value), abs(due))
    share, least = OFF[verb]
    if verb in LIVE and is_inside(one) is None:
        share = FAR
    return apart > max(share * most, least, reading.error)


def rail_read(of: PracticeSet, move: Move, reading: Reading | None) -> Rail | None:
    """The rail whose volts, ripple or trace were read against the zero point, if it was one."""
    if reading is None or move.verb not in ("volts", "ac volts", "scope"):
        return None
    points = set(reading.points)
    return next((rail for rail in of.rails if points == {rail.point, "0"}), None)


def is_inside(one: Done) -> bool | None:
    """Whether a rail was read within its window; None where none was read, or it has none."""
    reading = one.told.reading
    rail = rail_read(one.before.set, one.move, reading) if one.before.powered else None
    if rail is None or reading is None or reading.value is None:
        return None
    if one.move.verb == "volts":
        return rail.low - reading.error <= abs(reading.value) <= rail.high + reading.error
    peaks = reading.value * (LEAST_PEAKS if one.move.verb == "ac volts" else 1.0)
    quiet = rail.ripple is None or peaks <= rail.ripple + reading.error
    trace = reading.trace
    if trace is None or trace.coupling == AC:
        return quiet if rail.ripple is not None else None
    return quiet and rail.low <= abs(trace.mean) <= rail.high
