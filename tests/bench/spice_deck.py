"""A circuit of the practice board as ngspice has it: written here part by part, solved there.

Each kind is typed as ngspice knows it: its own diode, a load as a current that fades below 0.1 V, a
regulator as a source of 1 mΩ that takes nothing back, an adapter as one of 10 µΩ: none here reaches
its limit. Two things are there for ngspice alone, without which its steps become too small: the
regulator takes hold in a bend of 0.1 mV instead of a corner, and a choke is damped by a small
capacitor with 10 Ω. cshunt puts 10 fF from each point to zero; a picofarad would already move the
ends of a transformer, which float while no diode conducts.
"""

from __future__ import annotations

import re
from math import sqrt
from typing import NamedTuple

from tests.circuits import ngspice

STIFF = 1000.0  # S of what gives its voltage
BEND = 1e-4  # V, in which a regulator takes hold
OPTIONS = ".options reltol=1e-4 abstol=1e-9 vntol=1e-6 method=gear cshunt=1e-14"


class Wave(NamedTuple):
    """What a point has over two cycles, in V."""

    mean: float
    low: float
    high: float

    @property
    def ripple(self):
        return self.high - self.low


class Meter(NamedTuple):
    """A resistance that lies between two points from one instant to another, in s."""

    one: str
    other: str
    ohm: float
    begin: float
    end: float


class Told(NamedTuple):
    """What ngspice told: waves by point, volts that the capacitors hold, readings of the meters."""

    waves: dict[str, Wave]
    held: dict[str, float]
    readings: list[float]


class Deck:
    """The lines of a circuit; `node` gives a point's name there. `held` are volts at the start.

    `damping` is the small capacitor at a choke, in F for each H.
    """

    def __init__(self, parts, held=None, damping=1e-2):
        self.damping = damping
        self._nodes, self.lines, self.held = {"0": "0"}, [OPTIONS], held or {}
        self._holding = {}
        for at, part in enumerate(parts):
            one, other = map(self.node, part.nodes)
            self.lines += getattr(self, f"_{part.letter.casefold()}")(at, part, one, other)

    def node(self, point):
        return self._nodes.setdefault(point, f"n{len(self._nodes)}")

    def _r(self, at, part, one, other):
        return [f"R{at} {one} {other} {part.value!r}"]

    def _c(self, at, part, one, other):
        volts, esr = self.held.get(part.name, 0.0), part.more["esr"]
        inside = f"c{at}" if esr else other
        self._holding[part.name] = (one, inside)
        series = [f"RC{at} c{at} {other} {esr!r}"] if esr else []
        return [f"C{at} {one} {inside} {part.value!r} ic={volts!r}", *series]

    def _l(self, at, part, one, other):
        winding, small = part.more["winding"] or 1e-6, part.value * self.damping
        damped = [f"CX{at} {other} x{at} {small!r} ic=0", f"RX{at} x{at} 0 10"]
        return [f"L{at} {one} l{at} {part.value!r}", f"RL{at} l{at} {other} {winding!r}", *damped]

    def _v(self, at, part, one, other):
        hertz, series = part.more["mains"], part.more["series"]
        gives = repr(part.value)
        if hertz:
            gives = f"SIN(0 {part.value * sqrt(2)!r} {hertz!r})"
        if not series:
            return [f"V{at} {one} {other} {gives}"]
        return [f"V{at} v{at} {other} {gives}", f"RV{at} {one} v{at} {series!r}"]

    def _d(self, at, part, one, other):
        model = f".model m{at} D(Is={part.value!r} N={part.more['n']!r})"
        return [f"D{at} {one} {other} m{at}", f"RD{at} {one} {other} 1e9", model]

    def _i(self, at, part, one, other):
        assert part.load
        return [f"B{at} {one} {other} I={part.value!r}*tanh(V({one},{other})/0.1)"]

    def _p(self, at, part, one, other):
        return [f"V{at} v{at} {other} {part.value!r}", f"RV{at} v{at} {one} 1e-5"]

    def _u(self, at, part, one, other):
        target = f"max(min({part.value!r},V({one})-{part.more['dropout']!r}),0)"
        lacks = f"V(u{at})"  # what the output lacks to its target
        bent = f"min(max({lacks},0),{BEND})"
        given = f"({bent}*{bent}/{2 * BEND}+max({lacks}-{BEND},0))*{STIFF}"
        own = f"{part.more['own']!r}*min(max(V({one}),0),1)"
        return [
            f"BU{at} u{at} 0 V={target}-V({other})",
            f"B{at} 0 {other} I={given}",
            f"BI{at} {one} 0 I={given}+{own}",
        ]

    def in_time(self, folder, hertz, seconds, step, meters=()):
        """What there is over the two cycles before `seconds`, and then what the meters read.

        The meters lie there later, one after the other; each reads the mean over the last two
        cycles of its time.
        """
        begin, end = seconds - 2 / hertz, max([seconds + step, *(meter.end for meter in meters)])
        nodes = [node for node in self._nodes.values() if node != "0"]
        lines = [line for at, meter in enumerate(meters) for line in self._meter(at, meter)]
        lines.append(f".tran {step} {end} {begin} {step} uic")
        for node in nodes:
            span = f"v({node}) from={begin} to={seconds}"
            lines += [f".meas tran {node}{what} {what} {span}" for what in ("avg", "min", "max")]
        for node in {node for ends in self._holding.values() for node in ends} - {"0"}:
            lines.append(f".meas tran {node}last find v({node}) at={seconds}")
        for at, meter in enumerate(meters):
            span = f"from={meter.end - 2 / hertz} to={meter.end}"
            lines.append(f".meas tran meter{at} avg v(meter{at}) {span}")
        said = ngspice.run(folder, "\n".join((*self.lines, *lines)))
        found = re.findall(r"^((?:n|c|meter)[0-9]+[a-z]*) *= *([-+.0-9e]+)", said, re.M)
        assert found, f"ngspice gave up: {said[-300:]}"
        printed = {name: float(figure) for name, figure in found} | {"0last": 0.0}
        waves = {
            point: Wave(*(printed[f"{node}{what}"] for what in ("avg", "min", "max")))
            for point, node in self._nodes.items()
            if node != "0"
        }
        held = {
            name: printed[f"{one}last"] - printed[f"{inside}last"]
            for name, (one, inside) in self._holding.items()
        }
        return Told(waves, held, [printed[f"meter{at}"] for at in range(len(meters))])

    def _meter(self, at, meter):
        """Its resistance while it is there, and a node that has what lies across it."""
        one, other = self.node(meter.one), self.node(meter.other)
        there = f"(u(time-{meter.begin})-u(time-{meter.end}))"
        return [
            f"BM{at} {one} {other} I=V({one},{other})/{meter.ohm}*{there}",
            f"BR{at} meter{at} 0 V=V({one},{other})",
        ]
