"""Where that which a circuit holds will settle, from how the cycles before have changed it.

Near the end, the change in a cycle goes straight with where the cycle began. So a few cycles tell,
by least squares, where there would be none: Anderson's acceleration. Source: D. G. Anderson,
Iterative procedures for nonlinear integral equations, Journal of the ACM 12 (1965), from memory.
"""

from __future__ import annotations

from math import inf

REMEMBERED = 3  # cycles at most: as many slow motions as it can tell apart
MOST_AHEAD = 1000.0  # times the change in a cycle
ROUNDED = 1e-6  # of the largest: smaller differences tell nothing


class Search:
    """Cycles looked at one after the other, with what they told."""

    def __init__(self):
        self._last = None
        self._told = []

    def begin(self) -> None:
        """The next cycle does not follow on the last one; what was told still counts."""
        self._last = None

    def ahead(self, before, after):
        """How far it will still go from `after`, and the largest part of that from `before`.

        The second is infinite as long as nothing can be told.

        >>> import numpy as np
        >>> search = Search()
        >>> for volts in (0.0, 5.0, 7.5):  # half of the way to 10 V in each cycle
        ...     far, left = search.ahead(np.array([volts]), np.array([volts / 2 + 5]))
        >>> float(far[0]), float(left)
        (1.25, 2.5)
        """
        import numpy as np

        change = after - before
        if self._last is not None:
            changed = change - self._last[1]
            size = np.linalg.norm(changed) or 1.0
            self._told.append(((before - self._last[0]) / size, changed / size))
            del self._told[: -min(REMEMBERED, len(change)) or None]
        self._last = before, change
        if not len(change):
            return change, 0.0
        if not self._told:
            return 0 * change, inf
        moved, changed = (np.array(rows).T for rows in zip(*self._told, strict=True))
        share = np.linalg.lstsq(changed, change, rcond=ROUNDED)[0]
        far = -(moved + changed) @ share
        if np.abs(far).max() > MOST_AHEAD * np.abs(change).max():
            return 0 * change, inf
        return far, np.abs(change + far).max()
