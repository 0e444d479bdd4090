"""The plan as rows of text: one for each reference, the same for a table, CSV and JSON."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from repairlib.recap.fitting_order import Step
from repairlib.recap.item import Item

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


Row = dict[str, str | int]


def rows_of(
    steps: Iterable[Step], others: Iterable[Item], source_of: Callable[[Item], str]
) -> list[Row]:
    """One dict of texts for each reference: first those to replace, in fitting order.

    `source_of` gives the text of the line that names an item.
    """
    rows = [_row(item, source_of(item), step.title) for step in steps for item in step.items]
    return rows + [_row(item, source_of(item)) for item in others]


def _row(item: Item, source: str, step: str = "") -> Row:
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
        item.reason,
        made_by,
        "; ".join(selection.explained()) if selection else "",
        "; ".join(item.looks),
        item.line,
        source,
    )
    return dict(zip(COLUMNS, values, strict=True))
