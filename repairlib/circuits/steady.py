"""Where that which a circuit holds will settle: Newton's method on a whole cycle.

How what is held after a cycle goes with what was held before it is known step by step. So each
cycle tells where there would be no change, however slowly the circuit itself would get there.
Source: T. J. Aprille and T. N. Trick, Steady-state analysis of nonlinear circuits with periodic
inputs, Proceedings of the IEEE 60 (1972), from memory. Where such a leap does not bring what was
foreseen, the next one goes as far as the circuit would in a few cycles, then in more: C. T. Kelley
and D. E. Keyes, Convergence analysis of pseudo-transient continuation, SIAM Journal on Numerical
Analysis 35 (1998), from memory.
"""

from __future__ import annotations

from math import inf

SHORTEST = 0.5  # cycles that a leap is worth at least
WRONG, USELESS = 0.5, 1.5  # of the last change: by which a leap may miss what was foreseen
EMPTIED = 2  # times that a search may begin anew with something empty
BOLDER, SHYER = 2.0, 8.0  # times as far at least after a leap that was right, and shorter


class Search:
    """Leaps from one cycle to the next, each as far as `reach` cycles or to the end."""

    def __init__(self):
        self.reach = inf
        self._last = None
        self._emptied = 0

    def leap(self, before, after, carried):
        """Where the next cycle begins, and how far it seemed from `before` to the end.

        `carried` is how `after` goes with `before`. No leap takes anything past empty: above its
        end a reservoir falls in nearly a straight line, which ends far below. From empty it is
        found.

        >>> import numpy as np
        >>> at, left = Search().leap(np.array([0.0]), np.array([5.0]), np.array([[0.5]]))
        >>> float(at[0]), float(left[0])
        (10.0, 10.0)
        """
        import numpy as np

        change = after - before
        stays = np.eye(len(change)) - carried
        left = way_left(change, carried)
        size = abs(change).max(initial=0.0)
        if self._last is not None:
            last_size, *last, foreseen = self._last
            miss = abs(change - foreseen).max(initial=0.0)
            if miss > WRONG * last_size:
                self.reach = max(min(self.reach, SHYER) / SHYER, SHORTEST)
            else:
                self.reach *= max(last_size / (size or 1.0), BOLDER)
            if miss > USELESS * last_size and self.reach > SHORTEST:
                size, (before, stays, change) = last_size, last
        far = _solved(stays + np.eye(len(change)) / self.reach, change)
        past = before * (before + far) < 0
        ahead = np.where(past, 0.0, before + far)
        self._last = size, before, stays, change, change - stays @ (ahead - before)
        if past.any() and self._emptied < EMPTIED:
            self._emptied, self.reach, self._last = self._emptied + 1, inf, None
        return ahead, left


def way_left(change, carried):
    """How far it is to where nothing changes, when each change is `carried` into the next.

    `change` is by how much a cycle changes the volts and amps that are held, `carried` the square
    of figures by which each goes with each. Where there are many answers, the least.

    >>> import numpy as np
    >>> way_left(np.array([5.0]), np.array([[0.5]])).tolist()  # 5 + 2.5 + 1.25 and so on
    [10.0]
    """
    import numpy as np

    return _solved(np.eye(len(change)) - carried, change)


def _solved(matrix, right):
    """The answer; where there are many, the least."""
    import numpy as np

    try:
        return np.linalg.solve(matrix, right)
    except np.linalg.LinAlgError:
        return np.linalg.lstsq(matrix, right, rcond=None)[0]
