"""Where probes and hands go: what the names of parts and points mean on the board as it is now."""

from __future__ import annotations

from repairlib.bench.practice_set import BoardPart, PracticeSet
from repairlib.bench.state import Fitted, Place, State
from repairlib.core.errors import RepairlibError

OLD = "old "  # before a part's name: the one that was taken out and lies on the bench


def loose_ends(name: str) -> tuple[str, str]:
    """The two ends of a part that lies on the bench.

    >>> loose_ends("C1")
    ('c1 lead 1', 'c1 lead 2')
    """
    return f"{name.casefold()} lead 1", f"{name.casefold()} lead 2"


def lifted_ends(name: str) -> tuple[str, str]:
    """The two ends of a part of which one leg is lifted, the other leg being the first.

    >>> lifted_ends("C1")
    ('c1 leg 1', 'c1 leg 2')
    """
    return f"{name.casefold()} leg 1", f"{name.casefold()} leg 2"


def part_at(state: State, name: str) -> BoardPart:
    """The part of that name, also with `old ` before it. Raises RepairlibError for another name."""
    return state.set.part(name.removeprefix(OLD))


def fitted_at(state: State, part: BoardPart) -> Fitted:
    """The part as it sits in its place. Raises RepairlibError where the place is empty."""
    fitted = state.places[part.name].fitted
    if fitted is None:
        raise RepairlibError(part.name, "its place is empty", "a part that is in")
    return fitted


def is_part(of: PracticeSet, name: str) -> bool:
    """Whether a name is that of a part, not of a point."""
    return any(part.name == name.removeprefix(OLD) for part in of.parts)


def ends(state: State, at: tuple[str, ...]) -> tuple[str, str]:
    """The two points where the probes go, red first.

    A part's name means across that part; across the part on the bench when its place is empty and
    when `old ` stands before it; across the part alone when one leg is lifted. One point alone is
    measured against the clip, without one against the zero point. Raises RepairlibError for what is
    not there and for a part and a point mixed.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> state = begin(demo_set("desk radio"), (), "demo")
    >>> ends(state, ("C1",)), ends(state, ("out",)), ends(state, ("rail", "out"))
    (('rail', '0'), ('out', '0'), ('rail', 'out'))
    """
    parts = [name for name in at if is_part(state.set, name)]
    if not at or len(at) > 2 or (parts and len(at) > 1):
        raise RepairlibError(" ".join(at), "no two places for two probes", "C1, or rail 0")
    if parts:
        return _across(state, at[0])
    for point in at:
        if point not in state.set.points:
            raise RepairlibError(point, "no such point on this board", ", ".join(state.set.points))
    other = at[1] if len(at) == 2 else state.clipped or "0"
    if at[0] == other:
        raise RepairlibError(at[0], "both probes would be at one point", "two points")
    return at[0], other


def _across(state: State, name: str) -> tuple[str, str]:
    part = part_at(state, name)
    if part.circuit is None:
        raise RepairlibError(name, "it has more than two ends", "two points, such as rail 0")
    place: Place = state.places[part.name]
    if name.startswith(OLD) and place.taken is None:
        raise RepairlibError(name, f"no old {part.name} lies on the bench", part.name)
    if place.leg_up and not name.startswith(OLD):
        return lifted_ends(part.name)
    if name.startswith(OLD) or (place.fitted is None and place.taken is not None):
        return loose_ends(part.name)
    return part.nodes


def is_loose(state: State, one: str) -> bool:
    """Whether a point is an end of a part that lies on the bench, or has one leg lifted."""
    return one not in state.set.points


def has_leg_up(state: State, name: str) -> bool:
    """Whether a part is meant of which one leg is lifted, and not an old one on the bench."""
    return not name.startswith(OLD) and is_part(state.set, name) and state.place(name).leg_up


def on_mains_side(of: PracticeSet, point: str) -> bool:
    """Whether a point belongs to the mains side: only parts of that side meet there.

    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> on_mains_side(radio, "l1"), on_mains_side(radio, "a"), on_mains_side(radio, "0")
    (True, False, False)
    """
    there = [part for part in of.parts if point in part.nodes]
    return bool(there) and point != "0" and all(part.mains for part in there)
