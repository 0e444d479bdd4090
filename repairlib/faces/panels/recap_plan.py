"""Plan view: paste a parts list, see the plan, tick off what is fitted, take the sheet along.

The panel is a thin view. What a list says and what is fitted is decided in `repairlib.recap`.
"""

from __future__ import annotations

from functools import partial

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import picture
from repairlib.faces.panels.look import Panel, trouble, words
from repairlib.faces.panels.plan_pieces import (
    SHOWN_ITEMS,
    STYLE,
    files_html,
    measured_html,
    order_html,
    summary_html,
    table_html,
    waiting_html,
)
from repairlib.health import MeasuredTable, read_measured
from repairlib.recap import (
    ANOTHER_LIST,
    CHANGED_LINES,
    MOST_BOARDS,
    Board,
    Catalogue,
    Item,
    Plan,
    places_of,
    plan,
    readings_of,
    unchanged,
)
from repairlib.show.recap_board import draw_recap

MORE = "Measured values and number of boards"
EXAMPLE = """Ref, Value, Type
C1-C2, 2200µF 25V, elect axial
C3, 10/16, elect
C4, 4.7/50, elect NP
C5, .1, film
C6, 100, elect
"""


class PlanView(Panel):
    """The panel's parts: the field `parts_list`, what is told in `summary`, `table` and `waiting`.

    `readings` is a field for measured values and `boards` the number of boards, folded away;
    `measured` and `order` tell what they come to. `ticks` are the boxes of the checklist in
    fitting order; `picture` shows the board, `files` the links to save. `plan` is the Plan shown,
    None while the text is no list. `fitted` are the references ticked off; they stay ticked when
    the list is mended.

    >>> view = PlanView("C1,10/16,elect")
    >>> view.plan
    the list: 1 to replace, 0 to judge, 0 stay, 0 on hold, 0 of 1 lines unreadable
    """

    def __init__(
        self,
        text: str = EXAMPLE,
        board: Board | None = None,
        readings: str = "",
        catalogue: Catalogue | None = None,
    ):
        self.first = (text, board, readings)
        self.board = board
        self.catalogue = catalogue
        self.plan: Plan | None = None
        self.parts_list = _field(text, "Paste a parts list here: one line for each part or group")
        self.readings = _field(readings, "Ref, C (µF), ESR @ 120 Hz (Ω)")
        self.boards = widgets.BoundedIntText(value=1, min=1, max=MOST_BOARDS, description="Boards")
        more = widgets.Accordion([widgets.VBox([self.readings, self.boards])], titles=(MORE,))
        self.summary, self.table, self.waiting = words(), words(), words()
        self.measured, self.order = words(), words()
        self.picture, self.files = words(), words()
        self.ticks: list[widgets.Checkbox] = []
        self.fitted: set[str] = set()
        columns = widgets.Layout(grid_template_columns="repeat(auto-fit, minmax(22rem, 1fr))")
        self.heading, self.checklist = words(), widgets.GridBox(layout=columns)
        for field in (self.parts_list, self.readings, self.boards):
            field.observe(self._plan_anew, "value")
        asks = [self.summary, self.waiting, self.measured, self.table, self.order]
        answer = widgets.VBox([*asks, self.heading, self.checklist, self.picture, self.files])
        answer.add_class("rl-plan")
        super().__init__(words(STYLE), self.parts_list, more, answer)
        self.add_class("rl-wide")
        self._plan_anew()

    def _plan_anew(self, change=None) -> None:
        told = (self.table, self.waiting, self.measured, self.order)
        shown = (*told, self.heading, self.picture, self.files)
        problem = ""
        text, boards = self.parts_list.value, self.boards.value
        self.board, same, notes = self._what_belongs_to(text)
        try:
            table = self._measured_table(same)
        except RepairlibError as wrong:
            table, problem = None, trouble(wrong)
        try:
            self.plan = plan(
                text, self.board, measured=table, catalogue=self.catalogue, boards=boards
            )
        except RepairlibError as wrong:
            self.plan, self.ticks, self.checklist.children = None, [], ()
            self.summary.value = trouble(wrong)
            for piece in shown:
                piece.value = ""
            return
        self.summary.value = summary_html(self.plan, notes)
        self.table.value = table_html(self.plan)
        self.waiting.value = waiting_html(self.plan)
        self.measured.value = problem or measured_html(self.plan)
        self.order.value = order_html(self.plan)
        self.files.value = files_html(self.plan)
        self._show_checklist()
        self._show_board()

    def _what_belongs_to(self, text: str) -> tuple[Board | None, frozenset[str] | None, list[str]]:
        """The board of the list as it stands now, its unchanged references, and what to say.

        The references are None when it is the list of another board.
        """
        first, board, readings = self.first
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

    def _show_checklist(self) -> None:
        steps = self.plan.steps if self.plan else []
        items = [item for step in steps if not step.handed_on for item in step.items][:SHOWN_ITEMS]
        self.ticks = [_tick(item, item.reference in self.fitted) for item in items]
        for item, tick in zip(items, self.ticks, strict=True):
            tick.observe(partial(self._ticked, item.reference), "value")
        self.heading.value = "<h4>Tick off what is fitted and checked</h4>" if self.ticks else ""
        self.checklist.children = self.ticks

    def _ticked(self, reference: str, change) -> None:
        (self.fitted.add if change["new"] else self.fitted.discard)(reference)
        self._show_board()

    def _show_board(self) -> None:
        self.picture.value = ""
        if self.board is not None and self.plan is not None:
            self.picture.value = picture(draw_recap(self.plan, done=self.fitted))


def plan_view(
    text: str = EXAMPLE,
    board: Board | None = None,
    readings: str = "",
    catalogue: Catalogue | None = None,
) -> PlanView:
    """The plan view, ready to be shown.

    text: the parts list that stands in the field at first. board: where the parts sit, if known.
    readings: a table of measured values. catalogue: the parts that can be bought.
    """
    return PlanView(text, board, readings, catalogue)


def _field(text: str, placeholder: str) -> widgets.Textarea:
    layout = widgets.Layout(width="100%", height="170px")
    return widgets.Textarea(value=text, placeholder=placeholder, layout=layout)


def _tick(item: Item, ticked: bool) -> widgets.Checkbox:
    label = f"{item.reference}: {item.new}, {item.polarity}"
    return widgets.Checkbox(value=ticked, description=label, indent=False)
