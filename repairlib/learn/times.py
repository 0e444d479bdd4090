"""When each thing in a file was saved, so that of two files the newer of each can be taken.

A time is a whole number of milliseconds since 1970, by the clock of the computer that saved. What
replaces something is always later than it, also where that clock is behind.
"""

from __future__ import annotations

import time
from collections.abc import Iterable, Mapping


def now(times: Mapping[str, int], changed: Iterable[str]) -> dict[str, int]:
    """`times` with those of what is changed now.

    >>> now({"q1": 1, "q2": 4_102_444_800_000}, ["q2"])  # a clock that was ahead, in 2100
    {'q1': 1, 'q2': 4102444800001}
    """
    moment = time.time_ns() // 1_000_000
    return {**times, **{name: max(moment, times.get(name, 0) + 1) for name in changed}}


def are_times(found: object) -> bool:
    """True for what a file may hold as the times of its things.

    >>> are_times({"q1": 1}), are_times({"q1": "noon"}), are_times({"q1": True})
    (True, False, False)
    """
    return isinstance(found, dict) and all(type(one) is int and one > 0 for one in found.values())
