"""What is measured on a reflow profile: times, ramps and the peak.

A profile is straight lines between its points. The time of the preheat runs from the first rise
through its lower to the first rise through its upper temperature; times above a temperature are
added up; ramps are averages between liquidus and the peak.
"""

from __future__ import annotations

from typing import NamedTuple

from repairlib.heat.profile import Profile
from repairlib.heat.reflow_limits import COLD, NEAR, ReflowLimits

SENSOR = 2.5  # K, a type K thermocouple of class 2 up to 333 °C
ROUNDING = 1e-9


class Measured(NamedTuple):
    """One measure: its value, or None and why; where it was taken, in seconds.

    `least` says that the log ends or begins too soon, so that the true value may be larger.
    """

    value: float | None
    span: tuple[float, float]
    why: str = ""
    least: bool = False


def measure(profile: Profile, limits: ReflowLimits, shift: float = 0.0) -> dict[str, Measured]:
    """Every measure of the profile, as if each reading were `shift` K higher.

    Keys: soak, ramp_up, above, peak, near, ramp_down, total. Seconds, °C and K/s.
    """
    import numpy as np

    t, temp = profile.seconds, profile.celsius
    first, last = int(np.argmax(temp)), len(temp) - 1 - int(np.argmax(temp[::-1]))
    top = float(temp[first]) + shift
    liquid = limits.liquidus - shift
    hot = _hot_span(t, temp, limits.soak_to - shift)
    near = Measured(None, hot)
    if limits.peak[1] is not None:
        near = _time_above(t, temp, limits.peak[1] - NEAR - shift)._replace(span=hot)
    return {
        "soak": _between(t, temp, limits.soak_from, limits.soak_to, shift),
        "ramp_up": _ramp_up(t, temp, first, liquid, top - limits.liquidus),
        "above": _time_above(t, temp, liquid)._replace(span=hot),
        "peak": Measured(top, hot),
        "near": near,
        "ramp_down": _ramp_down(t, temp, last, liquid, top - limits.liquidus),
        "total": _from_cold(t, temp, float(t[first]), shift),
    }


def _between(t, temp, low: float, high: float, shift: float) -> Measured:
    """Time from the first rise through `low` to the first rise through `high`."""
    whole = (float(t[0]), float(t[-1]))
    rises = [_first_rise(t, temp, level - shift) for level in (low, high)]
    for level, at in zip((low, high), rises, strict=True):
        if at is None:
            above = temp[0] + shift > level
            why = (
                f"the log begins above {level:g} °C" if above else f"it never reaches {level:g} °C"
            )
            return Measured(None, whole, why)
    return Measured(rises[1] - rises[0], (rises[0], rises[1]))


def _first_rise(t, temp, level: float) -> float | None:
    """The time of the first rise through a temperature; the start, if it starts right there."""
    import numpy as np

    if abs(temp[0] - level) <= ROUNDING:
        return float(t[0])
    up = (temp[1:] >= level) & (temp[:-1] < level)
    place = int(np.argmax(up))
    return _crossing(t, temp, place, level) if up[place] else None


def _crossing(t, temp, place: int, level: float) -> float:
    """The time at which the line from point `place` to the next one meets `level`."""
    share = (level - temp[place]) / (temp[place + 1] - temp[place])
    return float(t[place] + share * (t[place + 1] - t[place]))


def _time_above(t, temp, level: float) -> Measured:
    import numpy as np

    over = temp > level
    least = bool(over[0] or over[-1])
    why = "the log begins or ends above it, so that it may be longer" if least else ""
    if not over.any():
        return Measured(0.0, (float(t[0]), float(t[-1])))
    places = np.flatnonzero(over)
    first, last = max(int(places[0]) - 1, 0), min(int(places[-1]) + 1, len(t) - 1)
    t, over, height = t[first : last + 1], over[first : last + 1], temp[first : last + 1] - level
    steps = np.diff(t)
    total = float(steps[over[1:] & over[:-1]].sum())
    cut = np.flatnonzero(over[1:] != over[:-1])
    a, b = height[cut], height[cut + 1]
    total += float((steps[cut] * np.maximum(a, b) / np.abs(b - a)).sum())
    return Measured(total, (float(t[0]), float(t[-1])), why, least)


def _hot_span(t, temp, level: float) -> tuple[float, float]:
    """The time in which the peak may lie: from the end of the preheat until it is cool again."""
    import numpy as np

    hot = np.flatnonzero(temp >= level)
    if not len(hot):
        top = float(t[int(np.argmax(temp))])
        return top, top
    first, last = int(hot[0]), int(hot[-1])
    begins = _crossing(t, temp, first - 1, level) if first else float(t[0])
    ends = _crossing(t, temp, last, level) if last + 1 < len(t) else float(t[-1])
    return begins, ends


def _ramp_up(t, temp, first: int, level: float, climb: float) -> Measured:
    import numpy as np

    before = temp[: first + 1]
    below = np.flatnonzero(before < level)
    if climb <= 0 or not len(below):
        why = "it never gets above liquidus" if climb <= 0 else "the log begins above liquidus"
        return Measured(None, (float(t[0]), float(t[-1])), why)
    start = _crossing(t, temp, int(below[-1]), level)
    return Measured(climb / (float(t[first]) - start), (start, float(t[first])))


def _ramp_down(t, temp, last: int, level: float, drop: float) -> Measured:
    import numpy as np

    below = temp[last:] <= level
    place = int(np.argmax(below))
    if drop <= 0 or not below[place]:
        why = "the log ends before it cools to liquidus"
        why = "it never gets above liquidus" if drop <= 0 else why
        return Measured(None, (float(t[last]), float(t[-1])), why)
    end = _crossing(t, temp, last + place - 1, level)
    return Measured(drop / (end - float(t[last])), (float(t[last]), end))


def _from_cold(t, temp, peak_at: float, shift: float) -> Measured:
    start = _first_rise(t, temp, COLD - shift)
    if start is not None and start <= peak_at:
        return Measured(peak_at - start, (start, start))
    start, warm = float(t[0]), float(temp[0]) + shift
    if warm < COLD:  # never reaches 25 °C
        return Measured(None, (start, peak_at), f"it never reaches {COLD:g} °C")
    why = f"the log begins at {temp[0]:.4g} °C: the way from {COLD:g} °C is missing"
    # A start within the sensor's own doubt of 25 °C is a start at 25 °C.
    begins_warm = float(temp[0]) > COLD + SENSOR
    return Measured(peak_at - start, (start, start), why if begins_warm else "", begins_warm)
