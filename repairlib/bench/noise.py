"""The small errors of an instrument: one that stays, one that changes with each reading."""

from __future__ import annotations

from hashlib import sha256

from repairlib.bench.state import State

RESTLESS = 0.5  # of the digits of its accuracy, by which the last place of a display jumps


def share(*what: object) -> float:
    """A number from -1 to 1 that hangs on `what` alone, the same on every machine.

    >>> share("demo", 1) == share("demo", 1), -1 <= share("demo", 2) < 1
    (True, True)
    """
    text = "\n".join(map(str, what)).encode()
    return int.from_bytes(sha256(text).digest()[:6], "big") / 2**47 - 1


def noisy(
    value: float, percent: float, step: float, digits: float, state: State, instrument: str
) -> float:
    """`value` as an instrument shows it, in steps of `step`: within `percent` (a share) + `digits`.

    How far it is off by its percentage stays for the whole attempt, the last digits change with
    each move. The result is a whole number of steps.

    >>> from repairlib.bench.practice_set import demo_set
    >>> from repairlib.bench.state import begin
    >>> noisy(14.2384, 0.0, 0.01, 0, begin(demo_set("desk radio"), (), "demo"), "V dc")
    14.24
    """
    off = share(state.seed, instrument) * percent
    jump = share(state.seed, instrument, state.moves) * digits * RESTLESS * step
    return float(f"{round((value * (1 + off) + jump) / step) * step:.9g}")
