"""Quick check: type a marking, see the part that carries it, what it may mean, and who says so.

The panel is a thin view: what it shows is made in `repairlib.faces.shown`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.faces.panels.answer_inputs import PLAIN
from repairlib.faces.panels.keeping import Keeping
from repairlib.faces.panels.look import Panel, words
from repairlib.faces.shown.drawing import marked
from repairlib.faces.shown.marking import look_up
from repairlib.markings import KIND_NAMES

ANY_PART = ""
PARTS = [("any part", ANY_PART), *((name, kind) for kind, name in KIND_NAMES.items())]
EXAMPLES = "104K, or brown black red gold"
STYLE = """<style>
.rl-quick .widget-hbox {align-items: flex-start; column-gap: 16px; flex-wrap: wrap;}
.rl-quick .widget-hbox > .widget-html:last-child {flex: 1 1 18rem; padding-top: .4em;}
.rl-quick .rl-answer {font-size: 1.5em; font-weight: 600; line-height: 1.3;}
.rl-quick .widget-html-content p {margin: 0 0 .15em 0;}
</style>"""


class QuickCheck(Panel):
    """The panel's parts: the fields `marking` and `part`, what is shown in `picture` and `answer`.

    It answers at every key stroke, also to text that makes no sense.

    >>> check = QuickCheck("104K")
    >>> "100 nF" in check.answer.value.replace("\\xa0", " ")
    True
    """

    def __init__(self, marking: str = "", part: str = ANY_PART, kept: str = ""):
        self.marking = widgets.Text(
            value=marking,
            description="Marking",
            placeholder=EXAMPLES,
            style=PLAIN,
            layout=widgets.Layout(width="340px"),
        )
        self.part = widgets.Dropdown(
            options=PARTS, value=part, description="Read it as", style=PLAIN
        )
        self.picture = words()
        self.answer = words()
        self.keeping = Keeping(kept, {"marking": self.marking, "part": self.part})
        for field in (self.marking, self.part):
            field.observe(self._update, "value")
        asked = widgets.HBox([self.marking, self.part])
        super().__init__(
            words(STYLE), asked, self.keeping.strip, widgets.HBox([self.picture, self.answer])
        )
        self.add_class("rl-quick")
        self._update()

    def _update(self, change=None) -> None:
        found = look_up(self.marking.value, self.part.value)
        self.answer.value = found.html
        self.picture.value = marked(found.body, self.marking.value)


def quick_check(marking: str = "", part: str = ANY_PART, kept: str = "quick check") -> QuickCheck:
    """The quick-check panel, ready to be shown.

    marking: what stands in the field at first. part: a word that `repairlib.read` takes, or "".
    kept: the name under which what is typed is kept.
    """
    return QuickCheck(marking, part, kept)
