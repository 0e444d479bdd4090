"""Flat film drops with five bands (tropical fish): two figures, zeros in pF, tolerance, volts."""

from __future__ import annotations

from repairlib.core.series import E_SERIES
from repairlib.markings.colours import FIGURES
from repairlib.markings.ranks import FILM_DROP_OR_RESISTOR, IN_FULL
from repairlib.markings.reading import Reading, percent_either_side
from repairlib.markings.value_codes import times

MEMORY = "from memory"
_PERCENT = {"black": "20", "white": "10", "green": "5", "red": "2", "brown": "1"}
_VOLTS = {"red": 250.0, "yellow": 400.0, "blue": 630.0}
_LEAST, _MOST = 1e-9, 2.3e-6  # F


def read_drop(text: str, bands: list[str], resistor_rank: int) -> list[tuple[int, Reading]]:
    """The reading of five bands from the top of a flat drop; none when they are no such bands.

    `resistor_rank` is the rank of the same bands on a resistor: as seen and sound, it stays first.
    """
    first, second, zeros, percent, volts = bands
    if percent not in _PERCENT or volts not in _VOLTS or zeros not in FIGURES:
        return []
    if first not in FIGURES or second not in FIGURES:
        return []
    figures = FIGURES.index(first) * 10 + FIGURES.index(second)
    farad = float(f"{figures}e{FIGURES.index(zeros) - 12}")
    if figures not in E_SERIES["E24"] or not _LEAST <= farad <= _MOST:
        return []
    tolerance = percent_either_side(_PERCENT[percent])
    why = f"On a flat drop: a capacitor. {figures} times {times(FIGURES.index(zeros))}, in pF; "
    why += f"{percent} is {tolerance}; {volts} at the end is {_VOLTS[volts]:g} V."
    reading = Reading(
        kind="film",
        text=text,
        quantity="capacitance",
        value=farad,
        unit="F",
        why=why,
        digits=2,
        tolerance=tolerance,
        carries={"rated_voltage": _VOLTS[volts]},
        sources=(MEMORY,),
    )
    resistor_first = resistor_rank == IN_FULL and volts == "red"
    return [(FILM_DROP_OR_RESISTOR if resistor_first else IN_FULL - 1, reading)]
