"""A rectifier with its reservoir: the rail worked out in time, beside the textbook's estimate."""

from __future__ import annotations

from math import expm1, sqrt
from typing import Annotated, NamedTuple

from repairlib.circuits.laws import THERMAL_VOLTS
from repairlib.circuits.settled import rails
from repairlib.circuits.supplies import BRIDGE, HALF_WAVE, LAYOUTS, check_kind, supply
from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.power_up import FULL, HALF, smoothing_ripple
from repairlib.stored_charge import by_voltage, hazards_at, proof

SMALL = 0.2  # of the peak: our own choice of what is still "small against the peak"
SILICON, SCHOTTKY = 1.8, 1.05  # n of the diodes; common practice
LOW_DROP = 0.5  # V, below which a diode is a Schottky


class Estimate(NamedTuple):
    """The textbook's figures, in V."""

    peak: float
    valley: float
    mean: float
    ripple: float


def textbook(
    kind: str,
    secondary: float,
    mains: float,
    capacitance: float,
    load: float,
    drop: float,
) -> Estimate:
    """Peak = √2 V - drops; ripple as power_up.smoothing_ripple has it; mean = peak - ripple / 2.

    Volts r.m.s., Hz, F, A, volts. Holds only while the ripple is small against the peak and
    nothing limits the charging current; it is then the worst case. What ESR adds is not in it.
    Raises RepairlibError for a kind that is not known. Source: the textbook's formula; common
    practice.

    >>> textbook("bridge", 12.0, 50.0, 4700e-6, 1.0, 0.8).ripple
    2.128
    """
    check_kind(kind)
    peak = secondary * sqrt(2) - drop * (2 if kind == BRIDGE else 1)
    ripple = smoothing_ripple(load, capacitance, mains, HALF if kind == HALF_WAVE else FULL)
    return Estimate(peak, peak - ripple, peak - ripple / 2, ripple)


@calculator(
    topic="circuits",
    title="Rectifier with its reservoir",
    sources=("common practice",),
    cautions=("mains", "stored charge"),
)
def rectifier_supply(
    secondary: Annotated[
        float, Given("V", "Secondary, r.m.s.; of a centre tap each half.", at_least=1, at_most=400)
    ],
    kind: Annotated[str, Choice(tuple(LAYOUTS), "How it rectifies.")],
    capacitance: Annotated[float, Given("F", "Of the reservoir.", at_least=1e-6, at_most=0.1)],
    load: Annotated[float, Given("A", "What the load draws.", at_least=1e-3, at_most=100)],
    mains: Annotated[float, Given("Hz", "Frequency.", at_least=10, at_most=1000)] = 50.0,
    esr: Annotated[float, Given("Ω", "Of the reservoir.", at_least=0, at_most=100)] = 0.0,
    winding: Annotated[
        float, Given("Ω", "In series, of the secondary.", at_least=1e-3, at_most=100)
    ] = 0.2,
    drop: Annotated[
        float, Given("V", "Of one diode at that load.", at_least=0.2, at_most=1.5)
    ] = 0.8,
) -> Found:
    """Peak, valley, mean and ripple of the rail of a rectifier, and what the textbook expects.

    Worked out in time by nodal analysis: the winding's resistance, the diodes' curve and the ESR
    all count. The load draws a constant current. The diode drop is that of one diode while it
    carries the current of the load; in its short pulses it carries more. Raises RepairlibError
    when the rail would not come up, and outside the ranges. Above 60 V dc, ES1 of IEC 62368-1, it
    is handed on to a qualified person. Source: nodal analysis; I / (2 f C) is the textbook's.

    >>> finding = rectifier_supply("12 V", "bridge", "4700 µF", "1 A", esr="30 mΩ")
    >>> print(finding.valley, finding.ripple, finding.textbook_ripple)
    13.0 V 1.58 V 2.128 V
    """
    expected = textbook(kind, secondary, mains, capacitance, load, drop)
    off = secondary * sqrt(2)  # what the reservoir reaches when nothing is drawn
    if expected.peak <= 0:
        read = f"{brief(secondary, 'V')} r.m.s., {kind}"
        raise RepairlibError(read, f"its peak of {brief(off, 'V')} opens no diode", "more volts")
    parts = supply(
        kind, f"{secondary!r} V", f"{mains!r} Hz", f"{capacitance!r} F", f"{load!r} A",
        esr=f"{esr!r} Ω", winding=f"series {winding!r} Ω",
        diode=_diode(load, drop),
    )  # fmt: skip
    rail = rails(parts, "rail")["rail"]
    values = {
        "peak": Quantity(rail.peak, "V", 4),
        "valley": Quantity(rail.valley, "V", 4),
        "mean": Quantity(rail.mean, "V", 4),
        "ripple": Quantity(rail.ripple, "V", 4),
        "textbook_ripple": Quantity(expected.ripple, "V", 4),
        "no_load_peak": Quantity(off, "V", 4),
    }
    verdict, reason = by_voltage(off, capacitance * off**2 / 2)
    return found(
        values,
        working=_working(kind, secondary, mains, capacitance, load, drop, expected, rail.error),
        verdict=verdict,
        reason=reason,
        notes=_notes(expected, off),
        cautions=hazards_at(off, capacitance),
    )


def _diode(load: float, drop: float) -> str:
    """Value and n of a diode with that drop at that current, as typed in a table."""
    slope = SCHOTTKY if drop < LOW_DROP else SILICON
    return f"{load / expm1(drop / (slope * THERMAL_VOLTS))!r} A,n {slope}"


def _working(kind, secondary, mains, capacitance, load, drop, expected, error) -> list[str]:
    drops = f"{'2 × ' if kind == BRIDGE else ''}{brief(drop, 'V')}"
    letter, factor = ("", "") if kind == HALF_WAVE else ("2 ", "2 × ")
    return [
        f"textbook: peak = √2 × {brief(secondary, 'V')} - {drops} = {brief(expected.peak, 'V')}",
        f"textbook: ripple = I / ({letter}f C) = {brief(load, 'A')} / ({factor}"
        f"{brief(mains, 'Hz')} × {brief(capacitance, 'F')}) = {brief(expected.ripple, 'V')}",
        f"textbook: valley = peak - ripple = {brief(expected.valley, 'V')}, "
        f"mean = peak - ripple / 2 = {brief(expected.mean, 'V')}",
        "worked out in time instead: winding, curve of the diodes and ESR shorten and weaken the "
        f"pulses; the steps may miss a figure by {brief(error, 'V')}",
    ]


def _notes(expected: Estimate, off: float) -> list[str]:
    notes = [
        f"Without a load the reservoir stands at {brief(off, 'V')} and more on high mains: its "
        "rating goes by that.",
        proof(off),
    ]
    if expected.ripple > SMALL * expected.peak:
        notes.insert(0, "The ripple is not small against the peak: the textbook does not hold.")
    return notes
