"""Plan view: paste a parts list, see the plan, tick off what is fitted, take the sheet along.

The panel is a thin view. What a list says and what is fitted is decided in `repairlib.recap`.
"""

from __future__ import annotations

from base64 import b64encode
from functools import partial
from html import escape

import ipywidgets as widgets

from repairlib.drawings.recap_board import draw_recap
from repairlib.errors import RepairlibError
from repairlib.panels.look import Panel, picture_html, told, trouble, words
from repairlib.printing import bench_sheet
from repairlib.recap import Board, Item, Plan, plan
from repairlib.recap.export import csv_text
from repairlib.safety import HAZARDS, caution

SHOWN_ITEMS = 120  # more than that is for the files, not for the screen
LINKED_PARTS = 2000  # a link holds the whole file
STYLE = """<style>
.rl-panel.rl-wide {max-width: 64rem;}
.rl-plan table {border-collapse: collapse; margin: 4px 0 10px 0;}
.rl-plan th, .rl-plan td {border-bottom: 1px solid var(--jp-border-color2, #ccc);
  text-align: left; vertical-align: top; padding: 3px 12px 3px 0; font-size: 13px;
  white-space: normal; max-width: 26rem; overflow-wrap: break-word;}
.rl-plan th, .rl-plan td:first-child, .rl-plan td:last-child {white-space: nowrap;}
.rl-plan td:first-child {font-weight: 600;}
.rl-plan h4 {margin: 12px 0 2px 0;}
.rl-plan .rl-picture img {width: 100%; max-width: 60rem;}
.rl-plan a {margin-right: 1.5em; text-decoration: underline;
  color: var(--jp-content-link-color, #1565c0);}
.rl-plan .widget-checkbox, .rl-plan .widget-checkbox label {width: auto; max-width: 100%;
  height: auto; white-space: normal;}
</style>"""
EXAMPLE = """Ref, Value, Type
C1-C2, 2200µF 25V, elect axial
C3, 10/16, elect
C4, 4.7/50, elect NP
C5, .1, film
C6, 100, elect
"""


class PlanView(Panel):
    """The panel's parts: the field `parts_list`, what is told in `summary`, `table` and `waiting`.

    `ticks` are the boxes of the checklist in fitting order; `picture` shows the board, `files`
    the links to save. `plan` is the Plan shown, None while the text is no list. `fitted` are the
    references ticked off; they stay ticked when the list is mended.

    >>> view = PlanView("C1,10/16,elect")
    >>> view.plan
    the list: 1 to replace, 0 to judge, 0 stay, 0 on hold, 0 of 1 lines unreadable
    """

    def __init__(self, text: str = EXAMPLE, board: Board | None = None):
        self.board = board
        self.plan: Plan | None = None
        self.parts_list = widgets.Textarea(
            value=text,
            placeholder="Paste a parts list here: one line for each part or group of parts",
            layout=widgets.Layout(width="100%", height="170px"),
        )
        self.summary, self.table, self.waiting = words(), words(), words()
        self.picture, self.files = words(), words()
        self.ticks: list[widgets.Checkbox] = []
        self.fitted: set[str] = set()
        columns = widgets.Layout(grid_template_columns="repeat(auto-fit, minmax(22rem, 1fr))")
        self.heading, self.checklist = words(), widgets.GridBox(layout=columns)
        self.parts_list.observe(self._plan_anew, "value")
        asks = [self.summary, self.waiting, self.table]
        answer = widgets.VBox([*asks, self.heading, self.checklist, self.picture, self.files])
        answer.add_class("rl-plan")
        super().__init__(words(STYLE), self.parts_list, answer)
        self.add_class("rl-wide")
        self._plan_anew()

    def _plan_anew(self, change=None) -> None:
        shown = (self.table, self.waiting, self.heading, self.picture, self.files)
        try:
            self.plan = plan(self.parts_list.value, self.board)
        except RepairlibError as problem:
            self.plan, self.ticks, self.checklist.children = None, [], ()
            self.summary.value = trouble(problem)
            for piece in shown:
                piece.value = ""
            return
        self.summary.value = summary_html(self.plan)
        self.table.value = table_html(self.plan)
        self.waiting.value = waiting_html(self.plan)
        self.files.value = files_html(self.plan)
        self._show_checklist()
        self._show_board()

    def _show_checklist(self) -> None:
        items = self.plan.checklist[:SHOWN_ITEMS]
        self.ticks = [_tick(item, item.reference in self.fitted) for item in items]
        for item, tick in zip(items, self.ticks, strict=True):
            tick.observe(partial(self._ticked, item.reference), "value")
        self.heading.value = "<h4>Tick off what is fitted and checked</h4>" if self.ticks else ""
        self.checklist.children = self.ticks

    def _ticked(self, reference: str, change) -> None:
        (self.fitted.add if change["new"] else self.fitted.discard)(reference)
        self._show_board()

    def _show_board(self) -> None:
        if self.board is not None:
            self.picture.value = picture_html(draw_recap(self.plan, done=self.fitted))


def plan_view(text: str = EXAMPLE, board: Board | None = None) -> PlanView:
    """The plan view, ready to be shown.

    text: the parts list that stands in the field at first. board: where the parts sit, if known.
    """
    return PlanView(text, board)


def summary_html(shown: Plan) -> str:
    """What the plan comes to, and the cautions of the work."""
    waits = len(shown.held) + len(shown.unreadable)
    state = "partly right" if waits else "right"
    says = [f"{len(shown.items)} to replace, {len(shown.judged)} to judge one by one, "]
    says[0] += f"{len(shown.kept)} stay, {len(shown.held)} on hold."
    says += [*shown.list.notes, *[f"{duplicate}." for duplicate in shown.duplicates]]
    headline = f"{len(shown.list.lines)} lines read" + (f", {waits} need you" if waits else "")
    if not (shown.items or shown.judged):
        return told(state, headline, says)
    titles = " ".join(f"{HAZARDS[key].title}." for key in shown.cautions)
    cautions = caution(*shown.cautions)._repr_html_()
    folded = f"<summary><strong>⚠ {escape(titles)}</strong> Read on before you work.</summary>"
    return told(state, headline, says, f"<details>{folded}{cautions}</details>")


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
        pieces.append(f"<div>Step {number}: {escape(step.title)}</div>{_html_table(head, rows)}")
    if len(shown.items) > SHOWN_ITEMS:
        more = f"The first {SHOWN_ITEMS} of {len(shown.items)}. The files below hold them all."
        pieces.append(f"<p>{more}</p>")
    return "".join(pieces)


def waiting_html(shown: Plan) -> str:
    """The lines that need a person: held, to judge, unreadable."""
    pieces = []
    for title, items in (("On hold", shown.held), ("Judge one by one", shown.judged)):
        rows = [
            (item.reference, shown.source(item), "; ".join((item.why, *item.looks)), item.line)
            for item in items[:SHOWN_ITEMS]
        ]
        if rows:
            head = ("Place", "The line says", "Why", "Line")
            pieces.append(f"<h4>{title}</h4>{_html_table(head, rows)}")
    rows = [(line.line, line.text, line.why) for line in shown.unreadable[:SHOWN_ITEMS]]
    if rows:
        head = ("Line", "Text", "Why")
        pieces.append(f"<h4>Could not be read</h4>{_html_table(head, rows)}")
    return "".join(pieces)


def files_html(shown: Plan) -> str:
    """Links that save the plan as a table and as a sheet to print."""
    if len(shown.list.references) > LINKED_PARTS:
        return "<p>This list is too long for a link. Save it in code: <code>to_csv</code>.</p>"
    table, marked = csv_text(shown)
    said = (
        f"<br>{marked} cells began like a spreadsheet formula. An apostrophe stops them."
        if marked
        else ""
    )
    sheet = _link("recap-bench-sheet.html", "text/html", bench_sheet(shown), "Save bench sheet")
    saved = _link("recap-plan.csv", "text/csv", "\ufeff" + table, "Save table (CSV)")
    return f"<p>{sheet}{saved}{said}</p>"


def _link(name: str, kind: str, text: str, label: str) -> str:
    data = b64encode(text.encode("utf-8", "replace")).decode("ascii")
    return f'<a download="{name}" href="data:{kind};base64,{data}">{label}</a>'


def _tick(item: Item, ticked: bool) -> widgets.Checkbox:
    label = f"{item.reference}: {item.new}, {item.polarity}"
    return widgets.Checkbox(value=ticked, description=label, indent=False)


def _row(item: Item) -> tuple:
    looks = "; ".join(item.looks)
    return item.reference, item.old.text, item.new, item.polarity, looks, item.line


def _html_table(head: tuple, rows: list[tuple]) -> str:
    titles = "".join(f'<th scope="col">{escape(title)}</th>' for title in head)
    body = "".join(
        "<tr>" + "".join(f"<td>{escape(str(cell)[:300])}</td>" for cell in row) + "</tr>"
        for row in rows
    )
    return f"<table><thead><tr>{titles}</tr></thead><tbody>{body}</tbody></table>"
