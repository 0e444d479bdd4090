"""The route: one part at a time, in the order of work, with its place on the map beside it.

What is to be done at a stop is decided in `repairlib.recap`; here it is shown, and done is kept.
"""

from __future__ import annotations

from collections.abc import Callable

import ipywidgets as widgets

from repairlib.core.html import Html, fold, listed, named, paragraphs, picture, row, table, text
from repairlib.core.html import told as told_html
from repairlib.core.safety import caution
from repairlib.faces.panels.look import words
from repairlib.recap import Plan, Stop, here_on, route_of
from repairlib.show.recap_board import draw_recap
from repairlib.show.stop import draw_stop

FITTED = "Done: fitted, plus checked"
ALL_DONE = "All stops are done"
AFTERWARDS = (
    "Look at each plus once more, from both sides of the board.",
    "Look for solder splashes, cut leads and tools before anything is closed.",
    "Then the first power-up: its ticks stand on the bench sheet.",
)
CHARGE = "Plug out, discharged, measured? A capacitor keeps its charge."
NO_STOPS = "Nothing here is yours to fit: the route is empty"
SHOWN_STOPS = 120  # in the table; the bench sheet holds them all


class Route(widgets.VBox):
    """The route's parts: `head` and `card` (the stop), `done`, `back` (buttons), `map`, `table`.

    `fitted` holds the references that are done, and `moved` is called with them when that changes.

    >>> from repairlib.recap import plan
    >>> route = Route(lambda fitted: None)
    >>> route.show(plan("C1,10/16,elect\\nC2,47/25,elect"), [])
    >>> route.done.click()
    >>> route.fitted, "Stop 2 of 2" in route.head.value
    (['C1'], True)
    """

    def __init__(self, moved: Callable[[list[str]], None]):
        self.moved = moved
        self.fitted: list[str] = []
        self.stops: list[Stop] = []
        self.plan: Plan | None = None
        self.head, self.card, self.map, self.table = words(), words(), words(), words()
        self.done = widgets.Button(description=FITTED, button_style="primary")
        self.back = widgets.Button(description="Back")
        for button in (self.done, self.back):
            button.layout = widgets.Layout(width="auto", flex="0 0 auto")
        self.done.on_click(self._done)
        self.back.on_click(self._back)
        ways = widgets.HBox([self.done, self.back], layout=widgets.Layout(flex_flow="row wrap"))
        stop = widgets.VBox([self.head, ways, self.card])
        stop.add_class("rl-stop")
        both = widgets.Box([stop, self.map])
        both.add_class("rl-route")
        super().__init__([both, self.table])

    def show(self, plan: Plan | None, fitted: list[str]) -> None:
        """Show the route of a plan; `fitted` are the references that are done."""
        self.plan, self.fitted = plan, list(fitted)
        self.stops = [] if plan is None else route_of(plan)
        self._draw()

    @property
    def here(self) -> int:
        """The index of the stop where one is; the number of stops at the end."""
        return here_on(self.stops, self.fitted)

    def _done(self, _button) -> None:
        if self.here < len(self.stops):
            self.fitted.append(self.stops[self.here].reference)
            self._went()

    def _back(self, _button) -> None:
        """Return to the stop before, which is then to be done again."""
        if self.here:
            before = self.stops[self.here - 1].reference
            self.fitted = [one for one in self.fitted if one != before]
            self._went()

    def _went(self) -> None:
        self._draw()
        self.moved(list(self.fitted))

    def _draw(self) -> None:
        here, count = self.here, len(self.stops)
        self.done.disabled, self.back.disabled = here == count, here == 0
        self.map.value = self.table.value = self.head.value = self.card.value = ""
        if self.plan is None:
            return
        if not count:
            self.card.value = told_html("unanswered", NO_STOPS)
        elif here == count:
            self.card.value = told_html("right", f"{ALL_DONE}: {count} of {count}", AFTERWARDS)
        else:
            self.head.value = head_html(self.stops[here], count)
            self.card.value = stop_html(self.stops[here])
        if self.plan.board is not None and self.plan.board.positions:
            self.map.value = picture(draw_recap(self.plan, self.fitted))
        self.table.value = stops_html(self.stops, self.fitted)


def head_html(stop: Stop, count: int) -> str:
    """Where one is, and what is to be done before this stop."""
    first = told_html("partly right", stop.before) if stop.before else ""
    title = f"Stop {stop.number} of {count}: {stop.reference}"
    return f'{first}<h4 role="status">{text(title)}</h4>{paragraphs([stop.step])}'


def stop_html(stop: Stop) -> str:
    """The card of one stop: old part, new part, plus, what to look at, cautions."""
    item = stop.item
    chosen = item.selection.part if item.selection is not None else None
    new = Html(f"{text(item.new)}<br>{text(chosen.part)}" if chosen is not None else text(item.new))
    looks = fold(f"Look at ({len(item.looks)})", listed(item.looks)) if item.looks else ""
    pairs = [("Take out", item.old.text), ("Fit", new), ("Plus", Html(f"<b>{text(stop.plus)}</b>"))]
    cautions = dict.fromkeys(("stored charge", *item.cautions))
    return (
        f"{named(pairs)}{picture(draw_stop(stop))}{looks}{caution(*cautions).folded('⚠ ' + CHARGE)}"
    )


def stops_html(stops: list[Stop], fitted: list[str]) -> str:
    """All stops as a table: the map in words."""
    if not stops:
        return ""
    head = row(("Stop", "Place", "Where", "Fit", "Plus", "State"), 'scope="col"', "th")
    here = here_on(stops, fitted)
    rows = [
        row((stop.number, stop.reference, _where(stop), stop.item.new, stop.plus, state))
        for at, stop in enumerate(stops[:SHOWN_STOPS])
        for state in ["here" if at == here else "done" if stop.reference in fitted else ""]
    ]
    more = len(stops) - SHOWN_STOPS
    left = paragraphs([f"And {more} more: the bench sheet holds them all."]) if more > 0 else ""
    return fold(f"All {len(stops)} stops as a table", table(rows, head) + left)


def _where(stop: Stop) -> str:
    place = stop.item.place
    if place is None:
        return ""
    return f"{place.x_mm:g} mm from the left, {place.y_mm:g} mm from the top"
