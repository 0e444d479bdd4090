"""What an instrument sees while it charges the capacitors between its probes, step by step.

Backward Euler with steps that grow: over a step a capacitor is the volts it held, in series with
ESR + step / C. So each step is an operating point of its own. Source: nodal analysis.
"""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.circuits import CircuitPart, operating_point

FIRST, GROWTH, LONGEST = 0.01, 2.0, 4.0  # the first step [s], growth, the longest [s]
PATIENCE = 60.0  # s, how long somebody holds the probes on; a choice of this workbook


def longer(step: float) -> float:
    """The step after that one."""
    return min(step * GROWTH, LONGEST)


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

    def at_last(self, source: CircuitPart) -> tuple[float, float]:
        """Volts between the probes and amps through the source once all has come to rest."""
        point = operating_point((*self.parts, source))
        return self.across(point.volts), -point.amps[source.name]

    def go_on(self, source: CircuitPart, step: float) -> tuple[float, float]:
        """Volts and amps a step of so many seconds later."""
        parts = (*self.parts, source)
        point = operating_point(tuple(map(self._as_source(step), parts)))
        for part in parts:
            if part.letter == "C":
                gained = point.amps[_behind(part)] * step / part.value
                self.held[part.name] = self.held.get(part.name, 0.0) + gained
        self.seconds += step
        return self.across(point.volts), -point.amps[source.name]

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
