"""Which parts came out of the board, and which of them were good."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.attempt import Done


class Removed(NamedTuple):
    """A part that came out at the move `number`: whether it was good, and whether it went back."""

    number: int
    part: str
    good: bool
    back: bool


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
            found[name] = Removed(number, name, was.fault is None, back)
    return list(found.values())
