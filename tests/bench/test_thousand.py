"""Generated boards: the technician mends every one, who renews all or does anything does not.

A few of a small set run in the suite; BENCH=all runs a thousand over all sets and levels, and
prints what came of them.
"""

import os
from collections import Counter
from math import isfinite

import pytest

from repairlib.bench import Attempt, Task, demo_set, judge
from repairlib.bench.expert import expert_way
from repairlib.bench.generator import LEVELS, task
from repairlib.bench.judging import must_be_handed_on
from repairlib.bench.practice_set import DEMO
from repairlib.bench.state import HANDED_ON, REPAIRED
from repairlib.bench.still_works import misses
from repairlib.core.draws import Draw
from tests.bench.actors import at_random, blind
from tests.bench.small_sets import LAMP

ALL = os.environ.get("BENCH") == "all"
BOARDS = int(os.environ.get("BOARDS", "1000"))
POOR = 0.6  # of the mark: below it is no pass


def boards(many: int):
    """Tasks in turn over the sets and levels, each for another learner."""
    rooms = [(title, level) for level in LEVELS for title in DEMO]
    for number in range(many):
        title, level = rooms[number % len(rooms)]
        yield task(demo_set(title), "thousand", f"learner {number}", level)


def few():
    """Boards of the small set, at the levels that it has faults for."""
    for number, level in enumerate((1, 2, 3)):
        yield task(LAMP, "few", f"learner {number}", level)


def is_solved(of: Task, attempt: Attempt) -> bool:
    """Whether it works again, or went to whom it belongs."""
    end = attempt.state.ended
    if must_be_handed_on(attempt):
        return end is not None and end.kind == HANDED_ON
    return end is not None and end.kind == REPAIRED and not misses(attempt.state)


def all_finite(attempt: Attempt) -> bool:
    """Whether every number of every state and reading is finite."""
    numbers = []
    for done in attempt.done:
        state, reading = done.after, done.told.reading
        numbers += [*dict(state.charges).values(), *dict(state.heat).values()]
        numbers += [state.clock, state.spent]
        numbers += [reading.value] if reading and reading.value is not None else []
    return all(map(isfinite, numbers))


def came_of(of: Task, number: int) -> Counter:
    """What the three made of one board."""
    mended, renewed = expert_way(of), blind(of)
    anything = at_random(of, Draw(f"anything\n{number}"), careful=number % 2 == 0)
    assert all(map(all_finite, (mended, renewed, anything))), of
    return Counter(
        solved=is_solved(of, mended),
        judged=number % 20 == 0,
        passed=number % 20 == 0 and judge(mended).passed,
        blind=judge(renewed).passed,
        random=judge(anything).passed,
        boards=1,
    )


def test_a_few_boards_of_a_small_set():
    found = sum((came_of(of, number) for number, of in enumerate(few())), Counter())
    assert found["solved"] == found["boards"] == 3
    assert found["blind"] == found["random"] == 0


@pytest.mark.slow
@pytest.mark.skipif(not ALL, reason="BENCH=all runs a thousand boards")
def test_a_thousand_boards():
    found, unsolved = Counter(), []
    for number, of in enumerate(boards(BOARDS)):
        one = came_of(of, number)
        found += one
        if not one["solved"]:
            unsolved.append(f"{of.set.title}, level {of.level}: {'; '.join(map(str, of.faults))}")
    print(dict(found), *unsolved, sep="\n")
    assert not unsolved
    assert found["blind"] == found["random"] == 0
