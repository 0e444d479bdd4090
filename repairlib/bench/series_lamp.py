"""The filament lamp in series with a set's own plug: what it does to the feed.

A transformer is taken as an ideal one with its series resistance: seen from behind it, a lamp of
so many watts at the mains is one of the same watts at the feed's volts. An adapter is taken the
same way. That is a choice of this workbook.
"""

from __future__ import annotations

from dataclasses import replace

from repairlib.circuits import CircuitPart
from repairlib.power_up import HOT_BY_COLD

SOCKET = "before the lamp"
NAME = "H of the bench"


def behind_lamp(feed: CircuitPart, watts: float) -> tuple[CircuitPart, CircuitPart]:
    """The lamp, and the feed behind it.

    >>> from repairlib.circuits import CircuitPart
    >>> lamp, feed = behind_lamp(CircuitPart("V1", ("a", "b"), 12.0, {"series": 1.0}), 60.0)
    >>> lamp.value, lamp.nodes, feed.nodes
    (2.4, ('a', 'before the lamp'), ('before the lamp', 'b'))
    """
    hot = feed.value**2 / watts
    more = {"cold": hot / HOT_BY_COLD[0], "rated": watts}
    one, other = feed.nodes
    return CircuitPart(NAME, (one, SOCKET), hot, more), replace(feed, nodes=(SOCKET, other))
