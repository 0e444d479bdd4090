"""What a typed place says to the question of a chip tantalum, as the values of its calculator.

The way round is not among them: words name two nets and a mark, and a meter says which pad is
which.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.missing_parts.footprint import Footprint
from repairlib.missing_parts.place import Place
from repairlib.missing_parts.tantalum_cases import case_named, cases
from repairlib.missing_parts.tantalum_value import (
    AT_CHIPS,
    CONVERTER_IN,
    CONVERTER_OUT,
    ENTRY,
    NOT_KNOWN,
    REGULATOR_IN,
    REGULATOR_OUT,
)

LEAST, MOST = 10e-9, 10e-3  # F, of what a tantalum chip may be
LONGEST = 20e-3  # m, of its pads
_MARKS = {"plus": "plus sign", "bar": "white bar"}  # as a place says it, as the polarity rules do


def said_of_tantalum(place: Place) -> dict[str, object]:
    """The values of `missing_tantalum` that a typed place gives; without `rail` it cannot be asked.

    >>> from repairlib.missing_parts.place import read_place
    >>> said = said_of_tantalum(read_place(
    ...     "C? pads 1.4 x 2.8 mm, gap 1.2 mm, between +3.3 V and ground, at regulator output"))
    >>> said["rail"], said["place"], said["pad_length"], said["gap"]
    (3.3, 'regulator output', 0.0014, 0.0012)
    """
    said: dict[str, object] = {"place": _where(place)}
    volts = [net.volts for net in place.nets if net.is_rail and net.volts]
    rail = volts[0] if volts else place.volts
    if rail:
        said["rail"] = rail
    twin = place.twin
    if twin and twin.value is not None and twin.value.unit == "F" and not twin.in_circuit:
        said |= {"twin": float(twin.value)} if LEAST <= twin.value <= MOST else {}
    marks = [name for mark, name in _MARKS.items() if mark in place.marks]
    if marks:
        said["board_mark"] = marks[0]
    return said | _pads(place.footprint)


def _where(place: Place) -> str:
    """The place on the rail, by what the nets are called and what stands near."""
    roles = place.near.union(*(net.roles for net in place.nets))
    converter = "converter" in roles
    if "regulator output" in roles:
        return CONVERTER_OUT if converter else REGULATOR_OUT
    if "regulator input" in roles:
        return CONVERTER_IN if converter else REGULATOR_IN
    if "power input" in roles:
        return ENTRY
    return AT_CHIPS if roles & {"chip", "supply pin"} else NOT_KNOWN


def _pads(footprint: Footprint) -> dict[str, object]:
    """The pads where they were measured, else the case where its letter is only one case."""
    if footprint.pad and footprint.gap and max(*footprint.pad, footprint.gap) <= LONGEST:
        length, width = footprint.pad
        return {"pad_length": length, "gap": footprint.gap, "pad_width": width}
    try:
        case = footprint.case
        return {"case": case if case in cases() else case_named(case)} if case else {}
    except RepairlibError:  # several cases have that letter: the pads must tell
        return {}
