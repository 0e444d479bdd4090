"""The parts that follow no straight line, at the ports of a straight network: Newton's method.

Each port is one unknown current i': what its law lets through less ACROSS times its voltage.
"""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.circuits.laws import Law

ACROSS = 1e-4  # S, put across each port in the straight part and taken off again in its law
MOST_ROUNDS = 100
NEAR, NEAR_ALL, NEAREST = 1e-5, 1e-11, 1e-13  # of its (last) current, of the largest, in A


class Ports:
    """The laws, and `ohms`: by how many volts 1 A into each port moves each port."""

    def __init__(self, laws: Sequence[Law], ohms):
        self.ohms = ohms
        self.laws = []  # each with its first port, the one after its last, and 0 for all others
        end, many = 0, len(ohms)
        for law in laws:
            start, end = end, end + len(law.ports)
            self.laws.append((law, start, end, (0.0,) * start, (0.0,) * (many - end)))
        self._lines = None

    def currents(self, open_volts):
        """The currents i' that hold every law; None when Newton's method does not come to an end.

        `open_volts` are the voltages of the ports with none of the currents flowing. The search
        begins on the lines on which the last one ended.
        """
        import numpy as np

        if not self.laws:
            return open_volts
        if self._lines is None:
            self._lay_lines(np.zeros(len(open_volts)), np.zeros(len(open_volts)))
        inverse, shifted, right = self._lines
        pushed = inverse @ (right - shifted @ open_volts)
        for _ in range(MOST_ROUNDS):
            volts, amps = self.at(open_volts, pushed)
            if self._held(volts.tolist(), amps.tolist()):
                return pushed
            # What is still missing is added: unlike a new start, this loses no figures.
            pushed = pushed + self._lay_lines(volts, amps)
        self._lines = None
        return None

    def at(self, open_volts, pushed):
        """Voltages and currents of the ports for the currents i'."""
        volts = open_volts + self.ohms @ pushed
        return volts, pushed + ACROSS * volts

    def lines_at(self, volts, amps):
        """The straight lines of all ports there: (A, B, c) of A v + B i = c."""
        import numpy as np

        volts, amps = volts.tolist(), amps.tolist()
        of_volts, of_amps, right = [], [], []
        for law, start, end, before, after in self.laws:
            for a, b, c in law.about(volts[start:end], amps[start:end]):
                of_volts.append(before + a + after)
                of_amps.append(before + b + after)
                right.append(c)
        return np.array(of_volts), np.array(of_amps), np.array(right)

    def _lay_lines(self, volts, amps):
        """Keep the straight lines there; how far the currents i' must move to be on them."""
        import numpy as np

        of_volts, of_amps, right = self.lines_at(volts, amps)
        shifted = of_volts + ACROSS * of_amps
        inverse = np.linalg.inv(shifted @ self.ohms + of_amps)
        self._lines = inverse, shifted, right
        return inverse @ (right - of_volts @ volts - of_amps @ amps)

    def _held(self, volts: list[float], amps: list[float]) -> bool:
        """Whether every law is held; a diode's to well below a microvolt."""
        all_near = NEAREST + NEAR_ALL * max(map(abs, amps))
        for law, start, end, _, _ in self.laws:
            miss = law.miss(volts[start:end], amps[start:end])
            if not miss <= all_near + NEAR * abs(amps[end - 1]):
                return False
        return True
