"""The parts that follow no straight line, at the ports of a straight network: Newton's method.

Each port is one unknown place on its law's curve. A search begins at the last answer and goes
straight on; where that does not come to an end, steps are shortened until they bring it nearer
(P. Deuflhard's natural test: the next step must be shorter). Last, each port gets a leak, which is
made less by degrees. Source: P. Deuflhard, Newton Methods for Nonlinear Problems, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from repairlib.circuits.laws import Law

ACROSS = 1e-4  # S, put across each port in the straight part and taken off again in its law
NEAR, NEAR_STALE = 1e-4, 1e-7  # V, the last step by the slopes there, and by older ones
ROUNDED = 1e-10  # of the places, by which a step may be longer
QUICK_ROUNDS, MOST_ROUNDS, SHORTEST = 12, 60, 1 / 1024
MOST_LEAK, LEAST_LEAK = 1.0, 1e-12  # S, across each port; below that none
MOST_SHRINKS, LEAST_SHRINKS = 10.0, 1.01  # by which the leak is divided


class Ports:
    """The parts at their ports; `ohms`: by how many volts 1 A into each port moves each port.

    The current that a port pushes is what its law lets through less ACROSS times its voltage.
    """

    def __init__(self, laws: Sequence[Law], ohms):
        import numpy as np

        self.ohms, self._laws, end = ohms, [], 0
        many, blocks = len(ohms), list[int]()
        for law in laws:
            start, end = end, end + len(law.ports)
            self._laws.append((law.curve, start, end))
            for row in range(start, end):
                blocks += range(row * many + start, row * many + end)
        self._blocks: Any = np.array([*blocks, *(many * many + at for at in blocks)], int)
        self._places: Any = np.zeros(many)
        self._open_volts: Any = self._places
        self.slopes: Any = None

    def go_on_from(self, other: Ports) -> None:
        """Begin the next search where another network with the same laws has come to."""
        self._places, self._open_volts, self.slopes = other._places, None, None

    def currents(self, open_volts):
        """The currents that the ports push; None when no places were found that hold every law.

        `open_volts` are the voltages of the ports with none of the currents flowing. `slopes` then
        has how volts and pushed currents go with the places, and the places with `open_volts`.
        """
        if not self._laws:
            return open_volts
        if self.slopes is None:
            self._take(self._look(self._places, open_volts)[2])
        if self._open_volts is None:
            self._open_volts = open_volts
        begin = self._places, self._open_volts
        for search in (self._quick, self._careful, self._drained):
            pushed = search(open_volts)
            if pushed is not None:
                self._open_volts = open_volts
                return pushed
            self._places, self._open_volts = begin
        self.slopes = None
        return None

    def at(self, open_volts, pushed):
        """Voltages and currents of the ports for the currents that they push."""
        volts = open_volts + self.ohms @ pushed
        return volts, pushed + ACROSS * volts

    def slopes_in(self, ohms):
        """How the pushed currents go with the open volts in another network, at the last answer."""
        import numpy as np

        self._take(self._look(self._places, self._open_volts)[2])
        of_volts, of_pushed, _ = self.slopes
        return of_pushed @ np.linalg.inv(of_volts - ohms @ of_pushed)

    def _quick(self, open_volts):
        """Full steps; the slopes of the last answer serve as long as they lead there."""
        places = self._places + self.slopes[2] @ (open_volts - self._open_volts)
        for _ in range(QUICK_ROUNDS):
            missing, pushed, slopes = self._look(places, open_volts)
            step = self.slopes[2] @ missing
            if not _is_short(step, places, NEAR_STALE):
                self._take(slopes)
                step = self.slopes[2] @ missing
                if not _is_short(step, places, NEAR):
                    places = places + step
                    continue
            self._places = places + step
            return pushed + self.slopes[1] @ step
        return None

    def _careful(self, open_volts, leak: float = 0.0):
        """Each step shortened until the one after it is shorter."""
        missing, pushed, slopes = self._look(self._places, open_volts, leak)
        for _ in range(MOST_ROUNDS):
            self._take(slopes)
            step = self.slopes[2] @ missing
            if _is_short(step, self._places, NEAR):
                self._places = self._places + step
                return pushed + self.slopes[1] @ step
            share = 1.0
            while share > SHORTEST:
                places = self._places + share * step
                missing, pushed, slopes = self._look(places, open_volts, leak)
                if _size(self.slopes[2] @ missing) <= (1 - share / 2) * _size(step):
                    break
                share /= 2
            self._places = places
        return None

    def _drained(self, open_volts):
        """With a leak across each port, which is made less as quickly as the places can follow."""
        self._places = 0 * open_volts
        leak, shrinks = MOST_LEAK, MOST_SHRINKS
        pushed = self._careful(open_volts, leak)
        while leak and pushed is not None:
            begin, less = self._places, leak / shrinks if leak > LEAST_LEAK else 0.0
            found = self._careful(open_volts, less)
            if found is not None:
                pushed, leak, shrinks = found, less, min(shrinks * shrinks, MOST_SHRINKS)
            else:
                self._places, shrinks = begin, shrinks**0.5
                if shrinks < LEAST_SHRINKS or not less:
                    return None
        return pushed

    def _look(self, places, open_volts, leak: float = 0.0):
        """How many volts are missing at each port there, what they push, and the slopes of all."""
        import numpy as np

        volts: Any = ()
        amps: Any = ()
        of_volts: Any = ()
        of_amps: Any = ()
        where = places.tolist()
        for curve, start, end in self._laws:
            some_volts, some_amps, some_of_volts, some_of_amps = curve(where[start:end])
            volts += some_volts
            amps += some_amps
            of_volts += some_of_volts
            of_amps += some_of_amps
        volts = np.array(volts)
        added = leak - ACROSS
        pushed = np.array(amps) + added * volts
        missing = open_volts + self.ohms @ pushed - volts
        return missing, pushed, (of_volts + of_amps, added)

    def _take(self, slopes) -> None:
        """Work with these slopes of the laws from now on."""
        import numpy as np

        of_both, added = slopes
        many = len(self.ohms)
        of_volts, of_pushed = both = np.zeros((2, many, many))
        both.put(self._blocks, of_both)
        of_pushed += added * of_volts
        inverse = np.linalg.inv(of_volts - self.ohms @ of_pushed)
        self.slopes = of_volts, of_pushed, inverse


def _size(step) -> float:
    return float(step @ step) ** 0.5


def _is_short(step, places, near: float) -> bool:
    return float(step @ step) <= near * near + ROUNDED * ROUNDED * float(places @ places)
