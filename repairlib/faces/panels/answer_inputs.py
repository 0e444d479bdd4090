"""The boxes in which a question is answered, one kind for each kind of question.

Each function takes the question, the answer so far and `changed`, which it calls with what was
typed, unjudged, at every change.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from html import escape

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.learn.arranging import Order, Table
from repairlib.learn.question import LETTERS, Choice, Number, Question

PLAIN = {"description_width": "initial"}


def input_for(question: Question, typed, changed: Callable) -> widgets.Widget:
    """The boxes for `question`, filled with `typed`."""
    return KINDS[type(question)](question, typed, changed)


def type_number(question: Number, typed, changed: Callable, label="Answer", width="20rem"):
    """One text box. What was typed stays there, readable or not."""
    box = widgets.Text(
        value=typed if isinstance(typed, str) else "",
        placeholder="number and unit" if question.unit else "number",
        description=label,
        style=PLAIN,
        layout=widgets.Layout(width=width),
    )
    box.observe(lambda change: changed(change["new"]), "value")
    return box


def choose_option(question: Choice, typed, changed: Callable):
    """One round button for each option."""
    lettered = [
        (f"{letter}) {option}", option)
        for letter, option in zip(LETTERS, question.options, strict=False)
    ]
    box = widgets.RadioButtons(options=lettered, value=_option(question, typed))
    box.observe(lambda change: changed(change["new"]), "value")
    return box


def number_steps(question: Order, typed, changed: Callable):
    """A small list of numbers before each step."""
    numbers = [str(place + 1) for place in range(len(question.shown))]
    boxes = {}
    given = _numbers(question, typed)

    def tell(_):
        changed({step: box.value for step, box in boxes.items()})

    lines = []
    for letter, step in zip(LETTERS, question.shown, strict=False):
        start = given.get(step, "")
        boxes[step] = widgets.Dropdown(
            options=[("–", ""), *((number, number) for number in numbers)],
            value=start if start in numbers else "",
            tooltip=f"Number of step {letter}: {step}",
            layout=widgets.Layout(width="4.2rem", flex="0 0 auto"),
        )
        boxes[step].observe(tell, "value")
        text = widgets.HTML(f"{letter}) {escape(step, quote=False)}")
        lines.append(widgets.HBox([boxes[step], text], layout=widgets.Layout(align_items="center")))
    box = widgets.VBox(lines)
    box.add_class("rl-steps")
    return box


def fill_table(question: Table, typed, changed: Callable):
    """A grid of boxes, each named by its row and column."""
    columns = question.columns()
    rows = typed if isinstance(typed, Mapping) else {}
    grid = [widgets.HTML(), *(widgets.HTML(f"<b>{escape(column)}</b>") for column in columns)]
    for row, cells in question.cells.items():
        grid.append(widgets.HTML(f"<b>{escape(row)}</b>"))
        given = rows.get(row)
        for column in columns:
            text = given.get(column, "") if isinstance(given, Mapping) else ""
            tell = partial(_tell_cell, changed, row, column)
            grid.append(_cell(cells.get(column), text, tell, f"{row}, {column}"))
    box = widgets.GridBox(grid)
    widths = " ".join(["minmax(3rem, max-content)"] + ["minmax(5rem, 1fr)"] * len(columns))
    box.layout.grid_template_columns = widths
    box.add_class("rl-grid")
    return box


def _tell_cell(changed, row, column, text):
    changed({row: {column: text}})


def _cell(cell: Question | None, text: str, changed: Callable, name: str):
    if cell is None:
        return widgets.HTML("–")
    if isinstance(cell, Number):
        box = type_number(cell, text, changed, label="", width="auto")
        box.placeholder = ""
    else:
        options = [("choose", ""), *((option, option) for option in cell.options)]
        box = widgets.Dropdown(options=options, value=_option(cell, text) or "")
        box.layout.width = "auto"
        box.observe(lambda change: changed(change["new"]), "value")
    box.tooltip = name
    return box


def _option(question: Choice, typed) -> str | None:
    """The option that was meant, or None: what cannot be read is left as it was saved."""
    try:
        return None if question.is_blank(typed) else question.read(typed)
    except RepairlibError:
        return None


def _numbers(question: Order, typed) -> Mapping[str, str]:
    """The number of each step, of an answer given by form or by letters."""
    if isinstance(typed, Mapping):
        return typed
    try:
        steps = [] if question.is_blank(typed) else question.read(typed)
    except RepairlibError:
        return {}
    return {step: str(place + 1) for place, step in enumerate(steps)}


KINDS = {Number: type_number, Choice: choose_option, Order: number_steps, Table: fill_table}
