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
    Order,
    OrderLine,
    Plan,
)
from repairlib.show.sheets.sheet_pieces import BOX, table

NO_BOX = "<small>handed on</small>"  # of what is left to a qualified person


def measured_section(plan: Plan) -> str:
    """What may stay, what must go and what could not be told; "" where nothing was measured."""
    if plan.measured is None:
        return ""
    pieces = [f"<h2>Measured</h2><p>{text(LIMITS_RULE)}</p>"]
    if plan.may_stay:
        headings = [("ref", "Place"), ("", "Measured"), ("tick", "Again within a year")]
        rows = [
            [*_place_and_readings(item), NO_BOX if item.handed_on else BOX]
            for item in plan.may_stay
        ]
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
    """The parts to order, with what to expect of them; "" where nothing is to be ordered.

    Where the order is for several different boards, the parts of this one alone.
    """
    order = plan.order
    if not order.lines:
        return ""
    if order.names and plan.boards == 1:
        return _parts_of_this_board(plan)
    headings = [("what", "Part"), ("", "Places"), ("pieces", "Pieces"), ("expect", "Expect")]
    rows = [_order_row(line) for line in order.lines]
    if order.priced:
        headings.append(("price", "Price"))
        rows = [[*row, _price(order, one)] for row, one in zip(rows, order.lines, strict=True)]
    handed_on = {item.reference for item in plan.all_items if item.handed_on}
    boxes = [NO_BOX if handed_on.issuperset(line.places) else BOX for line in order.lines]
    rows = [[*row, box] for row, box in zip(rows, boxes, strict=True)]
    notes = "".join(f"<p><strong>{text(note)}</strong></p>" for note in order.notes)
    goods = table([*headings, ("got", "Got")], rows)
    return f"<h2>To order: {text(order)}</h2>{notes}{goods}"


def order_rules(plan: Plan) -> str:
    """How the parts of the order were chosen, and what their life means; "" without an order."""
    order = plan.order
    if not order.lines:
        return ""
    one_of_several = order.names and plan.boards == 1
    rules = [LIFE_RULE] if one_of_several else [SPARES_RULE, LIFE_RULE]
    rules += [CHOICE_RULE] if order.priced and not one_of_several else []
    return "<h2>How the order was made</h2>" + "".join(f"<p>{text(rule)}</p>" for rule in rules)


def _parts_of_this_board(plan: Plan) -> str:
    """What this board gets of an order for several."""
    mine: dict[str, list[Item]] = {}
    for item in plan.checklist:
        part = item.selection.part if item.selection else None
        mine.setdefault(f"{part.part}: {item.new}" if part else str(item.new), []).append(item)
    rows = [
        [
            text(what),
            text(", ".join(item.reference for item in items)),
            str(len(items)),
            "".join(f"<small>{text(known)}</small>" for known in items[0].expected.said()),
            NO_BOX if all(item.handed_on for item in items) else BOX,
        ]
        for what, items in mine.items()
    ]
    headings = [("what", "Part"), ("", "Places"), ("pieces", "Pieces"), ("expect", "Expect")]
    title = f"Parts for this board, out of the order for {plan.order.boards} boards"
    return f"<h2>{text(title)}</h2>{table([*headings, ('got', 'Got')], rows)}"


def _place_and_readings(item: Item) -> list[str]:
    return [text(item.reference), text(item.measured.readings)]


def _order_row(line: OrderLine) -> list[str]:
    what = text(line.what)
    bought = f"<small>buy {line.pieces}: {line.purchase}</small>" if line.purchase else ""
    over = f"<small>{line.left_over} left over</small>" if line.left_over else ""
    reasons = "".join(f"<small>{text(reason)}</small>" for reason in line.reasons)
    return [
        f"{text(line.part.part)}<small>{what}</small>" if line.part else what,
        text(line.goes_to) + reasons,
        f"{line.needed} + {line.spares} spare{bought}{over}",
        "".join(f"<small>{text(known)}</small>" for known in line.expected.said()),
    ]


def _price(order: Order, line: OrderLine) -> str:
    return text(order.money(line.cost))
