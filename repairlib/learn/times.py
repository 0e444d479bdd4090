"""When each thing in a file was saved, so that of two files the newer of each can be taken.

A time is a whole number of milliseconds since 1970, by the clock of the computer that saved. What
replaces something is always later than it, also where that clock is behind.
"""

from __future__ import annotations

import time
from collections.abc import Iterable, Mapping
from typing import TypeGuard


def now(times: Mapping[str, int], changed: Iterable[str]) -> dict[str, int]:
    """`times` with those of what is changed now.

    >>> now({"q1": 1, "q2": 4_102_444_800_000}, ["q2"])  # a clock that was ahead, in 2100
    {'q1': 1, 'q2': 4102444800001}
    """
    moment = time.time_ns() // 1_000_000
    return {**times, **{name: max(moment, times.get(name, 0) + 1) for name in changed}}


LATEST = 253_402_214_400_000  # ms since 1970: the last day of the year 9999, where calendars end


def is_time(found: object) -> TypeGuard[int]:
    """True for a moment in ms since 1970 of which a date can be made."""
    return type(found) is int and 0 < found < LATEST


def are_times(found: object) -> bool:
    """True for what a file may hold as the times of its things.

    >>> are_times({"q1": 1}), are_times({"q1": "noon"}), are_times({"q1": True})
    (True, False, False)
    """
    return isinstance(found, dict) and all(type(one) is int and one > 0 for one in found.values())
