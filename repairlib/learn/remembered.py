"""Questions made once for all members of a group who drew the same, for whoever marks them all.

A question is a pure function of its draw. What a function draws, and what comes of it, is kept as
a tree: at each step the options, and below each outcome the next step, down to the question that
was made. A draw that shows in nothing but the order of the options, steps or rows is no fork: all
its orders share one question. So a group of a thousand has some ten questions of each function,
whose fingerprints are taken and whose answers are judged once.

`asked_of` gives what `graded` of `asking` gives, as far as marks go; the tests hold the two
together.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from functools import partial
from hashlib import sha256
from types import FunctionType
from typing import Any, NamedTuple

from repairlib.learn.arranging import Order, Table
from repairlib.learn.asking import entered, own_draw
from repairlib.learn.draws import DemoDraw, Draw, as_bytes
from repairlib.learn.fingerprint import LENGTH, asked_in
from repairlib.learn.question import Choice, Judgement, Question

ORDERED = {Choice: "options", Order: "shown", Table: "cells"}  # where a drawn order may show
ANY = ()  # the way on from a step that is no fork
MOST_JUDGED = 100  # answers remembered for each question
LONGEST = 300  # characters of an answer that is remembered


class Step(NamedTuple):
    """One draw of a question function: how many of which options, and the ways on from here."""

    count: int
    texts: tuple[bytes, ...]
    on: dict[tuple[int, ...], Any]  # outcome: Step or Made; ANY where it is no fork


class Noted(Draw):
    """A draw that notes its steps, and takes `told` outcomes before it draws by itself."""

    def __init__(self, seed: str, told: Sequence[tuple[int, ...]] = ()):
        super().__init__(seed)
        self.told = told
        self.steps: list[tuple[int, tuple[bytes, ...]]] = []
        self.outcomes: list[tuple[int, ...]] = []
        self.parted = False

    def part(self, name: str) -> Draw:
        """A draw of its own, which is not noted: such a question is made anew each time."""
        self.parted = True
        return Draw(f"{self.seed}\n{name}")

    def pick(self, options):
        """One of the options."""
        return self._taken_of(options, 1)[0]

    def shuffle(self, items):
        """All of the items in a drawn order."""
        items = tuple(items)
        return self._taken_of(items, len(items))

    def sample(self, items, count):
        """`count` different items in a drawn order."""
        return self._taken_of(items, count)

    def _taken_of(self, items, count: int) -> tuple:
        items = tuple(items)
        texts = tuple(as_bytes(item) for item in items)
        drawn = tuple(self.order(texts)[:count])
        step = len(self.steps)
        outcome = self.told[step] if step < len(self.told) else drawn
        self.steps.append((count, texts))
        self.outcomes.append(outcome)
        return tuple(items[place] for place in outcome)


class Made:
    """A question that was made, for all who drew it, each with its own order.

    `field` names where the order shows, "" for a question that has none. `question` stands in the
    order of the options as the function gives them.
    """

    def __init__(self, question: Question, field: str = "", inside: Sequence[int] = ()):
        self.question = question
        self.field = field
        self.inside = inside
        self._judged: dict[Any, Judgement] = {}
        self._questions: dict[tuple[int, ...], Question] = {}
        self._fingerprints: dict[tuple[int, ...], str] = {}

    def in_order(self, order: tuple[int, ...]) -> Question:
        """The question as it is asked in this order."""
        if not self.field:
            return self.question
        items = getattr(self.question, self.field)
