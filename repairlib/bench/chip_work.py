"""A memory chip on the board: its reads, and what is written into it."""

from __future__ import annotations

from dataclasses import replace
from hashlib import sha256

from repairlib.bench import dangers
from repairlib.bench.board_work import MEMORY
from repairlib.bench.moves import Move, Told
from repairlib.bench.noise import share
from repairlib.bench.practice_set import BoardPart
from repairlib.bench.prices import SECONDS
from repairlib.bench.state import Fitted, State
from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS

Outcome = tuple[State, Told]
LOOSE = 0.3  # of the reads come through a clip that sits badly; a choice of this workbook
WRITTEN = "written"


def read_chip(state: State, move: Move) -> Outcome:
    """One read of a chip, kept as a file; told by its sum."""
    part = _chip(state, move)
    if (struck := dangers.hands_on(state, part)) is not None:
        return struck
    content = _sum(state, part, _content(state, part))
    if share(state.seed, part.name, "clip", state.moves) > 1 - 2 * LOOSE:
        content = _sum(state, part, f"loose {state.moves}")
    kept = (*state.kept, (part.name, content))
    number = sum(name == part.name for name, _ in kept)
    words = f"Read {number} of {part.name} is kept. Its sum is {content}."
    return replace(state, kept=kept), Told(words, seconds=SECONDS["read chip"])


def write_chip(state: State, move: Move) -> Outcome:
    """Writes the image of a sound board with what only this board knows."""
    part = _chip(state, move)
    if (struck := dangers.hands_on(state, part)) is not None:
        return struck
    now = _sum(state, part, _content(state, part))
    reads = [content for name, content in state.kept if name == part.name]
    fitted = _in_place(state, part)
    told = f"{part.name} is written and reads back equal."
    alarm = False
    if reads.count(now) < 2 and not fitted.new:
        what = f"{part.name} was written without two equal reads of what was in it."
        state, alarm = dangers.damaged(state, what), True
        told = f"{told} {what} {HAZARDS['only copy'].strikes}"
    after = state.with_place(part.name, fitted=replace(fitted, fault=None, value=None))
    return after, Told(told, seconds=SECONDS["write chip"], alarm=alarm)


def _chip(state: State, move: Move) -> BoardPart:
    part = state.set.part(move.at[0])
    if part.what != MEMORY:
        raise RepairlibError(part.name, f"a {part.what} holds no content", "a memory chip")
    _in_place(state, part)
    return part


def _in_place(state: State, part: BoardPart) -> Fitted:
    fitted = state.places[part.name].fitted
    if fitted is None:
        raise RepairlibError(part.name, "its place is empty", "a chip that is in")
    return fitted


def _content(state: State, part: BoardPart) -> str:
    return WRITTEN if _in_place(state, part).fault is None else "bad"


def _sum(state: State, part: BoardPart, content: str) -> str:
    text = f"{state.set.title}\n{part.name}\n{content}"
    return sha256(text.encode()).hexdigest()[:8].upper()
