"""What the resistance of a contact costs: the heat in it and the volts across it, new and worn."""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.connectors.contacts import FAMILIES, OWN, PITCH_3
from repairlib.connectors.wire import GAUGE
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table
from repairlib.core.verdicts import OVER, WITHIN

_OHM = {"above": 0, "at_most": 10}


class New(NamedTuple):
    """The highest resistance [Ω] of a new contact, and the key of its source."""

    ohm: float
    source: str


def new_contact(family: str, gauge: float | None = None) -> New:
    """The highest resistance of a new contact of a family; of the 5.03 mm one by its wire.

    Without a gauge the highest of the family. Raises RepairlibError for a family or gauge that no
    document here states.

    >>> new_contact("3.00 mm pitch").ohm, new_contact("5.03 mm pin and socket", 18).ohm
    (0.01, 0.0035)
    """
    rows = [row for row in read_table("contact-resistance") if row["family"] == family]
    if not rows:
        known = dict.fromkeys(row["family"] for row in read_table("contact-resistance"))
        raise RepairlibError(family, "no resistance of a new contact is stated", ", ".join(known))
    if gauge is not None and rows[0]["awg"]:
        stated = [row for row in rows if float(row["awg"]) == gauge]
        if not stated:
            accepted = ", ".join(row["awg"] for row in rows)
            raise RepairlibError(f"{gauge:g} AWG", f"no such wire in {family}", accepted)
        rows = stated
    worst = max(rows, key=lambda row: float(row["most_mohm"]))
    return New(float(worst["most_mohm"]) / 1000, worst["source"])


@calculator(
    topic="connectors",
    title="Heat in a contact",
    sources=("common practice",),
    cautions=("heat and fire",),
)
def contact_heat(
    current: Annotated[float, Given("A", "In the one contact.", above=0, at_most=1e3)],
    measured: Annotated[
        float | None, Given("Ω", "Of the contact, four wires, such as 50 mΩ.", **_OHM)
    ] = None,
    family: Annotated[str, Choice(FAMILIES, "What kind of contact.")] = PITCH_3,
    gauge: Annotated[float | None, GAUGE] = None,
    new: Annotated[
        float | None, Given("Ω", "Of a new one, where no table states it.", **_OHM)
    ] = None,
) -> Found:
    """P = I² R and V = I R of a contact: a new one at its limit, and the one that was measured.

    `current` in A, resistances in Ω. What a new one may have stands in the table of the family, or
    is given as `new`. The verdict "over a limit" says that the measured one has more than a new
    one may have. Raises RepairlibError where no limit is stated. Source: Joule's law; makers'
    limits of a new contact.

    >>> worn = contact_heat("5 A", "50 mΩ")
    >>> worn.heat_new, worn.drop_new, worn.heat, worn.verdict
    (250 mW, 50 mV, 1.25 W, 'over a limit')
    """
    if new is not None:
        fresh = New(new, "common practice")  # as typed
    elif family == OWN:
        raise RepairlibError(OWN, "what a new contact has is missing", "new=10 mΩ")
    else:
        fresh = new_contact(family, gauge)
    values: dict[str, object] = {
        "new_at_most": Quantity(fresh.ohm, "Ω"),
        "heat_new": _rounded(current**2 * fresh.ohm, "W"),
        "drop_new": _rounded(current * fresh.ohm, "V"),
    }
    working = [_both("new", current, fresh.ohm)]
    notes = [
        "Measure with four wires and a known current: the leads of a two-wire meter have more than "
        "the contact.",
        "Heat takes the spring out of a contact, and the looser it is the hotter it gets.",
    ]
    sources = (fresh.source,)
    if measured is None:
        return found(values, working=working, notes=notes, sources=sources)
    values["heat"] = _rounded(current**2 * measured, "W")
    values["drop"] = _rounded(current * measured, "V")
    values["times_as_hot"] = Quantity(float(f"{measured / fresh.ohm:.3g}"), "")
    working.append(_both("measured", current, measured))
    worse = measured > fresh.ohm * (1 + 1e-9)
    reason = f"{brief(measured, 'Ω')} is {'' if worse else 'not '}above {brief(fresh.ohm, 'Ω')}"
    if worse:
        reason += ", a new one's most: replace both halves; cleaning does not bring the spring back"
    else:
        reason += ", a new one's most; verify with every contact of the housing"
    return found(
        values,
        working=working,
        verdict=OVER if worse else WITHIN,
        reason=reason,
        notes=notes,
        sources=sources,
    )


def _rounded(value: float, unit: str) -> Quantity:
    return Quantity(float(f"{value:.4g}"), unit)


def _both(name: str, ampere: float, ohm: float) -> str:
    return (
        f"{name}: I² R = ({brief(ampere, 'A')})² × {brief(ohm, 'Ω')} = "
        f"{brief(ampere**2 * ohm, 'W')}; I R = {brief(ampere * ohm, 'V')}"
    )
