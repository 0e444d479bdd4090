"""Torn pads, lands, barrels and tracks: which wire mends them, and how much current it carries.

The current is the cautious one of the usual rules, 1 A for 700 circular mils, and the wire no
thicker than the place can hold. What needs more is not mended with a wire.
"""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.connectors.wire import CIRCULAR_MILS, cautious_current, diameter, mils, ohm_per_metre
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.core.verdicts import NEVER
from repairlib.stored_charge import QUALIFIED

GAUGES = (30, 28, 26, 24, 22, 20)  # sold as hook-up and wrapping wire, thin to thick
LOW, MAINS = "low voltage", "mains side"


class Repair(NamedTuple):
    """How a kind of damage is mended, and the thickest wire [AWG] that its place can hold."""

    thickest: int
    how: str
    source: str


@cache
def repairs() -> dict[str, Repair]:
    """Kinds of damage, and how each is mended.

    >>> repairs()["torn barrel"].thickest
    22
    """
    return {
        row["damage"]: Repair(int(row["thickest_awg"]), row["repair"], row["source"])
        for row in read_table("pad-repairs")
    }


def wire_for(ampere: float, damage: str) -> int | None:
    """The thinnest usual gauge that carries a current in A there; None where none can.

    >>> wire_for(0.5, "torn barrel"), wire_for(3, "torn barrel")
    (24, None)
    """
    if damage not in repairs():
        raise RepairlibError(damage, "not a kind of damage known here", ", ".join(repairs()))
    for awg in GAUGES:
        if cautious_current(awg) >= ampere:
            return awg if awg >= repairs()[damage].thickest else None
    return None


@calculator(
    topic="connectors",
    title="Wire link for a torn pad",
    sources=("common practice", "wire gauge formula"),
    cautions=("hot tools", "fumes and flux"),
)
def link_wire(
    current: Annotated[float, Given("A", "That the link has to carry.", above=0, at_most=100)],
    damage: Annotated[str, Choice(lambda: tuple(repairs()), "What is torn.")],
    length: Annotated[float, Given("m", "Of the wire.", above=0, at_most=1)] = 0.03,
    where: Annotated[str, Choice((LOW, MAINS), "Which side of the supply.")] = LOW,
) -> Found:
    """The wire that mends a torn pad, land, barrel or track, and what it carries.

    `current` in A, `length` in metres. The verdict is the gauge; "do not" where a wire that the
    place can hold does not carry the current; on the mains side it is left to a qualified person.
    Raises RepairlibError outside the ranges. Source: common practice, 1 A for 700 circular mils.

    >>> link = link_wire("0.5 A", "torn barrel")
    >>> link.verdict, link.carries
    ('24 AWG', 577 mA)
    """
    repair = repairs()[damage]
    if where == MAINS:
        reason = "a mended track on the mains side takes the distances and the fire rating away"
        return found(
            {"damage": damage},
            verdict=QUALIFIED,
            reason=reason,
            sources=(repair.source,),
            cautions=("mains", "heat and fire"),
        )
    most = cautious_current(repair.thickest)
    rule = f"1 A for {CIRCULAR_MILS} circular mils"
    working = [f"{repair.thickest} AWG is the thickest wire there: {rule} = {brief(most, 'A')}"]
    awg = wire_for(current, damage)
    if awg is None:
        reason = (
            f"{brief(current, 'A')} is more than {brief(most, 'A')}, what a wire at that place "
            "carries: a new board or connector, or somebody who rebuilds tracks"
        )
        return found(
            {"carries_at_most": Quantity(most, "A", 3)},
            working=working,
            verdict=NEVER,
            reason=reason,
            sources=(repair.source,),
            cautions=("heat and fire",),
        )
    carries, ohm = cautious_current(awg), ohm_per_metre(awg) * length
    working.append(f"{awg} AWG: ({mils(awg):.3g} mil)² / {CIRCULAR_MILS} A")
    working.append(f"it drops {brief(ohm, 'Ω')} × {brief(current, 'A')}")
    values = {
        "carries": Quantity(carries, "A", 3),
        "diameter": Quantity(diameter(awg), "m", 3),
        "drop": Quantity(ohm * current, "V", 3),
        "how": repair.how,
    }
    notes = [
        "Insulated solid wire, the shortest way along the old track, no loop in the air, glued.",
        "A link in place of a fuse, a fusible resistor or a burnt track hides the fault: find what "
        "burnt it first.",
        "A wire is no match for a pair of fast data lines: there it changes the signal.",
        f"Above {TOUCHABLE_DC:g} V dc it is for a qualified person, as on the mains side.",
    ]
    return found(
        values,
        working=working,
        verdict=f"{awg} AWG",
        reason=f"it carries {brief(float(f'{carries:.3g}'), 'A')} by {rule}; verify it with the "
        "meter, and that it stays cool under load",
        notes=notes,
        sources=(repair.source,),
        cautions=("heat and fire",),
    )
