"""Two solders meet: what the joint is made of, where it melts, and when it goes soft in service.

Old solder left on a pad mixes with the new. Most mixtures only melt over a wider range. Lead
with bismuth is another matter: a part of the joint may melt near 95 °C, below the boiling point of
water and within reach of a warm set. The parents' melting points are then never reported.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity
from repairlib.heat.phase_diagrams import DIAGRAMS, liquidus, solidus
from repairlib.heat.solder_alloys import (
    Alloy,
    alloy,
    alloy_name,
    alloy_names,
    alloys,
    has_lead,
    in_words,
)

LEAD_BISMUTH_CELSIUS = 95.0  # measured 95.3 ± 0.5; 96 and 98.0 in other sources
TRACE = 0.1  # wt %, left out when a diagram of two metals is used
_MIXED = ("Sn", "Pb", "Bi", "Ag", "Cu", "In", "Sb")  # metals whose low eutectics the table holds
_REWORK = "remove all old solder with braid, clean the pad, then use one solder only"
RINSE = (
    "braid it off, flood the pads with the solder that the joint will get, braid that off too: "
    "twice or more"
)


def mix(first: dict[str, float], first_mass: float, second: dict[str, float], second_mass: float):
    """Composition [wt %] of two solders melted together; masses in one unit, not both 0.

    Raises RepairlibError for a negative mass or none at all.

    >>> mix({"Sn": 63, "Pb": 37}, 10, {"Bi": 58, "Sn": 42}, 30)
    {'Sn': 47.25, 'Pb': 9.25, 'Bi': 43.5}
    """
    total = first_mass + second_mass
    if not (first_mass >= 0 and second_mass >= 0 and 1e-12 <= total <= 1e12):
        accepted = "masses from 0, together 1e-12 to 1e12"
        raise RepairlibError((first_mass, second_mass), "not two masses", accepted)
    metals = dict.fromkeys([*first, *second])
    return {
        one: (first.get(one, 0) * first_mass + second.get(one, 0) * second_mass) / total
        for one in metals
    }


def soft_from(parts: dict[str, float]) -> float | None:
    """The temperature [°C] from which a mixed joint may hold liquid; None: cannot tell.

    Lead and bismuth, however little: 95 °C. Two metals with a diagram: its solidus. Else the lowest
    solidus among the solders of the table that need no other metal: an estimate.

    >>> soft_from({"Sn": 47.25, "Pb": 9.25, "Bi": 43.5})
    95.0
    >>> soft_from({"Sn": 90.9, "Pb": 6.2, "Ag": 2.5, "Cu": 0.4})
    179.0
    """
    present = {one for one, share in parts.items() if share > 0}
    known_lower = _lowest_solidus(present)
    if {"Pb", "Bi"} <= present:
        return min(LEAD_BISMUTH_CELSIUS, known_lower or LEAD_BISMUTH_CELSIUS)
    binary = _binary(parts)
    if binary:
        return solidus(*binary)
    return known_lower if present <= set(_MIXED) else None


@calculator(
    topic="heat",
    title="Two solders meet",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux"),
)
def solders_meet(
    old: Annotated[str, Choice(alloy_names, "The solder left on the pad.", alloy_name)],
    old_mm3: Annotated[float, Given("", "How much of it, in mm³.", at_least=0, at_most=1e6)],
    new: Annotated[str, Choice(alloy_names, "The solder added.", alloy_name)],
    new_mm3: Annotated[float, Given("", "How much of it, in mm³.", at_least=0, at_most=1e6)],
) -> Found:
    """The joint that two solders make, from their volumes in mm³ and their densities.

    Volumes from 0 to 1e6 mm³, not both 0. Verdict "rework" for lead with bismuth, "cannot tell" for
    metals without published mixtures here, else "one to note". Raises RepairlibError for unknown
    solders. Source: densities and melting points of the table solder-alloys, phase diagrams.

    >>> joint = solders_meet("Sn63Pb37", 0.1, "Bi58Sn42", 0.4)
    >>> joint.verdict, joint.stay_below
    ('rework', 95 °C)
    """
    left, added = alloy(old), alloy(new)
    masses = old_mm3 * left.density, new_mm3 * added.density
    steps = [
        f"{one.name}: {volume:g} mm³ × {one.density:g} mg/mm³ = {mass:.4g} mg"
        for one, volume, mass in ((left, old_mm3, masses[0]), (added, new_mm3, masses[1]))
    ]
    return _meeting(left, added, *masses, steps)


@calculator(
    topic="heat",
    title="Two solders meet, by mass",
    sources=("from memory",),
    cautions=("hot tools", "fumes and flux"),
)
def solders_meet_by_mass(
    old: Annotated[str, Choice(alloy_names, "The solder left on the pad.", alloy_name)],
    old_mass: Annotated[
        float, Given("kg", "How much of it, such as 10 mg.", at_least=0, at_most=1)
    ],
    new: Annotated[str, Choice(alloy_names, "The solder added.", alloy_name)],
    new_mass: Annotated[
        float, Given("kg", "How much of it, such as 30 mg.", at_least=0, at_most=1)
    ],
) -> Found:
    """The joint that two solders make, from their masses in kg, 0 to 1 kg, not both 0.

    As `solders_meet`.

    >>> solders_meet_by_mass("SAC305", "50 mg", "Sn63Pb37", "10 mg").composition
    'Sn 90.92, Pb 6.167, Ag 2.5, Cu 0.4167 wt %'
    """
    return _meeting(alloy(old), alloy(new), old_mass, new_mass, [])


def _meeting(left: Alloy, added: Alloy, left_mass: float, added_mass: float, steps: list[str]):
    parts = mix(left.parts, left_mass, added.parts, added_mass)
    one = left.name == added.name and not {"Pb", "Bi"} <= set(parts)
    soft = left.solidus if one else soft_from(parts)
    values = {"composition": in_words(parts)}
    values |= {"stay_below": Quantity(round(soft, 1), "°C")} if soft is not None else {}
    values["all_liquid"] = _all_liquid(parts, left, added)
    verdict, reason, notes, sources = _judged(parts, left, added, soft)
    steps = [*steps, "each metal: its mass in both solders over the whole mass"]
    lead = ("lead",) if has_lead(parts) else ()
    origin = (left.source, added.source, *sources)
    return found(
        values,
        working=steps,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=origin,
        cautions=lead,
    )


def _judged(parts, left: Alloy, added: Alloy, soft: float | None):
    if parts.get("Pb", 0) > 0 and parts.get("Bi", 0) > 0:
        reason = f"lead and bismuth in one joint: part of it may melt from {soft:.4g} °C; {_REWORK}"
        notes = [
            "Followed: 95 °C, the lowest. Measured 95.3 ± 0.5 °C; other sources 96 °C and, "
            "calculated, 98.0 °C.",
            "A maker's paper on Bi-Sn-Ag: not where lead is present in finishes.",
            f"To rinse: {RINSE}. Never put lead on a joint that keeps bismuth solder.",
        ]
        sources = ("lead in Sn-Bi", "bismuth lexicon", "NIST Bi-Pb-Sn")
        return "rework", reason, notes, (*sources, "low temperature solder paper")
    if soft is None:
        reason = f"no published mixtures of {in_words(parts)} here; {_REWORK}"
        return "cannot tell", reason, [], ()
    binary = _binary(parts)
    if left.name == added.name:
        return "one solder", "old and new are the same", [], ()
    if binary:
        diagram = DIAGRAMS[binary[0]]
        reason = f"melts from {soft:.4g} °C; write the mixture down"
        return "one to note", reason, [diagram.note], diagram.sources
    reason = f"may hold liquid from about {soft:.4g} °C; write it down, or {_REWORK}"
    notes = ["An estimate: the lowest solidus among solders of the table made of these metals."]
    return "one to note", reason, notes, ()


def _all_liquid(parts: dict[str, float], left: Alloy, added: Alloy) -> str:
    binary = _binary(parts)
    if left.name == added.name:
        return f"{left.liquidus:.4g} °C"
    if binary:
        return f"about {liquidus(*binary):.0f} °C"
    hottest = max(left.liquidus, added.liquidus)
    return f"cannot tell from a diagram; the higher of the two solders needs {hottest:g} °C"


def _binary(parts: dict[str, float]) -> tuple[str, float] | None:
    """The diagram and its wt % for a joint of two metals, traces left out."""
    present = {one for one, share in parts.items() if share >= TRACE}
    for system, diagram in DIAGRAMS.items():
        if present in ({diagram.axis, diagram.other}, {"Sn"}):
            both = parts.get(diagram.axis, 0) + parts.get(diagram.other, 0)
            return system, min(100 * parts.get(diagram.axis, 0) / both, 100.0)
    return None


def _lowest_solidus(present: set[str]) -> float | None:
    return min(
        (one.solidus for one in alloys().values() if set(one.parts) <= present), default=None
    )
