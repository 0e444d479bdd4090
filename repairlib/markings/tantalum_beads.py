"""Tantalum beads with colours: two figures, a spot for the power of ten in µF, volts by the leads.

The code was in use until about 1980 and is from memory. The plus is told by how the spot faces,
which words cannot say: it is looked for on the board and in the circuit.
"""

from __future__ import annotations

from repairlib.core.series import E_SERIES
from repairlib.markings.colours import FIGURES, bands_of
from repairlib.markings.ranks import BEAD_COLOURS, BEAD_COLOURS_OR_BANDS
from repairlib.markings.reading import Reading

_SPOTS = {"grey": -2, "white": -1, "black": 0, "brown": 1, "red": 2}
_VOLTS = {
    "white": 3.0,
    "yellow": 6.3,
    "black": 10.0,
    "green": 16.0,
    "blue": 20.0,
    "grey": 25.0,
    "pink": 35.0,
}
_LEAST, _MOST = 0.09e-6, 680e-6  # F
_PLUS = "It is polar: find the plus on the board and in the circuit, do not guess it from the spot."


def read_bead(text: str, pieces: list[str], part: str | None) -> list[tuple[int, Reading]]:
    """The reading of four colours from the top of a bead; none when they are no such colours.

    >>> read_bead("blue grey white black", [], None)[0][1].headline.replace("\\u00a0", " ")
    '6.8 µF, 10 V'
    """
    bands = bands_of(text)
    if len(bands) != 4 or not {bands[0], bands[1]} <= set(FIGURES):
        return []
    first, second, spot, volts = bands
    if spot not in _SPOTS or volts not in _VOLTS:
        return []
    figures = FIGURES.index(first) * 10 + FIGURES.index(second)
    farad = float(f"{figures}e{_SPOTS[spot] - 6}")
    if figures not in E_SERIES["E12"] or not _LEAST <= farad <= _MOST:
        return []
    why = f"On a tantalum bead, from the top: {figures}; the {spot} spot is times "
    why += f"{10 ** _SPOTS[spot]:g}, in µF; {volts} by the leads is {_VOLTS[volts]:g} V. {_PLUS}"
    reading = Reading(
        kind="tantalum",
        text=text,
        quantity="capacitance",
        value=farad,
        unit="F",
        why=why,
        digits=2,
        carries={"rated_voltage": _VOLTS[volts]},
        sources=("from memory",),
    )
    # grey and pink close no resistor and few inductors; the other colours do
    rank = BEAD_COLOURS if volts in ("white", "black", "grey", "pink") else BEAD_COLOURS_OR_BANDS
    return [(rank, reading)]
