"""Power on its way through a lead and a plug: current and heat of the contacts, and what arrives.

It asks the three calculators beside it and adds up what they drop. One plug: current goes out by
one of its contacts and comes back by another.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.connectors.contact_resistance import contact_heat
from repairlib.connectors.contacts import FAMILIES, MOST_CONTACTS, OWN, contact_current
from repairlib.connectors.wire import GAUGE, wire_drop
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import OUTSIDE, OVER, WITHIN

_OHM = {"above": 0, "at_most": 10}
_CELSIUS = {"at_least": -60, "at_most": 200}


@calculator(
    topic="connectors",
    title="Power through a plug and its lead",
    sources=("common practice",),
    cautions=("heat and fire",),
)
def power_path(
    current: Annotated[float, Given("A", "In each contact and wire.", above=0, at_most=1e3)],
    gauge: Annotated[float, GAUGE],
    length: Annotated[float, Given("m", "Of the lead, one way.", above=0, at_most=1e4)],
    supply: Annotated[float, Given("V", "Where the lead begins.", above=0, at_most=1e3)],
    family: Annotated[str, Choice(FAMILIES, "What kind of contact.")] = OWN,
    contacts: Annotated[
        float, Given("", "Loaded at the same time.", at_least=1, at_most=MOST_CONTACTS)
    ] = 2.0,
    measured: Annotated[
        float | None, Given("Ω", "Of the worse contact, four wires, such as 120 mΩ.", **_OHM)
    ] = None,
    needs: Annotated[
        float | None, Given("V", "That the set needs at least.", above=0, at_most=1e3)
    ] = None,
    single: Annotated[
        float | None, Given("A", "Own rating of one contact alone.", above=0, at_most=100)
    ] = None,
    new: Annotated[
        float | None, Given("Ω", "Of a new contact, where no table states it.", **_OHM)
    ] = None,
    ambient: Annotated[float, Given("°C", "Of the air in the set.", **_CELSIUS)] = 40.0,
    temperature: Annotated[float, Given("°C", "Of the lead.", **_CELSIUS)] = 20.0,
) -> Found:
    """Whether contacts and lead carry a current, what turns to heat where, and what arrives.

    `current` in A, `length` in metres, `supply` and `needs` in V, resistances in Ω. With the family
    "own rating" give `single` and `new`, the figures of the maker's sheet. The verdict is "outside
    the limits" where contact_current, contact_heat or wire_drop say so, or where less arrives than
    the set needs. Raises RepairlibError as these do, and where nothing arrives. Source: as theirs.

    >>> out = power_path("3 A", 24, "1.5 m", "12 V", measured="0.12 Ω", single="5 A", new="30 mΩ")
    >>> out.drop_of_lead, out.drop_worn, out.arrives, out.verdict
    (757.9 mV, 360 mV, 10.79 V, 'outside the limits')
    """
    rating = {} if single is None else {"single": single}
    at_contact = contact_current(family, contacts, gauge, current, ambient, **rating)
    ohms = {"measured": measured, "new": new}
    ohms = {name: ohm for name, ohm in ohms.items() if ohm is not None}
    heat = contact_heat(current, family=family, gauge=gauge, **ohms)
    lead = wire_drop(gauge, length, current, supply, temperature)
    beyond_touch = "mains" in lead.cautions
    worn = heat.values.get("drop", heat.drop_new)
    arrives = supply - lead.drop - heat.drop_new - worn
    if arrives <= 0:
        wrong = "lead and contacts would take all of it"
        raise RepairlibError(brief(supply, "V"), wrong, "less current, or a better lead or contact")
    values: dict[str, object] = {
        "limit_of_contact": at_contact.limit,
        "rise_of_contact": at_contact.rise,
        "heat_new": heat.heat_new,
        "drop_new": heat.drop_new,
    }
    if measured is not None:
        values |= {"heat_worn": heat.heat, "drop_worn": heat.drop}
    values |= {
        "heat_of_lead": lead.heat,
        "drop_of_lead": lead.drop,
        "arrives": Quantity(arrives, "V", 4),
    }
    asked = (at_contact, heat, lead)
    wrong_with = [str(one.reason) for one in asked if one.verdict == OVER]
    if needs is not None and arrives < needs:
        wrong_with.append(f"{Quantity(arrives, 'V', 4)} arrive, {brief(needs, 'V')} are needed")
    return found(
        values,
        working=[
            *(step for one in asked for step in one.working),
            f"arrives: {brief(supply, 'V')} - {brief(lead.drop, 'V')} - "
            f"{brief(heat.drop_new, 'V')} - {brief(worn, 'V')} = {brief(arrives, 'V')}",
        ],
        verdict=OUTSIDE if wrong_with else WITHIN,
        reason="; ".join(wrong_with) or _fine(at_contact.reason, measured),
        notes=[
            *(lead.notes[:1] if beyond_touch else ()),
            "Brown or soft plastic, a pitted or a loose contact: replace both halves, whatever the "
            "figures say.",
            "One plug was counted, two contacts. A second plug in the lead adds two more.",
            *heat.notes,
        ],
        sources=[key for one in asked for key in one.sources],
        cautions=lead.cautions,
    )


def _fine(reason: object, measured: float | None) -> str:
    """Why nothing is outside; without a measured contact that holds for new ones only."""
    return f"{reason}" if measured is not None else f"with contacts as new: {reason}"
