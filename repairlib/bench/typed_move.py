"""Moves as people type them, and said again: `volts rail 0`, `take out C1`, `wait 30 s`."""

from __future__ import annotations

from repairlib.bench.moves import VERBS, Move
from repairlib.bench.practice_set import PracticeSet
from repairlib.core.errors import RepairlibError


def read_move(text: str, of: PracticeSet) -> Move:
    """The move that `text` asks for. Raises RepairlibError for words that are not understood.

    >>> from repairlib.bench.practice_set import demo_set
    >>> read_move("volts rail 0", demo_set("desk radio")).at
    ('rail', '0')
    """
    words = " ".join(text.split())
    verb = next((one for one in VERBS if words.casefold().startswith(one)), None)
    if verb is None:
        raise RepairlibError(text, "no move begins like this", ", ".join(VERBS))
    return Move(verb, tuple(words[len(verb) :].split()))


def say_move(move: Move) -> str:
    """The move as it can be typed again."""
    return " ".join((move.verb, *move.at))
