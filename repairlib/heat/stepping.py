"""Steps in time through a mesh of cells that pass heat to their neighbours.

The mesh is a grid of rows and columns; heat balance of each cell is kept exactly, melting
included. The scheme is TR-BDF2: implicit, of second order, with no ringing after a sudden change.
Each step solves a block tridiagonal system row by row. It knows nothing of materials or joints.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from repairlib.core.errors import RepairlibError

# TR-BDF2 as a Runge-Kutta scheme: two implicit stages with the same coefficient.
_GAMMA = 2 - 2**0.5  # where in the step the first stage lies
_SAME = _GAMMA / 2  # coefficient of the unknown in both stages
_PAST = 2**0.5 / 4  # weight of the start and of the first stage
_ERROR = ((4 * _PAST - 1) / 3, -1 / 3, 2 * _SAME / 3)  # against the embedded third-order scheme
_HALVINGS = 26  # the smallest step is the whole time halved as often
_FIRST_GUESS = 9  # the first step tried is the whole time halved as often
_BLOCK = 48  # cells solved together; more make fewer calls but more arithmetic
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
class Stepper:
    """Marches a mesh through time. `tolerance` is the error allowed in each step, in K.

    With `step` in seconds the steps are all alike and no error is judged. `longest` is the
    longest step allowed.
    """

    mesh: Mesh
    tolerance: float = 0.05
    step: float | None = None
    longest: float | None = None

    def __post_init__(self):
        import numpy as np

        mesh = self.mesh
        capacity = np.asarray(mesh.capacity, dtype=float)
        self._void = capacity <= 0
        self._capacity = np.where(self._void, 1.0, capacity)
        self._loss = np.zeros_like(capacity)
        self._gain = np.zeros_like(capacity)
        self._trades = []  # of every outside: name, W at 0 °C, W/K of its cells, which cells
        for one in mesh.outsides:
            conductance = np.broadcast_to(one.conductance, capacity.shape)
            gain = conductance * one.celsius + one.watts
            self._loss += conductance
            self._gain += gain
            cells = np.flatnonzero(conductance)
            trade = (one.name, float(gain.sum()), conductance.ravel()[cells].copy(), cells)
            self._trades.append(trade)
        diagonal = self._loss.copy()
        diagonal[:, :-1] += mesh.along
        diagonal[:, 1:] += mesh.along
        diagonal[:-1] += mesh.across
        diagonal[1:] += mesh.across
        self._diagonal = diagonal
        self._factors: dict[float, _Factor] = {}
        self._last_flow = None, None
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
        celsius, at_start = self._last_flow
        if celsius is not state.celsius:
            at_start = self._flow(state.celsius)
        base = state.stored + _SAME * h * at_start
        gain = _SAME * h * self._gain
        middle, stored, settled = self._stage(factor, base + gain, state.stored)
        in_middle = self._flow(middle)
        base = state.stored + _PAST * h * (at_start + in_middle)
        end, stored, settled_too = self._stage(factor, base + gain, stored)
        at_end = self._flow(end)
        mean = _PAST * (state.celsius + middle) + _SAME * end
        arrived = {
            name: state.arrived[name] + h * (total - float(conductance @ mean.ravel()[cells]))
            for name, total, conductance, cells in self._trades
        }
        error = 0.0
        if self.step is None:
            wrong = h * (_ERROR[0] * at_start + _ERROR[1] * in_middle + _ERROR[2] * at_end)
            settled = settled and settled_too
            error = float(np.abs(factor.solve(wrong)).max()) if settled else float("inf")
        if self._melts:
            end = self._celsius(stored)
        else:
            self._last_flow = end, at_end  # the next step begins with it
        return State(state.seconds + h, end, stored, arrived), error

    def _stage(self, factor: _Factor, known, stored):
        """Temperatures and stored heat that satisfy stored + a × loss × T = known.

        The stored heat, not the temperature, is carried from try to try: a cell that begins to
        melt is then caught between solidus and liquidus instead of jumping over them.
        """
        import numpy as np

        if not self._melts:
            celsius = factor.solve(known)
            return celsius, self._capacity * celsius, True
        for _ in range(_CORRECTIONS):
            slope = self._slope(stored)
            celsius = self._celsius(stored)
            factor.follow(slope)
            found = factor.solve(known - stored + slope * celsius)
            stored = stored + slope * (found - celsius)
            if np.abs(found - self._celsius(stored)).max() < self.tolerance / 10:
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
        return self._factors[a]


class _Factor:
    """Slope + a × (conductances), factored for solving with many right sides.

    Some rows together make a block, so that numpy has enough to do in each call. A block touches
    the next only from its last row to the first row there.
    """

    def __init__(self, a: float, diagonal, along, across, slope):
        import numpy as np

        self._a, self._diagonal, self._along, self._across = a, diagonal, along, a * across
        self._rows, self._columns = diagonal.shape
        self._group = max(1, min(_BLOCK // self._columns, self._rows))
        blocks = -(-self._rows // self._group)
        side = self._group * self._columns
        self._slope = slope.copy()
        self._inverse = np.empty((blocks, side, side))
        self._carry = np.zeros((blocks, self._columns, side))
        self._eliminate(0)

    def follow(self, slope) -> None:
        """Factor again from the first row whose slopes changed, if any did."""
        changed = (slope != self._slope).any(axis=1)
        if changed.any():
            self._slope = slope.copy()
            self._eliminate(int(changed.argmax()) // self._group)

    def _eliminate(self, first: int) -> None:
        import numpy as np

        columns = self._columns
        for number in range(first, len(self._inverse)):
            block = self._block(number)
            if number:
                link = self._across[number * self._group - 1]
                corner = self._carry[number - 1][:, -columns:]
                block[:columns, :columns] -= corner * link
            self._inverse[number] = np.linalg.inv(block)
            if number < len(self._inverse) - 1:
                link = self._across[(number + 1) * self._group - 1]
                self._carry[number] = link[:, None] * self._inverse[number][-columns:]

    def _block(self, number: int):
        """The rows of a block as a square matrix; ones stand for rows beyond the last."""
        import numpy as np

        columns, start = self._columns, number * self._group
        end = min(start + self._group, self._rows)
        side, used = self._group * columns, (end - start) * columns
        block = np.zeros((side, side))
        flat = block.ravel()
        diagonal = np.ones(side)
        diagonal[:used] = (self._slope[start:end] + self._a * self._diagonal[start:end]).ravel()
        beside = np.zeros((end - start, columns))
        beside[:, :-1] = -self._a * self._along[start:end]
        beside = beside.ravel()[:-1]
        over = -self._across[start : end - 1].ravel()
        flat[:: side + 1] = diagonal
        flat[1 :: side + 1][: beside.size] = beside
        flat[side :: side + 1][: beside.size] = beside
        flat[columns :: side + 1][: over.size] = over
        flat[side * columns :: side + 1][: over.size] = over
        return block

    def solve(self, right):
        """The unknowns for that right side, both rows × columns."""
        import numpy as np

        blocks, columns, side = self._carry.shape
        done = np.zeros((blocks, side))
        done.ravel()[: right.size] = right.ravel()
        parts, heads = list(done), list(done[:, :columns])
        for number in range(1, blocks):
            heads[number] += self._carry[number - 1].dot(parts[number - 1])
        done = np.matmul(self._inverse, done[:, :, None])[:, :, 0]
        parts, heads = list(done), list(done[:, :columns])
        for number in range(blocks - 2, -1, -1):
            parts[number] += heads[number + 1].dot(self._carry[number])
        return done.ravel()[: right.size].reshape(right.shape)
