"""What an instrument sees while it charges the capacitors between its probes, step by step.

Backward Euler: over a step a capacitor is the volts it held, in series with ESR + step / C, so each
step is an operating point of its own. A few steps, each longer, leave the slowest motion over; from
how much the last one took off it follows how long the rest takes. Source: nodal analysis.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, inf, log
from typing import NamedTuple

from repairlib.circuits import CircuitPart, operating_point

INSTANT = 1e-6  # s, in which the first figure is there
STEPS = (0.02, 0.2, 2.0)  # s
PATIENCE = 60.0  # s, how long somebody holds the probes on; a choice of this workbook


class Course(NamedTuple):
    """How the volts go from `start` to `last`: by e in each `time` [s], from `left` off at `at`.

    `left` is what was still missing after `at` seconds.
    """

    start: float
    last: float
    at: float
    left: float
    time: float

    def until(self, off: float) -> float:
        """The seconds until no more than `off` volts are missing."""
        if abs(self.left) <= off:
            return self.at
        return self.at + self.time * log(abs(self.left) / off) if off > 0 else inf

    def after(self, seconds: float) -> float:
        """The volts after so many seconds, once the steps are over."""
        if not self.time:
            return self.last
        return self.last - self.left * exp(-max(seconds - self.at, 0.0) / self.time)


@dataclass
class Charging:
    """Capacitors between two probes while a source is on them; `held` in V by part, `seconds`.

    `source` is what the instrument puts from the first probe to the second.
    """

    parts: tuple[CircuitPart, ...]
    probes: tuple[str, str]
    held: dict[str, float]
    seconds: float = 0.0

    def across(self, volts: dict[str, float]) -> float:
        """The volts from the first probe to the second."""
        return volts[self.probes[0]] - volts[self.probes[1]]

    def course(self, source: CircuitPart, near: float) -> Course:
        """How the volts between the probes go with that source; `near` is near enough, in V."""
        last = self.at_last(source)
        start = now = self.go_on(source, INSTANT)
        left, time = last - start, 0.0
        for step in STEPS:
            if abs(left) <= near:
                break
            now = self.go_on(source, step)
            before, left = left, last - now
            time = step / (before / left - 1) if left and before / left > 1 else inf
        return Course(start, last, self.seconds, left, time)

    def at_last(self, source: CircuitPart) -> float:
        """The volts between the probes once all has come to rest."""
        return self.across(operating_point((*self.parts, source)).volts)

    def go_on(self, source: CircuitPart, step: float) -> float:
        """The volts between the probes a step of so many seconds later."""
        parts = (*self.parts, source)
        point = operating_point(tuple(map(self._as_source(step), parts)))
        for part in parts:
            if part.letter == "C":
                gained = point.amps[_behind(part)] * step / part.value
                self.held[part.name] = self.held.get(part.name, 0.0) + gained
        self.seconds += step
        return self.across(point.volts)

    def _as_source(self, step: float):
        def made(part: CircuitPart) -> CircuitPart:
            if part.letter != "C":
                return part
            series = part.more["esr"] + step / part.value
            more = {"mains": 0.0, "series": series}
            return CircuitPart(_behind(part), part.nodes, self.held.get(part.name, 0.0), more)

        return made


def _behind(part: CircuitPart) -> str:
    return f"V of {part.name}"
