"""Who is learning: the form in lesson 00 that sets the name and the group once."""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.look import Panel, told, trouble, words
from repairlib.learn.learner import DEMO, current_learner, set_learner

STYLE = {"description_width": "6rem"}
HELP = "Your name and group choose your variant of the questions. Capitals or small "
HELP += "letters make no difference. Leave them out to work on the demo variant."


class LearnerForm(Panel):
    """The form's parts: `name`, `group`, `remember`, `status`."""

    def __init__(self):
        self.name = _text("Your name", "as on the class list")
        self.group = _text("Group", "as your instructor calls it")
        self.remember = widgets.Button(description="Remember me", button_style="primary")
        self.status = words()
        self.remember.on_click(self._remember)
        boxes = [words(f"<p>{HELP}</p>"), self.name, self.group, self.remember, self.status]
        super().__init__(*boxes)
        self._show_current()

    def _show_current(self):
        try:
            learner, note = current_learner()
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        self.name.value, self.group.value = learner.name, learner.group
        if note:
            self.status.value = told("cannot read", "Please note", [note])
        elif learner is DEMO:
            self.status.value = told("unanswered", "Nobody is set: you see the demo variant")
        else:
            self.status.value = told("right", f"Remembered: {learner}")

    def _remember(self, _):
        try:
            learner = set_learner(self.name.value, self.group.value)
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        note = "Run an exercise's cells again to get your variant."
        self.status.value = told("right", f"Remembered: {learner}", [note])


def learner_form() -> LearnerForm:
    """The form for name and group, ready to be shown."""
    return LearnerForm()


def _text(label: str, placeholder: str) -> widgets.Text:
    layout = widgets.Layout(width="24rem")
    return widgets.Text(description=label, placeholder=placeholder, style=STYLE, layout=layout)
