"""The limited supply for a first power-up: its limit, its steps, what to do without one.

A supply that limits its current is what stands between a mistake and a burning part.
"""

from __future__ import annotations

import math
from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge import QUALIFIED, by_voltage, hazards_at

LIMITED, LAMP, NEITHER = "limited bench supply", "lamp in series with the mains", "neither"
SUPPLIES = (LIMITED, LAMP, NEITHER)
HAND_ON = "hand on"
BEGIN_AMPERE = 0.1  # A, the limit to begin with; from memory
ABOVE_EXPECTED = 1.2  # "a little above" the expected current is from memory, 20 % a choice
AT_LIMIT = 0.95  # of the limit: from here on the supply counts as limiting; a choice
REGULATES = 0.5  # of the volts, from which a regulator may take all its current; a choice
SHARES = (0.25, 0.5, 0.75, 1.0)  # of the volts; that they are raised in steps is from memory
LEADS_OHM = 1.0  # Ω; less cannot be told from worn leads and a short with two wires
WITHOUT = {
    LAMP: "the mains side is licensed practice: a qualified person connects the lamp and the set",
    NEITHER: "nothing limits the current: hand the set to somebody who has a limited supply",
}


class Step(NamedTuple):
    """One step up: `volts` to set, `limit` in ampere, `most` in ampere that it may draw."""

    volts: float
    limit: float
    most: float


def steps_up(voltage: float, current: float) -> tuple[Step, ...]:
    """The steps from low volts to the set's own, each with its current limit.

    `voltage` of the set's supply in volts, above 0 to 60 V dc; `current` that it is expected to
    draw, in ampere, above 0. The first step has 100 mA or less, at so few volts that a sound set
    stays below. From half the volts on the limit is the last one: behind a regulator a sound set
    takes all its current as soon as that works. Source: 100 mA and raising in steps from memory;
    the shares are a choice. Raises RepairlibError outside the ranges.

    >>> [(step.volts, step.limit) for step in steps_up(12, 0.25)]
    [(3.0, 0.1), (6.0, 0.3), (9.0, 0.3), (12.0, 0.3)]
    >>> steps_up(12, 2.0)[0]
    Step(volts=0.5, limit=0.1, most=0.095)
    """
    if not (0 < voltage <= TOUCHABLE_DC and 0 < current < math.inf):
        read = f"{voltage:g} V, {current:g} A"
        raise RepairlibError(read, "not for these steps", f"above 0 to {TOUCHABLE_DC:g} V, some A")
    final = ABOVE_EXPECTED * current
    shares: tuple[float, ...] = SHARES
    if final * SHARES[0] > BEGIN_AMPERE:
        shares = (BEGIN_AMPERE / final, *SHARES)
    limits = [
        final if share >= REGULATES else min(final, max(BEGIN_AMPERE, final * share))
        for share in shares
    ]
    return tuple(
        Step(_tidy(voltage * share), _tidy(limit), _tidy(AT_LIMIT * limit))
        for share, limit in zip(shares, limits, strict=True)
    )


def short_below(voltage: float, current: float) -> float:
    """The ohms to ground below which a rail counts as shorted: its volts by its current limit.

    `voltage` of the rail in volts of either sign, `current` that it is expected to carry, in
    ampere. To three figures, and at least 1 Ω: two wires do not tell less from their leads.
    Source: Ohm's law; the threshold is a choice. Raises RepairlibError for 0 V and no current.

    >>> short_below(12, 0.5), short_below(-1.2, 10)
    (20.0, 1.0)
    """
    if not (voltage and math.isfinite(voltage) and 0 < current < math.inf):
        raise RepairlibError(f"{voltage:g} V, {current:g} A", "no rail", "a rail that carries some")
    return max(LEADS_OHM, float(f"{abs(voltage) / (ABOVE_EXPECTED * current):.3g}"))


def _tidy(value: float) -> float:
    """Without the dust of binary fractions."""
    return float(f"{value:.9g}")


@calculator(
    topic="power up",
    title="Current limit for a first power-up",
    sources=("from memory", "common practice"),
    cautions=("heat and fire", "flying leads and eyes"),
)
def current_limit(
    voltage: Annotated[
        float, Given("V", "Of the set's own supply, dc.", at_least=0.5, at_most=1000)
    ],
    current: Annotated[
        float, Given("A", "That the set should draw; on its label.", at_least=1e-3, at_most=100)
    ],
    have: Annotated[str, Choice(SUPPLIES, "What there is to limit it.")] = LIMITED,
) -> Found:
    """Where to set the limit of a bench supply, and the volts to raise it through, in steps.

    `voltage` in volts dc, `current` expected in ampere. Verdict "begin at ..."; "hand on" with
    neither supply nor lamp; a lamp, or more than 60 V dc, is left to a qualified person. Raises
    RepairlibError outside the ranges. Source: from memory and common practice.

    >>> finding = current_limit("12 V", "250 mA")
    >>> print(finding.verdict, "to", finding.last_limit)
    begin at 3 V with 100 mA to 300.0 mA
    """
    if have == NEITHER:
        return found({"expected": Quantity(current, "A")}, verdict=HAND_ON, reason=WITHOUT[NEITHER])
    left_to, why = (QUALIFIED, WITHOUT[LAMP]) if have == LAMP else by_voltage(voltage)
    if left_to == QUALIFIED:
        return found(
            {"expected": Quantity(current, "A")},
            verdict=left_to,
            reason=why,
            sources=() if have == LAMP else ("IEC 62368-1",),
            cautions=("mains", "stored charge", *hazards_at(voltage)),
        )
    steps = steps_up(voltage, current)
    first, last = steps[0], steps[-1]
    values: dict[str, object] = {
        f"step_{number}": f"{brief(step.volts, 'V')}, limit {brief(step.limit, 'A')}"
        for number, step in enumerate(steps, 1)
    }
    values["last_limit"] = Quantity(last.limit, "A", 4)
    working = [
        f"last limit: {ABOVE_EXPECTED:g} × {brief(current, 'A')} = {brief(last.limit, 'A')}",
        f"first limit: {brief(BEGIN_AMPERE, 'A')}, or the last where that is less",
        "from half the volts on the last limit: a regulator takes all its current once it works",
    ]
    notes = [
        "Set volts and limit with the output off. Read the current at every step before the next.",
        f"From {AT_LIMIT:.0%} of the limit on it counts as limiting: power off, find the cause. "
        "Never raise the limit to get past it.",
        "A converter on the board may take more at low volts, or not start: then its data sheet's "
        "least volts, or hand it on.",
        "100 mA and steps are from memory; 20 % above and the shares are a choice.",
    ]
    begin = f"begin at {brief(first.volts, 'V')} with {brief(first.limit, 'A')}"
    reason = "what is shorted or reversed gets no more than that"
    return found(values, working=working, verdict=begin, reason=reason, notes=notes)
