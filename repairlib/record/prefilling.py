"""What a recap plan can say for the job card: the parts fitted so far, and the cautions it names.

These are proposals. Who did the work looks them through and adds them; nobody has acknowledged a
caution before that.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.recap import Item, Plan, Stop, route_of
from repairlib.record.entries import LONGEST_NAME


class Proposed(NamedTuple):
    """An entry that can be added: its kind, and what it says."""

    kind: str
    said: dict[str, str]


def prefill(plan: Plan, fitted: Collection[str] = ()) -> list[Proposed]:
    """The entries to propose when the references `fitted` have got their new parts.

    Add one with `add_entry(path, one.kind, by, **one.said)`. Raises RepairlibError for a reference
    that is no stop of the route: it stays, waits, or is left to a qualified person.

    >>> from repairlib.recap import plan
    >>> made = plan("C1,47/25,elect\\nC2,10/16,elect\\n")
    >>> print(prefill(made, ["C1"])[0].said["new"])
    47 µF 25 V 105 °C polar aluminium
    """
    stops = route_of(plan)
    known = [stop.reference for stop in stops]
    for reference in fitted:
        if reference not in known:
            wrong = "no part of this plan that is fitted at this bench"
            raise RepairlibError(reference, wrong, ", ".join(known) or "none")
    parts = [Proposed("part", _part(stop)) for stop in stops if stop.reference in fitted]
    return parts + [Proposed("caution", {"hazard": key}) for key in plan.cautions]


def _part(stop: Stop) -> dict[str, str]:
    said = {"reference": stop.reference, "old": stop.item.old.text, "new": _new(stop.item)}
    said |= {"plus": stop.plus}
    return {name: _in_a_cell(text) or "not stated" for name, text in said.items()}


def _new(item: Item) -> str:
    part = item.selection.part if item.selection else None
    return f"{part.part}: {item.new}" if part else str(item.new)


def _in_a_cell(text: str) -> str:
    """A text of the plan on one line; what is too long for a cell ends in …"""
    line = " ".join(text.splitlines()).strip()
    return line if len(line) <= LONGEST_NAME else f"{line[: LONGEST_NAME - 1]}…"
