"""After the plug is pulled: what the rules ask of a capacitor across the mains and its resistor.

The rules differ in voltage and time, so every line of an answer names its rule. They are rules for
the design of equipment; at the bench the meter decides, twice.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.limits import ES1, STEADY, TOUCHABLE_DC, is_beyond_meter
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge.energy_classes import capacitor_limits
from repairlib.stored_charge.hand_on import NO_METER, QUALIFIED, VERIFY, by_voltage, hazards_at

MEETS, FAILS, NOT_ASKED = "meets", "does not meet", "not asked"
SMALL = 0.1e-6  # F; up to it two of the rules ask for nothing
EXEMPT_CHARGE = 60e-6  # C, IEC 60204-1
EXTRA_LOW = 42.4  # V peak
DC, AC = "dc", "ac 50/60 Hz"
# (least volts, least ampere) of a supply that can give a shock, LBNL.
SHOCK = {DC: (100.0, 40e-3), AC: (50.0, 5e-3)}


@calculator(
    topic="stored charge",
    title="After the plug is pulled",
    sources=(
        "IEC 60950-1, quoted",
        "IEC 62368-1",
        "IEC 62368-1 test report",
        "IEC 60335-1 unplugging, quoted",
        "IEC 60204-1, quoted",
        "IEC 61010-1, quoted",
    ),
    cautions=("mains", "stored charge"),
)
def after_unplugging(
    capacitance: Annotated[
        float, Given("F", "Across the pins of the plug.", at_least=1e-12, at_most=1)
    ],
    resistance: Annotated[float, Given("Ω", "Across it.", at_least=1, at_most=1e12)],
    voltage: Annotated[
        float, Given("V", "Peak of the mains, √2 times its rms.", at_least=1, at_most=1e5)
    ],
    tolerance: Annotated[
        float, Given("%", "Added to the capacitance.", at_least=0, at_most=200)
    ] = 0.0,
) -> Found:
    """Seven rules, one line each: whether capacitor and resistor meet it.

    Farad, ohm, volts peak; `tolerance` in per cent is added to the capacitance. Raises
    RepairlibError outside the ranges. Source: IEC 60950-1 (time constant), IEC 62368-1 5.5.2.2
    (table 5 after 2 s), IEC 60335-1 (34 V after 1 s), IEC 60204-1 6.2.4 (60 V after 5 s, after 1 s
    where pins lie bare), IEC 61010-1 (5 s; 60 V dc, the normal limit of
    editions before 2010, from memory).

    >>> finding = after_unplugging("0.47 µF", "1 MΩ", "373.4 V")
    >>> print(finding.values["IEC 60335-1"])
    does not meet: 44.478 V after 1 s, at most 34 V
    >>> finding.verdict
    'meets 6 of 7 rules; leave it to a qualified person'
    """
    most = capacitance * (1 + tolerance / 100)
    tau = resistance * most

    def after(seconds: float, limit: float) -> tuple[str, str]:
        left = voltage * math.exp(-seconds / tau)
        word = MEETS if left <= limit else FAILS
        return word, f"{brief(left, 'V')} after {seconds:g} s, at most {brief(limit, 'V')}"

    def constant(seconds: float) -> tuple[str, str]:
        if most <= SMALL or voltage <= EXTRA_LOW:
            return NOT_ASKED, "up to 0.1 µF or 42.4 V peak"
        word = MEETS if tau <= seconds * (1 + 1e-12) else FAILS
        return word, f"time constant {brief(tau, 's')}, at most {seconds:g} s"

    charge = most * voltage
    small_charge = (NOT_ASKED, f"{brief(charge, 'C')}, up to 60 µC")
    rules = {
        "IEC 60950-1, pluggable type A": constant(1),
        "IEC 60950-1, type B or permanent": constant(10),
        "IEC 62368-1": after(2, capacitor_limits(most)[0]),
        "IEC 60335-1": (NOT_ASKED, "up to 0.1 µF") if most <= SMALL else after(1, 34.0),
        "IEC 60204-1": small_charge if charge <= EXEMPT_CHARGE else after(5, 60.0),
        "IEC 60204-1, bare pins": small_charge if charge <= EXEMPT_CHARGE else after(1, 60.0),
        "IEC 61010-1": after(5, 60.0),
    }
    failed = [name for name, (word, _) in rules.items() if word == FAILS]
    reason = f"does not meet {'; '.join(failed)}" if failed else "no rule listed here is broken"
    values: dict[str, object] = {name: f"{word}: {why}" for name, (word, why) in rules.items()}
    values |= {"time_constant": Quantity(tau, "s", 4)}
    at_bench, why = by_voltage(voltage, most * voltage**2 / 2)
    verdict = f"meets {len(rules) - len(failed)} of {len(rules)} rules; {at_bench}"
    notes = [
        f"At the bench: {at_bench}. {why}.",
        "IEC 60950-1 is withdrawn. IEC 61010-1: 5 s as quoted from 2001, with the 60 V dc of its "
        "editions before 2010; since 2010 it is 70 V dc. Both from memory.",
        "Editions: IEC 62368-1 is edition 3.0 of 2018; the pages that quote IEC 60335-1 and "
        "IEC 60204-1 name none.",
        "A rule that asks for nothing is counted as met.",
    ]
    working = [f"τ = R C = {brief(resistance, 'Ω')} × {brief(most, 'F')} = {brief(tau, 's')}"]
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=("from memory",),
        cautions=hazards_at(voltage, most),
    )


@calculator(
    topic="stored charge",
    title="Limited current circuit",
    sources=("IEC 60950-1, quoted",),
    cautions=("stored charge",),
)
def limited_current(
    capacitance: Annotated[float, Given("F", "Of the circuit.", at_least=1e-15, at_most=1)],
    voltage: Annotated[float, Given("V", "Across it, the peak.", at_least=1e-3, at_most=1e6)],
) -> Found:
    """What IEC 60950-1 2.4 allows: 0.1 µF to 450 V, 45 µC to 15 kV, 350 mJ above.

    Farad and volts. Raises RepairlibError outside the ranges. Source: IEC 60950-1, as quoted in an
    archive of a product safety list; the standard is withdrawn.

    >>> limited_current("100 nF", "400 V").verdict
    'within the rule, which is withdrawn; leave it to a qualified person'
    """
    charge, joule = capacitance * voltage, capacitance * voltage**2 / 2
    if voltage <= 450:
        within, rule = capacitance <= 0.1e-6 * (1 + 1e-9), "at most 0.1 µF to 450 V"
    elif voltage <= 15e3:
        within, rule = charge <= 45e-6 * (1 + 1e-9), "at most 45 µC to 15 kV"
    else:
        within, rule = joule <= 0.35 * (1 + 1e-9), "at most 350 mJ above 15 kV"
    values = {"charge": Quantity(charge, "C", 4), "energy": Quantity(joule, "J", 4)}
    at_bench, why = by_voltage(voltage, joule)
    if not within:
        at_bench = QUALIFIED
    verdict = f"{'within' if within else 'beyond'} the rule, which is withdrawn; {at_bench}"
    working = [f"Q = C V = {brief(charge, 'C')}", f"E = C V² / 2 = {brief(joule, 'J')}"]
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=f"{rule} (IEC 60950-1 2.4, withdrawn); {why}",
        sources=("IEC 62368-1", "LBNL electrical hazards"),
        cautions=hazards_at(voltage, capacitance),
    )


@calculator(
    topic="stored charge",
    title="Supply that can give a shock",
    sources=("LBNL electrical hazards",),
    cautions=("mains",),
)
def shock_hazard(
    voltage: Annotated[float, Given("V", "Of the supply, rms for ac.", at_least=0, at_most=1e6)],
    current: Annotated[float, Given("A", "That it can give.", at_least=0, at_most=1e6)],
    kind: Annotated[str, Choice((DC, AC), "What it gives.")] = DC,
) -> Found:
    """Whether a supply counts as a shock hazard: both its volts and its ampere count.

    Volts and ampere. Above ES1 of IEC 62368-1 the verdict hands the work on, hazard or not. Raises
    RepairlibError outside the ranges. Source: LBNL, electrical hazards: dc from 100 V and 40 mA,
    ac of 50 or 60 Hz from 50 V and 5 mA.

    >>> shock_hazard("325 V", "1 A").verdict
    'shock hazard; leave it to a qualified person'
    """
    volts, ampere = SHOCK[kind]
    rule = f"from {brief(volts, 'V')} and {brief(ampere, 'A')} {kind} (LBNL)"
    counts = voltage >= volts and current >= ampere
    low = STEADY[ES1].ac_rms or 0 if kind == AC else TOUCHABLE_DC
    at_bench = QUALIFIED if voltage > low else VERIFY
    verdict = f"{'shock hazard' if counts else 'below this threshold'}; {at_bench}"
    reason = rule
    if voltage > low:
        reason = f"{rule}; {brief(voltage, 'V')} is above {low:g} V, ES1 of IEC 62368-1"
    if is_beyond_meter(voltage):
        reason = f"{reason}; {NO_METER}"
    values = {"voltage": Quantity(voltage, "V"), "current": Quantity(current, "A")}
    return found(
        values,
        working=[rule],
        verdict=verdict,
        reason=reason,
        sources=("IEC 62368-1",),
        cautions=hazards_at(voltage),
    )
