"""A board to repair: a demo set by its title, or an own one line by line, and what is wrong."""

from __future__ import annotations

from repairlib.bench import Task, begin, demo_set, read_fault, read_set
from repairlib.learn.bench_question import Bench
from repairlib.learn.own.parts import Asked, slipping
from repairlib.learn.own.slips import Slip
from repairlib.learn.question import Question

SEED = "own lesson"  # of the instruments: the same errors for all who have the same fault


def read_repair(asked: Asked, slips: list[Slip]) -> Question | None:
    """A repair: `Set: desk radio` and `Fault: C1 open`.

    Several lines Set: are the lines of an own set; several lines Fault: are faults of one board.
    """
    common = asked.common(slips)
    lines, faults = asked.by_word["set"], asked.by_word.get("fault", [])
    if not faults:
        slips.append(Slip(lines[0].line, lines[0].text, "nothing is wrong with it", "Fault: below"))
    with slipping(lines[0].line, slips):
        typed = "\n".join(one.text for one in lines)
        of = demo_set(typed.casefold()) if len(lines) == 1 else read_set(typed)
        found = []
        for one in faults:
            with slipping(one.line, slips):
                found.append(read_fault(one.text, of))
        begin(of, tuple(found), SEED)
        return None if slips else Bench(task=Task(of, tuple(found), SEED), **common)
    return None
