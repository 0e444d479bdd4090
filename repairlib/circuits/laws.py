"""How current and voltage go together in the parts that follow no straight line.

A diode: I = Is (exp(V / (n Vt)) - 1), Vt at 27 °C, and a leak of 1 nS. A load: its current times
tanh(V / 0.1 V), so that it draws nothing from an empty rail. A lamp: its resistance rises with its
power from cold to hot, R = cold + (hot - cold) P / rated, at once (a real filament lags by about a
tenth of a second). A bench supply: its voltage until the limit, then its current; it takes none
back. A regulator: the lower of its voltage and input less dropout, and it takes none back either.
"""

from __future__ import annotations

from math import exp, log, log1p, sqrt, tanh

from repairlib.circuits.parts import ZERO, CircuitPart

THERMAL_VOLTS = 1.380649e-23 * 300.15 / 1.602176634e-19  # at 27 °C
LEAK = 1e-9  # S, across a diode
KNEE = 0.1  # V, below which a load draws less than its current
WHOLE = 1.0  # V of input from which a regulator takes its own current
MOST_EXPONENT = 200.0


class Law:
    """A part that follows no straight line, as one or two ports.

    `about(v, i)` gives for each port a row (a, b, c): near voltages v [V] and currents i [A], into
    its first point, a·v + b·i = c holds. `miss(v, i)` is how far the law is from held, in A.
    """

    def __init__(self, part: CircuitPart):
        self.part = part
        self.ports: tuple[tuple[str, str], ...] = (part.nodes,)
        self.last = 0.0  # where the last line was laid

    def about(self, v, i):
        """The straight lines near that point."""
        self.last = volts = self.limited(v[0], i[0])
        amps, slope = self.amps(volts)
        return [((-slope,), (1.0,), amps - slope * volts)]

    def miss(self, v, i) -> float:
        """How far off the law a point is [A]."""
        return abs(i[0] - self.amps(v[0])[0])

    def limited(self, volts: float, amps: float) -> float:
        """The voltage at which the next line is laid."""
        return volts

    def amps(self, volts: float) -> tuple[float, float]:
        """The current [A] at a voltage [V], and its slope [S]."""
        raise NotImplementedError


class Diode(Law):
    """The exponential law of a junction, with a leak."""

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.scale = part.more["n"] * THERMAL_VOLTS
        self.knee = self.scale * log(self.scale / (sqrt(2) * part.value))

    def amps(self, volts: float) -> tuple[float, float]:
        grown = exp(min(volts / self.scale, MOST_EXPONENT))
        saturation = self.part.value
        return saturation * (grown - 1) + LEAK * volts, saturation * grown / self.scale + LEAK

    def limited(self, volts: float, amps: float) -> float:
        """On the steep branch it is laid by the current, or the exponential runs away."""
        if volts <= self.knee:
            return volts
        return max(self.knee, self.scale * log1p(max(amps, 0.0) / self.part.value))


class Load(Law):
    """A current that fades out below the knee."""

    def amps(self, volts: float) -> tuple[float, float]:
        part = tanh(volts / KNEE)
        return self.part.value * part, self.part.value * (1 - part * part) / KNEE + 1e-12

    def limited(self, volts: float, amps: float) -> float:
        """From one side to the other only by way of 0, or the steps would swing for ever."""
        return 0.0 if volts * self.last < 0 else volts


class Lamp(Law):
    """Resistance that rises with power: V (1 - k I²) = cold I, k = (hot - cold) / rated."""

    def amps(self, volts: float) -> tuple[float, float]:
        cold = self.part.more["cold"]
        k = (self.part.value - cold) / self.part.more["rated"]
        root = sqrt(cold * cold + 4 * k * volts * volts)
        amps = 2 * volts / (cold + root)
        return amps, 2 * cold / (root * (cold + root))


class BenchSupply(Law):
    """Constant voltage until the limit, then constant current; none back."""

    HOLDS, LIMITS, OFF = range(3)

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.state = self.HOLDS

    def about(self, v, i):
        # From one end to the other only by way of holding, or the steps would swing for ever.
        limit = self.part.more["limit"]
        if self.state == self.HOLDS:
            self.state = self.LIMITS if -i[0] > limit else self.OFF if i[0] > 0 else self.HOLDS
        elif (v[0] > self.part.value) == (self.state == self.LIMITS):
            self.state = self.HOLDS
        if self.state == self.HOLDS:
            return [((1.0,), (0.0,), self.part.value)]
        return [((0.0,), (1.0,), -limit if self.state == self.LIMITS else 0.0)]

    def miss(self, v, i) -> float:
        limit = self.part.more["limit"]
        wanted = -i[0] + limit * (self.part.value - v[0]) / self.part.value
        return abs(-i[0] - min(max(wanted, 0.0), limit))


class Regulator(Law):
    """The lower of its voltage and its input less the dropout; its input current is the output's.

    Ports: input to zero, output to zero.
    """

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.ports = ((part.nodes[0], ZERO), (part.nodes[1], ZERO))
        self.on = True

    def _target(self, volts: float) -> float:
        return max(min(self.part.value, volts - self.part.more["dropout"]), 0.0)

    def _own(self, volts: float) -> float:
        return self.part.more["own"] * min(max(volts / WHOLE, 0.0), 1.0)

    def about(self, v, i):
        own, dropout = self.part.more["own"], self.part.more["dropout"]
        taken = (0.0, 0.0), (1.0, 1.0), self._own(v[0])
        if 0 <= v[0] < WHOLE:
            taken = (-own / WHOLE, 0.0), (1.0, 1.0), 0.0
        target = self._target(v[0])
        self.on = i[1] <= 0 if self.on else target > v[1]
        if not self.on:
            return [taken, ((0.0, 0.0), (0.0, 1.0), 0.0)]
        if 0 < target < self.part.value:
            return [taken, ((-1.0, 1.0), (0.0, 0.0), -dropout)]
        return [taken, ((0.0, 1.0), (0.0, 0.0), target)]

    def miss(self, v, i) -> float:
        given = max(-i[1] + self._target(v[0]) - v[1], 0.0)
        return max(abs(-i[1] - given), abs(i[0] + i[1] - self._own(v[0])))


LAWS: dict[str, type[Law]] = {
    "D": Diode, "I": Load, "H": Lamp, "P": BenchSupply, "U": Regulator,
}  # fmt: skip


def law_of(part: CircuitPart) -> Law | None:
    """The law of a part that follows no straight line; None for one that does.

    >>> from repairlib.circuits.parts import CircuitPart
    >>> lamp = law_of(CircuitPart("H1", ("a", "0"), 240.0, {"cold": 20.0, "rated": 60.0}))
    >>> amps, _ = lamp.amps(120.0)
    >>> round(amps, 3), law_of(CircuitPart("R1", ("a", "0"), 240.0))
    (0.5, None)
    """
    if part.letter == "I" and not part.load:
        return None
    made = LAWS.get(part.letter)
    return made(part) if made else None
