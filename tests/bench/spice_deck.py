"""A circuit of the practice board as ngspice has it: written here part by part, solved there.

Each kind is typed as ngspice knows it: its own diode, a load as a current that fades below 0.1 V, a
regulator as a source of 1 mΩ that takes nothing back, an adapter as one of 1 mΩ: none here reaches
its limit.
"""

from __future__ import annotations

import re
from math import sqrt
from typing import NamedTuple

from tests.circuits import ngspice

STIFF = 1000.0  # S of what gives its voltage
OPTIONS = ".options reltol=1e-4 abstol=1e-9 vntol=1e-6 method=gear"


class Wave(NamedTuple):
    """What a point has over two cycles, in V."""

    mean: float
    low: float
    high: float
    last: float

    @property
    def ripple(self):
        return self.high - self.low


class Deck:
    """The lines of a circuit; `node` gives a point's name there. `held` are volts at the start."""

    def __init__(self, parts, held=None, damping=1e-2):
        self.damping = damping
        self._nodes, self.lines, self.held = {"0": "0"}, [OPTIONS], held or {}
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
        series = [f"RC{at} c{at} {other} {esr!r}"] if esr else []
        return [f"C{at} {one} {inside} {part.value!r} ic={volts!r}", *series]

    def _l(self, at, part, one, other):
        winding = part.more["winding"] or 1e-6
        small = part.value * self.damping  # F for each H: without such a capacitor ngspice gives up
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
        return [f"V{at} v{at} {other} {part.value!r}", f"RV{at} v{at} {one} {1 / STIFF}"]

    def _u(self, at, part, one, other):
        target = f"max(min({part.value!r},V({one})-{part.more['dropout']!r}),0)"
        given = f"max(({target}-V({other}))*{STIFF},0)"
        own = f"{part.more['own']!r}*min(max(V({one}),0),1)"
        return [f"B{at} 0 {other} I={given}", f"BI{at} {one} 0 I={given}+{own}"]

    def in_time(self, folder, hertz, seconds, step):
        """Of each point mean, lowest and highest over the last two cycles, and its last volts."""
        begin = seconds - 2 / hertz
        ways = {
            "mean": f"avg {{}} from={begin} to={seconds}",
            "low": f"min {{}} from={begin} to={seconds}",
            "high": f"max {{}} from={begin} to={seconds}",
            "last": f"find {{}} at={seconds - step / 2}",
        }
        measures = [
            f".meas tran {node}{what} {way.format(f'v({node})')}"
            for node in self._nodes.values()
            if node != "0"
            for what, way in ways.items()
        ]
        run = f".tran {step} {seconds} {begin} {step} uic"
        said = ngspice.run(folder, "\n".join((*self.lines, run, *measures)))
        printed = dict(re.findall(r"^(n[0-9]+[a-z]+) *= *([-+.0-9e]+)", said, re.M))
        return {
            point: Wave(*(0.0 if node == "0" else float(printed[node + what]) for what in ways))
            for point, node in self._nodes.items()
        }
