"""The power of an expansion slot with its auxiliary cables: what may be drawn, and each contact."""

from __future__ import annotations

from functools import cache
from typing import Annotated, NamedTuple

from repairlib.connectors.contacts import PITCH_4, limit
from repairlib.connectors.wire import GAUGE, HOTTEST, ohm_per_metre
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.core.verdicts import OVER, WITHIN

VOLTS = 12.0
NONE = "none"
CABLES: dict[str, tuple[str, ...]] = {
    NONE: (),
    "6-pin": ("6-pin",),
    "8-pin": ("8-pin",),
    "two 6-pin": ("6-pin", "6-pin"),
    "6-pin and 8-pin": ("6-pin", "8-pin"),
    "12+4-pin": ("12+4-pin",),
}


class Plug(NamedTuple):
    """An auxiliary plug: W that it is made for, its 12 V contacts, contacts of its housing.

    `handbook` is the current of each contact [A] that the handbook takes, None where it states
    none.
    """

    watts: float
    contacts: int
    housing: int
    handbook: float | None
    source: str


@cache
def plugs() -> dict[str, Plug]:
    """The auxiliary plugs by name.

    >>> plugs()["8-pin"].watts, plugs()["8-pin"].contacts
    (150.0, 3)
    """
    return {
        row["item"]: Plug(
            float(row["watts"]),
            int(row["contacts"]),
            int(row["housing"]),
            float(row["handbook_a"]) if row["handbook_a"] else None,
            row["source"],
        )
        for row in read_table("slot-power")
        if row["contacts"]
    }


def slot() -> dict[str, str]:
    """The row of the slot itself."""
    return next(row for row in read_table("slot-power") if row["item"] == "slot")


def budget(auxiliary: str) -> float:
    """W that a card may draw from the slot and these cables. Raises RepairlibError for others.

    >>> budget("none"), budget("6-pin"), budget("8-pin"), budget("6-pin and 8-pin")
    (75.0, 150.0, 225.0, 300.0)
    """
    if auxiliary not in CABLES:
        raise RepairlibError(auxiliary, "no auxiliary cables known here", ", ".join(CABLES))
    return float(slot()["watts"]) + sum(plugs()[name].watts for name in CABLES[auxiliary])


@calculator(
    topic="connectors",
    title="Power of an expansion slot",
    sources=("PCI Express slot, quoted", "PC hardware handbook"),
    cautions=("heat and fire",),
)
def slot_power(
    power: Annotated[float, Given("W", "That the card draws at most.", above=0, at_most=2e3)],
    auxiliary: Annotated[str, Choice(tuple(CABLES), "Cables from the supply.")] = NONE,
    gauge: Annotated[float, GAUGE] = 18.0,
    length: Annotated[float, Given("m", "Of the cable, one way.", above=0, at_most=10)] = 0.6,
) -> Found:
    """What slot and auxiliary cables give a card, and what each 12 V contact then carries.

    `power` in W, `length` in metres, `gauge` of the cable's wires. The cables are taken at what
    they are made for, or at the rest of a larger load. The verdict is "over a limit" above the
    budget or above the table of contacts; where there is no table, above 3 W in a metre of one
    wire. Raises RepairlibError for gauges without a table. Source: the slot as an encyclopaedia is
    quoted, the plugs by a PC handbook, contacts by a maker's table; 3 W is common practice.

    >>> out = slot_power("200 W", "8-pin")
    >>> out.budget, out.each_contact, out.contacts_carry, out.verdict
    (225 W, 4.167 A, 252 W, 'within the limits')
    """
    whole, own = budget(auxiliary), float(slot()["watts"])
    values: dict[str, object] = {"budget": Quantity(whole, "W"), "slot_alone": Quantity(own, "W")}
    working = [f"slot {own:g} W ({slot()['note']})"]
    notes: list[str] = []
    sources: list[str] = []
    over = [f"{brief(power, 'W')} is above {whole:g} W, slot and cables"] if power > whole else []
    cables = CABLES[auxiliary]
    share = max(1.0, (power - own) / (whole - own)) if cables else 0.0
    busiest = 0.0
    for name in dict.fromkeys(cables):
        plug = plugs()[name]
        watts = plug.watts * share
        each = watts / VOLTS / plug.contacts
        drop = 2 * length * ohm_per_metre(gauge) * each
        working.append(
            f"{name}: {brief(watts, 'W')} / {VOLTS:g} V / {plug.contacts} contacts = "
            f"{brief(each, 'A')} each; the cable drops {brief(drop, 'V')} out and back"
        )
        sources.append(plug.source)
        if each > busiest:
            busiest = each
            values["each_contact"] = Quantity(each, "A", 4)
            values["drop_of_cable"] = Quantity(drop, "V", 4)
        if plug.handbook is None:
            notes.append(
                f"{name}: no table of its contacts was read, and {brief(each, 'A')} each leaves "
                "little room. The supply maker's cable only, pushed fully home, no sharp bend."
            )
            heat = each**2 * ohm_per_metre(gauge)
            if heat > HOTTEST:
                metre = f"{brief(heat, 'W')} in a metre of each wire"
                over.append(f"{name}: {metre} is above {HOTTEST:g} W")
            continue
        most = limit(PITCH_4, plug.housing, gauge)
        carry = most.ampere * plug.contacts * VOLTS
        if each == busiest:
            values["contacts_carry"] = Quantity(carry, "W")
        working += [
            *most.why,
            f"{plug.contacts} × {most.ampere:g} A × {VOLTS:g} V = {carry:g} W; the handbook takes "
            f"{plug.handbook:g} A: {handbook_watts(name):g} W",
        ]
        sources += most.sources
        if each > most.ampere:
            over.append(f"{name}: {brief(each, 'A')} in each contact is above {most.ampere:g} A")
    if "8-pin" in cables:
        notes.append(
            "Sources disagree: a handbook takes 8 A for each contact in any housing, the maker's "
            "table 7 A in one of 7 to 10. The lower one is followed."
        )
        notes.append(
            "The 8-pin plug of the processor fits by force and puts 12 V to ground: compare the "
            "keys."
        )
    notes.append("What a contact can carry is no leave to draw it: the budget decides.")
    reason = "; ".join(over) or f"{brief(power, 'W')} is not above {whole:g} W, slot and cables"
    if over:
        reason += ": slot, plug or cable burns"
    return found(
        values,
        working=working,
        verdict=OVER if over else WITHIN,
        reason=reason,
        notes=notes,
        sources=sources,
    )


def handbook_watts(name: str) -> float:
    """W that a plug carries by the handbook's current for each contact; 0 where it states none.

    >>> handbook_watts("6-pin"), handbook_watts("8-pin")
    (192.0, 288.0)
    """
    plug = plugs()[name]
    return (plug.handbook or 0.0) * plug.contacts * VOLTS
