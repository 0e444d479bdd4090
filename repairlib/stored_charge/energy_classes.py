"""Energy classes ES1, ES2 and ES3 of IEC 62368-1, by voltage, frequency and capacitance.

A class is a figure of a standard for the design of equipment. It is no permission to touch: every
verdict here is one of `hand_on`.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import ES1, ES2, STEADY, is_beyond_meter
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge.hand_on import NO_METER, QUALIFIED, VERIFY, by_voltage, hazards_at
from repairlib.stored_charge.steady_limits import NO_PERMISSION

DC, AC, CAPACITOR = "steady dc", "steady ac", "charged capacitor"

# Table 5 of IEC 62368-1: nF, ES1 in V, ES2 in V. Straight lines between neighbours.
TABLE_5 = (
    (0.133, 25_000, 50_000),
    (0.2, 20_000, 40_000),
    (0.4, 10_000, 20_000),
    (0.8, 5000, 10_000),
    (1.6, 2500, 5000),
    (4.0, 1000, 2000),
    (8.0, 500, 1000),
    (12, 350, 700),
    (18, 250, 500),
    (28, 200, 400),
    (41, 150, 300),
    (61, 125, 250),
    (91, 100, 200),
    (170, 75, 150),
    (300, 60, 120),
)


def steady_dc() -> tuple[float, float]:
    """Limits of ES1 and ES2 for steady dc, in V.

    >>> steady_dc()
    (60.0, 120.0)
    """
    return float(STEADY[ES1].dc), float(STEADY[ES2].dc)


def ac_limits(frequency: float) -> tuple[float, float]:
    """Limits of ES1 and ES2 for steady ac of `frequency` in hertz, in V rms.

    >>> ac_limits(50), ac_limits(10e3), ac_limits(1e6)
    ((30.0, 50.0), (34.0, 59.0), (70.0, 140.0))
    """
    kilohertz = frequency / 1e3
    if kilohertz <= 1:
        return float(STEADY[ES1].ac_rms or 0), float(STEADY[ES2].ac_rms or 0)
    if kilohertz <= 100:
        return 30 + 0.4 * kilohertz, 50 + 0.9 * kilohertz
    return 70.0, 140.0


def capacitor_limits(capacitance: float) -> tuple[float, float]:
    """Limits of ES1 and ES2 for a charged capacitor of that many farad, in V.

    `capacitance` is the nominal one plus its tolerance.

    >>> capacitor_limits(10e-9), capacitor_limits(264e-9)
    ((425.0, 850.0), (64.15, 128.3))
    """
    nano = capacitance * 1e9
    first, last = TABLE_5[0], TABLE_5[-1]
    if nano <= first[0]:
        return float(first[1]), float(first[2])
    for (low, *upper), (high, *lower) in pairwise(TABLE_5):
        if nano <= high:
            part = (nano - low) / (high - low)
            es1, es2 = (a + (b - a) * part for a, b in zip(upper, lower, strict=True))
            return es1, es2
    return float(last[1]), float(last[2])


@calculator(
    topic="stored charge",
    title="Energy class of a voltage",
    sources=("IEC 62368-1",),
    cautions=("stored charge", "mains"),
)
def energy_class(
    voltage: Annotated[
        float, Given("V", "dc, rms for ac, or across the capacitor.", at_least=0, at_most=1e6)
    ],
    kind: Annotated[str, Choice((DC, AC, CAPACITOR), "What kind of source it is.")] = DC,
    capacitance: Annotated[
        float | None, Given("F", "For a capacitor.", above=0, at_most=1e3)
    ] = None,
    tolerance: Annotated[
        float, Given("%", "Added to the capacitance.", at_least=0, at_most=200)
    ] = 0.0,
    frequency: Annotated[float, Given("Hz", "For ac.", at_least=1, at_most=1e9)] = 50.0,
) -> Found:
    """ES1, ES2 or ES3 of IEC 62368-1, and what follows at the bench.

    `voltage` in volts; `capacitance` in farad, nominal, with `tolerance` in per cent added;
    `frequency` in hertz. A limit belongs to the lower class. Raises RepairlibError when a
    capacitor has no capacitance. Source: IEC 62368-1, steady limits and table 5, straight lines
    between neighbours. Above 60 V dc, and where the energy can burn, the verdict hands the work on,
    whatever the class.

    >>> finding = energy_class("100 V")
    >>> finding.energy_class, finding.verdict
    ('ES2', 'leave it to a qualified person')
    """
    working = []
    if kind == CAPACITOR:
        if capacitance is None:
            raise RepairlibError(kind, "its capacitance is missing", "capacitance=220 nF")
        most = capacitance * (1 + tolerance / 100)
        es1, es2 = capacitor_limits(most)
        rule = f"table 5 of IEC 62368-1, {brief(most, 'F')}"
        working.append(
            f"{brief(capacitance, 'F')} and {tolerance:g} % are {brief(most, 'F')}: "
            f"ES1 {brief(es1, 'V')}, ES2 {brief(es2, 'V')}"
        )
    elif kind == AC:
        es1, es2 = ac_limits(frequency)
        rule = f"IEC 62368-1, steady ac at {brief(frequency, 'Hz')}, rms"
        peaks = " and ".join(
            f"{limit:g} V rms ({limit * 2**0.5:.1f} V peak)" for limit in (es1, es2)
        )
        working.append(f"ES1 and ES2: {peaks}")
    else:
        es1, es2 = steady_dc()
        rule = "IEC 62368-1, steady dc"
        working.append(f"ES1 {brief(es1, 'V')}, ES2 {brief(es2, 'V')}")
    name = "ES1" if voltage <= es1 else "ES2" if voltage <= es2 else "ES3"
    if kind != CAPACITOR:
        which = "ac_rms_current" if kind == AC else "dc_current"
        ampere = [brief(getattr(STEADY[one], which), "A") for one in (ES1, ES2)]
        working.append(f"or by current: ES1 {ampere[0]}, ES2 {ampere[1]}")
    against = {
        "ES1": f"not above {brief(es1, 'V')}",
        "ES2": f"above {brief(es1, 'V')}, not above {brief(es2, 'V')}",
        "ES3": f"above {brief(es2, 'V')}",
    }[name]
    values = {
        "energy_class": name,
        "es1_limit": Quantity(es1, "V", 4),
        "es2_limit": Quantity(es2, "V", 4),
    }
    reason = f"{brief(voltage, 'V')} is {against}: {name} by {rule}"
    if kind == AC:
        verdict = VERIFY if name == "ES1" else QUALIFIED
        why = NO_METER if is_beyond_meter(voltage) else ""
    else:
        verdict, why = by_voltage(voltage, (capacitance or 0) * voltage**2 / 2)
    if why and (is_beyond_meter(voltage) or (verdict == QUALIFIED and name == "ES1")):
        reason = f"{reason}; {why}"
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=[NO_PERMISSION],
        cautions=hazards_at(voltage, capacitance if kind == CAPACITOR else None),
    )


@calculator(
    topic="stored charge",
    title="ac and dc together",
    sources=("IEC 62368-1",),
    cautions=("stored charge", "mains"),
)
def ac_and_dc(
    dc: Annotated[float, Given("V", "The dc part.", at_least=0, at_most=1e6)],
    ac: Annotated[float, Given("V", "The ac part, rms.", at_least=0, at_most=1e6)],
    frequency: Annotated[float, Given("Hz", "Of the ac part.", at_least=1, at_most=1e9)] = 50.0,
) -> Found:
    """Whether dc and ac together stay within ES1: Udc/60 + Uac/Ulimit is at most 1.

    Volts dc, volts rms, hertz. Raises RepairlibError outside the ranges. Source: IEC 62368-1.

    >>> ac_and_dc("30 V", "15 V").share
    1.0
    """
    limit = ac_limits(frequency)[0]
    share = dc / 60 + ac / limit
    within = share <= 1 + 1e-12
    working = [
        f"{brief(dc, 'V')} / 60 V + {brief(ac, 'V')} / {brief(limit, 'V')} = {share:.4g}",
    ]
    verdict = VERIFY if within else QUALIFIED
    word = "not above" if within else "above"
    reason = f"{share:.4g} is {word} 1: {'within' if within else 'beyond'} ES1 of IEC 62368-1"
    most = dc + ac * 2**0.5
    if is_beyond_meter(most):
        reason = f"{reason}; {NO_METER}"
    return found(
        {"share": Quantity(share, "", 4)},
        working=working,
        verdict=verdict,
        reason=reason,
        notes=[NO_PERMISSION],
        cautions=hazards_at(most),
    )
