"""Faults of a thermocouple in a log: open, spiking, stuck, jumping, silent.

What cannot be a temperature of a board is left out, as are lone spikes. What may be true is kept,
and the stretch is named as doubtful. The thresholds are choices of this workbook.
"""

from __future__ import annotations

from repairlib.core.wording import counted
from repairlib.heat.profile import Doubt

COLDEST, HOTTEST = -60.0, 600.0  # °C; outside, the sensor is open
SPIKE = 8.0  # K up and down again within one reading
FASTEST = 20.0  # K/s both ways; no joint on a board does that
JUMP = 100.0  # K/s one way: the bead came off, or went on
STUCK_SECONDS, STUCK_READINGS, STUCK_ABOVE = 30.0, 10, 50.0
STILL = 1.0  # K between the coldest and the hottest reading of a log that says nothing
GAP_SECONDS, GAP_TIMES = 5.0, 10.0  # a gap is longer than both: seconds, usual steps


def check_channel(name: str, seconds, celsius):
    """A channel cleaned: its readings with NaN for those left out, doubts, and notes in words.

    >>> import numpy as np
    >>> check_channel("TC1", np.arange(4.0), np.array([25.0, 26.0, 1372.0, 27.0]))[2]
    ['TC1: 1 reading of an open sensor left out, at 2 s.']
    """
    import numpy as np

    notes, doubts = [], []
    usual = float(np.median(np.diff(seconds[:10_001])))
    with np.errstate(invalid="ignore"):
        valid = (celsius >= COLDEST) & (celsius <= HOTTEST)
    if not valid.all():
        gone = np.flatnonzero(~valid)
        celsius = np.where(valid, celsius, np.nan)
        at = f"{seconds[gone[0]]:g} s"
        notes.append(
            f"{name}: {counted(len(gone), 'reading')} of an open sensor left out, {_at(at, gone)}."
        )
    t, temp = (seconds, celsius) if valid.all() else (seconds[valid], celsius[valid])
    if len(t) < 3:
        return celsius, (Doubt(float(seconds[0]), float(seconds[-1]), "the sensor is open"),), notes
    spikes = _spikes(t, temp)
    if len(spikes):
        celsius = np.array(celsius)
        places = np.flatnonzero(valid)[spikes]
        celsius[places] = np.nan
        at = f"{t[spikes[0]]:g} s"
        notes.append(
            f"{name}: {counted(len(spikes), 'reading')} left out as spikes, {_at(at, spikes)}."
        )
        t, temp = np.delete(t, spikes), np.delete(temp, spikes)
    doubts += _stuck(t, temp)
    doubts += _jumps(t, temp)
    doubts += _gaps(t, max(GAP_SECONDS, GAP_TIMES * usual))
    notes += [f"{name}: {doubt.why}." for doubt in doubts[:5]]
    if doubts[5:]:
        notes.append(f"{name}: {len(doubts) - 5} more stretches are doubtful.")
    return celsius, tuple(doubts), notes


def _spikes(t, temp):
    """Places of lone readings that stand out both ways faster than a board can."""
    import numpy as np

    step = np.diff(temp)
    big = np.abs(step) > SPIKE
    pairs = np.flatnonzero(big[:-1] & big[1:])
    if not len(pairs):
        return pairs
    seconds = np.diff(t)
    opposite = step[pairs] * step[pairs + 1] < 0
    fast = np.minimum(
        np.abs(step[pairs] / seconds[pairs]), np.abs(step[pairs + 1] / seconds[pairs + 1])
    )
    back = np.abs(step[pairs] + step[pairs + 1]) < np.abs(step[pairs]) / 2
    return pairs[opposite & back & (fast > FASTEST)] + 1


def _stuck(t, temp) -> list[Doubt]:
    import numpy as np

    if float(temp.max() - temp.min()) < STILL:
        why = f"the sensor is stuck: it stays at {temp[0]:.4g} °C all the time"
        return [Doubt(float(t[0]), float(t[-1]), why)]
    changes = np.flatnonzero(temp[1:] != temp[:-1]) + 1
    starts = np.concatenate(([0], changes))
    ends = np.concatenate((changes, [len(temp)])) - 1
    long = (t[ends] - t[starts] > STUCK_SECONDS) & (ends - starts + 1 >= STUCK_READINGS)
    long &= temp[starts] > STUCK_ABOVE
    return [
        Doubt(
            float(t[a]),
            float(t[b]),
            f"the sensor is stuck at {temp[a]:g} °C from {t[a]:g} to {t[b]:g} s",
        )
        for a, b in zip(starts[long], ends[long], strict=True)
    ]


def _jumps(t, temp) -> list[Doubt]:
    import numpy as np

    step = np.diff(temp)
    big = np.flatnonzero(np.abs(step) > SPIKE)
    rate = step[big] / (t[big + 1] - t[big])
    return [
        Doubt(
            float(t[at]),
            float(t[at + 1]),
            f"the reading jumps by {step[at]:+.0f} °C at {t[at + 1]:g} s: did the bead come off?",
        )
        for at in big[np.abs(rate) > JUMP]
    ]


def _gaps(t, longest: float) -> list[Doubt]:
    import numpy as np

    steps = np.diff(t)
    return [
        Doubt(float(t[at]), float(t[at + 1]), f"no reading from {t[at]:g} to {t[at + 1]:g} s")
        for at in np.flatnonzero(steps > longest)
    ]


def _at(first: str, places) -> str:
    return f"at {first}" if len(places) == 1 else f"the first at {first}"
