"""An attempt at a board: its set and faults, and every move with what it came to."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from repairlib.bench.conditions import Fault
from repairlib.bench.moves import Move, Told
from repairlib.bench.practice_set import PracticeSet
from repairlib.bench.state import State, begin
from repairlib.bench.step import step
from repairlib.bench.typed_move import read_move


@dataclass(frozen=True, slots=True)
class Task:
    """A board to repair: the set, what is wrong with it, and the seed of its instruments."""

    set: PracticeSet
    faults: tuple[Fault, ...]
    seed: str
    level: int = 1

    def __str__(self) -> str:
        """All that a repair of it hangs on: the set as typed, its faults, the seed, the level."""
        faults = "\n".join(map(str, self.faults))
        return f"{self.set.text}\n{faults}\n{self.seed}\n{self.level}"


@dataclass(frozen=True, slots=True)
class Done:
    """A move, the state before it and after it, and what was told."""

    move: Move
    before: State
    after: State
    told: Told


@dataclass(frozen=True, slots=True)
class Attempt:
    """The task, and what was done so far."""

    task: Task
    done: tuple[Done, ...] = ()

    @property
    def state(self) -> State:
        """Where it stands now."""
        if self.done:
            return self.done[-1].after
        return begin(self.task.set, self.task.faults, self.task.seed)

    def after(self, move: Move | str) -> Attempt:
        """The attempt with one move more. RepairlibError for what is refused; nothing is lost.

        >>> from repairlib.bench.practice_set import demo_set
        >>> attempt = Attempt(Task(demo_set("desk radio"), (), "demo"))
        >>> attempt.after("plug in").after("volts out 0").done[-1].told.reading.unit
        'V'
        """
        before = self.state
        if isinstance(move, str):
            move = read_move(move, self.task.set)
        after, told = step(before, move)
        return Attempt(self.task, (*self.done, Done(move, before, after, told)))


def walked(task: Task, moves: Iterable[str]) -> Attempt:
    """The attempt after these moves, from its beginning."""
    attempt = Attempt(task)
    for move in moves:
        attempt = attempt.after(move)
    return attempt
