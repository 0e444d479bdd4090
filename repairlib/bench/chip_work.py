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
from repairlib.bench.state import State
from repairlib.bench.where import fitted_at
from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS

Outcome = tuple[State, Told]
LOOSE = 0.3  # of the reads come through a clip that sits badly; a choice of this workbook
WRITTEN, BLANK = "written", "blank"


def read_chip(state: State, move: Move) -> Outcome:
    """One read of a chip, kept as a file; told by its sum. Equal sums are equal reads."""
    part = _chip(state, move)
    sum_now = _sum(state, part, _content(state, part))
    if share(state.seed, part.name, "clip", state.moves) > 1 - 2 * LOOSE:
        sum_now = _sum(state, part, f"loose {state.moves}")
    if fights := _fought(state, part):
        state, sum_now = dangers.damaged(state, fights), _sum(state, part, f"on {state.moves}")
    kept = (*state.kept, (part.name, sum_now))
    number = sum(name == part.name for name, _ in kept)
    words = f"{fights} Read {number} of {part.name} is kept. Its sum is {sum_now}.".strip()
    after = replace(state, kept=kept)
    return after, Told(words, seconds=SECONDS["read chip"], alarm=bool(fights))


def write_chip(state: State, move: Move) -> Outcome:
    """Writes the image of a sound board with what only this board knows."""
    part = _chip(state, move)
    told = f"{part.name} is written and reads back equal."
    lost = fights = ""
    if not _is_kept(state, part):
        lost = f"{part.name} was written without two equal reads of what was in it."
        state = dangers.damaged(state, lost)
        told = f"{told} {lost} {HAZARDS['only copy'].strikes}"
    if fights := _fought(state, part):
        state, told = dangers.damaged(state, fights), f"{fights} {part.name} is not written."
    else:
        state = state.with_place(part.name, fitted=replace(fitted_at(state, part), fault=None))
    return state, Told(told, seconds=SECONDS["write chip"], alarm=bool(lost or fights))


def _is_kept(state: State, part: BoardPart) -> bool:
    """Whether two equal reads of what this board had in it are kept."""
    blank = _sum(state, part, BLANK)
    reads = [content for name, content in state.kept if name == part.name and content != blank]
    return any(reads.count(one) > 1 for one in reads)


def _fought(state: State, part: BoardPart) -> str:
    """What happens to a clip on a chip of a set that is on."""
    if not state.powered:
        return ""
    return f"The clip and the set both fed {part.name}: they fought, and nothing of it counts."


def _chip(state: State, move: Move) -> BoardPart:
    part = state.set.part(move.at[0])
    if part.what != MEMORY:
        raise RepairlibError(part.name, f"a {part.what} holds no content", "a memory chip")
    fitted_at(state, part)
    return part


def _content(state: State, part: BoardPart) -> str:
    fitted = fitted_at(state, part)
    return WRITTEN if fitted.fault is None else BLANK if fitted.new else "bad"


def _sum(state: State, part: BoardPart, content: str) -> str:
    text = f"{state.set.title}\n{part.name}\n{content}"
    return sha256(text.encode()).hexdigest()[:8].upper()
