"""Calculators of the recap: one old capacitor to its replacement, by the planner's rules."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity
from repairlib.recap import words
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.place_words import read_place
from repairlib.recap.places import PLACES, hazards_there
from repairlib.recap.ratings import doubts_of_value
from repairlib.recap.rules import REPLACE, RULES, decide

ANYWHERE = "not known"


@calculator(
    topic="recap",
    title="What to fit for an old capacitor",
    sources=("common practice",),
    cautions=("stored charge",),
)
def replacement_capacitor(
    capacitance: Annotated[
        float, Given("F", "The marked capacitance of the old part.", at_least=1e-13, at_most=400)
    ],
    rated_voltage: Annotated[
        float, Given("V", "The marked rated voltage of the old part.", above=0, at_most=1e5)
    ],
    kind: Annotated[str, Choice(words.KINDS, "What the old part is; look at it.")],
    place: Annotated[
        str,
        Choice((ANYWHERE, *PLACES), "Where it works, or a list's words for it.", read_place),
    ] = ANYWHERE,
) -> Found:
    """What the recap planner proposes for one old capacitor, with the rules it used.

    `capacitance` in farad, 0.1 pF to 400 F; `rated_voltage` in volts, above 0; `kind` one of
    words.KINDS; `place` one of places.PLACES, words that name one, or "not known". The verdict is
    "replace", "keep", "judge" or "hold". Source: common practice, each rule is in recap.rules.
    Raises RepairlibError for values outside these ranges.

    >>> old = ("25 µF", "15 V", "aluminium electrolytic")
    >>> print(replacement_capacitor(*old))  # doctest: +ELLIPSIS
    What to fit for an old capacitor: replace (...); capacitance 22 µF; rated voltage 16 V; ...
    """
    places = () if place == ANYWHERE else (place,)
    doubts = doubts_of_value(capacitance, kind)
    old = Capacitor(capacitance, rated_voltage, kind, doubts=doubts, places=places)
    decision = decide(old)
    proposal = decision.proposal
    values = {}
    film = proposal is not None and proposal.kind == words.FILM
    if proposal:
        values = {
            "capacitance": Quantity(proposal.farad, "F"),
            "rated_voltage": Quantity(proposal.volts, "V"),
            "polarity": "none" if film else "polar" if proposal.polar else "bipolar",
        }
        values |= {"kind": proposal.kind} if film else {"temperature_rating": Quantity(105, "°C")}
    rules = proposal.rules if proposal else ()
    wet = decision.verdict == REPLACE and proposal is not None and proposal.polar
    ripple = (RULES["ripple and ESR"][0],) if wet and not places else ()
    in_metal = (f"In a metal case? {RULES['wet tantalum'][0]}",) if kind == words.TANTALUM else ()
    working = [f"{name}: {what}" for name, what in rules] or [RULES[decision.rule][0]]
    return found(
        values,
        working=working,
        verdict=decision.verdict,
        reason=decision.why.rstrip("."),
        notes=(*decision.at_place, *decision.looks, *ripple, *in_metal),
        cautions=(*decision.cautions, *hazards_there(places)),
    )
