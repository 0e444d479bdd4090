"""The job card: one entry after the other, the card so far, and what all cards come to.

A thin view: what an entry may hold and how it is written is decided in `repairlib.record`, tables,
chart and page are made in `repairlib.show`. Nothing that was written is ever changed here.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import fold, listed, picture, soft, text, told
from repairlib.core.safety import HAZARDS, caution
from repairlib.faces.panels.fields import Fields
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.following import follow, turn_all
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.plan_pieces import saved_link
from repairlib.faces.panels.recap_plan import PlanView
from repairlib.learn.home import home
from repairlib.learn.learner import current_learner
from repairlib.record import (
    ENDING,
    FIELDS,
    OUTCOMES,
    STAGES,
    Card,
    Entry,
    Proposed,
    add_entry,
    open_job,
    per_month,
    prefill,
    read_cards,
    take_in,
)
from repairlib.show.record_chart import draw_work
from repairlib.show.record_tables import KINDS, entries_of, jobs_of, months_of
from repairlib.show.sheets import job_sheet
from repairlib.show.sheets.job_card import OPEN, OUTCOME

SIZE = Fields("8.5rem", "26rem")
BEGIN = "begin a new card"
NOTHING, NO_ENTRY = ("nothing", 0), ("no entry", 0)
UNITS = ("Ω", "V", "A", "F", "H", "W", "Hz", "s", "°C", "%")
HINTS = {
    "date": "2026-11-29; blank: today",
    "reading": "2.10, 190 µF or OL",
    "spent": "1 h 30 min",
    "file": "board-before.jpg",
    "plus": "left, towards the edge of the board",
    "told": "what is to be checked, by whom",
}
LABELS = {
    "what": "Measured",
    "stage": "When",
    "told": "What is due",
    "reference": "Place",
    "old": "Taken out",
    "new": "Fitted",
    "text": "Words",
    "file": "Photo's file",
    "spent": "Time spent",
    "hazard": "Caution",
}
STATES = {"verify": "partly right", "handed on": "partly right", "not repaired": "wrong"}
NO_NAME = "nobody has signed yet: every entry says who wrote it"


class JobCards(Panel):
    """The panel's parts: `card` (which one), `by`, `kind`, the form, `write`, `proposed`.

    `fields` holds the fields of the form by kind and name, such as `fields["hours", "spent"]`;
    `corrects` says in whose place the entry stands. `said` tells what became of it, `so_far` shows
    the card, `files` its links, `all_cards` what all of them come to. What is typed is kept until
    it is written; cards stand in `folder`.
    """

    def __init__(self, plan: PlanView | None = None, kept: str = "job card"):
        self.plan = plan
        self.cards: dict[str, Card] = {}
        self._looked_at: Path | None = None
        self._filling = False
        self.card = SIZE.choice("Card", [BEGIN])
        self.by = SIZE.text("Written by", "")
        self.kind = SIZE.choice("Kind of entry", [(KINDS[one], one) for one in FIELDS], "finding")
        self.proposed = SIZE.choice("From my plan", [NOTHING], 0)
        self.corrects = SIZE.choice("In place of", [NO_ENTRY], 0)
        self.fields = {
            (kind, name): _field(name) for kind, names in FIELDS.items() for name in names
        }
        self.forms = {
            kind: widgets.VBox([self.fields[kind, name] for name in names])
            for kind, names in FIELDS.items()
        }
        self.write = widgets.Button(description="Write it down", button_style="primary")
        self.again = widgets.Button(description="Read the cards again")
        for button in (self.write, self.again):
            button.layout = widgets.Layout(width="auto")
        self.file = FileButton("Open a saved card", self._open, f"{ENDING},application/json")
        self.caution, self.said, self.so_far = words(), words(), words()
        self.files, self.all_cards, self.where = words(), words(), words()
        keeps = {f"{kind} {name}": field for (kind, name), field in self.fields.items()}
        self.keeping = Keeping(kept, {"by": self.by, "kind": self.kind, **keeps})
        ways = widgets.HBox([self.write, self.again], layout=widgets.Layout(flex_flow="row wrap"))
        seen = widgets.VBox([self.said, self.so_far, self.files])
        seen.add_class("rl-beside")
        below = widgets.VBox([self.where, self.file, self.all_cards])
        below.add_class("rl-below")
        form = [self.kind, *self.forms.values(), self.caution, self.corrects, ways]
        super().__init__(self.card, self.by, self.proposed, *form, self.keeping.strip, seen, below)
        self.write.on_click(self._write)
        self.again.on_click(lambda _button: self.look())
        self.card.observe(self._chosen, "value")
        self.kind.observe(self._turn_form, "value")
        self.fields["caution", "hazard"].observe(self._turn_form, "value")
        self.proposed.observe(self._fill_form, "value")
        if plan is not None:
            plan.fitted.observe(lambda _change: self._propose(), "value")
        if kept:
            follow(f"{kept} cards", self.look)
        self.look()

    @property
    def folder(self) -> Path:
        """Where the cards of the learner of now stand."""
        return home() / "jobs" / current_learner()[0].folder()

    @property
    def open_card(self) -> Card | None:
        """The card that is shown, or None while a new one is begun."""
        return self.cards.get(self.card.value)

    def look(self, chosen: str = "") -> None:
        """Read all cards again, so that entries of other writers are seen."""
        chosen = chosen or self.card.value
        try:
            folder = self._looked_at = self.folder
            self.cards = {one.name: one for one in read_cards(folder)} if folder.exists() else {}
            self.where.value = soft(f"The cards stand in {text(folder)}")
        except RepairlibError as problem:
            self.cards, self.where.value = {}, trouble(problem)
        self._filling = True
        names = [(f"{card.title}, {name}", name) for name, card in self.cards.items()]
        self.card.options = [(BEGIN, BEGIN), *names]
        self.card.value = chosen if chosen in self.cards else BEGIN
        self._filling = False
        self._show()

    def _chosen(self, _change) -> None:
        if not self._filling:
            self.said.value = ""
            self.look()

    def _show(self) -> None:
        card = self.open_card
        self.so_far.value = begin_html() if card is None else card_html(card)
        self.files.value = "" if card is None else files_html(card, self.folder / card.name)
        self.all_cards.value = cards_html(list(self.cards.values()))
        self._propose()
        self._turn_form()

    def _turn_form(self, _change=None) -> None:
        """Show the fields of the kind that is chosen; a new card begins with its job."""
        card = self.open_card
        kind = "job" if card is None else self.kind.value
        self.kind.layout.display = "none" if card is None else ""
        for one, form in self.forms.items():
            form.layout.display = "" if one == kind else "none"
        hazard = self.fields["caution", "hazard"].value
        self.caution.value = caution(hazard).in_full() if kind == "caution" and hazard else ""
        standing = [] if card is None else card.standing(kind)
        self.corrects.options = [NO_ENTRY, *((_named(one), one.number) for one in standing)]
        self.corrects.layout.display = "" if standing else "none"

    def _propose(self) -> None:
        """Offer what the plan of lesson 07 says and does not stand on the card yet."""
        card, self.offered = self.open_card, list[Proposed]()
        if card is not None and self.plan is not None and self.plan.plan is not None:
            self.offered = [
                one
                for one in prefill(self.plan.plan, self.plan.route.fitted)
                if not any(_same(one, entry) for entry in card.standing(one.kind))
            ]
        self._filling = True
        self.proposed.options = [
            NOTHING,
            *((_offer(one), at) for at, one in enumerate(self.offered, 1)),
        ]
        self._filling = False
        self.proposed.layout.display = "" if self.offered else "none"

    def _fill_form(self, change) -> None:
        if self._filling or not change["new"]:
            return
        one = self.offered[change["new"] - 1]
        self.kind.value = one.kind
        for name, said in one.said.items():
            self.fields[one.kind, name].value = said

    def _write(self, _button) -> None:
        if self.folder != self._looked_at:  # another kernel set somebody else
            turn_all()
            turn = f"In another lesson it became the turn of {current_learner()[0].who}."
            self.said.value = told("cannot read", "Please note", [turn])
            return
        card = self.open_card
        kind = "job" if card is None else self.kind.value
        typed: dict[str, Any] = {name: self.fields[kind, name].value for name in FIELDS[kind]}
        if kind == "job" and not typed["date"].strip():
            typed["date"] = date.today()
        try:
            if not self.by.value.strip():
                raise RepairlibError(self.by.value, NO_NAME, "a name under Written by")
            if card is None:
                name = open_job(self.folder, self.by.value, **typed).name
                done = "The card is begun"
            else:
                name, corrects = card.name, self.corrects.value or None
                entry = add_entry(self.folder / name, kind, self.by.value, corrects, **typed)
                done = f"Entry {entry.number} is written"
        except RepairlibError as problem:
            self.said.value = trouble(problem)
            return
        for name_of in FIELDS[kind]:
            if isinstance(self.fields[kind, name_of], widgets.Text | widgets.Textarea):
                self.fields[kind, name_of].value = ""
        self.said.value = told("right", done)
        self.look(name)

    def _open(self, name: str, content: bytes) -> None:
        """Keep a card that was saved elsewhere, beside those that are here."""
        try:
            path = take_in(self.folder, name, content)
        except RepairlibError as problem:
            self.said.value = trouble(problem)
            return
        self.said.value = told("right", f"{name} stands here now, as {path.name}")
        self.look(path.name)


def job_cards(plan: PlanView | None = None) -> JobCards:
    """The panel of the job cards; with the plan of lesson 07 it proposes what was fitted there."""
    return JobCards(plan)


def begin_html() -> str:
    """What to do while no card is open."""
    return told("unanswered", "A new card", ["Set, job and date, then Write it down."])


def card_html(card: Card) -> str:
    """How the job stands, what could not be read, and every entry."""
    state = STATES.get(card.outcome, "unanswered")
    entry = card.last("outcome")
    headline = OUTCOME[entry["outcome"]] if entry else OPEN.rstrip(".")
    head = told(state, f"{card.title}: {headline}", [entry["told"]] if entry else [])
    lost = ""
    if card.unread:
        lines = fold("These lines, as they stand in the file", listed(map(str, card.unread)))
        lost = told("cannot read", "Not all of it can be read", [f"{card.trouble}."], lines)
    return f"{head}{lost}{entries_of(card)._repr_html_()}"


def files_html(card: Card, path: Path) -> str:
    """Links that save the card as it stands in its file, and as a page to print."""
    try:
        data = path.read_bytes()
    except OSError:
        return ""
    page = job_sheet(card)
    name = text(path.stem)
    paper = saved_link(f"{name}.html", "text/html", page, "Save the card to print")
    saved = saved_link(f"{name}{ENDING}", "application/json", data, "Save the card")
    return f'<p class="rl-links">{paper} {saved}</p>'


def cards_html(cards: list[Card]) -> str:
    """What all cards come to: by month as a chart and a table, and job by job; folded."""
    if not cards:
        return ""
    months = picture(draw_work(per_month(cards))) + months_of(cards)._repr_html_()
    return fold(f"All jobs: {len(cards)}", jobs_of(cards)._repr_html_() + months)


def _field(name: str) -> widgets.DOMWidget:
    label = LABELS.get(name, name.capitalize())
    choices: Mapping[str, list] = {
        "stage": [(one, one) for one in STAGES],
        "unit": [(one, one) for one in UNITS],
        "hazard": [(one.title, key) for key, one in HAZARDS.items()],
        "outcome": [(OUTCOME[one], one) for one in OUTCOMES],
    }
    if name in choices:
        return SIZE.choice(label, choices[name], choices[name][0][1])
    field = SIZE.lines(label, "", 3) if name in ("text", "told") else SIZE.text(label, "")
    field.placeholder = HINTS.get(name, "")
    return field


def _named(entry: Entry) -> str:
    said = str(entry)
    return f"{entry.number}: {said if len(said) <= 40 else said[:39] + '…'}"


def _same(one: Proposed, entry: Entry) -> bool:
    key = "reference" if one.kind == "part" else "hazard"
    return one.said[key] == entry[key]


def _offer(one: Proposed) -> str:
    if one.kind == "caution":
        return f"caution: {HAZARDS[one.said['hazard']].title}"
    return f"{one.said['reference']}: {one.said['new']}"
