"""The pieces of the plan view as HTML: summary, what waits, what was measured, order, links."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable

from repairlib.core.html import Html, fold, paragraphs, row, table, text
from repairlib.core.html import told as told_html
from repairlib.core.safety import HAZARDS, caution
from repairlib.core.typed.set_aside import TITLE, UNREADABLE
from repairlib.recap import (
    CANNOT_TELL,
    CHOICE_RULE,
    LIFE_RULE,
    LIMITS_RULE,
    MAY_STAY,
    MUST_GO,
    NOT_YOURS,
    ORDER_COLUMNS,
    SPARES_RULE,
    Item,
    Order,
    OrderLine,
    Plan,
    csv_text,
)
from repairlib.show.sheets import bench_sheet

SHOWN_ITEMS = 120  # more than that is for the files, not for the screen
LINKED_PARTS = 2000  # a link holds the whole file
STYLE = """<style>
.rl-plan table {border-collapse: collapse; margin: 4px 0 10px 0;}
.rl-plan th, .rl-plan td {border-bottom: 1px solid var(--jp-border-color2, #ccc);
  text-align: left; vertical-align: top; padding: 3px 12px 3px 0; font-size: 13px;
  white-space: normal; max-width: 26rem; overflow-wrap: break-word;}
.rl-plan th, .rl-plan td:first-child {white-space: nowrap;}
.rl-plan td:first-child {font-weight: 600;}
.rl-plan .rl-order td:first-child {white-space: normal; max-width: 18rem;}
.rl-plan h4 {margin: 12px 0 2px 0;}
.rl-plan .rl-picture img {width: 100%; max-width: 60rem;}
.rl-plan details {margin: 4px 0 10px 0;}
.rl-plan summary {cursor: pointer; font-weight: 600;}
.rl-plan a {margin-right: 1.5em; text-decoration: underline;
  color: var(--jp-content-link-color, #1565c0);}
.rl-tabs {flex-wrap: wrap; gap: 4px 8px; margin: 2px 0 4px;}
.rl-tabs button::before {content: "▸ ";} .rl-tabs button.mod-active::before {content: "▾ ";}
.rl-plan .rl-route {display: grid; gap: 6px 14px; align-items: start;
  grid-template-columns: 17.5rem minmax(0, 1fr);}
.rl-stop {border: 2px solid var(--jp-border-color1, #999); border-radius: 8px; padding: 6px 14px;}
.rl-plan .rl-stop h4 {font-size: 1.35em; margin: 0;}
.rl-stop .rl-picture img {width: 230px;}
.rl-stop table {margin: 2px 0;}
@media (max-width: 60rem) {.rl-plan .rl-route {grid-template-columns: minmax(0, 1fr);}
  .rl-plan td {overflow-wrap: anywhere;}}
</style>"""


def summary_html(shown: Plan, notes: Iterable[str] = ()) -> str:
    """What the plan comes to, large; then how each line was read, and the cautions of the work."""
    not_yours = sum(len(step.items) for step in shown.steps if step.handed_on)
    waits = len(shown.held) + len(shown.unreadable)
    mine = len(shown.items) - not_yours
    counted = [
        f"{mine} to change" if shown.items else "nothing to change",
        f"{len(shown.may_stay)} may stay as measured" if shown.may_stay else "",
        f"{waits} need you" if waits else "",
        f"{not_yours} not yours to touch" if not_yours else "",
    ]
    state = "partly right" if waits or not_yours else "right"
    says = [
        f"{len(shown.list.lines)} lines read: {len(shown.items)} to replace, "
        f"{len(shown.judged)} to judge one by one, {len(shown.kept)} stay, "
        f"{len(shown.held)} on hold, {len(shown.unreadable)} unreadable."
    ]
    says += [*notes, *shown.list.notes, *[f"{duplicate}." for duplicate in shown.duplicates]]
    headline = ", ".join(filter(None, counted))
    if not (shown.items or shown.judged):
        return told_html("unanswered" if not shown.kept else state, headline, says)
    title = Html(
        f"<strong>⚠ {text(HAZARDS[shown.cautions[0]].title)}.</strong> "
        f"{len(shown.cautions)} cautions: read them before you work."
    )
    return told_html(state, headline, says, caution(*shown.cautions).folded(title))


def measured_html(shown: Plan) -> str:
    """Which parts must go and which may stay, by what was measured, and why; folded."""
    if shown.measured is None:
        return ""
    pieces: list[str] = []
    for stand in (MUST_GO, MAY_STAY, CANNOT_TELL):
        items = [one for one in shown.all_items if one.measured and one.measured.stand == stand]
        rows = [
            (one.reference, one.measured.readings, one.measured.why) for one in items[:SHOWN_ITEMS]
        ]
        if rows:
            places = ", ".join(one.reference for one in items[:SHOWN_ITEMS])
            head = ("Place", "Measured", "Why")
            title = f"{stand.capitalize()}: {places}"
            pieces.append(fold(title, _html_table(head, rows)))
    asides = [line for line in shown.measured.set_aside if line.what == UNREADABLE]
    rows = [(line.line, line.text, line.why) for line in asides[:SHOWN_ITEMS]]
    if rows:
        pieces.append(_html_table(("Line", "Text", "Could not be read"), rows))
    told = [*shown.measured.notes]
    if shown.not_in_list:
        told.append(f"Measured, but not in the list: {', '.join(shown.not_in_list)}.")
    if shown.not_measured:
        told.append(f"In the list, but not measured: {', '.join(shown.not_measured)}.")
    notes = paragraphs(one[:600] for one in told)
    how = fold("How they were judged", paragraphs([LIMITS_RULE]))
    return f"<h4>Measured</h4>{''.join(pieces)}{notes}{how}"


def order_html(shown: Plan) -> str:
    """What to order: the sum in a title, and folded under it the parts, and why these."""
    order = shown.order
    if not order.lines:
        return ""
    lines = order.lines[:SHOWN_ITEMS]
    goods = _html_table(
        ("Part", "Places", "Pieces", "Price"), [_goods(order, one) for one in lines]
    )
    reasons = [
        (_part(one), one.left_over, "; ".join(one.expected.said()), "; ".join(one.reasons))
        for one in lines
    ]
    why = _html_table(("Part", "Left over", "Expect", "Why so"), reasons)
    told = [SPARES_RULE, LIFE_RULE, *([CHOICE_RULE] if order.priced else [])]
    if shown.catalogue is not None and shown.catalogue.problems:
        unread = shown.catalogue.problems
        told.append(f"{len(unread)} lines of the catalogue could not be read: {unread[0]}.")
    more = fold("What to expect, and why these parts", why + paragraphs(told))
    notes = paragraphs(order.notes)
    shown_order = fold(f"To order: {order}", f"{goods}{notes}{more}")
    return f'<div class="rl-order">{shown_order}</div>'


def _goods(order: Order, line: OrderLine) -> tuple:
    bought = f", buy {line.pieces}: {line.purchase}" if line.purchase else ""
    pieces = f"{line.needed} + {line.spares} spare{bought}"
    return _part(line), line.goes_to, pieces, order.money(line.cost)


def _part(line: OrderLine) -> str:
    return f"{line.part.part}: {line.what}" if line.part else line.what


def handed_on_html(shown: Plan) -> str:
    """What is to be fitted by a qualified person, and by nobody else."""
    items = [item for step in shown.steps if step.handed_on for item in step.items]
    if not items:
        return ""
    head = ("Place", "Take out", "Fit", "Plus", "Look at", "Line")
    rows = [_row(item) for item in items[:SHOWN_ITEMS]]
    title = f"Not yours to touch: {', '.join(item.reference for item in items[:SHOWN_ITEMS])}"
    due = fold("What is due there", _html_table(head, rows))
    return told_html("unsafe", title, [NOT_YOURS], due)


def waiting_html(shown: Plan) -> str:
    """What needs a person: another one, or the reader for what is held, to judge or not read."""
    pieces = [handed_on_html(shown)]
    for title, items in (("On hold", shown.held), ("Judge one by one", shown.judged)):
        rows = [
            (item.reference, shown.source(item), item.told, item.line)
            for item in items[:SHOWN_ITEMS]
        ]
        if rows:
            head = ("Place", "The line says", "Why", "Line")
            pieces.append(f"<h4>{title}</h4>{_html_table(head, rows)}")
    unread = [(one.line, one.text, one.why) for one in shown.unreadable[:SHOWN_ITEMS]]
    if unread:
        titles = ("Line", "Text", "Why")
        pieces.append(f"<h4>Could not be read</h4>{_html_table(titles, unread)}")
    other = [(one.line, one.text) for one in shown.list.set_aside if one.what == TITLE]
    if other:
        title = f"Taken for titles or notes, no part in them: {len(other)} of the lines"
        pieces.append(fold(title, _html_table(("Line", "Text"), other[:SHOWN_ITEMS])))
    return "".join(pieces)


def files_html(shown: Plan) -> str:
    """Links that save the plan as a table and as a sheet to print, and the order as a table."""
    if len(shown.list.references) > LINKED_PARTS:
        return "<p>This list is too long for a link. Save it in code: <code>to_csv</code>.</p>"
    saved_rows, marked = csv_text(shown.rows())
    said = (
        f"<br>{marked} cells began like a spreadsheet formula. An apostrophe stops them."
        if marked
        else ""
    )
    page = bench_sheet(shown)
    sheet = saved_link("recap-bench-sheet.html", "text/html", page, "Save bench sheet")
    saved = saved_link("recap-plan.csv", "text/csv", "\ufeff" + saved_rows, "Save table (CSV)")
    rows = csv_text(shown.order.rows(), ORDER_COLUMNS)[0]
    order = saved_link("recap-order.csv", "text/csv", "\ufeff" + rows, "Save order (CSV)")
    return f"<p>{sheet}{saved}{order}{said}</p>"


def saved_link(name: str, kind: str, content: str | bytes, label: str) -> str:
    """A link that saves `content` as a file of that name and kind."""
    saved = content if isinstance(content, bytes) else content.encode("utf-8", "replace")
    data = b64encode(saved).decode("ascii")
    return f'<a download="{name}" href="data:{kind};base64,{data}">{label}</a>'


def _row(item: Item) -> tuple:
    looks = "; ".join(item.looks)
    return item.reference, item.old.text, item.new, item.polarity, looks, item.line


def _html_table(head: tuple, rows: list[tuple]) -> str:
    short = [row(str(cell)[:300] for cell in cells) for cells in rows]
    return table(short, row(head, 'scope="col"', "th"))
