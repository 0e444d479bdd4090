"""Steps in time through a mesh of cells that pass heat to their neighbours.

The mesh is a grid of rows and columns; heat balance of each cell is kept exactly, melting
included. The scheme is TR-BDF2: implicit, of second order, with no ringing after a sudden change.
Each step solves a block tridiagonal system row by row. It knows nothing of materials or joints.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from repairlib.errors import RepairlibError

# TR-BDF2 as a Runge-Kutta scheme: two implicit stages with the same coefficient.
_GAMMA = 2 - 2**0.5  # where in the step the first stage lies
_SAME = _GAMMA / 2  # coefficient of the unknown in both stages
_PAST = 2**0.5 / 4  # weight of the start and of the first stage
_ERROR = ((4 * _PAST - 1) / 3, -1 / 3, 2 * _SAME / 3)  # against the embedded third-order scheme
_HALVINGS = 26  # the smallest step is the whole time halved as often
_FIRST_GUESS = 9  # the first step tried is the whole time halved as often
_CORRECTIONS = 12  # tries to find which cells melt within a step


@dataclass(frozen=True)
class Outside:
    """A surrounding that trades heat with cells: `conductance` in W/K a cell, or fixed `watts`."""

    name: str
    conductance: object
    celsius: float = 0.0
    watts: object = 0.0


@dataclass(frozen=True)
class Mesh:
    """Cells in rows and columns. Arrays are numpy; cells that are void have capacity 0.

    capacity: J/K, rows × columns. along: W/K between neighbours in a row. across: W/K between a
    row and the next. latent: J to melt each cell between `solidus` and `liquidus` in °C, or None.
    """

    capacity: object
    along: object
    across: object
    outsides: Sequence[Outside] = ()
    latent: object = None
    solidus: float = 0.0
    liquidus: float = 0.0


class State(NamedTuple):
    """The mesh at one time: `seconds`, `celsius` and `stored` J of every cell, heat come `in`.

    `arrived` maps each outside to the J that came in from it since the start (out: negative).
    """

    seconds: float
    celsius: object
    stored: object
    arrived: dict[str, float]


@dataclass
class Counts:
    """What a run cost: steps taken, steps thrown away, factorisations."""

    steps: int = 0
    rejected: int = 0
    factored: int = 0
    solved: int = 0


@dataclass
class Stepper:
    """Marches a mesh through time. `tolerance` is the error allowed in each step, in K.

    With `step` in seconds the steps are all alike and no error is judged. `longest` is the
    longest step allowed.
    """

    mesh: Mesh
    tolerance: float = 0.05
    step: float | None = None
    longest: float | None = None
    counts: Counts = field(default_factory=Counts)

    def __post_init__(self):
        import numpy as np

        mesh = self.mesh
        capacity = np.asarray(mesh.capacity, dtype=float)
        self._void = capacity <= 0
        self._capacity = np.where(self._void, 1.0, capacity)
        self._loss = np.zeros_like(capacity)
        self._gain = np.zeros_like(capacity)
        for one in mesh.outsides:
            self._loss += one.conductance
            self._gain += np.asarray(one.conductance) * one.celsius + one.watts
        diagonal = self._loss.copy()
        diagonal[:, :-1] += mesh.along
        diagonal[:, 1:] += mesh.along
        diagonal[:-1] += mesh.across
        diagonal[1:] += mesh.across
        self._diagonal = diagonal
        self._factors: dict[float, _Factor] = {}
        self._melts = mesh.latent is not None and bool(np.any(np.asarray(mesh.latent) > 0))
        if self._melts:
            self._jump = np.asarray(mesh.latent, dtype=float)
            self._low = self._capacity * mesh.solidus  # J where melting begins
            self._high = self._capacity * mesh.liquidus + self._jump
            span = mesh.liquidus - mesh.solidus
            if span <= 0:
                raise RepairlibError(f"{span:g} K", "melting range is empty", "above 0 K")
            self._mushy = self._capacity + self._jump / span

    def begin(self, celsius) -> State:
        """The state at time 0 from temperatures: one number, or one for each cell."""
        import numpy as np

        celsius = np.broadcast_to(np.asarray(celsius, dtype=float), self._capacity.shape).copy()
        stored = self._capacity * celsius
        if self._melts:
            mesh = self.mesh
            share = (celsius - mesh.solidus) / (mesh.liquidus - mesh.solidus)
            stored += self._jump * np.clip(share, 0, 1)
        return State(0.0, celsius, stored, {one.name: 0.0 for one in self.mesh.outsides})

    def march(self, state: State, seconds: float) -> Iterator[State]:
        """States after each step, until `seconds` from now; the caller may stop earlier."""
        if not 0 < seconds < 1e9:
            raise RepairlibError(f"{seconds} s", "not a time to compute", "above 0 s")
        if self.step is not None:
            number = max(1, round(seconds / self.step))
            for _ in range(number):
                state, _ = self._one(state, seconds / number)
                yield state
            return
        yield from self._adaptive(state, seconds)

    def _adaptive(self, state: State, seconds: float) -> Iterator[State]:
        """Steps are the whole time halved a whole number of times, so factors are used again."""
        tick = seconds / 2**_HALVINGS
        start = state.seconds
        now, size, whole = 0, 2 ** (_HALVINGS - _FIRST_GUESS), 2**_HALVINGS
        largest = whole
        while self.longest and largest * tick > self.longest and largest > 1:
            largest //= 2
        size = min(size, largest)
        while now < whole:
            tried, error = self._one(state, size * tick)
            if error > self.tolerance and size > 1:
                size //= 2 if error < 20 * self.tolerance or size < 16 else 8
                self.counts.rejected += 1
                continue
            now += size
            state = tried._replace(seconds=start + now * tick)
            yield state
            while error < self.tolerance / 12 and size * 2 <= largest and now % (size * 2) == 0:
                size *= 2
                error *= 8

    def _one(self, state: State, h: float) -> tuple[State, float]:
        """One step of `h` seconds, and the estimate of its error in K."""
        import numpy as np

        factor = self._factor(_SAME * h)
        at_start = self._flow(state.celsius)
        base = state.stored + _PAST * h * at_start
        settled = True
        guess = state.stored
        middle, stored, ok = self._stage(factor, base + _SAME * h * self._gain, guess)
        settled &= ok
        in_middle = self._flow(middle)
        base += _PAST * h * in_middle
        end, stored, ok = self._stage(factor, base + _SAME * h * self._gain, stored)
        settled &= ok
        at_end = self._flow(end)
        mean = _PAST * (state.celsius + middle) + _SAME * end
        arrived = {
            one.name: state.arrived[one.name] + h * _heat_in(one, mean)
            for one in self.mesh.outsides
        }
        error = 0.0
        if self.step is None:
            wrong = h * (_ERROR[0] * at_start + _ERROR[1] * in_middle + _ERROR[2] * at_end)
            error = float(np.abs(factor.solve(wrong)).max()) if settled else float("inf")
            self.counts.solved += 1
        self.counts.steps += 1
        return State(state.seconds + h, self._celsius(stored), stored, arrived), error

    def _stage(self, factor: _Factor, known, stored):
        """Temperatures and stored heat that satisfy stored + a × loss × T = known.

        The stored heat, not the temperature, is carried from try to try: a cell that begins to
        melt is then caught between solidus and liquidus instead of jumping over them.
        """
        if not self._melts:
            celsius = factor.solve(known)
            self.counts.solved += 1
            return celsius, self._capacity * celsius, True
        for _ in range(_CORRECTIONS):
            slope = self._slope(stored)
            celsius = self._celsius(stored)
            self.counts.factored += factor.follow(slope)
            found = factor.solve(known - stored + slope * celsius)
            self.counts.solved += 1
            stored = stored + slope * (found - celsius)
            if (self._slope(stored) == slope).all():
                return found, stored, True
        return found, stored, False

    def _flow(self, celsius):
        """W into every cell."""
        flow = self._gain - self._diagonal * celsius
        along, across = self.mesh.along, self.mesh.across
        flow[:, :-1] += along * celsius[:, 1:]
        flow[:, 1:] += along * celsius[:, :-1]
        flow[:-1] += across * celsius[1:]
        flow[1:] += across * celsius[:-1]
        return flow

    def _slope(self, stored):
        """J/K of every cell at that stored heat: larger while it melts."""
        import numpy as np

        melting = (stored > self._low) & (stored < self._high) & (self._jump > 0)
        return np.where(melting, self._mushy, self._capacity)

    def _celsius(self, stored):
        import numpy as np

        if not self._melts:
            return stored / self._capacity
        melted = np.clip(stored - self._low, 0, self._high - self._low)
        share = melted / (self._high - self._low)
        return (stored - self._jump * share) / self._capacity

    def _factor(self, a: float) -> _Factor:
        if a not in self._factors:
            mesh = self.mesh
            self._factors[a] = _Factor(a, self._diagonal, mesh.along, mesh.across, self._capacity)
            self.counts.factored += 1
        return self._factors[a]


class _Factor:
    """Slope + a × (conductances), factored row by row, for solving with many right sides."""

    def __init__(self, a: float, diagonal, along, across, slope):
        self._a, self._diagonal, self._along = a, diagonal, along
        self._across = a * across
        rows, columns = diagonal.shape
        import numpy as np

        self._slope = slope.copy()
        self._inverse = np.empty((rows, columns, columns))
        self._carry = np.zeros((max(rows - 1, 0), columns, columns))
        self._eliminate(0)

    def follow(self, slope) -> int:
        """Factor again from the first row whose slopes changed; 1 when there was one, else 0."""
        changed = (slope != self._slope).any(axis=1)
        if not changed.any():
            return 0
        self._slope = slope.copy()
        self._eliminate(int(changed.argmax()))
        return 1

    def _eliminate(self, first: int) -> None:
        import numpy as np

        rows, columns = self._slope.shape
        place = np.arange(columns)
        for row in range(first, rows):
            block = np.zeros((columns, columns))
            block[place, place] = self._slope[row] + self._a * self._diagonal[row]
            block[place[:-1], place[1:]] = block[place[1:], place[:-1]] = (
                -self._a * self._along[row]
            )
            if row:
                link = self._across[row - 1]
                block -= link[:, None] * self._inverse[row - 1] * link
            self._inverse[row] = np.linalg.inv(block)
            if row < rows - 1:
                self._carry[row] = self._across[row][:, None] * self._inverse[row]

    def solve(self, right):
        """The unknowns for that right side, both rows × columns."""
        import numpy as np

        carry, rows = self._carry, len(right)
        done = right.copy()
        for row in range(1, rows):
            done[row] += carry[row - 1] @ done[row - 1]
        done = np.matmul(self._inverse, done[:, :, None])[:, :, 0]
        for row in range(rows - 2, -1, -1):
            done[row] += done[row + 1] @ carry[row]
        return done


def _heat_in(one: Outside, celsius) -> float:
    import numpy as np

    shape = celsius.shape
    conductance = np.broadcast_to(np.asarray(one.conductance, dtype=float), shape)
    watts = np.broadcast_to(np.asarray(one.watts, dtype=float), shape)
    return float((conductance * (one.celsius - celsius)).sum() + watts.sum())
