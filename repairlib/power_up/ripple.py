"""Ripple of a smoothing capacitor behind a rectifier: what it should be, and what was measured."""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, Text, calculator, found
from repairlib.core.decide import decide
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import CANNOT_TELL, FAIL
from repairlib.health import interval
from repairlib.power_up.rails import IN_WORDS, OSCILLOSCOPE

FULL, HALF = "full wave", "half wave"
MOST = 1000.0  # V; no supply has more
LEAST = 1e-6  # V; less is below any oscilloscope
_CHARGES = {FULL: 2, HALF: 1}  # in each period of the mains


def smoothing_ripple(
    current: float, capacitance: float, frequency: float = 50.0, rectifier: str = FULL
) -> float:
    """Ripple in V peak to peak: I / (2 f C) for a full wave, I / (f C) for a half wave.

    Ampere, farad, `frequency` of the mains in hertz, all above 0. True while the ripple is small
    against the peak; it takes the capacitor as unfed for the whole time between two peaks, so that
    a sound one reads less. Source: university course sheet FEEG1004, part B. Raises RepairlibError
    for an unknown word and for figures that are not above 0.

    >>> smoothing_ripple(1, 4700e-6)
    2.128
    """
    if rectifier not in _CHARGES:
        raise RepairlibError(rectifier, "not a rectifier known here", f"{FULL}, {HALF}")
    if not all(0 < one < math.inf for one in (current, capacitance, frequency)):
        read = f"{current:g} A, {capacitance:g} F, {frequency:g} Hz"
        raise RepairlibError(read, "not all above 0", "ampere, farad and hertz above 0")
    return current / (_CHARGES[rectifier] * frequency * capacitance)


@calculator(
    topic="power up",
    title="Ripple against what it should be",
    sources=("from memory", "ILAC-G8:09/2019"),
    cautions=("stored charge", "mains"),
)
def ripple_check(
    measured: Annotated[str, Text("Peak to peak across the capacitor, such as 2.0 V.")],
    current: Annotated[float, Given("A", "Of the load, dc.", at_least=1e-6, at_most=1e3)],
    capacitance: Annotated[float, Given("F", "As marked.", at_least=1e-9, at_most=10)],
    frequency: Annotated[float, Given("Hz", "Of the mains.", at_least=1, at_most=1e6)] = 50.0,
    rectifier: Annotated[str, Choice((FULL, HALF), "What stands before it.")] = FULL,
    esr: Annotated[float, Given("Ω", "Of the capacitor.", at_least=0, at_most=1e3)] = 0.0,
    ripple_current: Annotated[
        float, Given("A", "Through it, peak to peak, for its ESR.", at_least=0, at_most=1e4)
    ] = 0.0,
    tolerance: Annotated[
        float, Given("%", "By which it may be below its marking.", at_least=0, at_most=90)
    ] = 20.0,
    percent: Annotated[float, OSCILLOSCOPE] = 0.0,
) -> Found:
    """Measured ripple against I / (2 f C) + I pp × ESR with a capacitor at its lower end.

    `measured` in volts peak to peak as shown; ampere, farad, hertz, ohm. Outside: the capacitor has
    less left than its tolerance, or the load is heavier. Raises RepairlibError outside the ranges
    and for a reading that is no number in volts. Source: `smoothing_ripple`; the share of the ESR
    from memory.

    >>> finding = ripple_check("5.0 V", "0.5 A", "4700 µF")
    >>> finding.verdict, finding.left
    ('outside the limits', 1000 µF)
    """
    shown = interval(measured, percent, 0, "V")
    if not 0 <= shown.reading <= MOST:
        raise RepairlibError(measured, "no ripple", f"peak to peak, 0 V to {brief(MOST, 'V')}")
    by_esr = ripple_current * esr
    nominal = smoothing_ripple(current, capacitance, frequency, rectifier)
    most = nominal / (1 - tolerance / 100) + by_esr
    decision = decide(max(shown.low, 0.0), shown.high, limit_high=most, unit="V")
    values: dict[str, object] = {
        "computed": Quantity(nominal + by_esr, "V", 4),
        "at_most": Quantity(most, "V", 4),
        "measured": Quantity(shown.reading, "V"),
    }
    formula = "I / (2 f C)" if rectifier == FULL else "I / (f C)"
    working = [
        f"{formula} = {brief(current, 'A')}, {brief(frequency, 'Hz')}, "
        f"{brief(capacitance, 'F')}: {brief(nominal, 'V')}",
        f"with {tolerance:g} % less capacitance and {brief(by_esr, 'V')} of ESR: "
        f"{brief(most, 'V')}",
    ]
    rest = shown.reading - by_esr
    if rest > LEAST:
        left = smoothing_ripple(current, rest, frequency, rectifier)  # the same, turned round
        values["left"] = Quantity(left, "F", 4)
        working.append(f"what would explain it alone: {brief(left, 'F')}")
    notes = []
    if decision.verdict in (FAIL, CANNOT_TELL):
        notes.append("Or the load takes more than was said, or one half of a full wave is missing.")
    notes.append("It holds while the ripple is small against the peak. A meter on ac shows less.")
    return found(
        values,
        working=working,
        verdict=IN_WORDS[decision.verdict],
        reason=decision.reason,
        notes=notes,
    )
