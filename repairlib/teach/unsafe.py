"""The unsafe answers of a group, all of them: who, what, when, and whether it was put right."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from repairlib.learn.question import CHANGED, RIGHT, UNANSWERED, UNSAFE
from repairlib.teach.entries import Entry
from repairlib.teach.in_words import answer_in_words, asked_in_words

STILL, PUT_RIGHT, NOT_YET = "still so", "put right", "not right yet"
SINCE = {UNSAFE: STILL, RIGHT: PUT_RIGHT, UNANSWERED: "taken back", CHANGED: "question changed"}


class Unsafe(NamedTuple):
    """What one member answered dangerously to one question, all their times together.

    `answers` are in words, the first one first, each once; `times` how often it was; `hazards` the
    keys of core.safety.HAZARDS; `at` the last time in ms since 1970, 0 when it is not recorded.
    """

    word: str
    name: str
    lesson: str
    id: str
    asks: str
    answers: tuple[str, ...]
    times: int
    hazards: tuple[str, ...]
    at: int
    since: str
    put_right_at: int

    @property
    def is_open(self) -> bool:
        """True until it is right."""
        return self.since != PUT_RIGHT


def unsafe_answers(entries: Iterable[Entry], asked: Mapping) -> list[Unsafe]:
    """Those that are not put right first, and of each kind the latest first."""
    found = [_unsafe(one, asked) for one in entries if one.once_unsafe]
    return sorted(found, key=lambda one: (not one.is_open, -one.at))


def _unsafe(one: Entry, asked: Mapping) -> Unsafe:
    question = asked[one.sheet_of, one.lesson][one.id].question
    as_then = one.state != CHANGED  # else the answer is to another question
    said = (answer_in_words(question, each.typed) for each in one.unsafe)
    return Unsafe(
        one.word,
        one.name,
        one.lesson,
        one.id,
        asked_in_words(question) if as_then else "(the question has changed since)",
        tuple(dict.fromkeys(said)) if as_then else (),
        one.times_unsafe,
        tuple(dict.fromkeys(key for each in one.unsafe for key in each.hazards)),
        max((each.at for each in one.unsafe), default=0),
        SINCE.get(one.state, NOT_YET),
        one.last if one.state == RIGHT else 0,
    )
