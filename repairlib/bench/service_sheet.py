"""What a set has to give when it is well, as a service sheet says it: rails, windows, and when."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.care import SOAKED
from repairlib.bench.move_words import HIGH, LOW
from repairlib.bench.practice_set import PracticeSet
from repairlib.core.quantity import brief

WHEN_DUE = (
    "On its own plug, at light and at full load, "
    f"with the line from {100 * LOW:g} % to {100 * HIGH:g} %, "
    f"cold and after {SOAKED / 60:g} minutes with the power on."
)


class Due(NamedTuple):
    """A rail of a set: the point where it is read against 0, and what is right there, as read.

    `ripple` is the most, peak to peak, "" where nothing is said of it.
    """

    rail: str
    point: str
    nominal: str
    low: str
    high: str
    ripple: str

    def __str__(self) -> str:
        most = f", ripple at most {self.ripple}" if self.ripple else ""
        name = f"{self.rail} at {self.point}"
        return f"{name}: {self.nominal} ({self.low} to {self.high}{most})"


def rails_due(of: PracticeSet) -> tuple[Due, ...]:
    """The rails that a set must have, in the order of its lines.

    >>> from repairlib.bench.practice_set import demo_set
    >>> print(str(rails_due(demo_set("desk radio"))[2]).replace("\u00a0", " "))
    +9 V at out: 9 V (8.55 V to 9.45 V, ripple at most 50 mV)
    """
    return tuple(
        Due(
            rail.name,
            rail.point,
            brief((rail.low + rail.high) / 2, "V"),
            brief(rail.low, "V"),
            brief(rail.high, "V"),
            "" if rail.ripple is None else brief(rail.ripple, "V"),
        )
        for rail in of.rails
    )
