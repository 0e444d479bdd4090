"""How much of what goes into a part becomes heat in it."""

from __future__ import annotations

from typing import Any

from repairlib.circuits.laws import WHOLE
from repairlib.circuits.parts import CircuitPart


def heat_in(part: CircuitPart, volts: dict[str, Any], amps: Any) -> Any:
    """The watts that become heat in a part, for one instant or row by row.

    `volts` by point, `amps` through it from its first point, of a regulator into its input.
    What a capacitor or an inductor stores and a source gives is none; a bench supply keeps cool.

    >>> regulator = CircuitPart("U1", ("in", "out"), 5.0, {"dropout": 2.0, "own": 0.0})
    >>> heat_in(regulator, {"in": 9.0, "out": 5.0}, 0.5)
    2.0
    """
    one, other = (volts[node] for node in part.nodes)
    if part.letter in "CLV":
        inside = {"C": "esr", "L": "winding", "V": "series"}[part.letter]
        return amps * amps * part.more.get(inside, 0.0)
    if part.letter == "P":
        return 0.0 * amps
    if part.letter == "U":
        # The place of its own current within its first volt does not count here.
        own = part.more["own"] * (one > WHOLE)
        return one * amps - other * (amps - own)
    return (one - other) * amps
