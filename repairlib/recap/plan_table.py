"""The plan as rows of text: one for each reference, the same for a table, CSV and JSON."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from decimal import Decimal

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
    "currency",
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
    steps: Iterable[Step],
    others: Iterable[Item],
    source_of: Callable[[Item], str],
    currency: str = "",
) -> list[Row]:
    """One dict of texts for each reference: first those to replace, in fitting order.

    `source_of` gives the text of the line that names an item, `currency` is that of the catalogue.
    """
    rows = [
        _row(item, source_of(item), currency, step.title) for step in steps for item in step.items
    ]
    return rows + [_row(item, source_of(item), currency) for item in others]


def _row(item: Item, source: str, currency: str, step: str = "") -> Row:
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
        _short(selection.each) if bought else "",
        (currency or "not stated") if bought else "",
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


def _short(price: Decimal) -> str:
    """A price of one piece to four places at most, without needless zeros."""
    return str(price.quantize(Decimal("0.0001")) if price.as_tuple().exponent < -4 else price)
