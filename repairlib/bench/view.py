"""A board as somebody at the bench has it: what is printed on it, what hands do, what is told.

Whoever works through a view cannot ask for the fault: it is not in there.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from repairlib.bench.attempt import Attempt, Task
from repairlib.bench.moves import Move, Told
from repairlib.bench.practice_set import PracticeSet


@dataclass(frozen=True)
class View:
    """What a person has: the set as it is printed, and `do`, which tells what a move came to.

    `do` raises RepairlibError for what is refused.
    """

    printed: PracticeSet
    do: Callable[[Move], Told]


def printed(of: PracticeSet) -> PracticeSet:
    """The set without the faults that its author thought of.

    >>> from repairlib.bench.practice_set import demo_set
    >>> seen = printed(demo_set("desk radio"))
    >>> seen.says, seen.faults, seen.together, seen.text
    ('It does not play as it should.', (), (), '')
    """
    return replace(of, faults=(), together=(), text="")


def look_at(task: Task) -> tuple[View, Callable[[], Attempt]]:
    """The view of a task, and the attempt that was made through it so far."""
    attempt = Attempt(task)

    def do(move: Move) -> Told:
        nonlocal attempt
        attempt = attempt.after(move)
        return attempt.done[-1].told

    return View(printed(task.set), do), lambda: attempt
