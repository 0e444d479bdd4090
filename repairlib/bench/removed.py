"""Which parts came out of the board, which of them were good, and which died on it."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.attempt import Done
from repairlib.bench.care import CHANGES
from repairlib.bench.where import loose_ends


class Removed(NamedTuple):
    """A part that came out at the move `number`: whether it was good, and whether it went back.

    `tested`: it was measured while it lay on the bench.
    """

    number: int
    part: str
    good: bool
    back: bool
    tested: bool


def removed(done: tuple[Done, ...]) -> list[Removed]:
    """Each part that was on the board at the beginning and came out, once, in order."""
    found: dict[str, Removed] = {}
    for number, one in enumerate(done, 1):
        for name, place in one.before.places.items():
            was, now = place.fitted, one.after.places[name].fitted
            if was is None or was.new or name in found or (now is not None and not now.new):
                continue
            stays = done[-1].after.places[name].fitted
            back = stays is not None and not stays.new
            tested = any(set(loose_ends(name)) & _probed(later) for later in done[number:])
            found[name] = Removed(number, name, was.fault is None, back, tested)
    return list(found.values())


def _probed(one: Done) -> set[str]:
    return set(one.told.reading.points) if one.told.reading else set()


def died(done: tuple[Done, ...]) -> list[str]:
    """What was good and died after hands had been at the board, such as `F1 blown`, in order."""
    found, changed = [], False
    for one in done:
        changed = changed or one.move.verb in CHANGES
        for name, place in one.before.places.items():
            was, now = place.fitted, one.after.places[name].fitted
            if changed and was and now and was.fault is None and now.fault is not None:
                found.append(f"{name} {now.fault.condition}")
    return found
