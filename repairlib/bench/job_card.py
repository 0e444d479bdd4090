"""What a job card of the bench has to say: found, measured, fitted, told."""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.bench.attempt import Task
from repairlib.bench.move_words import FITTED, FOUND, MEASURED, SAID
from repairlib.bench.state import HANDED_ON, State

MAINS_WORDS = re.compile(r"mains|plug|inlet|primary|wall", re.IGNORECASE)


class CardLine(NamedTuple):
    """A line that is due, in words, and whether the card has it."""

    due: str
    there: bool


def card_lines(state: State, task: Task) -> list[CardLine]:
    """The lines that are due on the card of this task, each with whether it is there.

    Found names each part that was at fault, or the mains side; measured has a figure; fitted names
    each new part; told is what its owner has to know.
    """
    faulty = [task.set.part(fault.part) for fault in task.faults]
    new = [name for name, place in state.places.items() if place.fitted and place.fitted.new]
    found, measured = _said(state, FOUND), _said(state, MEASURED)
    due = [
        CardLine(
            "found, with the name of each part at fault",
            bool(found)
            and all(
                _names(found, one.name) or (one.mains and bool(MAINS_WORDS.search(found)))
                for one in faulty
            ),
        ),
        CardLine("measured, with a figure", any(sign.isdigit() for sign in measured)),
        CardLine("told, what its owner has to know", bool(_said(state, SAID))),
    ]
    if not (state.ended and state.ended.kind == HANDED_ON):
        fitted = _said(state, FITTED)
        there = bool(fitted) and all(_names(fitted, name) for name in new)
        due.append(CardLine("fitted, with the name of each new part", there))
    return due


def says_found(state: State) -> bool:
    """Whether the card says anything of what was found."""
    return bool(_said(state, FOUND))


def _said(state: State, which: str) -> str:
    return " ".join(words for head, words in state.card if head.casefold() == which).strip()


def _names(words: str, name: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name)}(?!\w)", words, re.IGNORECASE) is not None
