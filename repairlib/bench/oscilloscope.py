"""The oscilloscope of the bench: the trace of a point on its screen, and what is read off it.

Eight bits over eight divisions, ten divisions wide, a 10:1 probe of 10 MΩ (its 15 pF do not count
at mains frequency). It triggers where the mains begins its cycle. Figures from memory.
"""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING

from repairlib.bench.electric import FINE_STEPS, Electric
from repairlib.bench.moves import Reading, Trace
from repairlib.bench.multimeter import with_input
from repairlib.bench.noise import share
from repairlib.bench.state import State
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief

if TYPE_CHECKING:
    import numpy as np

DC, AC = "dc", "ac"
HIGH, WIDE, LEVELS, COLUMNS = 8, 10, 256, 400
PER_DIVISION = tuple(float(f"{step}e{power}") for power in range(-2, 3) for step in (1, 2, 5))[
    :14
]  # V, with the 10:1 probe: 10 mV to 200 V
SWEEPS = tuple(float(f"{step}e{power}") for power in range(-6, 1) for step in (1, 2, 5))  # s
SWEEP = 5e-3  # s for a division where nothing moves
ROUNDED = 1 - 1e-9
FEW = 4  # levels; with so few of them another coupling shows more
GAIN_ERROR = 0.03  # of the reading
FILLED = 0.9  # of the screen, at most, where it chooses V/div itself


def scope(
    state: State,
    one: str,
    other: str = "0",
    coupling: str = DC,
    per_division: float | None = None,
    sweep: float | None = None,
) -> Reading:
    """The trace between a point and where the ground clip sits; the value is peak to peak.

    `coupling` DC or AC; `per_division` one of PER_DIVISION and `sweep` one of SWEEPS, chosen by
    itself where they are not given. Raises RepairlibError for others.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> reading = scope(begin(demo_set("desk radio"), (), "demo"), "rail")
    >>> reading.trace.hertz, reading.trace.sweep
    (0.0, 0.005)
    """
    _one_of(per_division, PER_DIVISION, "V")
    _one_of(sweep, SWEEPS, "s")
    if coupling not in (DC, AC):
        raise RepairlibError(coupling, "no such coupling", f"{DC}, {AC}")
    found = with_input(state, one, other, FINE_STEPS)
    sweep = sweep or _sweep_for(found)
    volts, mean = _on_screen(found, one, other, sweep)
    seen = volts - mean if coupling == AC else volts
    per_division = per_division or _chosen(seen)
    levels, zero, off_screen = _drawn(state, seen, per_division)
    level = per_division * HIGH / LEVELS
    peaks = (max(levels) - min(levels)) * level
    trace = Trace(levels, zero, per_division, sweep, coupling, mean, _hertz(volts, sweep))
    small = coupling == DC and found.seconds is not None and peaks <= FEW * level
    note = "small at this scale: coupled for ac it is read finer" if small else ""
    said = "off the screen" if off_screen else _said(trace, peaks, level)
    return Reading(
        "oscilloscope", (one, other), said, None if off_screen else peaks, "V", note,
        f"{brief(per_division, 'V')} and {brief(sweep, 's')} per division",
        peaks * GAIN_ERROR + 2 * level, trace=trace,
    )  # fmt: skip


def _one_of(figure: float | None, known: tuple[float, ...], unit: str) -> None:
    if figure is not None and figure not in known:
        accepted = f"{brief(known[0], unit)} to {brief(known[-1], unit)} in steps of 1, 2, 5"
        raise RepairlibError(brief(figure, unit), "no such step per division", accepted)


def _sweep_for(found: Electric) -> float:
    """The least time/div that shows two cycles."""
    if found.seconds is None:
        return SWEEP
    cycles = 2 * float(found.seconds[-1])
    return next((one for one in SWEEPS if one * WIDE >= cycles * ROUNDED), SWEEPS[-1])


def _on_screen(found: Electric, one: str, other: str, sweep: float) -> tuple[np.ndarray, float]:
    """The volts in each column of the screen, and their mean over whole cycles."""
    import numpy as np

    mean = float(f"{found.between(one, other):.9g}")
    if found.seconds is None:
        return np.full(COLUMNS, mean), mean
    period = found.seconds[-1]
    times = np.arange(COLUMNS) * (sweep * WIDE / COLUMNS)
    wave = found.waves[one] - found.waves[other]
    return np.interp(times % period, found.seconds, wave, period=period), mean


def _chosen(seen: np.ndarray) -> float:
    """The least V/div that holds the trace with its line of zero in the middle."""
    most = float(abs(seen).max())
    held = (one for one in PER_DIVISION if most <= one * HIGH / 2 * FILLED)
    return next(held, PER_DIVISION[-1])


def _drawn(state: State, seen: np.ndarray, per_division: float):
    """The level in each column with the noise of its converter, that of zero, and what is off."""
    import numpy as np

    zero = LEVELS // 2
    gain = 1 + share(state.seed, "oscilloscope") * GAIN_ERROR / 2
    exact = zero + np.round(seen * gain / (per_division * HIGH / LEVELS), 6)
    levels = np.round(exact + _hiss(state, len(seen))).astype(int)
    off = bool((levels < 0).any() or (levels >= LEVELS).any())
    return tuple(np.clip(levels, 0, LEVELS - 1).tolist()), zero, off


def _hiss(state: State, many: int) -> np.ndarray:
    """Half a level of noise for each column."""
    import numpy as np

    blocks = range(many // 32 + 1)
    found = b"".join(
        sha256(f"{state.seed}\n{state.moves}\n{block}".encode()).digest() for block in blocks
    )
    return np.frombuffer(found[:many], np.uint8) / 255 - 0.5


def _hertz(volts: np.ndarray, sweep: float) -> float:
    """How often it rises through the middle between its ends, as a counter has it."""
    import numpy as np

    middle, span = (volts.max() + volts.min()) / 2, volts.max() - volts.min()
    if span < 1e-3:
        return 0.0
    rises = np.flatnonzero((volts[:-1] < middle) & (volts[1:] >= middle))
    if len(rises) < 2:
        return 0.0
    columns = (rises[-1] - rises[0]) / (len(rises) - 1)
    return float(f"{COLUMNS / (columns * sweep * WIDE):.2g}")


def _said(trace: Trace, peaks: float, level: float) -> str:
    often = f", {trace.hertz:g} Hz" if trace.hertz else ""
    mean = "" if trace.coupling == AC else f"mean {_volts(trace.mean, level)}, "
    return f"{mean}{_volts(peaks, level)} peak to peak{often}"


def _volts(value: float, level: float) -> str:
    """A figure no finer than a level of the screen."""
    places = next(p for p in range(5) if level >= 0.5 * 10**-p)
    return f"{round(value, places):.{places}f} V"
