"""One question on the screen: its text and picture, its boxes, and what is told under them."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Callable
from math import inf
from time import monotonic

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import fold, paragraphs, picture, prose, told
from repairlib.core.safety import caution
from repairlib.faces.panels.answer_inputs import input_for
from repairlib.faces.panels.look import words
from repairlib.learn.arranging import Table
from repairlib.learn.bench_question import Bench
from repairlib.learn.holding import line_held
from repairlib.learn.marking import Line, mark_question, points, worth
from repairlib.learn.question import (
    CHANGED,
    HELD,
    UNANSWERED,
    UNREADABLE,
    UNSAFE,
    Choice,
    Question,
)
from repairlib.learn.saved_answers import merged
from repairlib.learn.tries import QUICK, typed_further

BROAD, FULL = "rl-broad", "rl-full"
ROOMS = (324, 660)  # px for a picture in a third and in two thirds of a row
LETTERS = 14  # px, as the text beside a picture
PAUSE = 0.4  # seconds without a key before half-typed text is judged


class QuestionView(widgets.VBox):
    """A question to answer. `answered(id, change)` is called at every change, before judging.

    `answered` gives back a sentence for the learner ("Saved"), or raises RepairlibError, whose text
    is shown while what was typed stays in its box. `judged(view)` is called when an answer has been
    judged: a choice at once, text after a pause. `line` is the mark now, `shown` what is told of it
    while `held`: not what is right. `answered_with` is the version in which a question was answered
    that has changed since: told until it is answered anew. `unsafe_first` is True once a graded
    question was answered dangerously, and stays so.
    """

    def __init__(
        self,
        question: Question,
        title: str,
        typed="",
        answered: Callable[[str, object], str] = lambda name, change: "",
        judged: Callable[[QuestionView], None] = lambda view: None,
        graded: bool = True,
        answered_with: str | None = None,
        unsafe_first: bool = False,
        held: bool = False,
    ):
        self.question = question
        self.typed = typed
        self.graded = graded
        self.unsafe_first = unsafe_first
        self.held = held
        self.line: Line = mark_question(question, typed, answered_with, unsafe_first)
        self._answered = answered
        self._judged = judged
        self._judged_at = monotonic()
        self._waiting = None
        # The letter or text chosen then may mean another option now: choose anew.
        gone = self.line.state == CHANGED and isinstance(question, Choice)
        self.box = input_for(question, "" if gone else typed, self._changed, title)
        self.feedback = words()
        self.saved = words()
        asked = words(question_html(question, title, graded))
        super().__init__([asked, self.box, self.feedback, self.saved])
        self.add_class("rl-card")
        if room := room_of(question):
            self.add_class(room)
        self.tell()

    @property
    def shown(self) -> Line:
        """The mark as far as it may be told now."""
        return line_held(self.line, self.question, self.typed) if self.held else self.line

    def _changed(self, change):
        if change is None:  # a list without a choice
            return
        before, self.typed = self.typed, merged({"": self.typed}, {"": change})[""]
        if self.graded and self.line.state == UNSAFE and not self._is_typed_further(before):
            self.unsafe_first = True
        try:
            done = self._answered(self.question.id, change)
        except RepairlibError as error:
            self.saved.value = told(UNREADABLE, "NOT SAVED", [str(error)])
        else:
            self.saved.value = f'<div class="rl-soft">✓ {done}</div>' if done else ""
        self._soon()

    def _is_typed_further(self, before) -> bool:
        short = self.question.in_short
        quick = 1000 * (monotonic() - self._judged_at) <= QUICK
        return quick and typed_further(short(before), short(self.typed))

    def _soon(self):
        """Judge a choice at once, and what is typed after a short pause: half a number is none."""
        if self._waiting:
            self._waiting.cancel()
        if isinstance(self.question, Choice):
            self._judge()
            return
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._judge()
        else:
            self._waiting = loop.call_later(PAUSE, self._judge)

    def _judge(self):
        self.line = mark_question(self.question, self.typed, unsafe_first=self.unsafe_first)
        self._judged_at = monotonic()
        self.tell()
        self._judged(self)

    def tell(self) -> None:
        """Show what is told of the answer as it stands."""
        self.feedback.value = feedback_html(self.shown, self.graded)


def question_html(question: Question, title: str, graded: bool = True) -> str:
    """The question as it is read: title, points, text, picture, how to answer."""
    value = f", {worth(question)}" if graded else ""
    head = f'<h4>{title}<span class="rl-soft">{value}</span></h4>'
    drawn = _drawn(question.picture()) if question.picture else ""
    return f'{head}{prose(question.prompt)}{drawn}<div class="rl-soft">{question.how()}</div>'


def room_of(question: Question) -> str:
    """How much of a row a question needs: "" for a third of it, BROAD for two, FULL for all.

    A table with one column to fill in needs two thirds, a wider one and a board to repair all. A
    picture gets the room in which its letters are as large as the text beside it.
    """
    needed = ("", BROAD, FULL)
    if isinstance(question, Bench):
        return FULL
    tabled = 0 if not isinstance(question, Table) else 1 if len(question.columns()) == 1 else 2
    pictured = next((at for at, room in enumerate(ROOMS) if _letters(question, room) >= LETTERS), 2)
    return needed[max(tabled, pictured)]


def _letters(question: Question, room: float) -> float:
    """The smallest letters [px] of its picture where it has so much room; without any, infinite."""
    svg = question.picture().svg if question.picture else ""
    found = re.search(r'<svg[^>]* width="([\d.]+)(pt)?', svg)
    sizes = re.findall(r'font-size="([\d.]+)', svg)
    if not (found and sizes):
        return inf
    pixel = 4 / 3 if found[2] else 1  # of a point
    return min(map(float, sizes)) * min(pixel, room / float(found[1]))


def _drawn(shown) -> str:
    """The picture, and folded under it what it shows, for those who do not see every colour."""
    return picture(shown) + fold("The picture in words", paragraphs(shown.alt.splitlines()))


def feedback_html(line: Line, graded: bool = True) -> str:
    """What is told under the boxes: the state, the points, hints, dangers."""
    if line.state == UNANSWERED:
        return ""
    earned = f", {points(line.points)} of {points(line.out_of)}" if graded else ""
    headline = {
        HELD: "Right or wrong: told later",
        UNSAFE: f"DANGER: this could hurt someone{earned}",
        UNREADABLE: "Cannot be read yet",
        CHANGED: "Changed since it was answered: not counted",
    }.get(line.state, f"{line.state.capitalize()}{earned}")
    cautions = caution(*line.judgement.hazards).short() if line.judgement.hazards else ""
    return told(line.state, headline, line.says, cautions)
