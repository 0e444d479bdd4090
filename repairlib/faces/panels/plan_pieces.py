"""The pieces of the plan view as HTML: summary, tables, what was measured, the order, links."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterable

from repairlib.core.html import Html, fold, paragraphs, row, table, text
from repairlib.core.html import told as told_html
from repairlib.core.safety import HAZARDS, caution
from repairlib.core.typed.set_aside import UNREADABLE
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
.rl-panel.rl-wide {max-width: 64rem;}
.rl-plan table {border-collapse: collapse; margin: 4px 0 10px 0;}
.rl-plan th, .rl-plan td {border-bottom: 1px solid var(--jp-border-color2, #ccc);
  text-align: left; vertical-align: top; padding: 3px 12px 3px 0; font-size: 13px;
  white-space: normal; max-width: 26rem; overflow-wrap: break-word;}
.rl-plan th, .rl-plan td:first-child {white-space: nowrap;}
.rl-plan td:first-child {font-weight: 600;}
.rl-plan .rl-order td:first-child {white-space: normal; max-width: 8rem;}
.rl-plan h4 {margin: 12px 0 2px 0;}
.rl-plan .rl-picture img {width: 100%; max-width: 60rem;}
.rl-plan details {margin: 4px 0 10px 0;}
.rl-plan summary {cursor: pointer; font-weight: 600;}
.rl-wide > .jupyter-widget-accordion, .rl-wide > .jp-Accordion {margin: 4px 2px 10px 2px;}
.rl-plan a {margin-right: 1.5em; text-decoration: underline;
  color: var(--jp-content-link-color, #1565c0);}
.rl-plan .widget-checkbox, .rl-plan .widget-checkbox label {width: auto; max-width: 100%;
  height: auto; white-space: normal;}
</style>"""


def summary_html(shown: Plan, notes: Iterable[str] = ()) -> str:
    """What the plan comes to, what to know about it (`notes`), and the cautions of the work."""
    waits = len(shown.held) + len(shown.unreadable)
    not_yours = sum(len(step.items) for step in shown.steps if step.handed_on)
    state = "partly right" if waits or not_yours else "right"
    may_stay = f"{len(shown.may_stay)} may stay as measured, " if shown.may_stay else ""
    says = [f"{len(shown.items)} to replace, {may_stay}{len(shown.judged)} to judge one by one, "]
    says[0] += f"{len(shown.kept)} stay, {len(shown.held)} on hold."
    if not_yours:
        says.append(f"{not_yours} of those to replace are not yours to touch: see the red box.")
    says += [*notes, *shown.list.notes, *[f"{duplicate}." for duplicate in shown.duplicates]]
    headline = f"{len(shown.list.lines)} lines read" + (f", {waits} need you" if waits else "")
    if not (shown.items or shown.judged):
        return told_html(state, headline, says)
    titles = " ".join(f"{HAZARDS[key].title}." for key in shown.cautions)
    title = Html(f"<strong>⚠ {text(titles)}</strong> Read on before you work.")
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
    """What to order, with what to expect of it; folded."""
    order = shown.order
    if not order.lines:
        return ""
    rows = [_order_row(order, line) for line in order.lines[:SHOWN_ITEMS]]
    head = ("Places", "Part", "Pieces", "Left over", "Expect", "Price", "Why so")
    told = [SPARES_RULE, LIFE_RULE, *([CHOICE_RULE] if order.priced else [])]
    if shown.catalogue is not None and shown.catalogue.problems:
        unread = shown.catalogue.problems
        told.append(f"{len(unread)} lines of the catalogue could not be read: {unread[0]}.")
    ordered = f'<div class="rl-order">{_html_table(head, rows)}</div>'
    notes = paragraphs(order.notes)
    return fold(f"To order: {order}", notes + ordered + paragraphs(told))


def _order_row(order: Order, line: OrderLine) -> tuple:
    what = f"{line.part.part}: {line.what}" if line.part else line.what
    bought = f", buy {line.pieces}: {line.purchase}" if line.purchase else ""
    pieces = f"{line.needed} + {line.spares} spare{bought}"
    expected, why = "; ".join(line.expected.said()), "; ".join(line.reasons)
    return line.goes_to, what, pieces, line.left_over, expected, order.money(line.cost), why


def table_html(shown: Plan) -> str:
    """What to fit, in fitting order."""
    if not shown.items:
        return ""
    pieces = ["<h4>To replace</h4>"]
    left = SHOWN_ITEMS
    for number, step in enumerate(shown.steps, 1):
        if left <= 0:
            break
        rows = [_row(item) for item in step.items[:left]]
        left -= len(rows)
        head = ("Place", "Take out", "Fit", "Plus", "Look at", "Line")
        title = f"Step {number}: {step.title}"
        if step.handed_on:
            pieces.append(told_html("unsafe", title, [NOT_YOURS], _html_table(head, rows)))
        else:
            pieces.append(f"<div>{text(title)}</div>{_html_table(head, rows)}")
    if len(shown.items) > SHOWN_ITEMS:
        more = f"The first {SHOWN_ITEMS} of {len(shown.items)}. The files below hold them all."
        pieces.append(paragraphs([more]))
    return "".join(pieces)


def waiting_html(shown: Plan) -> str:
    """The lines that need a person: held, to judge, unreadable."""
    pieces = []
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


def saved_link(name: str, kind: str, content: str, label: str) -> str:
    """A link that saves `content` as a file of that name and kind."""
    data = b64encode(content.encode("utf-8", "replace")).decode("ascii")
    return f'<a download="{name}" href="data:{kind};base64,{data}">{label}</a>'


def _row(item: Item) -> tuple:
    looks = "; ".join(item.looks)
    return item.reference, item.old.text, item.new, item.polarity, looks, item.line


def _html_table(head: tuple, rows: list[tuple]) -> str:
    short = [row(str(cell)[:300] for cell in cells) for cells in rows]
    return table(short, row(head, 'scope="col"', "th"))
