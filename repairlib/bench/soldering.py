"""The iron at a joint of the board: whether the part comes out, and whether the pad survives."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.bench.move_words import TIPS, TOOLS
from repairlib.bench.moves import Move
from repairlib.bench.practice_set import BoardPart

CELSIUS, SECONDS = 350.0, 4.0


class Worked(NamedTuple):
    """What became of the joint: whether its solder was liquid, whether the pad held, in words."""

    melted: bool
    pad_held: bool
    words: str


def heated(part: BoardPart, move: Move) -> Worked:
    """What the tool of a move does to the joints of a part."""
    celsius = move.figures.get("celsius", CELSIUS)
    seconds = move.figures.get("seconds", SECONDS)
    melted = seconds >= 2.0 and celsius >= 250
    return Worked(melted, not (seconds > 10 or celsius > 420), "")


def tool_of(move: Move) -> str:
    """The tool that a move names, or ""."""
    return next((one for one in TOOLS if one in move.words), "")


def tip_of(move: Move) -> str:
    """The tip that a move names, or ""."""
    return next((one for one in TIPS if one in move.words), "")
