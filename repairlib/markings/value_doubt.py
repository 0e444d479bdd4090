"""Doubt about a value that a resistor or inductor would have: out of range, or in no E series.

The ranges are common practice, drawn wide, for parts that carry a marking.
"""

from __future__ import annotations

from repairlib.core.quantity import engineering
from repairlib.core.series import E_SERIES

DOUBT = 100  # added to the rank of a doubtful reading
UNLIKELY = 8  # added where the series belongs to closer tolerances

# kind: (least, most, unit, name of many)
_RANGES = {
    "resistor": (1e-3, 1e10, "Ω", "resistors"),
    "chip-resistor": (1e-4, 10e6, "Ω", "marked chip resistors"),
    "inductor": (1e-9, 0.1, "H", "coded inductors"),
    "chip-inductor": (1e-10, 0.1, "H", "chip inductors"),
}
_CLOSE = 0.005  # fraction; E192 is for 0.5 % and better


def value_doubt(kind: str, value: float, figures: str, tolerance) -> tuple[str, int]:
    """(why such a value is doubtful or "", what to add to the rank of one that is only unlikely).

    `figures` are the figures as marked, `tolerance` is a Tolerance or None.

    >>> value_doubt("resistor", 4700.0, "47", None)
    ('', 0)
    >>> value_doubt("resistor", 5000.0, "50", None)[0]
    '50 is in no series from E3 to E24'
    """
    least, most, unit, many = _RANGES[kind]
    if not least * 0.999999 <= value <= most * 1.000001:
        between = f"{engineering(least, unit)} to {engineering(most, unit)}"
        return f"{engineering(value, unit)}: {many} are made from {between}", 0
    if kind == "chip-inductor":
        return "", 0  # radio-frequency parts are made in values between the series
    significant = figures.replace(".", "").strip("0")
    if len(significant) <= 2 and int(significant.ljust(2, "0")) in E_SERIES["E24"]:
        return "", 0
    if len(figures.replace(".", "").lstrip("0")) < 3:
        return f"{significant.ljust(2, '0')} is in no series from E3 to E24", 0
    three = int(significant.ljust(3, "0")[:3])
    if len(significant) > 3 or three not in E_SERIES["E192"]:
        return f"{significant} is in no E series", 0
    close = tolerance is not None and tolerance.high <= _CLOSE * 1.000001
    return "", 0 if close or three in E_SERIES["E96"] else UNLIKELY
