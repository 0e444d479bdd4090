"""Repair, do not, or it depends: by the gain over the range of the chance, and what would turn it.

Danger comes first: a set that is handed on gets no other answer, however good the sum.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.quantity import brief, brief_range
from repairlib.core.verdicts import DEPENDS, DO_NOT_REPAIR, REPAIR
from repairlib.stored_charge import QUALIFIED
from repairlib.worth.hazards import handed_on
from repairlib.worth.job import Job, roughly


class Decision(NamedTuple):
    """The `verdict`, its `reason`, and what would change it, as sentences without a full stop."""

    verdict: str
    reason: str
    change: str


def decide_on(job: Job) -> Decision:
    """Whether the job is worth it: a gain at both ends of the chance, at none, or at one.

    >>> print(decide_on(Job(60, 8, 2, 50, 80, hour_worth=5)).reason)
    gains 12 tokens to 30 tokens at a chance of 50 % to 80 %
    >>> decide_on(Job(60, 8, 2, 50, 80, hazards=("mains",))).verdict
    'leave it to a qualified person'
    """
    dangers = handed_on(job.hazards)
    if dangers:
        reason = f"{' and '.join(dangers)}: no gain outweighs this danger"
        change = "nothing in the sum; a qualified person decides and does the work"
        return Decision(QUALIFIED, reason, change)
    signs = job.sign(job.success_low), job.sign(job.success_high)
    if signs[0] > 0:
        return Decision(REPAIR, _span(job), _worse(job))
    if signs[1] < 0:
        return Decision(DO_NOT_REPAIR, _span(job), _better(job))
    return Decision(DEPENDS, _span(job), _surer(job))


def _span(job: Job) -> str:
    """The gain over the range of the chance, in words."""
    low, high = job.success_low, job.success_high
    between = f"at a chance of {brief_range(low, high, '%')}"
    if low == high:
        return f"{_gain(job, low)} {between}"
    first, last = (job.sign(chance) for chance in (low, high))
    if first < 0 < last:
        loss, gain = job.money(-job.gain(low)), job.money(job.gain(high))
        return f"from a loss of {loss} to a gain of {gain} {between}"
    if first < 0 or last < 0:
        return f"loses {job.money(-job.gain(low))} to {job.money(-job.gain(high))} {between}"
    return f"gains {job.money(job.gain(low))} to {job.money(job.gain(high))} {between}"


def _gain(job: Job, chance: float) -> str:
    gain = job.gain(chance)
    return {
        1: f"gains {job.money(gain)}",
        0: "neither gains nor loses",
        -1: f"loses {job.money(-gain)}",
    }[job.sign(chance)]


def _worse(job: Job) -> str:
    """What would make a job that pays one that may not."""
    low = job.success_low
    changes = [f"parts above {job.money(job.break_even_parts(low))}"]
    hours = job.break_even_hours(low)
    if hours is not None:
        changes.insert(0, f"more than {roughly(hours, 'h')} of work")
    at = f"{' or '.join(changes)} at {brief(low, '%')}"
    chance = job.break_even_chance()
    return f"a chance below {roughly(chance, '%')}, {at}" if chance else at


def _better(job: Job) -> str:
    """What would make a job that does not pay one that may."""
    high, changes = job.success_high, []
    chance, hours = job.break_even_chance(), job.break_even_hours(high)
    parts = job.break_even_parts(high)
    if chance is not None and chance < 100:
        changes.append(f"a chance above {roughly(chance, '%')}")
    if hours is not None and hours > 0:
        changes.append(f"less than {roughly(hours, 'h')} of work at {brief(high, '%')}")
    if parts > 0:
        changes.append(f"parts below {job.money(parts)} at {brief(high, '%')}")
    return ", ".join(changes) or "no chance, no hours and no price of parts alone"


def _surer(job: Job) -> str:
    """What would settle a job that pays at one end of the chance only."""
    low, chance = job.success_low, job.break_even_chance()
    told = "any change"
    if chance is not None:
        told = f"a better guess of the chance: even at {roughly(chance, '%')}"
    changes = []
    hours, parts = job.break_even_hours(low), job.break_even_parts(low)
    if hours is not None and hours > 0:
        changes.append(f"less than {roughly(hours, 'h')} of work")
    if parts > 0:
        changes.append(f"parts below {job.money(parts)}")
    return (
        f"{told}; it pays at {brief(low, '%')} too with {' or '.join(changes)}" if changes else told
    )
