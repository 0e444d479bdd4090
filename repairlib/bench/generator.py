"""As many boards as wanted: a set, a learner and a level give a fault or two, always the same.

The faults are those that the set lists. Level 1 has a plain one, level 2 one that hides or has two
steps (a fuse with its cause, a joint that opens when warm, the mains side), level 3 two at once.
How bad a fault is comes from the draw too: as listed, or worse.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.bench.attempt import Task
from repairlib.bench.conditions import CONDITIONS, Fault, read_fault, read_faults
from repairlib.bench.practice_set import PracticeSet, demo_set
from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError

LEVELS = (1, 2, 3)
HIDES = ("cracked", "worn", "leaks", "pad lifted", "corrupt")
WORSE = (1.0, 1.15, 1.3)  # times as bad as listed; a choice of this workbook
DRAW_OF = "practice board"


def task(
    of: PracticeSet | str,
    group: str = "",
    learner: str = "",
    level: int = 1,
    draw: Draw | None = None,
) -> Task:
    """The board of one learner: `of` is a set or the title of a demo set, `level` 1, 2 or 3.

    `draw` takes the place of the draw of group and learner. Raises RepairlibError for a level that
    is not there, and for a set that lists no fault of that level.

    >>> one = task("desk radio", "bench-7", "Ada Example", level=2)
    >>> [str(fault) for fault in one.faults]
    ['R2 pad lifted']
    """
    of = demo_set(of) if isinstance(of, str) else of
    if level not in LEVELS:
        raise RepairlibError(level, "no such level", "1, 2 or 3")
    draw = draw or Draw.for_learner(group, learner, DRAW_OF)
    draw = draw.part(of.title).part(f"level {level}")
    faults = tuple(_worse(fault, of, draw) for fault in _drawn(of, level, draw.part("faults")))
    return Task(of, faults, draw.seed, level)


def lines_of_level(of: PracticeSet, level: int) -> tuple[str, ...]:
    """The lines of the set from which a level draws. Raises RepairlibError where there are none.

    >>> lines_of_level(demo_set("label maker"), 2)[:2]
    ('J1 worn 4 Ω', 'J1 cracked')
    """
    found = {line: read_fault(line, of) for line in of.faults}
    if level == 2:
        hides = tuple(line for line, one in found.items() if _hides(one, of))
        lines = (*hides, *of.together)
    elif level == 1:
        lines = tuple(line for line, one in found.items() if not _hides(one, of))
    else:
        lines = tuple(line for line, one in found.items() if not of.part(one.part).mains)
    if not lines:
        kinds = ", ".join(HIDES) if level == 2 else "open, short, dried out, …"
        raise RepairlibError(of.title, f"it lists no fault for level {level}", f"fault: {kinds}")
    return lines


def _hides(fault: Fault, of: PracticeSet) -> bool:
    return fault.condition in HIDES or of.part(fault.part).mains


def _drawn(of: PracticeSet, level: int, draw: Draw) -> tuple[Fault, ...]:
    lines = lines_of_level(of, level)
    if level != 3:
        return read_faults(draw.pick(lines), of)
    shuffled = [read_fault(line, of) for line in draw.shuffle(lines)]
    first = shuffled[0]
    for other in shuffled[1:]:
        if other.part != first.part:
            return first, other
    raise RepairlibError(of.title, "it has no two faults of two parts", "fault: C1 open")


def _worse(fault: Fault, of: PracticeSet, draw: Draw) -> Fault:
    """The fault as bad as it is listed or worse, in figures that can be typed again."""
    times = draw.part(fault.part).pick(WORSE)
    if times == 1.0:
        return fault
    known = CONDITIONS[fault.condition].figures
    figures = dict(fault.figures)
    for name, value in _moved(fault, of, times).items():
        figures[name] = min(max(float(f"{value:.2g}"), known[name].low), known[name].high)
    return read_fault(str(replace(fault, figures=figures)), of)


def _moved(fault: Fault, of: PracticeSet, times: float) -> dict[str, float]:
    """The figures that are worse, `times` as far from sound."""
    now = fault.figures
    if fault.condition == "dried out":
        return {"to": now["to"] / times, "esr": now["esr"] * times}
    if fault.condition == "leaks":
        return {"ohm": now["ohm"] / times}
    if fault.condition == "worn":
        return {"ohm": now["ohm"] * times}
    circuit = of.part(fault.part).circuit
    if fault.condition == "gives" and circuit:
        return {"volts": circuit.value + (now["volts"] - circuit.value) * times}
    return {}
