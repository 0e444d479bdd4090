"""A circuit in time, in equal steps: trapezoidal rule or backward Euler, with its error stated.

The error is told by a second run in steps twice as long, once it is asked for: what the two differ
by, at the shared instants, is shown as it is, although the shorter steps miss by less (of backward
Euler twice that).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from math import pi
from typing import TYPE_CHECKING, Any

from repairlib.circuits.checks import checked
from repairlib.circuits.network import Network, no_answer
from repairlib.circuits.parts import ZERO, CircuitPart
from repairlib.circuits.ports import ACROSS
from repairlib.core.errors import RepairlibError

if TYPE_CHECKING:
    import numpy as np

TRAPEZOIDAL, BACKWARD_EULER = "trapezoidal", "backward Euler"
METHODS = (TRAPEZOIDAL, BACKWARD_EULER)
MOST_STEPS = 1_000_000
_INSTANT = 1e-6  # of a step: what passes before the first row is taken


@dataclass(frozen=True)
class Waveforms:
    """Voltages over time: `seconds`, and `volts` by point."""

    seconds: np.ndarray
    volts: dict[str, np.ndarray]
    _told: Callable[[Waveforms], float] = field(repr=False)

    @cached_property
    def error(self) -> float:
        """The largest error at any point [V], by a run in steps of twice the length."""
        return self._told(self)


class Stepper:
    """A circuit that goes on in steps of `step` seconds from where it stands.

    `charged` gives the volts of capacitors at the start and the amps of inductors, 0 without.
    `after` is another of the same parts, in other steps, that has come to where this begins.
    """

    _across: Any
    _amps: Any

    def __init__(
        self,
        parts: tuple[CircuitPart, ...],
        step: float,
        method: str = TRAPEZOIDAL,
        charged: dict[str, float] | None = None,
        after: Stepper | None = None,
    ):
        import numpy as np

        self.parts, self.step = parts, step
        self.rule = _Rule(parts, step, method)
        self._first = _Rule(parts, step, BACKWARD_EULER)
        driven = self.rule.network.driven
        self._peaks = np.array([part.peak for part in driven])
        self._omegas = np.array([2 * pi * part.more.get("mains", 0.0) for part in driven])
        if after is not None:
            self._first.network.ports.go_on_from(after.rule.network.ports)
        kept = {name.casefold(): figure for name, figure in (charged or {}).items()}
        reactive = self.rule.reactive
        self._holds_volts = np.array([part.letter == "C" for part in reactive], bool)
        self._inside = np.array([part.more.get("esr", 0.0) for part in reactive])
        self.begin(np.array([float(kept.get(part.name.casefold(), 0.0)) for part in reactive]))

    def start(self):
        """The voltages at every point before the first step."""
        import numpy as np

        rule = _Rule(self.parts, self.step * _INSTANT, BACKWARD_EULER)
        at_start = np.zeros(1)
        rows, _, _ = rule.run(at_start, self._sources(at_start), self._across, self._amps)
        return rows

    def advance(self, steps: int):
        """The voltages at every point after each of so many more steps, one row for each.

        The first step is one of backward Euler: the trapezoidal rule would ring after a jump.
        """
        import numpy as np

        times = self.step * np.arange(self.taken + 1, self.taken + steps + 1)
        begins = self.taken == 0
        self.taken += steps
        if not begins:
            return self._run(self.rule, times)
        first = self._run(self._first, times[:1])
        self.rule.network.ports.go_on_from(self._first.network.ports)
        return np.vstack([first, self._run(self.rule, times[1:])])

    def _run(self, rule: _Rule, times):
        rows, self._across, self._amps = rule.run(
            times, self._sources(times), self._across, self._amps
        )
        return rows

    def _sources(self, times):
        """What each source gives at those times, one row for each."""
        import numpy as np

        angles = np.outer(times, self._omegas)
        return self._peaks * np.where(self._omegas == 0, 1.0, np.sin(angles))

    def amps(self) -> dict[str, Any]:
        """The current [A] through each part from its first point, in each step of the last cycle.

        That is of the last call of `advance` that began at time 0.
        """
        import numpy as np

        first, rest = self._first.amps(), self.rule.amps()
        return {name: np.concatenate([first[name], rest[name]]) for name in rest}

    def point(self, name: str) -> int:
        """The column of a point. Raises RepairlibError naming those that there are."""
        points = self.rule.network.points
        if name.casefold() not in points:
            raise RepairlibError(name, "no such point here", ", ".join(points))
        return points.index(name.casefold())

    def held(self):
        """What is held now: the volts of capacitors without their ESR, the amps of inductors."""
        return self._held_of(self._across, self._amps)

    def begin(self, held) -> None:
        """Go back to time 0, with that held."""
        import numpy as np

        self.taken = 0
        self._across = np.where(self._holds_volts, held, 0.0)
        self._amps = np.where(self._holds_volts, 0.0, held)

    def carried(self):
        """How what is held now goes with what was held at time 0, after one call of `advance`."""
        import numpy as np

        across, amps = np.diag(self._holds_volts * 1.0), np.diag(~self._holds_volts * 1.0)
        for rule in (self._first, self.rule):
            across, amps = rule.carried(across, amps)
        return self._held_of(across.T, amps.T).T

    def nudged(self, more):
        """The voltages of the last call of `advance`, had it begun with so much more held.

        For so little that every law follows its slope; after `carried`, which has the slopes.
        """
        import numpy as np

        across = np.where(self._holds_volts, more, 0.0)
        amps = np.where(self._holds_volts, 0.0, more)
        found = []
        for rule in (self._first, self.rule):
            rows, across, amps = rule.nudged(across, amps)
            found.append(rows)
        self._across, self._amps = self._across + across, self._amps + amps
        return np.vstack(found)

    def _held_of(self, across, amps):
        import numpy as np

        return np.where(self._holds_volts, across - self._inside * amps, amps)

    def kept(self) -> dict[str, float]:
        """What is held now, to start another with."""
        return self.named(self.held())

    def named(self, row) -> dict[str, float]:
        """A row with a figure for each capacitor and inductor, as `held` has it, by their names."""
        names = [part.name for part in self.rule.reactive]
        return dict(zip(names, row.tolist(), strict=True))


class _Rule:
    """One rule of integration for one step: each reactive part as conductance and push.

    Its current is conductance · v - push, and the next push is of_volts · v + of_amps · i.
    """

    def __init__(self, parts: tuple[CircuitPart, ...], step: float, method: str):
        import numpy as np

        self.reactive = [part for part in parts if part.letter in "CL"]
        half = 2.0 if method == TRAPEZOIDAL else 1.0
        rows = []
        for part in self.reactive:
            if part.letter == "C":
                inside, gained = part.more["esr"], step / (half * part.value)
                conductance = 1 / (inside + gained)
                of_amps = (gained if half == 2 else 0.0) - inside
                rows.append((conductance, conductance, conductance * of_amps))
            else:
                inside, new = part.more["winding"], _weight(part, step) if half == 2 else 1.0
                conductance = 1 / (inside + part.value / (new * step))
                of_volts, of_amps = 1 / new - 1, part.value / (new * step) - inside * (1 / new - 1)
                rows.append((conductance, -conductance * of_volts, -conductance * of_amps))
        self._conductance, self._of_volts, self._of_amps = np.array(rows).reshape(-1, 3).T
        names = tuple(part.name for part in self.reactive)
        self.network = Network(parts, dict(zip(names, self._conductance, strict=True)), names)
        self._slopes: list = []
        self._last: tuple = ()
        self._grown: tuple = ()
        self._lay_out()

    def _lay_out(self):
        """What is the same in each step, worked out once.

        `given` are the sources, `known` the pushes and then the currents of the ports.
        """
        import numpy as np

        network, driven = self.network, len(self.network.driven)
        self._ends = np.array([network.ends_of(part) for part in self.reactive])
        self._ends = self._ends.reshape(-1, len(network.from_sources))
        self._by_given = network.from_sources[:, :driven]
        self._by_known = np.hstack([network.from_sources[:, driven:], network.from_ports])
        self._open_by_given = network.port_sources[:, :driven]
        self._open_by_pushes = network.port_sources[:, driven:]
        self._across_by_known = self._ends @ self._by_known
        grown = (self._of_volts + self._of_amps * self._conductance)[:, None] * self._ends
        self._next_by_given = grown @ self._by_given
        self._next_by_known = grown @ self._by_known
        self._next_by_known[:, : len(self.reactive)] -= np.diag(self._of_amps)

    def run(self, times, given, across, amps):
        """The voltages at every point at those times, then those and the currents of the parts.

        `given` are the sources at those times, `across` and `amps` of the reactive parts before.
        """
        import numpy as np

        if not len(times):
            return np.zeros((0, len(self._by_given))), across, amps
        many = len(self.reactive)
        known = np.zeros((len(times), self._by_known.shape[1]))
        opened, fed = given @ self._open_by_given.T, given @ self._next_by_given.T
        pushes = self._of_volts * across + self._of_amps * amps
        self._slopes = []
        for at, row in enumerate(known):
            row[:many] = pushes
            pushed = self.network.ports.currents(opened[at] + self._open_by_pushes @ pushes)
            if pushed is None:
                raise no_answer(self.network.parts, f"at {times[at]:.4g} s")
            row[many:] = pushed
            self._slopes.append(self.network.ports.slopes)
            pushes = fed[at] + self._next_by_known @ row
        return self._told(given, known)

    def _told(self, given, known):
        """The voltages of each step, then those and the currents of the parts after the last."""
        rows = given @ self._by_given.T + known @ self._by_known.T
        across = self._ends @ rows[-1]
        self._last = rows, given, known
        return rows, across, self._conductance * across - known[-1, : len(self.reactive)]

    def amps(self) -> dict[str, Any]:
        """The current through each part in each step of the last run, from its first point."""
        rows, given, known = self._last
        many = len(self.reactive)
        through = rows @ self._ends.T * self._conductance - known[:, :many]
        reactive = {part.name: through[:, at] for at, part in enumerate(self.reactive)}
        at_ports = known[:, many:] + ACROSS * self.network.port_volts(rows)
        return self.network.amps_of(rows, given, at_ports, reactive)

    def carried(self, across, amps):
        """How volts and amps of the parts after the last run go with what those before go with.

        `across` and `amps` have a column for each thing that they go with.
        """
        import numpy as np

        many = len(self.reactive)
        pushes = self._of_volts[:, None] * across + self._of_amps[:, None] * amps
        known = np.zeros((len(self._slopes), self._by_known.shape[1], many))
        known[:, :many] = np.eye(many)
        if self.network.laws:
            _, of_pushed, by_open = map(np.array, zip(*self._slopes, strict=True))
            known[:, many:] = of_pushed @ by_open @ self._open_by_pushes
        self._grown = known, self._next_by_known @ known[:-1]
        last = known[-1] @ _product(self._grown[1], many) @ pushes
        across = self._across_by_known @ last
        return across, self._conductance[:, None] * across - last[:many]

    def nudged(self, across, amps):
        """The last run, had volts and amps of the parts before it been so much more.

        Its voltages, then by how much volts and amps of the parts after it are more.
        """
        import numpy as np

        known, next_by_pushes = self._grown
        pushes = [self._of_volts * across + self._of_amps * amps]
        for grows in next_by_pushes:
            pushes.append(grows @ pushes[-1])
        more = (known @ np.array(pushes)[:, :, None])[:, :, 0]
        _, given, before = self._last
        across = self._across_by_known @ more[-1]
        rows, *_ = self._told(given, before + more)
        return rows, across, self._conductance * across - more[-1, : len(self.reactive)]


def _weight(choke: CircuitPart, step: float) -> float:
    """How much the end of a step weighs in a choke's voltage, its begin the rest: ½ to 1.

    With ½ for both, the trapezoidal rule, the voltage of a choke would swing on for ever between
    one step and the next after each corner of its current. What this adds is, at ω, (ω step)² of
    the drop at the winding.

    >>> choke = CircuitPart("L1", ("a", "b"), 22e-6, {"winding": 0.2})
    >>> round(_weight(choke, 1e-6), 3), _weight(choke, 1e-4)
    (0.509, 1.0)
    """
    return min(0.5 + step * choke.more["winding"] / choke.value, 1.0)


def _product(matrices, size: int):
    """All of them, the first on the right."""
    import numpy as np

    while len(matrices) > 1:
        odd = matrices[-1:] if len(matrices) % 2 else matrices[:0]
        matrices = np.concatenate([matrices[1::2] @ matrices[: len(matrices) - 1 : 2], odd])
    return matrices[0] if len(matrices) else np.eye(size)


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
    is a comparison with steps of twice the length, made when it is asked for. Source: nodal
    analysis, trapezoidal rule.

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

    def volts_in(every: int) -> dict[str, np.ndarray]:
        stepper = Stepper(checked(parts), step * every, method, charged)
        rows = np.vstack([stepper.start(), stepper.advance(steps // every)])
        return {point: rows[:, stepper.point(point)] for point in stepper.rule.network.points}

    def error_of(run: Waveforms) -> float:
        coarse = volts_in(2)
        apart = max(float(np.abs(run.volts[at][2::2] - coarse[at][1:]).max()) for at in coarse)
        return 2 * apart if method == BACKWARD_EULER else apart

    volts = {ZERO: np.zeros(steps + 1), **volts_in(1)}
    return Waveforms(step * np.arange(steps + 1), volts, error_of)
