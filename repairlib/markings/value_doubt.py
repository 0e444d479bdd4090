"""Doubt about a value that a resistor or inductor would have: out of range, or in no E series."""

from __future__ import annotations

from repairlib.core.quantity import engineering
from repairlib.core.series import E_SERIES
from repairlib.markings.kinds import TABLE
from repairlib.markings.ranks import DOUBTED, UNLIKELY_SERIES
from repairlib.markings.reading import Tolerance

_SHUNT = 0.999  # Ω
_CLOSE = 0.005  # fraction; E192 is for 0.5 % and better


def value_doubt(
    kind: str, value: float, figures: str, tolerance: Tolerance | None
) -> tuple[str, int]:
    """(why such a value is doubtful or "", how many steps down it belongs in the order).

    `figures` are the figures as marked, `tolerance` is a Tolerance or None.

    >>> value_doubt("resistor", 4700.0, "47", None)
    ('', 0)
    >>> value_doubt("resistor", 5000.0, "50", None)[0]
    '50 is in no series from E3 to E24'
    """
    made, unit = TABLE[kind].made, TABLE[kind].unit
    if made and not made.least * 0.999999 <= value <= made.most * 1.000001:
        between = f"{engineering(made.least, unit)} to {engineering(made.most, unit)}"
        return f"{engineering(value, unit)}: {made.many} are made from {between}", DOUBTED
    if kind == "chip-inductor":
        return "", 0  # radio-frequency parts are made in values between the series
    significant = figures.replace(".", "").strip("0")
    if unit == "Ω" and value < _SHUNT and len(significant) <= 2:
        return "", 0  # shunts are made in round values too: 5, 25 and 50 mΩ
    if len(significant) <= 2 and int(significant.ljust(2, "0")) in E_SERIES["E24"]:
        return "", 0
    if len(figures.replace(".", "").lstrip("0")) < 3:
        return f"{significant.ljust(2, '0')} is in no series from E3 to E24", DOUBTED
    three = int(significant.ljust(3, "0")[:3])
    if len(significant) > 3 or three not in E_SERIES["E192"]:
        return f"{significant} is in no E series", DOUBTED
    close = tolerance is not None and tolerance.high <= _CLOSE * 1.000001
    return "", 0 if close or three in E_SERIES["E96"] else UNLIKELY_SERIES
