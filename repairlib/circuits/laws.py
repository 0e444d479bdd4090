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


def above(excess: float, rounding: float) -> tuple[float, float]:
    """What is above zero of a number, and the slope of that; its corner rounded by so much.

    >>> above(2.0, 0.0), above(-2.0, 0.0), above(0.0, 0.5)
    ((2.0, 1.0), (0.0, 0.0), (0.5, 0.5))
    """
    if rounding:
        root = sqrt(excess * excess + 4 * rounding * rounding)
        return (excess + root) / 2, (1 + excess / root) / 2
    return (excess, 1.0) if excess > 0 else (0.0, 0.0)


class Law:
    """A part that follows no straight line, as one or two ports.

    `curve(places, rounding)` gives the volts and the amps of its ports, into the first point of
    each, at those places, and by how much each of them rises with each place: of two ports row by
    row. Corners are rounded by `rounding` in V.
    """

    def __init__(self, part: CircuitPart):
        self.part = part
        self.ports: tuple[tuple[str, str], ...] = (part.nodes,)

    def curve(self, places, rounding: float) -> Curve:
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

    def curve(self, places, rounding: float) -> Curve:
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
        part = tanh(volts / KNEE)
        return self.part.value * part, self.part.value * (1 - part * part) / KNEE + 1e-12


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

    def curve(self, places, rounding: float) -> Curve:
        (place,) = places
        limit = self.part.more["limit"]
        wanted, rises = above(self.part.value - place, rounding)
        over, passed = above(wanted - limit, rounding)
        given, falls = wanted - over, rises * (1 - passed)
        return (place + given,), (-given,), (1 - falls,), (falls,)


class Regulator(Law):
    """The lower of its voltage and its input less the dropout; its input current is the output's.

    Ports: input to zero, output to zero.
    """

    def __init__(self, part: CircuitPart):
        super().__init__(part)
        self.ports = ((part.nodes[0], ZERO), (part.nodes[1], ZERO))

    def curve(self, places, rounding: float) -> Curve:
        entry, place = places
        target, follows = self._target(entry, rounding)
        own, takes = self._own(entry, rounding)
        given, falls = above(target - place, rounding)
        rises = falls * follows
        return (
            (entry, place + given),
            (given + own, -given),
            (1.0, 0.0, rises, 1 - falls),
            (rises + takes, -falls, -rises, falls),
        )

    def _target(self, volts: float, rounding: float) -> tuple[float, float]:
        """The volts that it gives at an input, and their slope."""
        room, rises = above(volts - self.part.more["dropout"], rounding)
        over, passed = above(room - self.part.value, rounding)
        return room - over, rises * (1 - passed)

    def _own(self, volts: float, rounding: float) -> tuple[float, float]:
        """The current that it takes itself at an input, and its slope."""
        own = self.part.more["own"] / WHOLE
        if not own:
            return 0.0, 0.0
        some, rises = above(volts, rounding)
        over, passed = above(some - WHOLE, rounding)
        return own * (some - over), own * rises * (1 - passed)


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
