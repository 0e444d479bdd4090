"""The wrist strap and the person in it: why 1 MΩ is there, and when the strap must come off."""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.limits import ES1, STEADY
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge import QUALIFIED, ac_limits, steady_dc

STRAP_OHM = 1e6
OFF_FROM = 250.0  # V, exposed circuits (TR20.20-2008)
BARE_BODY = 1500.0  # Ω from hand to hand, a round figure from memory
DC, AC = "dc", "ac rms"
OFF = f"strap off while it is live; {QUALIFIED}"
ON = "strap may stay on"
_ES1_AMPERE = STEADY[ES1].ac_rms_current  # rms, at 50 or 60 Hz


@calculator(
    topic="esd",
    title="Current through a wrist strap",
    sources=("common practice", "IEC 62368-1"),
    cautions=("mains",),
)
def strap_current(
    voltage: Annotated[
        float, Given("V", "Of the live part that is touched.", at_least=0, at_most=1e5)
    ],
    resistance: Annotated[
        float, Given("Ω", "Of strap and cord.", at_least=0, at_most=1e12)
    ] = STRAP_OHM,
) -> Found:
    """I = V / R: what flows through a person who wears a strap and touches a live part.

    `voltage` in volts (rms for ac), `resistance` of strap and cord in ohm. The body is left out
    beside 1 MΩ, as usual; with less than 100 kΩ it is added as 1500 Ω. Raises RepairlibError
    outside the ranges. Source: Ohm's law; 0.5 mA rms is ES1 of IEC 62368-1; the body's resistance
    is from memory.

    >>> print(strap_current("250 V"))  # doctest: +ELLIPSIS
    Current through a wrist strap: do not touch (250 µA ...; current 250 µA; without strap ...
    """
    body = BARE_BODY if resistance < 100e3 else 0.0
    ampere = voltage / (resistance + body)
    bare = voltage / BARE_BODY
    working = [
        f"I = V / R = {brief(voltage, 'V')} / {brief(resistance + body, 'Ω')} = "
        f"{brief(ampere, 'A')}",
        f"with a bare wire instead: {brief(voltage, 'V')} / 1500 Ω = {brief(bare, 'A')}",
    ]
    size = "above" if ampere > _ES1_AMPERE else "not above"
    reason = (
        f"{brief(ampere, 'A')} is {size} 0.5 mA rms, ES1 of IEC 62368-1; the strap is no "
        "protection against mains, and a strap can be shorted"
    )
    values = {"current": Quantity(ampere, "A", 3), "without_strap_resistor": Quantity(bare, "A", 3)}
    notes = ["1500 Ω for the body is from memory: skin, damp and voltage change it."]
    return found(
        values,
        working=working,
        verdict="do not touch",
        reason=reason,
        notes=notes,
        sources=("from memory",),
    )


@calculator(
    topic="esd",
    title="Wrist strap on or off",
    sources=("ESD TR20.20-2008, quoted", "IEC 62368-1"),
    cautions=("mains", "stored charge", "high-voltage tubes"),
)
def strap_on_or_off(
    voltage: Annotated[
        float, Given("V", "The highest that is bare on the bench.", at_least=0, at_most=1e6)
    ],
    kind: Annotated[str, Choice((DC, AC), "Direct, or the rms of a sine.")],
    frequency: Annotated[float, Given("Hz", "For ac.", at_least=1, at_most=1e9)] = 50.0,
) -> Found:
    """Whether a strap must come off before bare live parts: it ties a person to ground.

    `voltage` in volts, dc or rms; of a sine the peak counts. Above ES1 of IEC 62368-1 the strap is
    off while the part is live and a qualified person makes it dead; from 250 V on the ESD handbook
    has it off too. Raises RepairlibError outside the ranges. Source: TR20.20-2008 as quoted in an
    ESD question and answer: not for exposed circuits of 250 V or more; that the peak counts is a
    choice made here.

    >>> strap_on_or_off("230 V", "ac rms").verdict
    'strap off while it is live; leave it to a qualified person'
    """
    peak = voltage * math.sqrt(2) if kind == AC else voltage
    es1 = steady_dc()[0] if kind == DC else ac_limits(frequency)[0]
    working = [f"es1 {brief(es1, 'V')} {kind}"]
    if kind == AC:
        working.insert(0, f"peak = √2 × {brief(voltage, 'V')} = {brief(peak, 'V')}")
    notes = [
        "The peak of a sine is compared with 250 V: a choice made here. The source does not say.",
        "Picture tubes, valves, flash, microwave ovens, live mains: strap off, and not your job.",
    ]
    if peak >= OFF_FROM:
        verdict = OFF
        reason = f"{brief(peak, 'V')} reaches 250 V (TR20.20-2008): the strap ties you to ground"
    elif voltage > es1:
        verdict = OFF
        reason = (
            f"{brief(voltage, 'V')} {kind} is above ES1 of IEC 62368-1, {brief(es1, 'V')}: a "
            "qualified person makes it dead"
        )
    else:
        verdict = ON
        reason = (
            f"{brief(voltage, 'V')} {kind} is not above ES1 of IEC 62368-1, {brief(es1, 'V')}: "
            "verify with a meter, twice, and look for higher voltages"
        )
    return found(
        {"peak": Quantity(peak, "V", 4)},
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
    )
