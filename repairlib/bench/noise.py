"""The small errors of an instrument: one that stays, one that changes with each reading."""

from __future__ import annotations

from hashlib import sha256

from repairlib.bench.state import State


def share(*what: object) -> float:
    """A number from -1 to 1 that hangs on `what` alone, the same on every machine.

    >>> share("demo", 1) == share("demo", 1), -1 <= share("demo", 2) < 1
    (True, True)
    """
    text = "\n".join(map(str, what)).encode()
    return int.from_bytes(sha256(text).digest()[:6], "big") / 2**47 - 1


def noisy(value: float, percent: float, step: float, state: State, instrument: str) -> float:
    """`value` as an instrument shows it: off by up to `percent` (as a share), in steps of `step`.

    The share stays for the whole attempt, half a step of noise comes anew with each move.
    """
    off = share(state.seed, instrument) * percent / 2
    jump = share(state.seed, instrument, state.moves) * step
    return round((value * (1 + off) + jump) / step) * step
