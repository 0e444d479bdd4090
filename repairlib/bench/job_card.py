"""What a job card has to say, and whether it is true: found, measured, fitted, told."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import NamedTuple

from repairlib.bench.attempt import Attempt
from repairlib.bench.care import CHANGES
from repairlib.bench.move_words import FITTED, FOUND, MEASURED, SAID
from repairlib.bench.state import HANDED_ON, State
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import read_quantity

MAINS_WORDS = re.compile(r"mains|plug|inlet|primary|wall", re.IGNORECASE)
CLAUSES = re.compile(r"[;:,.!?]\s|[;:!?\n]|\b(?:but|while|and)\b", re.IGNORECASE)
NOT_BAD = re.compile(r"\b(?:good|fine|sound|ok|okay|whole|healthy|right|not|no)\b", re.IGNORECASE)
# A name behind one of these is where something was met, not what is bad.
A_PLACE = r"\b(?:at|across|on|over|behind|before|after|between|near|from|by|of|to)\s+(?:the\s+)?"
FIGURE = re.compile(
    r"(?<![\w.,])[-−]?\d+(?:[.,]\d+)?\s?(?:[pnuµμmkKM]?(?:V|A|F|Ω|Hz|ohms?)|°C|R)(?!\w)"
)
TYPED_OFF = 0.02  # of a figure, that a person rounds when writing; a choice of this workbook


class CardLine(NamedTuple):
    """A line that is due, in words, and whether the card has it and it is true."""

    due: str
    there: bool


def card_lines(attempt: Attempt) -> list[CardLine]:
    """The lines that are due on the card of this attempt, each with whether it is there and true.

    Found names each part that was at fault, or the mains side, and no good one; measured has a
    figure that was read; fitted names each new part and no other, and is not due where none is new;
    told is what its owner has to know.
    """
    state = attempt.state
    due = [
        _found(attempt),
        CardLine("measured, with a figure that was read", _is_read(attempt)),
        CardLine("told, what its owner has to know", bool(_said(state, SAID))),
    ]
    if not (state.ended and state.ended.kind == HANDED_ON):
        due.append(_fitted(attempt))
    return due


def says_found(attempt: Attempt) -> bool:
    """Whether the card says what was found: each part at fault, or the mains side, and no other."""
    return _found(attempt).there


def _found(attempt: Attempt) -> CardLine:
    of, said = attempt.task.set, _said(attempt.state, FOUND)
    faulty = {fault.part for fault in attempt.task.faults}
    behind = {part.name for part in of.parts if part.mains} & faulty
    named = all(
        _names(said, name) or (name in behind and MAINS_WORDS.search(said)) for name in faulty
    )
    if not (said and named):
        return CardLine("found, with the name of each part at fault", False)
    may = faulty | _were_bad(attempt)
    if behind:
        may |= {part.name for part in of.parts if part.mains}
    false = [one.name for one in of.parts if one.name not in may and _blames(said, one.name)]
    if false:
        return CardLine(f"found without good parts, such as {false[0]}", False)
    return CardLine("found, with the name of each part at fault", True)


def _were_bad(attempt: Attempt) -> set[str]:
    """Parts that were bad at some time of the attempt, whoever was to blame."""
    return {
        name
        for one in attempt.done
        for name, place in one.after.places.items()
        if place.fitted is not None and place.fitted.fault is not None
    }


def _blames(words: str, name: str) -> bool:
    """Whether some clause calls that part bad."""
    place = re.compile(rf"{A_PLACE}{re.escape(name)}(?!\w)", re.IGNORECASE)
    return any(
        _names(place.sub("", clause), name) and not NOT_BAD.search(clause)
        for clause in CLAUSES.split(words)
    )


def _is_read(attempt: Attempt) -> bool:
    """Whether a figure of the card is one that an instrument showed, as a person writes it."""
    read = [
        (one.told.reading.unit, one.told.reading.value)
        for one in attempt.done
        if one.told.reading is not None and one.told.reading.value is not None
    ]
    return any(_is_one(typed, read) for typed in FIGURE.findall(_said(attempt.state, MEASURED)))


def _is_one(typed: str, read: Iterable[tuple[str, float]]) -> bool:
    plain = typed.replace("−", "-").replace(",", ".")
    try:
        value = read_quantity(plain)
    except RepairlibError:
        return False
    number = re.match(r"-?\d+(?:\.(\d+))?", plain)
    if number is None:
        return False
    scale = abs(value.value / float(number[0])) if float(number[0]) else 1.0
    rounded = 0.5 * scale * 10.0 ** -len(number[1] or "")
    return any(
        unit == value.unit
        and abs(abs(shown) - abs(value.value)) <= max(TYPED_OFF * abs(shown), rounded)
        for unit, shown in read
    )


def _fitted(attempt: Attempt) -> CardLine:
    state, of = attempt.state, attempt.task.set
    said = _said(state, FITTED)
    new = {name for name, place in state.places.items() if place.fitted and place.fitted.new}
    if not all(_names(said, name) for name in new):
        return CardLine("fitted, with the name of each new part", False)
    worked = {of.part(one.move.at[0]).name for one in attempt.done if _stays(one.move.verb)}
    may = new | {name for name in worked if state.places[name].fitted is not None}
    false = [one.name for one in of.parts if one.name not in may and _blames(said, one.name)]
    if false:
        return CardLine(f"fitted without {false[0]}, which was not", False)
    return CardLine("fitted, with the name of each new part", True)


def _stays(verb: str) -> bool:
    return verb in CHANGES and verb not in ("take out", "clean")


def _said(state: State, which: str) -> str:
    return ". ".join(words for head, words in state.card if head.casefold() == which).strip()


def _names(words: str, name: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name)}(?!\w)", words, re.IGNORECASE) is not None
