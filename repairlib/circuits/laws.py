"""How current and voltage go together in the parts that follow no straight line.

A diode: I = Is (exp(V / (n Vt)) - 1), Vt at 27 °C, and a leak of 1 nS. A load: its current times
tanh(V / 0.1 V), so that it draws nothing from an empty rail. A lamp: its resistance rises with its
power from cold to hot, R = cold + (hot - cold) P / rated, at once (a real filament lags by about a
tenth of a second). A bench supply: its voltage until the limit, then its current; it takes none
back. A regulator: the lower of its voltage and input less dropout, and it takes none back either.

Each law is a curve, and a place on it is one number in V, from which voltage and current both rise
at a bounded rate: on a flat stretch the place is the voltage, on a steep one it goes with the
current (about 1 A for 1 V). So Newton's method meets neither exponentials nor states that swing.
"""

from __future__ import annotations

from math import exp, log, log1p, sqrt, tanh

from repairlib.circuits.parts import ZERO, CircuitPart

THERMAL_VOLTS = 1.380649e-23 * 300.15 / 1.602176634e-19  # at 27 °C
LEAK = 1e-9  # S, across a diode
KNEE = 0.1  # V, below which a load draws less than its current
WHOLE = 1.0  # V of input from which a regulator takes its own current
Curve = tuple[tuple[float, ...], tuple[float, ...], tuple[float, ...], tuple[float, ...]]


def between(number: float, most: float) -> tuple[float, float]:
    """A number held between 0 and the most that it may be, and its slope.

    >>> between(-1.0, 5.0), between(2.0, 5.0), between(7.0, 5.0)
    ((0.0, 0.0), (2.0, 1.0), (5.0, 0.0))
    """
    if number <= 0:
        return 0.0, 0.0
    return (number, 1.0) if number < most else (most, 0.0)


class Law:
    """A part that follows no straight line, as one or two ports.

    `curve(places)` gives the volts and the amps of its ports, into the first point of
    each, at those places, and by how much each of them rises with each place: of two ports row by
    row.
    """

    def __init__(self, part: CircuitPart):
        self.part = part
        self.ports: tuple[tuple[str, str], ...] = (part.nodes,)

    def curve(self, places) -> Curve:
        """Volts, amps, and their slopes; here the place is the voltage."""
        (volts,) = places
        amps, slope = self.amps(volts)
        return (volts,), (amps,), (1.0,), (slope,)

    def amps(self, volts: float) -> tuple[float, float]:
        """The current [A] at a voltage [V], and its slope [S]."""
        raise NotImplementedError


class Diode(Law):
    """The exponential law of a junction, with a leak; above the knee the place is the current's."""

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.saturation, self.scale = part.value, part.more["n"] * THERMAL_VOLTS
        self.knee = max(self.scale * log(self.scale / (sqrt(2) * part.value)), 0.0)
        self.at_knee, self.steep = self._junction(self.knee)

    def _junction(self, volts: float) -> tuple[float, float]:
        grown = self.saturation * exp(volts / self.scale)
        return grown - self.saturation, grown / self.scale

    def curve(self, places) -> Curve:
        (place,) = places
        if place <= self.knee:
            amps, slope = self._junction(place)
            return (place,), (amps + LEAK * place,), (1.0,), (slope + LEAK,)
        amps = self.at_knee + self.steep * (place - self.knee)
        volts = self.scale * log1p(amps / self.saturation)
        slope = self.steep * self.scale / (amps + self.saturation)
        return (volts,), (amps + LEAK * volts,), (slope,), (self.steep + LEAK * slope,)


class Load(Law):
    """A current that fades out below the knee."""

    def amps(self, volts: float) -> tuple[float, float]:
        knee = KNEE
        part = tanh(volts / knee)
        return self.part.value * part, self.part.value * (1 - part * part) / knee + 1e-12


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

    def curve(self, places) -> Curve:
        (place,) = places
        given, falls = between(self.part.value - place, self.part.more["limit"])
        return (place + given,), (-given,), (1 - falls,), (falls,)


class Regulator(Law):
    """The lower of its voltage and its input less the dropout; its input current is the output's.

    Ports: input to zero, output to zero.
    """

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.ports = ((part.nodes[0], ZERO), (part.nodes[1], ZERO))
        self.dropout, self.own = part.more["dropout"], part.more["own"] / WHOLE

    def curve(self, places) -> Curve:
        entry, place = places
        target, follows = between(entry - self.dropout, self.part.value)
        share, rises = between(entry, WHOLE)
        own, takes = self.own * share, self.own * rises
        if place >= target:
            return (entry, place), (own, 0.0), (1.0, 0.0, 0.0, 1.0), (takes, 0.0, 0.0, 0.0)
        given = target - place
        volts, amps = (entry, target), (given + own, -given)
        return volts, amps, (1.0, 0.0, follows, 0.0), (follows + takes, -1.0, -follows, 1.0)


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
