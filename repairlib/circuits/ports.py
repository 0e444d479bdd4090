"""The parts that follow no straight line, at the ports of a straight network: Newton's method.

Each port is one unknown place on its law's curve. A search begins at the last answer and goes
straight on; where that does not come to an end, steps are shortened until they bring it nearer
(P. Deuflhard's natural test: the next step must be shorter). Last, corners are rounded and made
sharp by degrees. Source: P. Deuflhard, Newton Methods for Nonlinear Problems, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.circuits.laws import Law

ACROSS = 1e-4  # S, put across each port in the straight part and taken off again in its law
NEAR, NEAR_STALE, ROUNDED = 1e-6, 1e-9, 1e-10  # V, of the last step; V by older slopes; of places
QUICK_ROUNDS, MOST_ROUNDS, SHORTEST = 12, 60, 1 / 1024
SHARPER = (10.0, 1.0, 0.1, 1e-2, 1e-3, 0.0)  # V, by which corners are rounded


class Ports:
    """The parts at their ports; `ohms`: by how many volts 1 A into each port moves each port.

    The current that a port pushes is what its law lets through less ACROSS times its voltage.
    """

    def __init__(self, laws: Sequence[Law], ohms):
        import numpy as np

        self.ohms, self._laws, end = ohms, [], 0
        rows, columns = [], []
        for law in laws:
            start, end = end, end + len(law.ports)
            self._laws.append((law.curve, start, end))
            for row in range(start, end):
                rows += [row] * len(law.ports)
                columns += range(start, end)
        self._blocks = np.array(rows, int), np.array(columns, int)
        self._of_volts, self._of_pushed = np.zeros((2, end, end))
        self._places = self._open_volts = np.zeros(end)
        self.by_open = self._inverse = None

    def currents(self, open_volts):
        """The currents that the ports push; None when no places were found that hold every law.

        `open_volts` are the voltages of the ports with none of the currents flowing. By how much
        the answer goes with them is then `by_open`.
        """
        if not self._laws:
            return open_volts
        if self._inverse is None:
            self._take(self._look(self._places, open_volts, 0.0)[2])
        begin = self._places, self._open_volts
        for search in (self._quick, self._careful, self._sharpened):
            pushed = search(open_volts)
            if pushed is not None:
                self._open_volts = open_volts
                return pushed
            self._places, self._open_volts = begin
        self._inverse = None
        return None

    def at(self, open_volts, pushed):
        """Voltages and currents of the ports for the currents that they push."""
        volts = open_volts + self.ohms @ pushed
        return volts, pushed + ACROSS * volts

    def slopes_in(self, ohms):
        """How the pushed currents go with the open volts in another network, near the answer."""
        import numpy as np

        return self._of_pushed @ np.linalg.inv(self._of_volts - ohms @ self._of_pushed)

    def _quick(self, open_volts):
        """Full steps, the first of them by the slopes of the last answer."""
        places = self._places + self._inverse @ (open_volts - self._open_volts)
        near = NEAR_STALE
        for at in range(QUICK_ROUNDS):
            missing, pushed, slopes = self._look(places, open_volts, 0.0)
            if at:
                self._take(slopes)
                near = NEAR
            step = self._inverse @ missing
            places = places + step
            if _is_short(step, places, near):
                self._places = places
                return pushed + self.by_open @ missing
        return None

    def _careful(self, open_volts, rounding: float = 0.0):
        """Each step shortened until the one after it is shorter."""
        missing, pushed, slopes = self._look(self._places, open_volts, rounding)
        for _ in range(MOST_ROUNDS):
            self._take(slopes)
            step = self._inverse @ missing
            if _is_short(step, self._places, NEAR):
                self._places = self._places + step
                return pushed + self.by_open @ missing
            share = 1.0
            while share > SHORTEST:
                places = self._places + share * step
                missing, pushed, slopes = self._look(places, open_volts, rounding)
                if _size(self._inverse @ missing) <= (1 - share / 2) * _size(step):
                    break
                share /= 2
            self._places = places
        return None

    def _sharpened(self, open_volts):
        """First with round corners, then sharper ones."""
        for rounding in SHARPER:
            pushed = self._careful(open_volts, rounding)
        return pushed

    def _look(self, places, open_volts, rounding: float):
        """How many volts are missing at each port there, what they push, and the slopes of all."""
        import numpy as np

        volts, amps, of_volts, of_amps = (), (), (), ()
        where = places.tolist()
        for curve, start, end in self._laws:
            some_volts, some_amps, some_of_volts, some_of_amps = curve(where[start:end], rounding)
            volts += some_volts
            amps += some_amps
            of_volts += some_of_volts
            of_amps += some_of_amps
        volts = np.array(volts)
        pushed = np.array(amps) - ACROSS * volts
        return open_volts + self.ohms @ pushed - volts, pushed, (of_volts, of_amps)

    def _take(self, slopes) -> None:
        """Work with these slopes of the laws from now on."""
        import numpy as np

        of_volts, of_amps = slopes
        self._of_volts[self._blocks] = of_volts
        self._of_pushed[self._blocks] = of_amps
        self._of_pushed -= ACROSS * self._of_volts
        self._inverse = np.linalg.inv(self._of_volts - self.ohms @ self._of_pushed)
        self.by_open = self._of_pushed @ self._inverse


def _size(step) -> float:
    return float(step @ step) ** 0.5


def _is_short(step, places, near: float) -> bool:
    return float(abs(step).max()) <= near + ROUNDED * float(abs(places).max())
