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
POOR = 0.5  # of the mark: who renews everything stays below that
JUDGED = 20  # the mark of the technician is asked for on one board of so many


def boards(title: str, many: int):
    """Tasks of a set, its levels in turn, each for another learner."""
    of = demo_set(title)
    for number in range(many):
        level = LEVELS[number % len(LEVELS)]
        yield number, task(of, "thousand", f"learner {number} of the {title}", level)


def few():
    """Boards of the small set, at the levels that it has faults for."""
    for number, level in enumerate((1, 2, 3)):
        yield number, task(LAMP, "few", f"learner {number}", level)


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
    blindly = judge(renewed)
    asked = number % JUDGED == 0
    return Counter(
        boards=1,
        solved=is_solved(of, mended),
        judged=asked,
        passed=asked and judge(mended).passed,
        blind=blindly.passed or blindly.share >= POOR,
        random=judge(anything).passed,
    )


def all_of(tasks) -> tuple[Counter, list[str]]:
    """What came of these boards, and what was not solved."""
    found, unsolved = Counter(), []
    for number, of in tasks:
        one = came_of(of, number)
        found += one
        said = f"{number}, level {of.level}: {'; '.join(map(str, of.faults))}"
        print("solved" if one["solved"] else "NOT SOLVED", of.set.title, said, flush=True)
        if not one["solved"]:
            unsolved.append(said)
    return found, unsolved


def held_to(found: Counter, unsolved: list[str], many: int) -> None:
    """Every board is solved and passes; who renews all or does anything never does."""
    assert not unsolved
    assert found["boards"] == many
    assert found["passed"] == found["judged"] > 0
    assert found["blind"] == found["random"] == 0


def test_a_few_boards_of_a_small_set():
    held_to(*all_of(few()), 3)


@pytest.mark.slow
@pytest.mark.skipif(not ALL, reason="BENCH=all runs a thousand boards")
@pytest.mark.parametrize("title", DEMO)
def test_a_thousand_boards(title):
    found, unsolved = all_of(boards(title, BOARDS // len(DEMO)))
    print("THOUSAND", title, dict(found), *unsolved, sep="\n")
    held_to(found, unsolved, BOARDS // len(DEMO))
