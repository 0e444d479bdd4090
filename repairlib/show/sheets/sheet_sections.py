"""Two sections of the bench sheet: what measuring said, and what to order."""

from __future__ import annotations

from repairlib.core.html import text
from repairlib.recap import (
    CANNOT_TELL,
    CHOICE_RULE,
    LIFE_RULE,
    LIMITS_RULE,
    MUST_GO,
    RULES,
    SPARES_RULE,
    Item,
    OrderLine,
    Plan,
    money,
)
from repairlib.show.sheets.sheet_pieces import BOX, table


def measured_section(plan: Plan) -> str:
    """What may stay, what must go and what could not be told; "" where nothing was measured."""
    if plan.measured is None:
        return ""
    pieces = [f"<h2>Measured</h2><p>{text(LIMITS_RULE)}</p>"]
    if plan.may_stay:
        headings = [("ref", "Place"), ("", "Measured"), ("tick", "Again within a year")]
        rows = [[*_place_and_readings(item), BOX] for item in plan.may_stay]
        rule = text(RULES["measured as new"][0])
        pieces.append(f"<h3>These may stay</h3><p>{rule}</p>")
        pieces.append(table(headings, rows))
    for stand, title in ((MUST_GO, "These must go"), (CANNOT_TELL, "The readings do not tell")):
        items = [one for one in plan.all_items if one.measured and one.measured.stand == stand]
        if items:
            rows = [[*_place_and_readings(one), text(one.measured.why)] for one in items]
            headings = [("ref", "Place"), ("readings", "Measured"), ("", "Why")]
            pieces.append(f"<h3>{title}</h3>{table(headings, rows)}")
    for title, names in (
        ("Measured, but not in the list", plan.not_in_list),
        ("In the list, but not measured", plan.not_measured),
    ):
        if names:
            pieces.append(f"<p><strong>{title}:</strong> {text(', '.join(names))}.</p>")
    return "".join(pieces)


def order_section(plan: Plan) -> str:
    """The parts to order, with what to expect of them; "" where nothing is to be fitted."""
    if not plan.items:
        return ""
    order = plan.order
    headings = [("what", "Part"), ("", "Places"), ("pieces", "Pieces"), ("expect", "Expect")]
    rows = [_order_row(line) for line in order.lines]
    if order.priced:
        headings.append(("price", "Price"))
        rows = [[*row, _price(line)] for row, line in zip(rows, order.lines, strict=True)]
    rules = [SPARES_RULE, LIFE_RULE, *([CHOICE_RULE] if order.priced else []), *order.notes]
    told = "".join(f"<p>{text(rule)}</p>" for rule in rules)
    ordered = [("got", "Got")]
    rows = [[*row, BOX] for row in rows]
    return f"<h2>To order: {text(order)}</h2>{table(headings + ordered, rows)}{told}"


def _place_and_readings(item: Item) -> list[str]:
    return [text(item.reference), text(item.measured.readings)]


def _order_row(line: OrderLine) -> list[str]:
    what = text(line.what)
    packs = f"<small>{line.packs} × pack of {line.part.pack}</small>" if line.part else ""
    return [
        f"{text(line.part.part)}<small>{what}</small>" if line.part else what,
        text(", ".join(line.places)),
        f"{line.needed} + {line.spares} spare{packs}",
        "".join(f"<small>{text(known)}</small>" for known in line.expected.said()),
    ]


def _price(line: OrderLine) -> str:
    return "" if line.cost is None else f"{money(line.cost)}<small>{line.part.price} each</small>"
