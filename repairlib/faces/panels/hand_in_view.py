"""Hand in, at an exercise: one click, a receipt in large type, and three ways to the instructor.

Where the group has a folder for it, the file goes there at once, and again while answers change, so
that the instructor can see who is stuck. Everywhere the same file can be saved and given by hand,
and the answers to one lesson be read out in one line. A file to give by hand counts as handed in
when the learner says that it is saved: a browser does not tell.
"""

from __future__ import annotations

import asyncio
from base64 import b64encode
from time import monotonic

import ipywidgets as widgets

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.core.html import Html, fold, paragraphs, soft, text, told
from repairlib.faces.panels.look import trouble, words
from repairlib.faces.panels.sheet_view import file_link, who_answers
from repairlib.faces.panels.tries_view import moment
from repairlib.learn.delivering import Delivered, deliver, group_of_learner, note_given
from repairlib.learn.exercise import Exercise
from repairlib.learn.group import Group
from repairlib.learn.hand_in import HandedIn, answer_line
from repairlib.learn.learner import DEMO, Demo, Learner
from repairlib.show.sheets.sheet_pieces import STYLE as PAPER

EVERY = 5.0  # seconds between two files that go to the instructor while answers change
HAND_IN = "Hand in"
SAVED = "I have saved the file"
TO_SAVE = [
    "Save the file and give it to your instructor, on a stick or as they say.",
    f"Press “{SAVED}” when you have it: until then it does not count as handed in here.",
]
NOTED = "Noted: the file is saved, for your instructor"
LIVE = "While you work, your answers go to your instructor by themselves."
NOBODY = "Say first who is answering"
NOBODY_SAYS = "Hand over, at the top of the exercise, sets it. A file without a name is nobody's."
CHANGED_SINCE = "You have changed answers since. Hand in again for the receipt of what stands now."
READ_OUT = "No stick and no network? Read this line out"


class HandInView(widgets.VBox):
    """The button `hand_in` and what came of it in `status`, for the learner of an exercise.

    The button `saved` is there while a file waits to be saved and given by hand.
    """

    def __init__(self, exercise: Exercise):
        self.exercise = exercise
        self.learner = exercise.learner
        self.hand_in = widgets.Button(description=HAND_IN, button_style="primary")
        self.hand_in.on_click(self._hand_in)
        self.saved = widgets.Button(description=SAVED, layout={"width": "auto"})
        self.saved.on_click(self._note_saved)
        self.live, self.status, self.noted = words(), words(), words()
        self._to_save: HandedIn | None = None
        self._told = ""
        self._put_at = -EVERY
        self._waiting: asyncio.TimerHandle | None = None
        super().__init__([self.hand_in, self.live, self.status, self.saved, self.noted])
        self._wait_for(None)
        self._say_live()

    def turn(self) -> None:
        """Be there for who is answering now; what the one before changed goes out first."""
        if self._waiting:
            self._waiting.cancel()
            self._put()
        self.learner = self.exercise.learner
        self.status.value = self._told = ""
        self._wait_for(None)
        self._say_live()

    def changed(self) -> None:
        """An answer was judged: the instructor's file follows, at most every EVERY seconds."""
        if self._told:
            self.status.value = told("partly right", CHANGED_SINCE) + self._told
            self._told = ""
        if self._waiting or not self._folder():
            return
        left = self._put_at + EVERY - monotonic()
        if left <= 0:
            self._put()
            return
        try:
            self._waiting = asyncio.get_running_loop().call_later(left, self._put)
        except RuntimeError:  # no loop to wait in: the next change takes this one along
            return

    def _folder(self) -> str:
        """The folder for what members of the group hand in, "" for all others."""
        group = _group_of(self.learner)
        return group.hand_in_to if group else ""

    def _say_live(self) -> None:
        self.live.value = soft(text(LIVE)) if self._folder() else ""

    def _put(self) -> Delivered | None:
        """Put the file where the group wants it; None where that could not be done."""
        self._waiting, self._put_at = None, monotonic()
        try:
            return deliver(self.learner)
        except RepairlibError as error:
            self.status.value = trouble(error)
            return None

    def _hand_in(self, _button=None) -> None:
        if self.learner is DEMO:
            self.status.value = told("cannot read", NOBODY, [NOBODY_SAYS])
            return
        if self._waiting:
            self._waiting.cancel()
        self._wait_for(None)
        done = self._put()
        if done is None:
            return
        try:
            line = answer_line(self.learner, self.exercise.lesson, _word_of(self.learner))
        except RepairlibError as error:
            self.status.value = trouble(error)
            return
        self._told = handed_html(self.learner, done, line)
        self.status.value = self._told
        self._wait_for(None if done.path else done.handed)

    def _wait_for(self, handed: HandedIn | None) -> None:
        """Ask whether this file is saved, or nothing."""
        self._to_save, self.noted.value = handed, ""
        self.saved.layout.display = "" if handed else "none"

    def _note_saved(self, _button=None) -> None:
        if self._to_save is None:
            return
        try:
            note_given(self.learner, self._to_save.data)
        except RepairlibError as error:
            self.noted.value = trouble(error)
            return
        self._wait_for(None)
        self.noted.value = told("right", NOTED)


def handed_html(learner: Learner, delivered: Delivered, line: str) -> Html:
    """The receipt in large type, then the file, the page to print and the line to read out."""
    handed, path = delivered
    data = b64encode(handed.data).decode("ascii")
    save = Html(
        f'<a download="{text(handed.name)}" href="data:application/json;base64,{data}">'
        f"Save {text(handed.name)}</a>"
    )
    page = file_link("receipt.html", receipt_page(learner, handed), "Save the receipt to print")
    says = ["It is with your instructor. Write down the receipt."] if path else TO_SAVE
    more = (
        f'<div class="rl-receipt">{text(handed.receipt)}</div>'
        f"<p>{save}</p><p>{page}</p>{fold(READ_OUT, paragraphs([line]))}"
    )
    done = "Handed in" if path else "Ready to give"
    return told("right", f"{done}: {who_answers(learner)}, {moment(handed.at)}", says, more)


def receipt_page(learner: Learner, handed: HandedIn) -> str:
    """The receipt as a page to print: who, when, the eight signs, and the name of the file."""
    when = moment(handed.at, "%d %B %Y, %H:%M")
    return (
        '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width">'
        f"<title>Receipt: {text(who_answers(learner))}</title><style>{PAPER}</style></head>\n"
        f"<body>\n<h1>Receipt</h1><p><b>{text(who_answers(learner))}</b></p><p>{when}</p>"
        f'<p style="font: 36pt monospace; margin: 8mm 0">{text(handed.receipt)}</p>'
        f"<p>File: {text(handed.name)}</p><p>The same answers give the same receipt. It is no "
        "signature: it only shows that nothing was lost on the way.</p>\n</body></html>\n"
    )


def _group_of(learner: Learner | Demo) -> Group | None:
    """The group of the learner, None also where its file cannot be read: handing in will say so."""
    try:
        return group_of_learner(learner)
    except RepairlibError:
        return None


def _word_of(learner: Learner) -> str:
    """Their short word, of a pair both; "" for who is not in the group."""
    group = _group_of(learner)
    members = group.by_name() if group else {}
    answering = [members.get(normal(name)) for name in (learner.name, learner.partner)]
    return " + ".join(one.word for one in answering if one) if answering[0] else ""
