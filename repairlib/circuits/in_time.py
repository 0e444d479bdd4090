"""A circuit in time, in equal steps: trapezoidal rule or backward Euler, with its error stated.

The error is told by a second run in steps twice as long: what the two differ by, at the shared
instants, is shown as it is, although the shorter steps miss by less (of backward Euler twice that).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi
from typing import TYPE_CHECKING

from repairlib.circuits.checks import checked
from repairlib.circuits.network import Network, no_answer
from repairlib.circuits.parts import ZERO, CircuitPart
from repairlib.core.errors import RepairlibError

if TYPE_CHECKING:
    import numpy as np

TRAPEZOIDAL, BACKWARD_EULER = "trapezoidal", "backward Euler"
METHODS = (TRAPEZOIDAL, BACKWARD_EULER)
MOST_STEPS = 1_000_000
_INSTANT = 1e-6  # of a step: what passes before the first row is taken


@dataclass(frozen=True)
class Waveforms:
    """Voltages over time: `seconds`, `volts` by point; `error` [V] is the largest at any point."""

    seconds: np.ndarray
    volts: dict[str, np.ndarray]
    error: float


class Stepper:
    """A circuit that goes on in steps of `step` seconds from where it stands.

    `charged` gives the volts of capacitors at the start and the amps of inductors, 0 without.
    """

    def __init__(
        self,
        parts: tuple[CircuitPart, ...],
        step: float,
        method: str = TRAPEZOIDAL,
        charged: dict[str, float] | None = None,
    ):
        import numpy as np

        self.parts, self.step, self.taken = parts, step, 0
        self.reactive = [part for part in parts if part.letter in "CL"]
        self.first = _Rule(parts, self.reactive, step, BACKWARD_EULER)
        self.rule = _Rule(parts, self.reactive, step, method)
        kept = {name.casefold(): figure for name, figure in (charged or {}).items()}
        self._kept = np.array([float(kept.get(one.name.casefold(), 0.0)) for one in self.reactive])
        self._pushes = self.first.pushes_of(self._kept)
        driven = self.rule.network.driven
        self._peaks = np.array([part.peak for part in driven])
        self._omegas = np.array([2 * pi * part.more.get("mains", 0.0) for part in driven])

    def sources(self, seconds):
        """What each source gives at those times, one row for each."""
        import numpy as np

        angles = np.outer(seconds, self._omegas)
        return self._peaks * np.where(self._omegas == 0, 1.0, np.sin(angles))

    def start(self):
        """The voltages at every point before the first step."""
        import numpy as np

        rule = _Rule(self.parts, self.reactive, self.step * _INSTANT, BACKWARD_EULER)
        right = np.concatenate([self.sources([0.0])[0], rule.pushes_of(self._kept)])
        pushed = rule.currents_of_ports(right, "at the start")
        return rule.network.from_sources @ right + rule.network.from_ports @ pushed

    def advance(self, steps: int):
        """The voltages at every point after each of so many more steps, one row for each."""
        import numpy as np

        rows = []
        if steps and self.taken == 0:
            rows.append(self._run(self.first, 1))
        rows.append(self._run(self.rule, steps - len(rows)))
        return np.vstack(rows)

    def _run(self, rule: _Rule, steps: int):
        """The same by one rule; the next step will be by `self.rule`."""
        import numpy as np

        times = self.step * np.arange(self.taken + 1, self.taken + steps + 1)
        rights = np.hstack([self.sources(times), np.zeros((steps, len(self.reactive)))])
        network, many = rule.network, len(self._peaks)
        pushed = np.zeros((steps, len(network.ports)))
        for at, right in enumerate(rights):
            right[many:] = self._pushes
            pushed[at] = rule.currents_of_ports(right, f"at {times[at]:.4g} s")
            self._across = rule.sources_across @ right + rule.ports_across @ pushed[at]
            self._amps = rule.conductance * self._across - self._pushes
            self._pushes = self.rule.of_volts * self._across + self.rule.of_amps * self._amps
        self.taken += steps
        return rights @ network.from_sources.T + pushed @ network.from_ports.T

    def point(self, name: str) -> int:
        """The column of a point. Raises RepairlibError naming those that there are."""
        points = self.rule.network.points
        if name.casefold() not in points:
            raise RepairlibError(name, "no such point here", ", ".join(points))
        return points.index(name.casefold())

    def kept(self) -> dict[str, float]:
        """What capacitors and inductors hold now, to start another with."""
        amps = self._amps.tolist()
        volts = self._across.tolist()
        return {
            part.name: v - part.more["esr"] * i if part.letter == "C" else i
            for part, v, i in zip(self.reactive, volts, amps, strict=True)
        }


class _Rule:
    """One rule of integration for one step: each reactive part as conductance and push.

    Its current is conductance · v - push, and the next push is of_volts · v + of_amps · i.
    """

    def __init__(self, parts, reactive: list[CircuitPart], step: float, method: str):
        import numpy as np

        half = 2.0 if method == TRAPEZOIDAL else 1.0
        rows = []
        for part in reactive:
            if part.letter == "C":
                inside, gained = part.more["esr"], step / (half * part.value)
                conductance = 1 / (inside + gained)
                of_amps = (gained if half == 2 else 0.0) - inside
                rows.append((conductance, conductance, conductance * of_amps, conductance))
            else:
                inside, gained = part.more["winding"], half * part.value / step
                conductance = 1 / (inside + gained)
                of_amps = gained - (inside if half == 2 else 0.0)
                of_volts = -conductance if half == 2 else 0.0
                rows.append((conductance, of_volts, -conductance * of_amps, -conductance * gained))
        table = np.array(rows).reshape(-1, 4)
        self.conductance, self.of_volts, self.of_amps, self._of_kept = table.T
        names = tuple(part.name for part in reactive)
        self.network = Network(parts, dict(zip(names, self.conductance, strict=True)), names)
        across = np.zeros((len(reactive), len(self.network.from_sources)))
        for row, part in enumerate(reactive):
            across[row] = self.network.ends_of(part)
        self.sources_across = across @ self.network.from_sources
        self.ports_across = across @ self.network.from_ports

    def pushes_of(self, kept):
        """The pushes of capacitors of these volts and inductors of these amps."""
        return self._of_kept * kept

    def currents_of_ports(self, right, where: str):
        """The currents into the ports for the sources and pushes `right`."""
        found = self.network.port_currents(self.network.port_sources @ right)
        if found is None:
            raise no_answer(self.network.parts, where)
        return found


def transient(
    parts: tuple[CircuitPart, ...],
    seconds: float,
    step: float,
    method: str = TRAPEZOIDAL,
    charged: dict[str, float] | None = None,
) -> Waveforms:
    """The voltages of a circuit from 0 to `seconds` in equal steps of `step` seconds.

    `charged` gives capacitors their volts and inductors their amps at the start. A sine begins at
    0. Raises RepairlibError for what is no circuit, and for more than a million steps. The error
    is a comparison with steps of twice the length. Source: nodal analysis, trapezoidal rule.

    >>> from repairlib.circuits.parts import read_circuit
    >>> rows = "part,from,to,value / R1,a,0,1k / C1,a,0,100u"
    >>> run = transient(read_circuit(rows), 0.1, 1e-3, charged={"C1": 10.0})
    >>> round(float(run.volts["a"][-1]), 2), run.error < 0.01
    (3.68, True)
    """
    import numpy as np

    if method not in METHODS:
        raise RepairlibError(method, "not a known method", ", ".join(METHODS))
    if not 0 < step < seconds or not seconds / step <= MOST_STEPS:
        wrong = "out of range: at most a million steps, at least two"
        raise RepairlibError(f"{seconds} s in steps of {step} s", wrong, "such as 0.1 s and 50 µs")
    steps = 2 * round(seconds / step / 2) or 2
    runs = []
    for every in (1, 2):
        stepper = Stepper(checked(parts), step * every, method, charged)
        runs.append(np.vstack([stepper.start(), stepper.advance(steps // every)]))
    points = stepper.rule.network.points
    fine, coarse = runs
    error = float(np.abs(fine[2::2, : len(points)] - coarse[1:, : len(points)]).max())
    if method == BACKWARD_EULER:
        error *= 2
    volts = {point: fine[:, at] for at, point in enumerate(points)}
    times = step * np.arange(steps + 1)
    return Waveforms(times, {ZERO: np.zeros(steps + 1), **volts}, error)
