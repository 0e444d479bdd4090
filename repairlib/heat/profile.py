"""A temperature profile: straight lines between points of time and temperature."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError

ABSOLUTE_ZERO = -273.15
FEWEST = 3  # readings; two make a line and no profile


class Doubt(NamedTuple):
    """A stretch of a log, in seconds, of which nothing is known, and why."""

    start: float
    end: float
    why: str


class Profile(NamedTuple):
    """Times in seconds and temperatures in °C as arrays, with what is doubtful about them."""

    name: str
    seconds: object
    celsius: object
    doubts: tuple[Doubt, ...] = ()


def make_profile(name: str, seconds, celsius, doubts=()) -> Profile:
    """A profile from two columns.

    Raises RepairlibError for columns of different length, fewer than three points, times that do
    not rise, and temperatures that are no numbers or lie below absolute zero.

    >>> make_profile("joint", [0, 90, 180], [25, 150, 200]).name
    'joint'
    """
    import numpy as np

    try:
        seconds, celsius = np.asarray(seconds, dtype=float), np.asarray(celsius, dtype=float)
    except (TypeError, ValueError):
        raise RepairlibError(name, "not all numbers", "two columns of numbers") from None
    if seconds.ndim != 1 or seconds.shape != celsius.shape:
        raise RepairlibError(name, "times and temperatures differ in number", "pairs of both")
    if len(seconds) < FEWEST:
        wrong = f"{len(seconds)} readings make no profile"
        raise RepairlibError(name, wrong, f"at least {FEWEST} readings")
    if not (np.isfinite(seconds).all() and np.isfinite(celsius).all()):
        raise RepairlibError(name, "a time or temperature is no number", "numbers in s and °C")
    check_rising(name, seconds)
    if celsius.min() < ABSOLUTE_ZERO:
        wrong = "below absolute zero"
        raise RepairlibError(f"{celsius.min():g} °C", wrong, f"{ABSOLUTE_ZERO} °C or more")
    return Profile(name, seconds, celsius, tuple(doubts))


def check_rising(name: str, seconds) -> None:
    """Raise RepairlibError where a time is not later than the one before it."""
    import numpy as np

    steps = np.diff(seconds)
    if len(steps) and steps.min() <= 0:
        row = int(np.argmax(steps <= 0)) + 1
        before, after = seconds[row - 1], seconds[row]
        what = "stands still" if after == before else "goes back"
        wrong = f"time {what} at reading {row + 1}: {before:g} s, then {after:g} s"
        raise RepairlibError(name, wrong, "times that rise from reading to reading")


def read_points(text: str, name: str = "profile") -> Profile:
    """A profile typed as points: seconds and °C, points parted by commas.

    Raises RepairlibError for anything else, and as `make_profile` does.

    >>> read_points("0 25, 90 150, 180 200").celsius.tolist()
    [25.0, 150.0, 200.0]
    """
    pairs = []
    for point in text.replace(";", ",").replace("\n", ",").split(","):
        if not point.strip():
            continue
        try:
            seconds, celsius = map(float, point.split())
        except ValueError:
            accepted = "seconds and °C, points parted by commas: 0 25, 90 150, 180 200"
            raise RepairlibError(point.strip(), "not a point of a profile", accepted) from None
        pairs.append((seconds, celsius))
    return make_profile(name, [one[0] for one in pairs], [one[1] for one in pairs])
