"""The job card, and the ways in which an attempt ends."""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.move_words import CARD, CARD_EXAMPLES, FOUND
from repairlib.bench.moves import Move, Told
from repairlib.bench.prices import SECONDS
from repairlib.bench.state import GIVEN_UP, HANDED_ON, REPAIRED, End, State
from repairlib.core.errors import RepairlibError

Outcome = tuple[State, Told]
MOST_LINES = 200
LEAST = 2  # letters and figures of a line of the card


def write(state: State, move: Move) -> Outcome:
    """One line on the job card."""
    kind, _, text = (piece.strip() for piece in move.words.partition(":"))
    if kind not in CARD or not text:
        raise RepairlibError(move.words, "no line of a job card", ", ".join(CARD))
    if sum(map(str.isalnum, text)) < LEAST:
        raise RepairlibError(move.words, "that tells nobody anything", CARD_EXAMPLES[kind])
    if len(state.card) >= MOST_LINES:
        raise RepairlibError(move.words, f"the card holds {MOST_LINES} lines", "hand back")
    after = replace(state, card=(*state.card, (kind, text)))
    return after, Told(f"On the job card, {kind}: {text}", seconds=SECONDS["write"])


def hand_on(state: State, move: Move) -> Outcome:
    """Leaves the set to somebody qualified; what is said of it stands on the card as found."""
    why = f"handed on: {move.words}" if move.words else "handed on to a qualified person"
    card = (*state.card, (FOUND, move.words)) if move.words else state.card
    return _end(replace(state, card=card), move, HANDED_ON, why)


def hand_back(state: State, move: Move) -> Outcome:
    """Gives the set back to its owner. Raises RepairlibError while it is still on."""
    if state.powered:
        raise RepairlibError(move.verb, "it is still plugged in and on", "unplug")
    return _end(state, move, REPAIRED, "handed back to its owner")


def give_up(state: State, move: Move) -> Outcome:
    """Ends the attempt."""
    return _end(state, move, GIVEN_UP, "given up")


def _end(state: State, move: Move, kind: str, why: str) -> Outcome:
    after = replace(state, ended=End(kind, why))
    return after, Told(f"{why[0].upper()}{why[1:]}.", seconds=SECONDS[move.verb])
