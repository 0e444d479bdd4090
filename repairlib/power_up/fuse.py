"""Fuse and switching on: the pulse that charges the capacitors against what melts the fuse.

It explains why a fuse is slow, and tells a worn one from a fault. It is no reason to fit a larger.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.decide import SIMPLE, decide
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.power_up.rails import IN_WORDS
from repairlib.stored_charge import QUALIFIED, by_voltage, hazards_at

# Pulses, 10 s or more apart: share of the melting I²t that each may have; Littelfuse, chart 2.
SHARES = {"100000": 0.22, "10000": 0.29, "1000": 0.38, "100": 0.48}
RUNNING = 0.75  # of the rating, for the current that flows all the time; from memory
SAME = "A fuse is replaced by one of the same rating, speed, volts and breaking capacity."


def decaying_pulse(peak: float, seconds: float) -> float:
    """I²t in A²s of a pulse that falls exponentially: peak² × t / 2, t down to 0.37 of the peak.

    Ampere and seconds, 0 or more. Source: Littelfuse fuse guide, chart 1, shape F. Raises
    RepairlibError for figures below 0.

    >>> decaying_pulse(65, 0.5e-3)
    1.056
    """
    if not (0 <= peak < math.inf and 0 <= seconds < math.inf):
        raise RepairlibError(f"{peak:g} A, {seconds:g} s", "not a pulse", "0 or more, both finite")
    return peak**2 * seconds / 2


@calculator(
    topic="power up",
    title="Switch-on pulse and fuse",
    sources=("Littelfuse fuse guide", "from memory"),
    cautions=("heat and fire",),
)
def fuse_pulse(
    voltage: Annotated[
        float, Given("V", "That charges the capacitor, the peak.", at_least=1, at_most=1000)
    ],
    capacitance: Annotated[float, Given("F", "That is charged.", at_least=1e-9, at_most=10)],
    resistance: Annotated[
        float, Given("Ω", "In the way: inrush limiter, ESR, wires.", at_least=1e-3, at_most=1e6)
    ],
    pulses: Annotated[str, Choice(tuple(SHARES), "How often it is to be switched on.")] = "100000",
    melting: Annotated[
        float | None, Given("", "I²t in A²s from the fuse's data sheet.", above=0, at_most=1e9)
    ] = None,
    current: Annotated[
        float | None, Given("A", "That flows all the time.", above=0, at_most=1e3)
    ] = None,
) -> Found:
    """The I²t of switching on, V² C / (2 R), and the least melting I²t that bears it so often.

    Volts, farad, ohm; `melting` in A²s, `current` in ampere, from which the least rating follows
    at 75 %. Each pulse may have 22 % of the melting I²t for 100 000 pulses, 29 % for 10 000, 38 %
    for 1000, 48 % for 100, 10 s apart. Above 60 V the work is left to a qualified person. Raises
    RepairlibError outside the ranges. Source: Littelfuse fuse guide, charts 1 and 2; 75 % from
    memory.

    >>> finding = fuse_pulse("325 V", "100 µF", "5 Ω")
    >>> print(finding.pulse, "of", finding.melting_needed)
    1.06 A²s of 4.8 A²s
    """
    peak, tau = voltage / resistance, resistance * capacitance
    pulse, share = decaying_pulse(peak, tau), SHARES[pulses]
    needed = pulse / share
    values: dict[str, object] = {
        "pulse": _square_seconds(pulse),
        "peak": Quantity(peak, "A", 4),
        "melting_needed": _square_seconds(needed),
    }
    working = [
        f"peak V / R = {brief(peak, 'A')}, down to 0.37 of it in R C = {brief(tau, 's')}",
        f"I²t = V² C / (2 R) = {_square_seconds(pulse)}",
        f"{pulses} pulses, 10 s apart: {share:.0%} of melting, so {_square_seconds(needed)} or "
        "more",
    ]
    if current is not None:
        values["rating_at_least"] = Quantity(current / RUNNING, "A", 4)
        working.append(f"{brief(current, 'A')} all the time is {RUNNING:.0%} of the rating")
    verdict = reason = None
    if melting is not None:
        decision = decide(pulse, pulse, limit_high=share * melting, rule=SIMPLE)
        verdict = IN_WORDS[decision.verdict]
        reason = (
            f"{_square_seconds(pulse)} of {_square_seconds(melting)} is {pulse / melting:.3g}, at "
            f"most {share:g}"
        )
    sources: tuple[str, ...] = ()
    left_to, why = by_voltage(voltage)
    if left_to == QUALIFIED:
        verdict = f"{verdict}; {left_to}" if verdict else left_to
        reason = f"{reason}; {why}" if reason else why
        sources = ("IEC 62368-1",)
    notes = [
        f"{SAME} One that blows again is a fault: find it.",
        "An estimate with R from start to end; an inrush limiter that is still warm has less.",
        "75 % is at 25 °C. Never above the rated volts.",
    ]
    return found(
        values,
        working=working,
        verdict=verdict,
        reason=reason,
        notes=notes,
        sources=sources,
        cautions=hazards_at(voltage, capacitance),
    )


def _square_seconds(value: float) -> str:
    return f"{value:.3g} A²s"
