"""Materials of boards, solders, mats and plastics: how they pass heat, and what they withstand.

The figures are typical, at room temperature, with the spread of the sources beside them in
`datasets/reference/heat-materials.csv`. What no source states is not in the table: the answer is
then "cannot tell".
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import read_table
from repairlib.heat.conduction import Stuff
from repairlib.heat.solder_alloys import alloy, fusion_heat

UNKNOWN, NONE = "unknown", "none"
MATS = ("silicone", "rubber", "vinyl", "wood", UNKNOWN)
PLASTICS = ("LCP", "PPS", "nylon 66", "PBT", "ABS", "PVC", "PTFE", NONE, UNKNOWN)
BOARDS = ("FR-4", "FR-4 mid Tg", "FR-4 high Tg")
WITHSTANDS, SOFTENS, BREAKS_DOWN = "withstands", "softens (Tg)", "breaks down (Td)"


class Figure(NamedTuple):
    """A number of the table in SI units (temperatures in °C), with its key of SOURCES."""

    value: float
    low: float
    high: float
    unit: str
    source: str


@cache
def figures() -> dict[tuple[str, str], Figure]:
    """Every figure by (material, property)."""
    table = {}
    for row in read_table("heat-materials"):
        value = float(row["value"])
        low, high = float(row["low"] or value), float(row["high"] or value)
        table[row["material"], row["property"]] = Figure(
            value, low, high, row["unit"], row["source"]
        )
    return table


def figure(material: str, what: str) -> Figure:
    """One figure. Raises RepairlibError naming the materials that have it.

    >>> figure("FR-4", "softens (Tg)").value
    135.0
    """
    table = figures()
    if (material, what) not in table:
        having = ", ".join(name for name, one in table if one == what)
        raise RepairlibError(material, f"no figure known for: {what}", having or "another property")
    return table[material, what]


def stuff(material: str) -> Stuff:
    """A material for computing conduction; FR-4 through the board.

    >>> stuff("copper")
    Stuff(conductivity=400.0, density=8933.0, heat_capacity=385.0)
    """
    table = figures()
    through = "conductivity through"
    conductivity = through if (material, through) in table else "conductivity"
    names = (conductivity, "density", "heat capacity")
    return Stuff(*(figure(material, name).value for name in names))


def bodies() -> tuple[str, ...]:
    """The materials that conduction can be computed for.

    >>> "copper" in bodies(), "LCP" in bodies()
    (True, False)
    """
    return tuple(name for name, what in figures() if what == "heat capacity")


def melting_heat_of(solder: str) -> tuple[float, float]:
    """Heat capacity [J/(kg K)] and heat of melting [J/kg] of a solder.

    Stated for Sn63Pb37 and SAC305; for others mixed by mass and brought down in the same ratio,
    because published heats of melting run below the mixture.

    >>> melting_heat_of("Sn63Pb37")
    (176.0, 37000.0)
    """
    made = alloy(solder)
    like = "Sn63Pb37" if made.leaded else "SAC305"
    stated = figure(like, "heat of melting").value
    ratio = fusion_heat(made.parts) / fusion_heat(alloy(like).parts)
    return figure(like, "heat capacity").value, stated * ratio


def mat_stuff(mat: str) -> Stuff:
    """The stuff of a mat by its short name; an unknown mat is computed as silicone, and judged not
    at all."""
    return stuff({"wood": "wood", UNKNOWN: "silicone mat"}.get(mat, f"{mat} mat"))


def withstands(name: str) -> Figure | None:
    """What a plastic or mat withstands in °C for a short time; None when no source states it.

    >>> withstands("silicone").value, withstands("unknown")
    (500.0, None)
    """
    table = figures()
    return table.get((name, WITHSTANDS)) or table.get((f"{name} mat", WITHSTANDS))
