"""The shelf: sets that wait, one of them open with its decision, and which of them comes first.

A thin view: the decision comes from `repairlib.worth`, the chart and the order from
`repairlib.show`.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import ipywidgets as widgets
import traitlets

from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.html import fold, listed, picture, soft, sources, state_of, told
from repairlib.core.safety import HAZARDS, caution
from repairlib.core.tables import demo_path
from repairlib.core.typed.textfile import read_text
from repairlib.faces.panels.fields import Fields
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.plan_pieces import saved_link
from repairlib.recap import csv_text
from repairlib.show.worth_chart import draw_worth
from repairlib.show.worth_order import order_of_work
from repairlib.stored_charge import QUALIFIED
from repairlib.worth import COLUMNS, FIGURES, job_of, read_cells, worth_repairing

SIZE = Fields("9.5rem", "26rem")
LOW, HIGH = "success_low_percent", "success_high_percent"
LABELS = {
    "set": "Set",
    "fault": "Fault",
    "needs": "It needs",
    "hazards": "Hazards, or none",
    "value": "Worth when it works",
    "parts": "Parts",
    "hours": "Hours of work",
    "hour_worth": "An hour is worth",
    "tools": "Tools to buy",
    "jobs": "for so many jobs",
    "replacement": "Another set costs",
    "failed": "A failed try costs",
    "mass_kg": "Mass, kg",
    "currency": "Money is in",
}
LONG = ("needs", "hazards")  # two lines high
NEW = {"set": "another set", "value": "30", "parts": "5", "hours": "2", LOW: "50", HIGH: "80"}
HOW = (
    "Name every hazard, with ; between two. Never leave it blank: where there is none, write none."
)


class Sets(traitlets.HasTraits):
    """The rows of the shelf as a field that can be kept; never none at all."""

    value = traitlets.List(traitlets.Dict(), minlen=1)


class Here(traitlets.HasTraits):
    """Which of them is open, as a field that can be kept."""

    value = traitlets.Int(0)


class Shelf(Panel):
    """The panel's parts: `which` set is open, a field for each of LABELS in `cells`, `chance`.

    `add` and `away` are buttons, `file` opens a table. `answer` and `chart` are about the set that
    is open, `order` about all of them, `saved` is a link to the table, `note` about files. `sets`
    holds the rows as typed, and `here` which of them is open; both are kept.

    >>> shelf = Shelf(read_cells(read_text(demo_path("shelf.csv")), "shelf.csv"), kept="")
    >>> "label maker: repair" in shelf.answer.value
    True
    >>> shelf.chance.value = (5, 20)
    >>> "label maker: do not repair" in shelf.answer.value
    True
    """

    def __init__(self, rows: list[dict[str, str]], kept: str = "shelf"):
        self.first = rows
        self.sets, self.here = Sets(value=rows), Here()
        self.which = widgets.Dropdown(description="Set that is open", **_look())
        self.cells = {
            column: SIZE.lines(label, "", 2) if column in LONG else SIZE.text(label, "")
            for column, label in LABELS.items()
        }
        self.chance = widgets.FloatRangeSlider(
            value=(0, 100),
            min=0,
            max=100,
            step=1,
            readout_format=".0f",
            continuous_update=False,
            description="Chance it works, %",
            **_look(),
        )
        self.answer, self.chart, self.order, self.note = words(), words(), words(), words()
        self.add, self.away = _button("Add a set", self._add), _button("Take it off", self._away)
        self.saved, self.file = words(), FileButton("Open a shelf", self._open)
        self._filling = False
        self.keeping = Keeping(kept, {"sets": self.sets, "here": self.here})
        ways = widgets.HBox([self.add, self.away], layout=widgets.Layout(flex_flow="row wrap"))
        seen = widgets.VBox([self.answer, self.chart])
        seen.add_class("rl-beside")
        below = widgets.VBox([self.order, self.saved, self.file, self.note])
        below.add_class("rl-below")
        name, fault, needs, hazards, *figures = self.cells.values()
        about = [name, fault, needs, hazards, words(soft(HOW + fold("Hazards it knows", _known())))]
        fields = [self.which, ways, *about, self.chance, *figures]
        super().__init__(*fields, self.keeping.strip, seen, below)
        self.which.observe(self._chosen, "value")
        for column, field in self.cells.items():
            field.observe(
                lambda change, column=column: self._typed({column: change["new"]}), "value"
            )
        self.chance.observe(self._slid, "value")
        self.sets.observe(self._show, "value")
        self.here.observe(self._show, "value")
        self._show()

    @property
    def row(self) -> dict[str, str]:
        """The set that is open, as typed."""
        return self.sets.value[self._at]

    @property
    def _at(self) -> int:
        return min(max(self.here.value, 0), len(self.sets.value) - 1)

    def _chosen(self, change) -> None:
        if not self._filling and change["new"] is not None:
            self.here.value = change["new"]

    def _slid(self, change) -> None:
        low, high = (f"{end:g}" for end in change["new"])
        self._typed({LOW: low, HIGH: high})

    def _typed(self, cells: dict[str, str]) -> None:
        """Put what was typed into the row that is open; money is counted alike in all rows."""
        if self._filling:
            return
        at, alike = self._at, set(cells) == {"currency"}
        self.sets.value = [
            {**row, **cells} if number == at or alike else row
            for number, row in enumerate(self.sets.value)
        ]

    def _add(self, _button) -> None:
        row = dict.fromkeys(COLUMNS, "") | NEW | {"currency": self.row["currency"]}
        self.sets.value = [*self.sets.value, row]
        self.here.value = len(self.sets.value) - 1

    def _away(self, _button) -> None:
        left = [row for at, row in enumerate(self.sets.value) if at != self._at]
        if left:
            self.sets.value, self.here.value = left, 0

    def _open(self, name: str, content: bytes) -> None:
        """Put the sets of a file behind those that were typed; those of the lesson give way."""
        try:
            opened = read_cells(content, name)
        except RepairlibError as problem:
            self.note.value = trouble(problem)
            return
        here = [] if self.sets.value == self.first else self.sets.value
        taken = [row["set"] for row in here]
        added = [
            row | {"set": f"{row['set']} ({name})"} if row["set"] in taken else row
            for row in opened
            if row not in here
        ]
        self.note.value = told("right", f"From {name}: {len(added)} on the shelf")
        self.sets.value = here + added
        self.here.value = len(here)

    def _show(self, _change=None) -> None:
        self._fill()
        try:
            job = job_of(self.row)
            self.answer.value = decision_html(job.name, found_on(self.row))
            self.chart.value = picture(draw_worth(job))
        except RepairlibError as problem:
            self.answer.value, self.chart.value = trouble(problem), ""
        self.order.value = order_html(self.sets.value)
        self.saved.value = link_html(self.sets.value)

    def _fill(self) -> None:
        """Show the row that is open in the fields; what cannot be a chance stays in the row."""
        self._filling = True
        try:
            names = [(row["set"] or "no name", at) for at, row in enumerate(self.sets.value)]
            if self.which.options != tuple(names):
                self.which.options = names
            self.which.value = self._at
            for column, field in self.cells.items():
                field.value = self.row[column]
            self.chance.value = tuple(_percent(self.row[end]) for end in (LOW, HIGH))
        finally:
            self._filling = False


def shelf_view(path: str | Path | None = None) -> Shelf:
    """The shelf of a table of sets, see `repairlib.worth.read_shelf`; at first the demo bench's."""
    path = Path(path) if path else demo_path("shelf.csv")
    return Shelf(read_cells(read_text(path), path.name))


def found_on(row: dict[str, str]) -> Finding:
    """What the calculator finds on one row of the shelf."""
    figures = {name: row[column] for column, (name, _) in FIGURES.items() if row[column].strip()}
    return worth_repairing(**figures, hazards=row["hazards"], currency=row["currency"])


def decision_html(name: str, finding: Finding) -> str:
    """The decision with its reason and what would change it; folded, how it was worked out."""
    handed_on = finding.verdict == QUALIFIED
    state = "unsafe" if handed_on else state_of(finding.verdict)
    values = finding.values
    says = [_sentence(finding.reason), f"What would change it: {values['what_would_change_it']}."]
    if "energy_kept" in values:
        says.append(
            f"If it works again: {values['mass_kept']} kept from waste, and the energy of making "
            f"another one, {values['energy_kept']}."
        )
    working = listed(finding.working, "ol") + listed(finding.notes) + sources(finding.sources)
    more = fold("Working, notes and sources", working)
    if finding.cautions:
        first = HAZARDS[finding.cautions[0]].strikes
        more += caution(*finding.cautions).folded(f"⚠ {first}")
    return told(state, f"{name}: {finding.verdict}", says, more)


def order_html(rows: list[dict[str, str]]) -> str:
    """All sets in the order of work, and those whose row cannot be read."""
    jobs, unread = [], []
    for row in rows:
        try:
            jobs.append(job_of(row))
        except RepairlibError as problem:
            unread.append(f"{row['set'] or 'a set without a name'}: {problem}")
    try:
        shown = order_of_work(jobs)._repr_html_()
    except RepairlibError as problem:
        shown = trouble(problem)
    waits = told("cannot read", "Not in the order yet", unread) if unread else ""
    return f"<h4>Which first?</h4>{shown}{waits}"


def link_html(rows: list[dict[str, str]]) -> str:
    """A link that saves the shelf as a table."""
    table = "\ufeff" + csv_text(rows, COLUMNS)[0]
    return saved_link("shelf.csv", "text/csv", table, "Save the shelf (CSV)")


def _known() -> str:
    return listed(f"{key}: {hazard.title}" for key, hazard in HAZARDS.items())


def _sentence(words: str | None) -> str:
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def _percent(cell: str) -> float:
    try:
        return min(max(float(cell.strip(" %").replace(",", ".")), 0.0), 100.0)
    except ValueError:
        return 0.0


def _look() -> dict[str, Any]:
    style = {"description_width": SIZE.label}
    return {"style": style, "layout": {"width": SIZE.width, "max_width": "100%"}}


def _button(label: str, pressed: Callable[[Any], None]) -> widgets.Button:
    button = widgets.Button(description=label, layout=widgets.Layout(width="auto"))
    button.on_click(pressed)
    return button
