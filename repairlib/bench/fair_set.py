"""Whether a set and its faults are fair: sound it works, and with each of its faults it does not.

An instructor asks this of an own set before a class does.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from repairlib.bench.board_room import without_room
from repairlib.bench.conditions import Fault, read_fault, read_faults
from repairlib.bench.fuse_load import overloads
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.state import OWN_PLUG, Feed, State, begin
from repairlib.bench.still_works import each_miss, misses
from repairlib.core.errors import RepairlibError

SEED = "fair"
OPENED = ("blown", "open")
ACCEPTED = "a set that works when it is sound, and does not with each of its faults"


def fair(of: PracticeSet) -> PracticeSet:
    """The set, once it is known to be fair. Raises RepairlibError with its first reason against it.

    >>> from repairlib.bench.practice_set import demo_set
    >>> fair(replace(demo_set("label maker"), faults=(), together=("C4 short; F1 blown",)))
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'label maker': C4 short; F1 blown: F1 would not blow by that. Accepted: a set that works when it is sound, and does not with each of its faults
    """  # noqa: E501
    reason = next(unfair(of), None)
    if reason is not None:
        raise RepairlibError(of.title, reason, ACCEPTED)
    return of


def unfair(of: PracticeSet) -> Iterator[str]:
    """Each reason why nobody could learn from the set or one of its faults; none when it is fair.

    A sound set must hold its rails at every load and line, cold and warm, and its fuses. With each
    fault one of them must be missed, or nobody could say that it is broken; a fuse that would blow
    must stand with its cause in a line `together`.
    """
    yield from without_room(of)
    yield from _loose_points(of)
    try:
        blown = _blown(begin(of, (), SEED))
        sound = () if blown else misses(begin(of, (), SEED))
    except RepairlibError as problem:
        yield f"its circuit cannot be worked out: {problem}"
        return
    yield from (f"sound it misses its rails: {miss}" for miss in sound[:3])
    yield from (f"sound it blows a fuse: {one}" for one in blown)
    if sound or blown:
        return
    for line in of.faults:
        yield from _unfair_line(of, line, single=True)
    for line in of.together:
        yield from _unfair_line(of, line, single=False)


def _loose_points(of: PracticeSet) -> Iterator[str]:
    """A point on which one part ends is mistyped; the mains comes in where nothing is drawn."""
    for point in of.points:
        on_it = [part for part in of.parts if point in part.nodes]
        if len(on_it) == 1 and not on_it[0].mains:
            yield f"only {on_it[0].name} ends on point {point}: is it mistyped?"


def unfair_fault(of: PracticeSet, line: str) -> tuple[str, ...]:
    """The reasons against one line of faults, such as `C1 open` or `D1 short; F1 blown`.

    >>> from repairlib.bench.practice_set import demo_set
    >>> unfair_fault(demo_set("label maker"), "C3 dried out to 50 %")
    ('C3 dried out to 50 %: nothing that the set must do is missed, so nobody could find it',)
    """
    return tuple(_unfair_line(of, line, single=";" not in line))


def _unfair_line(of: PracticeSet, line: str, single: bool) -> Iterator[str]:
    try:
        faults = (read_fault(line, of),) if single else read_faults(line, of)
        if not single and len(faults) < 2:
            yield f"{line}: one fault is not together with anything"
        elif not any(of.part(fault.part).mains for fault in faults):
            yield from _does_not_show(of, line, faults)
            yield from _fuse_and_cause(of, line, faults)
    except RepairlibError as problem:
        yield f"{line}: {problem}"


def _does_not_show(of: PracticeSet, line: str, faults: tuple[Fault, ...]) -> Iterator[str]:
    if next(each_miss(begin(of, faults, SEED)), None) is None:
        yield f"{line}: nothing that the set must do is missed, so nobody could find it"


def _fuse_and_cause(of: PracticeSet, line: str, faults: tuple[Fault, ...]) -> Iterator[str]:
    fuses = [one for one in faults if of.part(one.part).what == "fuse" and one.condition in OPENED]
    causes = tuple(one for one in faults if one not in fuses)
    blown = _blown(begin(of, causes, SEED)) if causes else ()
    if blown and not fuses:
        yield f"{line}: {blown[0]}; a line 'together: {line}; {blown[0].split()[0]} blown' is due"
    if causes and fuses and not blown:
        yield f"{line}: {fuses[0].part} would not blow by that"


def _blown(state: State) -> tuple[str, ...]:
    on = replace(state, feed=Feed(OWN_PLUG))
    return tuple(
        f"{name} carries {amps:.3g} A and blows at its rating of {rated:g} A"
        for name, amps, rated in overloads(on)
    )
