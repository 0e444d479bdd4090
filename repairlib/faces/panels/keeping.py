"""What is typed into the fields of a panel is kept for the learner, and stands there again.

Each change is saved at once, as typed. What no longer fits its field, such as an option that is
gone, gives way to what the lesson begins with.
"""

from __future__ import annotations

import json
from collections.abc import Mapping

import ipywidgets as widgets
from traitlets import TraitError

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.faces.panels.following import follow, turn_all
from repairlib.faces.panels.look import words
from repairlib.learn.home import file_name
from repairlib.learn.kept_work import KeptWork
from repairlib.learn.learner import current_learner

AS_AT_FIRST = "Back to the lesson's values"


class Keeping:
    """Keeps `fields` under the name of their panel and of what stands in them at first.

    So the same panel in two lessons keeps two things, and a lesson that begins otherwise begins
    as it was written. `strip` is a line for the panel, mostly empty: the way back to the values of
    the lesson, and what could not be kept. Without a name nothing is kept.
    """

    def __init__(self, name: str, fields: Mapping[str, widgets.DOMWidget]):
        self.fields = dict(fields)
        self.first = {key: field.value for key, field in self.fields.items()}
        left = widgets.Layout(width="auto", align_self="flex-start")
        self.again = widgets.Button(description=AS_AT_FIRST, layout=left)
        self.note = words()
        self.strip = widgets.VBox([self.again, self.note])
        self._filling = False
        self._say()
        if not name:
            return
        self.name = file_name(f"{name} {json.dumps(self.first, ensure_ascii=True)}")
        self.again.on_click(self._back)
        self._fill()
        for key, field in self.fields.items():
            field.observe(lambda change, key=key: self._changed(key, change["new"]), "value")
        follow(self.name, self._fill)

    def _fill(self) -> None:
        """Put in what the learner of now has kept, and else what the lesson begins with."""
        try:
            self.work = KeptWork(self.name)
            kept, problem = self.work.read(), self.work.note
        except RepairlibError as error:
            kept, problem = {}, str(error)
        self._put(kept)
        self._say(problem)

    def _put(self, values: Mapping[str, object]) -> None:
        self._filling = True
        try:
            for key, field in self.fields.items():
                if key not in values or not put(field, values[key]):
                    put(field, self.first[key])
        finally:
            self._filling = False

    def _changed(self, key: str, value: object) -> None:
        if self._filling or value is None:  # the options of a list are just being changed
            return
        self._save({key: value})

    def _back(self, _button=None) -> None:
        self._put({})
        self._save(self.first)

    def _save(self, changes: Mapping[str, object]) -> None:
        try:
            if current_learner()[0].folder() != self.work.learner.folder():
                turn_all()
                self._fill()
                self._say(f"In another lesson it became the turn of {self.work.learner.who}.")
                return
            self.work.save(changes)
            problem = self.work.note
        except RepairlibError as error:
            problem = f"Not kept: {error}"
        self._say(problem)

    def _say(self, problem: str = "") -> None:
        differs = any(field.value != self.first[key] for key, field in self.fields.items())
        self.again.layout.display = "" if differs else "none"
        self.note.value = told("cannot read", "Please note", [problem]) if problem else ""
        self.strip.layout.display = "" if differs or problem else "none"


def put(field: widgets.DOMWidget, value: object) -> bool:
    """Put a value into a field; False where it does not fit.

    >>> field = widgets.Dropdown(options=["axial", "radial"])
    >>> put(field, "radial"), put(field, "chip"), field.value
    (True, False, 'radial')
    """
    try:
        field.value = value
    except TraitError:
        return False
    return bool(field.value == value)
