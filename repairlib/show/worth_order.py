"""Which set first, as a table: its place, the decision on it, why, and the gain for an hour."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.html import sign_of
from repairlib.show.set_out import SetOut
from repairlib.worth import Job, Standing, which_first

HEAD = ("place", "set", "decision", "why", "in an hour")
WIDTHS = (3, 8.5, 9, 24, 5)
NO_PLACE = "none"


def order_of_work(jobs: Iterable[Job]) -> SetOut:
    """The sets in the order in which to take them; those handed on come last, without a place.

    Raises RepairlibError when they are counted in different currencies.

    >>> order_of_work([Job(60, 8, 2, 100, 100, name="radio")])
    place | set | decision | why | in an hour
    1 | radio | ✓ repair | gains 52 tokens at a chance of 100 % | 26 tokens
    """
    return SetOut(HEAD, map(_row, which_first(jobs)), WIDTHS)


def _row(one: Standing) -> tuple[object, ...]:
    verdict = one.decision.verdict
    sign = "⚠" if one.place is None else sign_of(verdict)
    rate = "" if one.for_an_hour is None else one.job.money(one.for_an_hour)
    place = NO_PLACE if one.place is None else one.place
    return place, one.job.name, f"{sign} {verdict}", one.decision.reason, rate
