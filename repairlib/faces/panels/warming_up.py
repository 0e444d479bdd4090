"""Practice with instant feedback: the same kinds of question, not saved and not marked."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import ipywidgets as widgets

from repairlib.core.draws import Draw
from repairlib.faces.panels.look import Panel
from repairlib.faces.panels.question_view import QuestionView
from repairlib.learn.question import Question


def practice(
    questions: Sequence[Question] | Callable[[Draw], Sequence[Question]],
) -> widgets.Widget:
    """Questions to try, each told at once. Nothing is saved and no points are given.

    Given a function of a draw, a button brings the same questions with new numbers.
    """
    if not callable(questions):
        return Panel(*_views(questions))
    box = widgets.VBox()
    again = widgets.Button(description="Other numbers", tooltip="The same questions anew")
    rounds = iter(range(1_000_000))

    def draw(_=None):
        box.children = _views(questions(Draw(f"practice\n{next(rounds)}")))

    again.on_click(draw)
    draw()
    return Panel(box, again)


def _views(questions: Sequence[Question]) -> list[QuestionView]:
    return [
        QuestionView(one, f"Try it, {number}", graded=False)
        for number, one in enumerate(questions, start=1)
    ]
