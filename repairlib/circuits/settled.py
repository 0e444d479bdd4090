"""A rail of a supply once it has settled: peak, valley, mean and ripple over one cycle of mains."""

from __future__ import annotations

from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from repairlib.circuits.checks import checked
from repairlib.circuits.in_time import Stepper
from repairlib.circuits.parts import ZERO, CircuitPart
from repairlib.circuits.steady import Search
from repairlib.core.errors import RepairlibError

if TYPE_CHECKING:
    import numpy as np

STEPS = 400  # in a cycle of mains
ROUGH_STEPS, ROUGH_CYCLES = 50, 20  # a search from empty begins in so long steps
NEARLY = 1e-3  # of what the parts hold, by which it may still go on
MOST_CYCLES = 120
STRAIGHT = 1e-3  # of what the parts hold: so far from the end all laws follow their slopes
STEADY, ROUNDED = 2e-2, 1e-8  # of the ripple, of what they hold: by which this cycle may move it
PATIENCE, SLOW = 30, 1e-4  # after so many cycles it may move so much of what they hold
SMALLEST = 1e-3  # V or A, below which it counts as this


class Rail(NamedTuple):
    """The rail over one cycle of mains, all in V.

    `error` is the larger of two: what steps of half the length changed, and how far the valley was
    laid below the lowest step, between which it lies.
    """

    peak: float
    valley: float
    mean: float
    error: float

    @property
    def ripple(self) -> float:
        """From valley to peak."""
        return self.peak - self.valley


class Cycle(NamedTuple):
    """One settled cycle of mains: `seconds` from its first step on, `volts` by point.

    `held` is what the parts hold at its end: the volts of capacitors, the amps of inductors.
    `amps` flow through each part from its first point, of a regulator into its input.
    """

    seconds: np.ndarray
    volts: dict[str, np.ndarray]
    held: dict[str, float]
    amps: dict[str, np.ndarray]


def rails(parts: tuple[CircuitPart, ...], *points: str, steps: int = STEPS) -> dict[str, Rail]:
    """The settled rails at these points, over one cycle of the sine in the circuit.

    Works it out with half of `steps` to a cycle and goes on from there with all. Where the end is
    not found in 30 cycles, one counts that moves what the parts hold by less than 0.01 %. Raises
    RepairlibError for a circuit without a sine or with two frequencies, for a point that is not
    there, and for a rail that still moves after 120 cycles.

    >>> from repairlib.circuits.parts import read_circuit
    >>> rows = "part,from,to,value,more / V1,a,0,9 V,50 Hz 0.2 Ω / D1,a,rail,10 nA,n 1.8"
    >>> rail = rails(read_circuit(rows + " / C1,rail,0,1000u, / R1,rail,0,100,"), "rail")["rail"]
    >>> print(f"{rail.valley:.1f} to {rail.peak:.1f} V")
    9.9 to 11.9 V
    """
    cycle = 1 / mains_of(parts)
    few = Stepper(parts, cycle / (steps // 2))
    coarse, kept = _settled(few, steps // 2, points)
    fine, _ = _settled(Stepper(parts, cycle / steps, charged=kept, after=few), steps, points)
    found = {}
    for point in points:
        one, other = _rail(fine[point]), _rail(coarse[point])
        changed = (abs(a - b) for a, b in zip(one[:3], other[:3], strict=True))
        found[point] = one._replace(error=max(one.error, *changed))
    return found


def one_cycle(
    parts: tuple[CircuitPart, ...],
    *points: str,
    steps: int = STEPS,
    charged: dict[str, float] | None = None,
) -> Cycle:
    """The voltages [V] at these points in each step of one settled cycle, as `rails` has them.

    At all points, zero too, when none is named. The sine of the circuit stands at 0 at the begin
    of the cycle, one step before the first row. `charged` is where the search begins: what was
    `held` at the end of a cycle of a circuit that is nearly the same, by name; what it does not
    name begins empty. The answer does not hang on it, how long it takes does. Raises
    RepairlibError as `rails` does.

    >>> from repairlib.circuits.parts import read_circuit
    >>> rows = "part,from,to,value,more / V1,a,0,9 V,50 Hz 0.2 Ω / D1,a,rail,10 nA,n 1.8"
    >>> cycle = one_cycle(read_circuit(rows + " / R1,rail,0,100,"), "rail")
    >>> print(f"{cycle.seconds[-1]:g} s, {cycle.volts['rail'].max():.1f} V")
    0.02 s, 11.9 V
    >>> held = one_cycle(read_circuit(rows + " / C1,rail,0,1m, / R1,rail,0,1k,")).held
    >>> print(f"{held['C1']:.1f} V")
    11.8 V
    """
    import numpy as np

    cycle = 1 / mains_of(parts)
    rough = _nearly(parts, steps) if charged is None else None
    stepper = Stepper(parts, cycle / steps, charged=rough.kept() if rough else charged, after=rough)
    waves, held = _settled(stepper, steps, points)
    return Cycle(cycle / steps * np.arange(1, steps + 1), waves, held, stepper.amps())


def mains_of(parts: tuple[CircuitPart, ...]) -> float:
    """The one frequency [Hz] of the sines in a circuit; RepairlibError where there is not one."""
    hertz = {part.more["mains"] for part in checked(parts) if part.more.get("mains")}
    if len(hertz) != 1:
        read = ", ".join(f"{one:g} Hz" for one in sorted(hertz)) or "this circuit"
        raise RepairlibError(read, "not one frequency of mains", "sines of one frequency")
    return hertz.pop()


def _settled(stepper: Stepper, steps: int, points: tuple[str, ...]):
    """The waves of a cycle that is like the one before, and what the parts hold after it."""
    import numpy as np

    points = points or (ZERO, *stepper.rule.network.points)
    columns = [stepper.point(point) for point in points if point != ZERO]
    cycles = islice(_cycles(stepper, steps), MOST_CYCLES)
    for at, (rows, moved, far, _) in enumerate(cycles):
        run = rows[:, columns]
        ripple = (run.max(axis=0) - run.min(axis=0)).max(initial=0.0)
        largest, left = abs(stepper.held()).max(initial=SMALLEST), abs(far).max(initial=0.0)
        if left <= STRAIGHT * largest and moved <= STEADY * ripple + ROUNDED * largest:
            run = stepper.nudged(far)[:, columns]
            break
        if at >= PATIENCE and moved <= SLOW * largest:
            break
    else:
        raise RepairlibError(
            ", ".join(points),
            f"it still moves after {MOST_CYCLES} cycles",
            "a smaller capacitance or a larger load",
        )
    waves = dict(zip((one for one in points if one != ZERO), run.T, strict=True))
    return {point: waves.get(point, np.zeros(steps)) for point in points}, stepper.kept()


def _nearly(parts: tuple[CircuitPart, ...], steps: int) -> Stepper:
    """It has come to about where the circuit will settle, in few and long steps."""
    rough = min(steps, ROUGH_STEPS)
    stepper = Stepper(parts, 1 / mains_of(parts) / rough)
    for _, _, far, ahead in islice(_cycles(stepper, rough), ROUGH_CYCLES):
        if abs(far).max(initial=0.0) <= NEARLY * abs(ahead).max(initial=SMALLEST):
            break
    stepper.begin(ahead)
    return stepper


def _cycles(stepper: Stepper, steps: int):
    """Cycle after cycle, each begun nearer to the end.

    Of each its rows, by how much it moved what is held, how far that was from the end at its begin,
    and where the next one begins.
    """
    before, search = stepper.held(), Search()
    while True:
        stepper.begin(before)
        rows = stepper.advance(steps)
        after = stepper.held()
        moved = abs(after - before).max(initial=0.0)
        before, far = search.leap(before, after, stepper.carried())
        yield rows, moved, far, before


def _rail(wave) -> Rail:
    valley = _valley(wave)
    return Rail(float(wave.max()), valley, float(wave.mean()), float(wave.min()) - valley)


def _valley(wave) -> float:
    """The lowest point of a cycle: a rail falls in a line until a pulse lifts it, between steps.

    >>> import numpy as np
    >>> round(_valley(np.array([5.0, 4.0, 3.0, 3.5, 5.0, 6.5, 6.0, 6.0])), 3)
    2.6
    """
    import numpy as np

    lowest = float(wave.min())
    lows = np.flatnonzero((wave <= np.roll(wave, 1)) & (wave < np.roll(wave, -1)))
    for low in lows:
        before, last, one, other, after = (float(wave[(low + k) % len(wave)]) for k in range(-2, 3))
        for start, falls, end, rises in (
            (last, last - before, one, other - one),
            (one, one - last, other, after - other),
        ):
            if falls < 0 < rises:  # start + t falls meets end + (t - 1) rises
                after_start = (start - end + rises) / (rises - falls)
                if 0 <= after_start <= 1:
                    lowest = min(lowest, start + after_start * falls)
    return lowest
