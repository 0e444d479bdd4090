"""The plan as rows of text: one for each reference, the same for a table, CSV and JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING

from repairlib.recap.item import Item

if TYPE_CHECKING:
    from repairlib.recap.planner import Plan

COLUMNS = (
    "reference",
    "verdict",
    "old part",
    "new part",
    "polarity",
    "step",
    "measured",
    "must go or may stay",
    "catalogue part",
    "price each",
    "expected life",
    "ripple",
    "ESR class",
    "why",
    "rules",
    "choice",
    "notes",
    "line",
    "source text",
)


def rows_of(plan: Plan) -> list[dict[str, str | int]]:
    """One dict of texts for each reference: first those to replace, in fitting order."""
    rows = [_row(plan, item, step.title) for step in plan.steps for item in step.items]
    others = plan.may_stay + plan.held + plan.judged + plan.kept
    return rows + [_row(plan, item) for item in others]


def _row(plan: Plan, item: Item, step: str = "") -> dict[str, str | int]:
    made_by = "; ".join(f"{name}: {did}" for name, did in item.new.rules) if item.new else ""
    measured, selection, expected = item.measured, item.selection, item.expected
    bought = selection.part if selection else None
    values = (
        item.reference,
        item.verdict,
        item.old.text,
        str(item.new) if item.new else "",
        item.polarity,
        step,
        measured.readings if measured else "",
        str(measured) if measured else "",
        bought.part if bought else "",
        str(bought.price) if bought else "",
        expected.life if expected else "",
        expected.ripple if expected else "",
        expected.esr if expected else "",
        item.why,
        made_by,
        "; ".join(selection.explained()) if selection else "",
        "; ".join(item.looks),
        item.line,
        plan.source(item),
    )
    return dict(zip(COLUMNS, values, strict=True))
