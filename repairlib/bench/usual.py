"""The time and money that a repair usually takes; choices of this workbook.

They come from how the technician of this room does on the demo sets, with an hour for what shows
only while it is warm: it is waited for, mended, and waited for again.
"""

from __future__ import annotations

from repairlib.bench.attempt import Task
from repairlib.bench.conditions import Fault

MINUTES, EACH = 30.0, 15.0  # of any repair, and more for each fault
COMES_AND_GOES = ("cracked",)
WARMED = 60.0  # min more for such a fault
HIDDEN = 15.0  # min more where another fault hides the first or blew the fuse
TOKENS, SPARE = 1.0, 1.25  # of any repair, and times the price of each part at fault


def usual_minutes(task: Task) -> float:
    """The usual minutes for a task, by its faults.

    >>> from repairlib.bench.conditions import read_fault
    >>> from repairlib.bench.practice_set import demo_set
    >>> radio = demo_set("desk radio")
    >>> usual_minutes(Task(radio, (read_fault("C1 open", radio),), "demo"))
    45.0
    >>> usual_minutes(Task(radio, (read_fault("J1 cracked", radio),), "demo"))
    105.0
    """
    hidden = HIDDEN if len(task.faults) > 1 else 0.0
    return MINUTES + hidden + sum(map(_for, task.faults))


def _for(fault: Fault) -> float:
    return EACH + (WARMED if fault.condition in COMES_AND_GOES else 0.0)


def usual_tokens(task: Task) -> float:
    """The usual tokens for a task: its parts, and a little more."""
    return TOKENS + SPARE * sum(task.set.part(fault.part).price for fault in task.faults)
