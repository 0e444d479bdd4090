"""The route of a recap: the parts to change as stops, one after the other in the order of work.

What is left to a qualified person is no stop.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from repairlib.recap.fitting_order import is_supply
from repairlib.recap.item import Item
from repairlib.recap.planner import Plan

SUPPLY_DONE = (
    "The power supply is done: test its voltages now, before anything else gets a new part."
)
PLUS_NOT_KNOWN = "plus not known: note where it is on the old part before you take it out"


@dataclass(eq=False, slots=True)
class Stop:
    """One part to change: its `number` on the route, its Item, the title of its step.

    `before` is what to do before it, or "".
    """

    number: int
    item: Item
    step: str
    before: str = ""

    @property
    def reference(self) -> str:
        return self.item.reference

    @property
    def plus(self) -> str:
        """Where the plus goes, in words that name the side and the edge."""
        told = self.item.polarity
        return PLUS_NOT_KNOWN if told.startswith("plus as the old part") else told

    def __repr__(self) -> str:
        return f"stop {self.number}: {self.reference}"


def route_of(plan: Plan) -> list[Stop]:
    """The stops of a plan.

    >>> from repairlib.recap.planner import plan
    >>> route_of(plan("C2,10/16,elect\\nC1,47/25,elect\\nC3,.1,film\\nC4,22/400,elect"))
    [stop 1: C1, stop 2: C2]
    """
    stops: list[Stop] = []
    for step in plan.steps:
        for item in () if step.handed_on else step.items:
            leaves_supply = bool(stops) and _on_supply(stops[-1].item) and not _on_supply(item)
            before = SUPPLY_DONE if leaves_supply else ""
            stops.append(Stop(len(stops) + 1, item, step.title, before))
    return stops


def here_on(stops: Sequence[Stop], done: Collection[str]) -> int:
    """The index of the first stop that is not done; the number of stops when all are."""
    places = (at for at, stop in enumerate(stops) if stop.reference not in done)
    return next(places, len(stops))


def _on_supply(item: Item) -> bool:
    return item.place is not None and is_supply(item.place.area)
