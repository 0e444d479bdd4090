"""At an exercise whose marks are told later: says so, and takes the word that releases them."""

from __future__ import annotations

from collections.abc import Callable

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import told
from repairlib.faces.panels.look import trouble, words
from repairlib.learn.holding import PRACTICE, release_here
from repairlib.learn.question import HELD

HEADLINE = "Right or wrong is told later, to all at once"
SAYS = (
    "Your answers are saved. Your instructor releases the marks. Dangers are told at once.",
    PRACTICE,
)
WORD, RELEASE = "Release word", "Tell me now"
NOT_YET = "Not released yet. Your instructor says when, and with which word."


class HoldView(widgets.VBox):
    """The notice, the field `word` and the button `release`; `look` is called when it is clicked.

    Without a word it looks again whether the instructor has released the lesson on the server.
    """

    def __init__(self, lesson: str, look: Callable[[], bool]):
        self.lesson, self._look = lesson, look
        self.word = widgets.Text(
            description=WORD,
            layout={"width": "22rem", "max_width": "100%"},
            style={"description_width": "initial"},
        )
        self.release = widgets.Button(description=RELEASE)
        self.release.on_click(self._release)
        self.status = words()
        line = widgets.HBox([self.word, self.release], layout={"flex_flow": "row wrap"})
        super().__init__([words(told(HELD, HEADLINE, SAYS)), line, self.status])

    def show(self, held: bool) -> None:
        """Stand there while the lesson is held."""
        self.layout.display = "" if held else "none"

    def _release(self, _button=None) -> None:
        try:
            if self.word.value.strip():
                release_here(self.lesson, self.word.value)
            still_held = self._look()
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        self.word.value = ""
        self.status.value = told("unanswered", NOT_YET) if still_held else ""
