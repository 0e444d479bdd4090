"""Plan view: a parts list becomes a verdict, an order and a route from part to part.

The panel is a thin view. What a list says and what is fitted is decided in `repairlib.recap`.
"""

from __future__ import annotations

import ipywidgets as widgets
import traitlets

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import as_text
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, named, trouble, words
from repairlib.faces.panels.own_board import BoardMap
from repairlib.faces.panels.plan_pieces import (
    STYLE,
    files_html,
    measured_html,
    order_html,
    summary_html,
    waiting_html,
)
from repairlib.faces.panels.route import Route
from repairlib.health import MeasuredTable, read_measured
from repairlib.recap import (
    ANOTHER_LIST,
    CHANGED_LINES,
    MOST_BOARDS,
    Board,
    Catalogue,
    Plan,
    parse_catalogue,
    places_of,
    plan,
    readings_of,
    unchanged,
)

EXAMPLE = """Ref, Value, Type
C1-C2, 2200µF 25V, elect axial
C3, 10/16, elect
C4, 4.7/50, elect NP
"""
LIST_HELP = "One line for each part or group. No references? Write 4x 10uF 16V."
READINGS_HELP = "Ref, C (µF), ESR @ 120 Hz (Ω)"
CATALOGUE_HELP = "Empty: the catalogue of the lesson. Paste a shop's table, or open its file."
OF_THE_LIST, OWN, NONE = "of the list", "own", "none"


class Held(traitlets.HasTraits):
    """What is kept without a field: the references that are fitted."""

    value = traitlets.List(traitlets.Unicode())


class PlanView(Panel):
    """The panel's parts, from top to bottom.

    Folded behind `tabs`: `parts_list`, `readings`, `catalogue` (fields with the text as typed),
    `boards` (their number), `which_board`. Then `summary`, and the `route`; below it what waits in
    `waiting`, what was measured in `measured`, the `order`, and `files`, the links to save. `plan`
    is the Plan shown, None while the text is no list. What is typed, chosen and done is kept.

    >>> view = PlanView("C1,10/16,elect")
    >>> view.plan
    the list: 1 to replace, 0 to judge, 0 stay, 0 on hold, 0 of 1 lines unreadable
    """

    def __init__(
        self,
        parts_list: str = EXAMPLE,
        board: Board | None = None,
        readings: str = "",
        catalogue: Catalogue | None = None,
        own: BoardMap | None = None,
        kept: str = "plan",
    ):
        self.first = (parts_list, board, readings)
        self.own = own
        self.lesson_catalogue = catalogue
        self.own_catalogue: tuple[str, Catalogue] | None = None
        self.plan: Plan | None = None
        self.parts_list = _field(parts_list, LIST_HELP)
        self.readings = _field(readings, READINGS_HELP)
        self.catalogue = _field("", CATALOGUE_HELP)
        self.boards = widgets.BoundedIntText(value=1, min=1, max=MOST_BOARDS, description="Boards")
        self.which_board = widgets.Dropdown(
            options=[("of this list", OF_THE_LIST), ("my own map", OWN), ("none", NONE)],
            description="Board",
        )
        self.fitted = Held()
        self.summary, self.waiting, self.measured = words(), words(), words()
        self.order, self.files = words(), words()
        self.route = Route(self._went)
        self.keeping = Keeping(kept, self._fields())
        self.tabs = [
            _Tab("Parts list", self.parts_list, "Open a list"),
            _Tab("Readings", self.readings, "Open readings"),
            _Tab("Catalogue", self.catalogue, "Open a catalogue"),
            _Tab("Board and number", widgets.HBox([self.which_board, self.boards])),
        ]
        row = widgets.HBox([tab.button for tab in self.tabs])
        row.add_class("rl-tabs")
        below = [self.waiting, self.measured, self.order, self.files]
        answer = widgets.VBox([self.summary, self.route, *below])
        answer.add_class("rl-plan")
        inside = [tab.inside for tab in self.tabs]
        super().__init__(words(STYLE), row, *inside, self.keeping.strip, answer)
        for tab in self.tabs:
            tab.button.observe(self._one_tab, "value")
        for name, field in self._fields().items():
            if name != "fitted":
                field.observe(self._plan_anew, "value")
        self.fitted.observe(self._show_route, "value")
        if own is not None:
            own.observe(self._plan_anew, "board")
        self._plan_anew()

    def _fields(self) -> dict:
        """All that is kept, by its name."""
        names = ("parts_list", "readings", "catalogue", "boards", "which_board", "fitted")
        return {name: getattr(self, name) for name in names}

    def _one_tab(self, change) -> None:
        """Fold the others when one is opened."""
        for tab in self.tabs:
            if change["new"] and tab.button is not change["owner"]:
                tab.button.value = False

    def _went(self, fitted: list[str]) -> None:
        self.fitted.value = fitted

    def _show_route(self, _change=None) -> None:
        if self.route.fitted != self.fitted.value or self.route.plan is not self.plan:
            self.route.show(self.plan, self.fitted.value)

    def _plan_anew(self, change=None) -> None:
        problem = ""
        board, same, notes = self._what_belongs_to(self.parts_list.value)
        try:
            measured = self._measured_table(same)
        except RepairlibError as wrong:
            measured, problem = None, trouble(wrong)
        try:
            catalogue = self._catalogue()
        except RepairlibError as wrong:
            catalogue, problem = None, problem + trouble(wrong)
        shown = (self.waiting, self.measured, self.order, self.files)
        try:
            self.plan = plan(
                self.parts_list.value,
                board,
                measured=measured,
                catalogue=catalogue,
                boards=self.boards.value,
            )
        except RepairlibError as wrong:
            self.plan, self.summary.value = None, trouble(wrong)
            for piece in shown:
                piece.value = ""
        else:
            self.summary.value = summary_html(self.plan, notes)
            self.waiting.value = waiting_html(self.plan)
            self.measured.value = problem + measured_html(self.plan)
            self.order.value = order_html(self.plan)
            self.files.value = files_html(self.plan)
        self._name_tabs(measured, catalogue)
        self._show_route()

    def _name_tabs(self, measured: MeasuredTable | None, catalogue: Catalogue | None) -> None:
        """What stands behind each title, so that it need not be opened."""
        lines = len(self.plan.list.lines) if self.plan is not None else 0
        board = self.plan.board.name if self.plan is not None and self.plan.board else "none"
        self.tabs[0].say(f"{lines} lines" if lines else "none")
        self.tabs[1].say(f"{len(measured.parts)} parts" if measured is not None else "none")
        self.tabs[2].say(f"{len(catalogue)} parts" if catalogue is not None else "none")
        self.tabs[3].say(f"{board}, {self.boards.value}")

    def _what_belongs_to(self, text: str) -> tuple[Board | None, frozenset[str] | None, list[str]]:
        """The board of the list as it stands now, its unchanged references, and what to say.

        The references are None when it is the list of another board.
        """
        first, board, readings = self.first
        chosen = self.which_board.value
        if chosen != OF_THE_LIST:
            board = self.own.board if chosen == OWN and self.own is not None else None
            notes = ["Your own map is not a board yet: see below."] if chosen == OWN else []
            return board, unchanged(text, first), notes if board is None else []
        if board is None and not readings:
            return None, frozenset(), []
        same = unchanged(text, first)
        if same is None:
            return None, None, [ANOTHER_LIST]
        if board is None:
            return None, same, []
        here = places_of(board, same, first)
        gone = [one.reference for one in board.positions if one.reference not in here]
        return here, same, [f"{CHANGED_LINES} {', '.join(gone)}."] if gone else []

    def _measured_table(self, same: frozenset[str] | None) -> MeasuredTable | None:
        """What was measured on this list: what was typed, or the first readings of `same`."""
        typed = self.readings.value
        if not typed.strip():
            return None
        if typed != self.first[2]:
            return read_measured(typed)
        return None if same is None else readings_of(read_measured(typed), same)

    def _catalogue(self) -> Catalogue | None:
        """The catalogue of the lesson, or the learner's own, read once."""
        typed = self.catalogue.value
        if not typed.strip():
            return self.lesson_catalogue
        if self.own_catalogue is None or self.own_catalogue[0] != typed:
            self.own_catalogue = typed, parse_catalogue(typed, "your catalogue")
        return self.own_catalogue[1]


class _Tab:
    """A title that folds a field, and a button that fills it from a file."""

    def __init__(self, title: str, field: widgets.Widget, opens: str = ""):
        self.title = title
        self.button = widgets.ToggleButton(layout=widgets.Layout(width="auto"))
        self.field, self.told = field, words()
        more = [FileButton(opens, self._opened), self.told] if opens else []
        self.inside = widgets.VBox([field, *more], layout=widgets.Layout(display="none"))
        self.button.observe(self._fold, "value")
        if opens:
            named(field, title)

    def say(self, what: str) -> None:
        self.button.description = f"{self.title}: {what}"

    def _fold(self, change) -> None:
        self.inside.layout.display = "flex" if change["new"] else "none"

    def _opened(self, name: str, content: bytes) -> None:
        """Put the file into the field, and fold it when it could be read."""
        try:
            self.field.value = as_text(content, name).text
        except RepairlibError as problem:
            self.told.value = trouble(problem)
            return
        self.told.value, self.button.value = "", False


def plan_view(
    parts_list: str = EXAMPLE,
    board: Board | None = None,
    readings: str = "",
    catalogue: Catalogue | None = None,
    own: BoardMap | None = None,
) -> PlanView:
    """The plan view, ready to be shown.

    parts_list: what stands in the field at first. board: where the parts sit, if known. readings:
    a table of measured values. catalogue: the parts that can be bought. own: the panel in which
    the learner maps a board, to choose its map from.
    """
    return PlanView(parts_list, board, readings, catalogue, own)


def _field(text: str, placeholder: str) -> widgets.Textarea:
    layout = widgets.Layout(width="100%", height="150px")
    return widgets.Textarea(value=text, placeholder=placeholder, layout=layout)
