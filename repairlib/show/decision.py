"""What a plan decides about one part, as a technician would note it: the verdict, then the why."""

from __future__ import annotations

from repairlib.core.html import Html, fold, named, text, told
from repairlib.recap import HOLD, Item, Plan

BREAKS = "white-space:normal;overflow-wrap:anywhere"  # a line of a list on a narrow page
STATES = {"replace": "right", "may stay": "right", "keep": "right", "judge": "partly right"}


class Decided:
    """The decision on `reference` of a plan: in a notebook a card, everywhere else its lines.

    Raises RepairlibError when the list does not name it.

    >>> from repairlib.recap import plan
    >>> note = Decided(plan("C1,50/15,elect"), "C1")
    >>> "47 µF 16 V" in note._repr_html_().replace("\\xa0", " ")
    True
    """

    def __init__(self, plan: Plan, reference: str):
        self.lines = plan.explain(reference)
        self.plan = plan
        self.items = [item for item in plan.all_items if item.reference == reference]

    def __repr__(self) -> str:
        return self.lines

    def _repr_html_(self) -> str:
        return Html("".join(_card(self.plan, item) for item in self.items))


def decided(plan: Plan, reference: str) -> Decided:
    """What the plan decides about the part of that reference, and why."""
    return Decided(plan, reference)


def _card(plan: Plan, item: Item) -> str:
    said = f"{item.reference}: {item.verdict}" + (f" by {item.new}" if item.new else "")
    state = "cannot read" if item.verdict == HOLD else STATES.get(item.verdict, "partly right")
    why = "" if item.new else f"{item.why[:1].upper()}{item.why[1:].rstrip('.')}."
    rows: list[tuple[object, object]] = [
        ("The list says", Html(f'<code style="{BREAKS}">{text(plan.source(item))}</code>'))
    ]
    if item.measured is not None:
        rows.append(("Measured", item.measured.readings))
        rows += [] if item.measured.why in item.why else [("", str(item.measured))]
    rows += [("Look at", Html("<br>".join(map(text, item.looks))))] if item.looks else []
    rules: list[tuple[object, object]] = list(item.new.rules) if item.new else []
    rules += [("catalogue", line) for line in item.selection.explained()] if item.selection else []
    folded = fold("By the rules", named(rules)) if rules else ""
    return told(state, said, [why] if why else [], named(rows) + folded)
