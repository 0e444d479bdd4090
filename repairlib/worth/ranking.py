"""Several sets on one bench: which first. Hours are what a bench runs out of, so they rank.

Sets that pay for sure come first, then those that may, then those that do not; within each the
expected gain for an hour decides, at the middle of the chance. What is handed on has no place.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import copysign, inf
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.verdicts import DEPENDS, DO_NOT_REPAIR, REPAIR
from repairlib.worth.deciding import Decision, decide_on
from repairlib.worth.job import Job

ORDER = (REPAIR, DEPENDS, DO_NOT_REPAIR)


class Standing(NamedTuple):
    """A job with its `place`, None when it is handed on, its decision, and the gain for an hour.

    `for_an_hour` is None where no hours are needed or the set is handed on.
    """

    place: int | None
    job: Job
    decision: Decision
    for_an_hour: float | None

    def __str__(self) -> str:
        place = "-" if self.place is None else f"{self.place}."
        told = f"{place} {self.job.name}: {self.decision.verdict}, {self.decision.reason}"
        if self.for_an_hour is None:
            return told
        return f"{told}; {self.job.money(self.for_an_hour)} for an hour"


def which_first(jobs: Iterable[Job]) -> list[Standing]:
    """The jobs in the order in which to do them; those handed on come last, without a place.

    Raises RepairlibError when they are counted in different currencies. Source: the rule of the
    limiting factor, most gain for each unit of what is scarce.

    >>> radio = Job(60, 8, 2, 50, 80, name="radio", hazards=("mains",))
    >>> scanner, maker = Job(40, 5, 2, 60, 90, name="scanner"), Job(30, 2, 1, 70, 90, name="maker")
    >>> [f"{one.place} {one.job.name}" for one in which_first([radio, scanner, maker])]
    ['1 maker', '2 scanner', 'None radio']
    """
    every = list(jobs)
    currencies = list(dict.fromkeys(job.currency for job in every))
    if len(currencies) > 1:
        wrong = f"another currency than {currencies[0]}"
        raise RepairlibError(currencies[1], wrong, "one currency for all that is compared")
    decided = [(job, decide_on(job)) for job in every]
    ranked = sorted(
        ((job, one) for job, one in decided if one.verdict in ORDER),
        key=lambda pair: (ORDER.index(pair[1].verdict), -_for_an_hour(pair[0])),
    )
    placed = [
        Standing(place, job, one, _for_an_hour(job) if job.hours else None)
        for place, (job, one) in enumerate(ranked, 1)
    ]
    return placed + [
        Standing(None, job, one, None) for job, one in decided if one.verdict not in ORDER
    ]


def _for_an_hour(job: Job) -> float:
    """The expected gain for an hour at the middle of the chance."""
    gain = job.gain((job.success_low + job.success_high) / 2)
    if job.hours:
        return gain / job.hours
    return copysign(inf, gain) if gain else 0.0
