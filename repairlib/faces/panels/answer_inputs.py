"""The boxes in which a question is answered, one kind for each kind of question.

Each function takes the question, the answer so far, `changed`, which it calls with what was
typed, unjudged, at every change, and the `name` of the question, from which each box has the name
that is read aloud.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import escape
from repairlib.faces.panels.bench_panel import PracticeBoard
from repairlib.faces.panels.look import named
from repairlib.learn.arranging import Order, Table
from repairlib.learn.bench_question import Bench, as_lines, moves_in
from repairlib.learn.question import LETTERS, Choice, Number, Question

PLAIN = {"description_width": "initial"}
WIDE, NARROW = "rl-wide", "rl-narrow"  # where a grid shows its columns: once above, or at each box


def input_for(question: Question, typed, changed: Callable, name: str) -> widgets.Widget:
    """The boxes for `question`, filled with `typed`."""
    if not isinstance(question, Order | Table | Bench):  # whose boxes each have a name of their own
        name = f"{name}: {asked(question.prompt)}"
    ask = next(made for kind, made in KINDS.items() if isinstance(question, kind))
    return ask(question, typed, changed, name)


def asked(prompt: str) -> str:
    """What a question asks, in one sentence: the last one that ends as a question, or the first.

    >>> asked("A part is marked `104`. What is its value? Give the unit.")
    'What is its value?'
    """
    sentences = prompt.replace("`", "").replace("?", "?.").split(".")
    questions = [one.strip() for one in sentences if one.strip().endswith("?")]
    return " ".join((questions or [sentences[0]])[-1].split())


def type_number(question: Number, typed, changed: Callable, name: str, width="20rem"):
    """One text box. What was typed stays there, readable or not."""
    box = widgets.Text(
        value=typed if isinstance(typed, str) else "",
        placeholder="number and unit" if question.unit else "number",
        layout=widgets.Layout(width=width, max_width="100%"),
    )
    box.observe(lambda change: changed(change["new"]), "value")
    return named(box, name)


def choose_option(question: Choice, typed, changed: Callable, name: str):
    """One round button for each option."""
    lettered = [
        (f"{letter}) {option}", option)
        for letter, option in zip(LETTERS, question.options, strict=False)
    ]
    box = widgets.RadioButtons(options=lettered, value=_option(question, typed))
    box.observe(lambda change: changed(change["new"]), "value")
    return named(box, name)


def number_steps(question: Order, typed, changed: Callable, name: str):
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
            layout=widgets.Layout(width="4.2rem", flex="0 0 auto"),
        )
        named(boxes[step], f"{name}: number of step {letter}, {step}")
        boxes[step].observe(tell, "value")
        text = widgets.HTML(f"{letter}) {escape(step, quote=False)}")
        lines.append(widgets.HBox([boxes[step], text], layout=widgets.Layout(align_items="center")))
    box = widgets.VBox(lines)
    box.add_class("rl-steps")
    return box


def fill_table(question: Table, typed, changed: Callable, name: str):
    """A grid of boxes, each named by its row and column."""
    columns = question.columns()
    rows = typed if isinstance(typed, Mapping) else {}
    grid = [_shown("", WIDE), *(_shown(f"<b>{escape(column)}</b>", WIDE) for column in columns)]
    for row, cells in question.cells.items():
        grid.append(widgets.HTML(f"<b>{escape(row)}</b>"))
        given = rows.get(row)
        for column in columns:
            text = given.get(column, "") if isinstance(given, Mapping) else ""
            tell = partial(_tell_cell, changed, row, column)
            grid.append(_shown(escape(column), NARROW))
            grid.append(_cell(cells.get(column), text, tell, f"{name}: {row}, {column}"))
    box = widgets.GridBox(grid)
    widths = " ".join(["fit-content(50%)"] + ["minmax(5rem, 1fr)"] * len(columns))
    box.layout.grid_template_columns = widths
    box.add_class("rl-grid")
    return box


def repair(question: Bench, typed, changed: Callable, name: str):
    """The board at the bench. Its moves are saved as they are made; a new attempt begins anew."""
    moves = moves_in(typed) if isinstance(typed, str) else ()

    def anew(_way: str) -> None:
        changed("")
        panel.begin(question.task)

    panel = PracticeBoard(
        question.task,
        moves,
        lambda lines: changed(as_lines(lines)),
        anew,
        reports=False,  # which tells the fault; the mark stands below
    )
    return panel


def _shown(html: str, where: str) -> widgets.HTML:
    heading = widgets.HTML(html)
    heading.add_class(where)
    return heading


def _tell_cell(changed, row, column, text):
    changed({row: {column: text}})


def _cell(cell: Question | None, text: str, changed: Callable, name: str):
    if cell is None:
        return widgets.HTML("–")
    if isinstance(cell, Number):
        box = type_number(cell, text, changed, name, width="auto")
        box.placeholder = ""
    else:
        options = [("choose", ""), *((option, option) for option in cell.options)]
        box = widgets.Dropdown(options=options, value=_option(cell, text) or "")
        box.layout.width = "auto"
        box.observe(lambda change: changed(change["new"]), "value")
    return named(box, name)


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


KINDS = {
    Number: type_number,
    Choice: choose_option,
    Order: number_steps,
    Table: fill_table,
    Bench: repair,
}
