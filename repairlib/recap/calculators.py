"""Calculators of the recap: one old capacitor to its replacement, by the planner's rules."""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity
from repairlib.recap import words
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.ratings import doubts_of_value
from repairlib.recap.rules import REPLACE, RULES, decide


@calculator(
    topic="recap",
    title="What to fit for an old capacitor",
    sources=("common practice",),
    cautions=("stored charge",),
)
def replacement_capacitor(
    capacitance: Annotated[
        float, Given("F", "The marked capacitance of the old part.", at_least=1e-13, at_most=1)
    ],
    rated_voltage: Annotated[
        float, Given("V", "The marked rated voltage of the old part.", above=0, at_most=1e5)
    ],
    kind: Annotated[str, Choice(words.KINDS, "What the old part is; look at it.")],
) -> Found:
    """What the recap planner proposes for one old capacitor, with the rules it used.

    `capacitance` in farad, 0.1 pF to 1 F; `rated_voltage` in volts, above 0; `kind` one of
    words.KINDS. The verdict is "replace", "keep", "judge" or "hold". Source: common practice, each
    rule is in recap.rules. Raises RepairlibError for values outside these ranges.

    >>> old = ("25 µF", "15 V", "aluminium electrolytic")
    >>> print(replacement_capacitor(*old))  # doctest: +ELLIPSIS
    What to fit for an old capacitor: replace (...); capacitance 22 µF; rated voltage 16 V; ...
    """
    doubts = doubts_of_value(capacitance, [rated_voltage], kind, set())
    old = Capacitor(capacitance, rated_voltage, kind, doubts=tuple(doubts))
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
    ripple = (RULES["ripple and ESR"][0],) if wet else ()
    working = [f"{name}: {what}" for name, what in rules] or [RULES[decision.rule][0]]
    return found(
        values,
        working=working,
        verdict=decision.verdict,
        reason=decision.why.rstrip("."),
        notes=(*decision.looks, *ripple),
        cautions=decision.cautions,
    )
