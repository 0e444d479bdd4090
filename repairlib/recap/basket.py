"""From the places of all boards to kinds of part, and the cheapest part for each kind.

A kind is one proposal, such as 10 µF 16 V radial polar. Its places may have different room, so that
not every part fits each of them: then every way to group the rooms is compared, because one pack
for all places is cheaper than one for each.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from decimal import Decimal
from functools import reduce
from typing import NamedTuple

from repairlib.recap.catalogue import Catalogue
from repairlib.recap.choice import Selection, Taken, least_cost, selection_of
from repairlib.recap.item import Item
from repairlib.recap.selection import Alike, Fitting, Selector, selector_of

MOST_ROOMS = 6  # of one kind; with more, each room is bought for alone


class Wanted(NamedTuple):
    """One place: the item, and on how many boards it is to be fitted."""

    item: Item
    boards: int


class Group(NamedTuple):
    """Places that get one part: the `taken` one, None where there is none or no catalogue."""

    wanted: tuple[Wanted, ...]
    taken: Taken | None
    selection: Selection | None

    @property
    def needed(self) -> int:
        return sum(one.boards for one in self.wanted)


class _Room(NamedTuple):
    """Places of one kind into which the same parts fit."""

    fitting: Fitting
    wanted: tuple[Wanted, ...]


def groups_of(wanted: Iterable[Wanted], catalogue: Catalogue | None) -> list[Group]:
    """The places in groups of one part each; the part chosen is noted in the items.

    Without a catalogue there is a group for each kind, and nothing is chosen.
    """
    kinds: dict[tuple, list[Wanted]] = {}
    for one in wanted:
        kinds.setdefault((str(one.item.new), one.item.low_impedance), []).append(one)
    if catalogue is None:
        return [Group(tuple(kind), None, None) for kind in kinds.values()]
    selector = selector_of(catalogue)
    groups = [
        _group(rooms, catalogue.currency)
        for kind in kinds.values()
        for rooms in _cheapest_grouping(_rooms(kind, selector))
    ]
    for group in groups:
        for one in group.wanted:
            one.item.selection = group.selection
    return groups


def _rooms(kind: list[Wanted], selector: Selector) -> list[_Room]:
    """The places of one kind by what fits into them."""
    rooms: dict[frozenset[Alike], tuple[Fitting, list[Wanted]]] = {}
    for one in kind:
        fitting = selector.fitting(one.item.new, one.item.place, one.item.low_impedance)
        rooms.setdefault(fitting.able, (fitting, []))[1].append(one)
    return [_Room(fitting, tuple(places)) for fitting, places in rooms.values()]


def _cheapest_grouping(rooms: list[_Room]) -> list[tuple[_Room, ...]]:
    """The rooms in groups that share a part, so that all together costs least."""
    able = [room for room in rooms if room.fitting.able]
    unable = [(room,) for room in rooms if not room.fitting.able]
    if not able or len(able) > MOST_ROOMS:
        return [(room,) for room in rooms]
    cost_of = _remembered(_least_cost)
    ways = (way for way in _partitions(able) if all(map(_shared, way)))
    best = min(ways, key=lambda way: (sum(map(cost_of, way)), len(way)))
    return [*best, *unable]


def _partitions(rooms: list[_Room]) -> Iterator[list[tuple[_Room, ...]]]:
    """Every way to put the rooms into groups."""
    if not rooms:
        yield []
        return
    first, *rest = rooms
    for groups in _partitions(rest):
        yield [(first,), *groups]
        for at, group in enumerate(groups):
            yield [*groups[:at], (first, *group), *groups[at + 1 :]]


def _shared(rooms: tuple[_Room, ...]) -> frozenset[Alike]:
    """What fits into each of these rooms."""
    return reduce(frozenset.intersection, (room.fitting.able for room in rooms))


def _needed(rooms: tuple[_Room, ...]) -> int:
    return sum(one.boards for room in rooms for one in room.wanted)


def _least_cost(rooms: tuple[_Room, ...]) -> Decimal:
    return least_cost(_shared(rooms), _needed(rooms)).cost


def _remembered(work: Callable) -> Callable:
    """`work`, which is done once for each group of rooms."""
    known: dict[tuple[int, ...], Decimal] = {}

    def done(rooms: tuple[_Room, ...]) -> Decimal:
        key = tuple(sorted(map(id, rooms)))
        if key not in known:
            known[key] = work(rooms)
        return known[key]

    return done


def _group(rooms: tuple[_Room, ...], currency: str) -> Group:
    """The rooms as one group with the part that is taken for them."""
    wanted = tuple(one for room in rooms for one in room.wanted)
    fitting = rooms[0].fitting
    if not fitting.able:
        return Group(wanted, None, Selection(None, fitting.why_none()))
    every = reduce(frozenset.intersection, (room.fitting.all_able for room in rooms))
    barred = fitting.barred if len(rooms) == 1 else _barred_somewhere(rooms)
    shared = Fitting(_shared(rooms), every, barred, fitting.spoken)
    selection, taken = selection_of(shared, _needed(rooms), currency)
    return Group(wanted, taken, selection)


def _barred_somewhere(rooms: tuple[_Room, ...]) -> tuple:
    """What may not go into one of the rooms, each with its first reason."""
    reasons: dict[str, tuple] = {}
    for room in rooms:
        for part, why in room.fitting.barred:
            reasons.setdefault(part.part, (part, why))
    return tuple(reasons.values())
