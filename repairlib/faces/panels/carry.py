"""Take my work with me, and bring it: one file to carry to another computer."""

from __future__ import annotations

import json

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.core.wording import counted
from repairlib.faces.panels.file_button import FileButton
from repairlib.faces.panels.following import turn_all
from repairlib.faces.panels.look import trouble, words
from repairlib.faces.panels.sheet_view import file_link, who_answers
from repairlib.learn.carrying import Brought, bring, how_many, take_along
from repairlib.learn.learner import current_learner

TAKE, BRING = "Take my work with me", "Bring my work"
HOW = """<p>One file holds all your answers and all you typed into panels. Save it on a stick, and
bring it at the other computer.</p>"""


class CarryWork(widgets.VBox):
    """The parts: the buttons `take` and `bring` (it opens a file), and what is said in `status`."""

    def __init__(self):
        self.take = widgets.Button(description=TAKE, layout={"width": "auto"})
        self.bring = FileButton(BRING, self._bring, kinds=".json")
        self.status = words()
        self.take.on_click(self._take)
        buttons = widgets.HBox([self.take, self.bring], layout={"flex_flow": "row wrap"})
        super().__init__([words(HOW), buttons, self.status])

    def _take(self, _button=None) -> None:
        try:
            learner = current_learner()[0]
            content = take_along(learner)
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        answers, typed = how_many(content)
        name = f"repair-work-{learner.folder().name.rpartition('-')[0] or 'demo'}.json"
        link = file_link(name, json.dumps(content, indent=1), f"Save {name}")
        held = f"{counted(answers, 'answer')}, {counted(typed, 'thing')} typed into panels"
        headline = f"{who_answers(learner)}: {held}"
        self.status.value = told("right", headline, more=f"<p>{link}</p>")

    def _bring(self, name: str, content: bytes) -> None:
        try:
            brought = bring(content, name)
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        turn_all()
        self.status.value = brought_html(brought)


def brought_html(brought: Brought) -> str:
    """What came of a file that was brought."""
    says = []
    if brought.same:
        were = "was" if brought.same == 1 else "were"
        says.append(f"{brought.same} {were} here already.")
    if brought.stayed:
        one = brought.stayed == 1
        says.append(
            f"{brought.stayed} {'differs' if one else 'differ'}, and what is here is as late or "
            f"later: it stays. The file you brought still has the other{'' if one else 's'}."
        )
    if brought.replaced:
        says.append(f"What was replaced here is kept in {brought.replaced}.")
    headline = f"{counted(brought.new, 'thing')} taken in" if brought.new else "Nothing new in it"
    return told("right", f"{who_answers(brought.learner)}: {headline}", [*says, *brought.notes])
