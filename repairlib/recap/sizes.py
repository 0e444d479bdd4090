"""How large a new radial aluminium can usually is, and whether that fits a place on the board.

Typical sizes of ordinary 105 °C parts, most of them from memory: they tell where to look twice.
The data sheet of the part that is ordered decides. Axial and bipolar parts are not tabled.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from repairlib.core.tables import read_table
from repairlib.recap.board import Position

CHECK = "check the data sheet"


@dataclass(eq=False, slots=True)
class CanSize:
    """A radial can in mm: `diameter`, `length` (its height on the board), lead `spacing`."""

    diameter: float
    length: float
    spacing: float

    def __str__(self) -> str:
        return f"{self.diameter:g} × {self.length:g} mm, leads {self.spacing:g} mm"


@cache
def _table() -> tuple[tuple[float, float, CanSize], ...]:
    spacing = {
        float(row["diameter_mm"]): float(row["lead_spacing_mm"])
        for row in read_table("radial-lead-spacing")
    }
    rows = []
    for row in read_table("radial-can-sizes"):
        diameter = float(row["diameter_mm"])
        can = CanSize(diameter, float(row["length_mm"]), spacing[diameter])
        rows.append((float(row["c_uf"]), float(row["volts"]), can))
    return tuple(sorted(rows, key=lambda row: row[:2]))


def typical_can(farad: float, volts: float) -> CanSize | None:
    """The usual can for that capacitance [F] and rating [V], or None beyond the table.

    A value between two rows gets the can of the larger one.

    >>> print(typical_can(100e-6, 16))
    5 × 11 mm, leads 2 mm
    """
    for microfarad, rating, can in _table():
        if microfarad * 1.000001e-6 >= farad and rating >= volts:
            return can
    return None


def fit(can: CanSize | None, place: Position) -> tuple[bool | None, str]:
    """Whether the can goes into the place, and why; None when nobody can tell from here.

    Leads may be spread to wider holes, never squeezed into narrower ones (common practice).

    >>> fit(typical_can(1000e-6, 25), Position("C1", max_height_mm=16))
    (False, 'usually 20 mm high, the board has room for 16 mm')
    """
    limits = (place.max_diameter_mm, place.max_height_mm, place.spacing_mm)
    if limits == (None, None, None):
        return None, f"nobody measured the room on the board: {CHECK}"
    if can is None:
        return None, f"no usual size known: measure the old part and {CHECK}"
    obstacle = obstacle_to(can.diameter, can.length, can.spacing, place)
    if obstacle:
        return False, f"usually {obstacle}"
    leads = f"leads {can.spacing:g} mm"
    if place.spacing_mm is not None and can.spacing < place.spacing_mm - 0.1:
        leads += f" spread to {place.spacing_mm:g} mm"
    return True, f"usual size fits ({can.diameter:g} × {can.length:g} mm, {leads}): {CHECK}"


def obstacle_to(
    diameter: float | None, length: float | None, spacing: float | None, place: Position
) -> str:
    """Why an upright can of that size [mm] does not go into the place; "" when nothing says so.

    >>> obstacle_to(10, 20, 5, Position("C1", max_height_mm=16))
    '20 mm high, the board has room for 16 mm'
    """
    if place.max_height_mm is not None and length is not None and length > place.max_height_mm:
        return f"{length:g} mm high, the board has room for {place.max_height_mm:g} mm"
    if (
        place.max_diameter_mm is not None
        and diameter is not None
        and diameter > place.max_diameter_mm
    ):
        return f"{diameter:g} mm in diameter, the board has room for {place.max_diameter_mm:g} mm"
    if place.spacing_mm is not None and spacing is not None and spacing > place.spacing_mm + 0.1:
        return f"made with leads {spacing:g} mm apart, the holes are {place.spacing_mm:g} mm apart"
    return ""
