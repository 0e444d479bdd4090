"""Questions made once for all members of a group who drew the same, for whoever marks them all.

A question is a pure function of its draw. What the function draws, and what came of it, is kept as
a tree: at each step the options, below each outcome the next step, and in the end the question. A
step that shows in nothing but the order of the options, steps or rows is no fork: all orders share
one question. So a group of a thousand has some ten questions of each function, whose pictures are
drawn once and whose answers are judged once.

`asked_of` gives what `graded` of `asking` gives, as far as marks go; a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from types import FunctionType
from typing import Any, NamedTuple, cast

from repairlib.core.draws import DemoDraw, Draw, as_bytes
from repairlib.learn.arranging import Order, Table
from repairlib.learn.asking import Entry, each_graded, own_draw
from repairlib.learn.fingerprint import Pieces, fingerprint
from repairlib.learn.question import LETTERS, Choice, Judgement, Mistake, Question

Places = tuple[int, ...]  # of options, in the order in which they were drawn
ORDERED: dict[type[Question], str] = {Choice: "options", Order: "shown", Table: "cells"}
NO_FORK: Places = ()  # the one way on from a step that is none
NONE_FREE = -1
MOST_MADE = 2000  # questions kept of one function: with 200, marking a thousand took a third longer
MOST_KEPT = 100  # answers, and orders, remembered of one question
LONGEST = 300  # characters of an answer that is remembered


class Asked(NamedTuple):
    """A question as one member has it. It is marked like a Question."""

    made: Made
    order: Places

    @property
    def id(self) -> str:
        """The id of the question."""
        return self.made.question.id

    @property
    def points(self) -> float:
        """Its points."""
        return self.made.question.points

    @property
    def question(self) -> Question:
        """The question itself, as it is asked."""
        return self.made.in_order(self.order)

    def is_blank(self, typed) -> bool:
        """True when nothing was typed."""
        return self.made.question.is_blank(typed)

    def is_whole(self, typed) -> bool:
        """True when every part of it has an answer."""
        return self.made.is_whole(typed)

    def judge(self, typed) -> Judgement:
        """The judgement on an answer as typed."""
        return self.made.judge(self.order, typed)

    def fingerprint(self) -> str:
        """The fingerprint of the question."""
        return self.made.fingerprint(self.order)


class Made:
    """One question for all who drew it, each in an order of their own.

    `field` names where the order shows, "" where there is none; `items` are what stands there, in
    the order in which the function gives them.
    """

    def __init__(self, question: Question, field: str = "", items: Sequence = ()):
        self.question = question
        self.field = field
        self.items = items
        self._is_table = isinstance(question, Table)
        self._options = items if field == "options" and min(map(len, items)) > 1 else ()
        self._pieces: Pieces | None = None
        self._questions: dict[Places, Question] = {}
        self._fingerprints: dict[Places, str] = {}
        self._judged: dict[Any, Judgement] = {}

    def in_order(self, order: Places) -> Question:
        """The question in this order."""
        if not self.field:
            return self.question
        return _kept(self._questions, order, lambda: _put(self.question, self._in(order)))

    def fingerprint(self, order: Places) -> str:
        """Its fingerprint in this order. The picture is drawn once for all orders."""
        found = self._fingerprints.get(order)
        return found or _kept(self._fingerprints, order, lambda: self._fingerprint(order))

    def is_whole(self, typed) -> bool:
        """True when every part of it has an answer."""
        if not self._is_table or not isinstance(typed, dict):
            return self.question.is_whole(typed)
        asked = cast(Table, self.question)
        return all(
            text.strip() if isinstance(text, str) else not cell.is_blank(text)
            for _, cell, text in asked.given(typed)
        )

    def judge(self, order: Places, typed) -> Judgement:
        """The judgement on an answer. Equal answers and equal cells are judged once."""
        if self._is_table and isinstance(typed, dict):
            asked = cast(Table, self.in_order(order))  # what it says goes row by row
            cells = [(at, self._cell(at, cell, text)) for at, cell, text in asked.given(typed)]
            return asked.together(cells)
        key = self._meant(order, typed)
        found = self._judged.get(key)  # the way of nearly all answers
        if found is not None:
            return found
        if key is None:
            return self.in_order(order).judge(typed)
        return _kept(self._judged, key, lambda: self.in_order(order).judge(typed))

    def _meant(self, order: Places, typed) -> Any:
        """What stands for an answer among those judged, or None for one that is not remembered.

        Letters are taken as what they stand for in this order, so that one judgement does for all.
        """
        if not isinstance(typed, str):
            return _key(typed)
        if len(typed) > LONGEST:
            return None
        if not self.field:
            return typed
        if self.field == "options":
            place = LETTERS.find(typed) if len(typed) == 1 else -1
            if 0 <= place < len(self._options):
                return self._options[order[place]]
            return typed if len(typed.strip()) > 1 else (typed, order)
        return _in_words(self.in_order(order), typed) or (typed, order)

    def _cell(self, at: str, cell: Question, text) -> Judgement:
        if not isinstance(text, str) or len(text) > LONGEST:
            return cell.judge(text)
        found = self._judged.get((at, text))
        return found or _kept(self._judged, (at, text), partial(cell.judge, text))

    def _in(self, order: Places) -> tuple:
        return tuple(self.items[place] for place in order)

    def _fingerprint(self, order: Places) -> str:
        if not self.field:
            return fingerprint(self.question)
        if self._pieces is None:
            self._pieces = Pieces.of(self.question, self.field)
        there = list(getattr(self.question, self.field))
        return self._pieces.in_order(
            [there.index(one) for one in getattr(self.in_order(order), self.field)]
        )


def asked_of(module: str, draw: Draw) -> tuple[Asked, ...]:
    """The questions that a module entered, q1, q2 …, as this draw gives them."""
    found = []
    for entry in each_graded(module):
        own = own_draw(draw, entry.ask)
        if isinstance(own, DemoDraw):
            found.append(Asked(Made(entry.made(own)), NO_FORK))
            continue
        if entry not in _TREES:
            _TREES[entry] = Tree(entry.made)
        found.append(_TREES[entry].asked(own.seed))
    return tuple(found)


class Step(NamedTuple):
    """One draw of a question function: how many of which options, and the ways on from there."""

    taken: int
    texts: tuple[bytes, ...]
    ways: dict[Places, Any]  # by outcome: the next Step, or Made


class Tree:
    """All that one question function was seen to draw, and the questions that it made."""

    def __init__(self, ask: Callable[[Draw], Question]):
        self.ask = ask
        self.start: dict[Places, Any] = {}
        self.free: int | None = None  # the step that shows in an order alone, NONE_FREE, or unknown
        self.forgets = False  # it draws in a way that cannot be followed here
        self._kept = 0

    def asked(self, seed: str) -> Asked:
        """The question as the draw of this seed gives it."""
        while not self.forgets:
            found = self._look_up(Draw(seed))
            if found:
                return found
            self._grow(seed)
        return Asked(Made(self.ask(Draw(seed))), NO_FORK)

    def _look_up(self, draw: Draw) -> Asked | None:
        ways, outcome, order = self.start, NO_FORK, NO_FORK
        while (step := ways.get(outcome)) is not None:
            if type(step) is Made:
                return Asked(step, order)
            outcome, ways = draw.order(step.texts, step.taken), step.ways
            if NO_FORK in ways:
                outcome, order = NO_FORK, outcome
        return None

    def _grow(self, seed: str) -> None:
        """Make the question of this draw, and keep it below the steps that lead to it."""
        noted = Noted(seed)
        made = Made(self.ask(noted))
        if self._kept >= MOST_MADE:
            self.start.clear()
            self._kept = 0
        self._kept += 1
        if self.free is None:
            self.free, made = _in_any_order(self.ask, noted) or (NONE_FREE, made)
        elif self.free != NONE_FREE:
            made = _in_order_of(self.free, self.ask, noted, known=True) or made
            self.forgets = not made.field
        ways, outcome = self.start, NO_FORK
        for place, (count, texts) in enumerate(noted.steps):
            step = ways.setdefault(outcome, Step(count, texts, {}))
            way = NO_FORK if place == self.free else noted.told[place]
            if step[:2] != (count, texts) or (step.ways and (NO_FORK in step.ways) != (not way)):
                self.forgets = True
                return
            ways, outcome = step.ways, way
        self.forgets |= noted.parted
        ways[outcome] = made


_TREES: dict[Entry, Tree] = {}


class Noted(Draw):
    """A draw that notes its steps. It takes the outcomes that it was `told` before it draws."""

    def __init__(self, seed: str, told: Sequence[Places] = ()):
        super().__init__(seed)
        self.told = list(told)
        self.steps: list[tuple[int, tuple[bytes, ...]]] = []
        self.parted = False

    def part(self, name: str) -> Draw:
        """A draw apart, which nobody notes."""
        self.parted = True
        return Draw(self.seed).part(name)

    def sample(self, items, count=None):
        """`count` of the items in their drawn order."""
        items = tuple(items)
        texts = tuple(as_bytes(item) for item in items)
        drawn = self.order(texts, count)
        self.steps.append((len(drawn), texts))
        if len(self.steps) > len(self.told):
            self.told.append(drawn)
        return tuple(items[place] for place in self.told[len(self.steps) - 1])


def _in_any_order(ask: Callable[[Draw], Question], noted: Noted) -> tuple[int, Made] | None:
    """The place of a step that shows in the order of one field alone, and what it makes, if any.

    It is found by trying: with other outcomes of that step everything else must be alike.
    """
    for place in reversed(range(len(noted.steps))):
        made = _in_order_of(place, ask, noted)
        if made:
            return place, made
    return None


def _in_order_of(
    place: int, ask: Callable[[Draw], Question], noted: Noted, known: bool = False
) -> Made | None:
    """The question in any order of the step at `place`, if that shows in nothing else.

    Where it is `known` of other questions of the function, one trial is enough.
    """
    count, texts = noted.steps[place] if place < len(noted.steps) else (0, ())
    if not 1 < count == len(texts):
        return None
    plain, drawn = tuple(range(count)), noted.told[place]
    for first in (plain[1:] + plain[:1], plain[::-1]):  # one of them is not the right order
        made = _items_of(_with(ask, noted, place, first), first)
        others = (drawn,) if known and first != drawn else (drawn, plain, plain[-1:] + plain[:-1])
        if made and all(_alike_in(ask, noted, place, made, other) for other in others):
            return made
    return None


def _with(ask, noted: Noted, place: int, outcome: Places) -> Question | None:
    """The question when the step at `place` comes out so; None when other steps follow then."""
    other = Noted(noted.seed, [*noted.told[:place], outcome, *noted.told[place + 1 :]])
    question = ask(other)
    return question if other.steps == noted.steps else None


def _items_of(question: Question | None, order: Places) -> Made | None:
    """`question`, which stands in this order, with what its order may be of."""
    field = ORDERED.get(type(question), "") if question else ""
    shown = _listed(getattr(question, field)) if field else []
    if question is None or len(shown) != len(order):
        return None
    return Made(question, field, [shown[order.index(place)] for place in range(len(order))])


def _alike_in(ask, noted: Noted, place: int, made: Made, outcome: Places) -> bool:
    question = _with(ask, noted, place, outcome)
    return question is not None and alike(question, made.in_order(outcome))


def alike(one: Any, other: Any) -> bool:
    """True when two questions, or parts of them, ask, take and say the same.

    Functions are alike when they come from the same line and see the same values.
    """
    if one is other:
        return True
    if type(one) is not type(other):
        return False
    if isinstance(one, (Question, Mistake)):
        return alike(vars(one), vars(other))
    if isinstance(one, Mapping):
        return alike(list(one.items()), list(other.items()))
    if isinstance(one, (list, tuple)):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, partial):
        return alike((one.func, one.args, one.keywords), (other.func, other.args, other.keywords))
    if isinstance(one, FunctionType):
        return one.__code__ is other.__code__ and alike(_seen_by(one), _seen_by(other))
    return one == other


def _seen_by(function: FunctionType) -> tuple:
    cells = function.__closure__ or ()
    return (function.__defaults__, function.__kwdefaults__, [one.cell_contents for one in cells])


def _listed(there) -> list:
    return list(there.items() if isinstance(there, Mapping) else there)


def _put(question: Question, items: Sequence) -> Question:
    """The question with these items in the field whose order varies."""
    field = ORDERED[type(question)]
    changes: Any = {field: dict(items) if field == "cells" else tuple(items)}
    return replace(question, **changes)


def _key(typed) -> Any:
    """The numbers of an order as a key, or None for what is not remembered."""
    if not isinstance(typed, dict) or len(typed) > len(LETTERS):
        return None
    plain = all(isinstance(one, str) and len(one) <= LONGEST for one in typed.values())
    return tuple(typed.items()) if plain else None


def _in_words(question: Question, typed: str) -> tuple[str, ...] | None:
    """The steps that an answer of letters names, or None for any other answer."""
    named = typed.split()
    if not isinstance(question, Order) or sorted(named) != list(LETTERS[: len(question.shown)]):
        return None
    return tuple(question.shown[LETTERS.index(letter)] for letter in named)


def _kept(kept: dict, key: Any, made: Callable[[], Any]) -> Any:
    found = kept.get(key)
    if found is None:
        if len(kept) >= MOST_KEPT:
            kept.clear()
        found = kept[key] = made()
    return found
