"""Copper wire by gauge: diameter, resistance by length and temperature, voltage drop, current.

The gauge is the American one: the larger the number, the thinner the wire. The formulas are those
of solid wire; stranded wire of a gauge has a little more resistance.
"""

from __future__ import annotations

import math
from typing import Annotated

from repairlib.core.calculator import Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.limits import TOUCHABLE_DC
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import OVER

COPPER = 1.7241e-8  # Ω m at 20 °C, annealed copper
PER_KELVIN = 0.00393  # of the resistance at 20 °C; from memory
THICKEST, THINNEST = 10, 40
FEET = 304.8  # m in 1000 ft
# A that a wire may have for each circular mil: 1 A for 700, the cautious one of the usual rules.
CIRCULAR_MILS = 700
# W that turn to heat in a metre of one wire: no row of the tables of contacts has much more.
HOTTEST = 3.0
_MIL = 0.0254e-3  # m

GAUGE = Given("", "American wire gauge.", at_least=THICKEST, at_most=THINNEST)
_CELSIUS = Given("°C", "Of the copper.", at_least=-60, at_most=200)


def diameter(awg: float) -> float:
    """Diameter [m] of solid wire of that gauge, a whole number from 10 to 40.

    Source: d = 0.127 mm × 92^((36 - n) / 39). Raises RepairlibError for other numbers.

    >>> round(diameter(24) * 1e3, 3)
    0.511
    """
    if awg != int(awg) or not THICKEST <= awg <= THINNEST:
        accepted = f"a whole number from {THICKEST} to {THINNEST}, such as 18"
        raise RepairlibError(f"{awg:g}", "not a wire gauge known here", accepted)
    return 0.127e-3 * 92 ** ((36 - awg) / 39)


def ohm_per_metre(awg: float, celsius: float = 20.0) -> float:
    """Resistance [Ω/m] of solid copper wire of that gauge at a temperature in °C.

    Source: ρ / A with 1.7241e-8 Ω m at 20 °C; 0.393 % more for each K, from memory.

    >>> round(ohm_per_metre(18) * 1000, 2), round(ohm_per_metre(18, 75) * 1000, 2)
    (20.95, 25.48)
    """
    area = math.pi / 4 * diameter(awg) ** 2
    return COPPER / area * (1 + PER_KELVIN * (celsius - 20))


def mils(awg: float) -> float:
    """Diameter of solid wire of that gauge in mils; one mil is 0.0254 mm.

    >>> round(mils(24), 2)
    20.1
    """
    return diameter(awg) / _MIL


def cautious_current(awg: float) -> float:
    """The current [A] that a wire of that gauge has by 1 A for 700 circular mils.

    Common practice: the cautious one of the usual rules for wire.

    >>> round(cautious_current(24), 2)
    0.58
    """
    return mils(awg) ** 2 / CIRCULAR_MILS


@calculator(
    topic="connectors",
    title="Copper wire by gauge",
    sources=("wire gauge formula", "wire resistance table", "from memory"),
)
def copper_wire(
    gauge: Annotated[float, GAUGE],
    temperature: Annotated[float, _CELSIUS] = 20.0,
    length: Annotated[float, Given("m", "Of one wire.", above=0, at_most=1e4)] = 1.0,
) -> Found:
    """Diameter, section and resistance of solid copper wire of a gauge.

    `gauge` is a whole number from 10 to 40, `temperature` in °C, `length` in metres. Raises
    RepairlibError for other gauges. Source: the formula of the gauge, 1.7241e-8 Ω m at 20 °C.

    >>> wire = copper_wire(22)
    >>> wire.diameter, wire.ohm_per_km
    (644 µm, 52.96)
    """
    across = diameter(gauge)
    area = math.pi / 4 * across**2
    each = ohm_per_metre(gauge, temperature)
    values = {
        "diameter": Quantity(across, "m", 3),
        "section": f"{area * 1e6:.4g} mm²",
        "ohm_per_km": Quantity(each * 1000, "", 4),
        "ohm_per_1000_ft": Quantity(each * FEET, "", 4),
        "resistance": Quantity(each * length, "Ω", 4),
    }
    working = [
        f"d = 0.127 mm × 92^((36 - {gauge:g}) / 39) = {across * 1e3:.4g} mm",
        f"A = π/4 × d² = {area * 1e6:.4g} mm²",
        f"at 20 °C ρ / A = 1.7241 × 10⁻⁸ Ω m / A = {ohm_per_metre(gauge) * 1000:.4g} Ω/km",
        f"at {temperature:g} °C × (1 + 0.00393 × ({temperature:g} - 20)) = {each * 1000:.4g} Ω/km",
    ]
    notes = ["Solid wire. Stranded wire of the same gauge has about 2 % more (from memory)."]
    return found(values, working=working, notes=notes)


@calculator(
    topic="connectors",
    title="Voltage drop of a cable",
    sources=("wire gauge formula", "wire resistance table", "common practice", "from memory"),
    cautions=("heat and fire",),
)
def wire_drop(
    gauge: Annotated[float, GAUGE],
    length: Annotated[float, Given("m", "Of the cable, one way.", above=0, at_most=1e4)],
    current: Annotated[float, Given("A", "In it.", above=0, at_most=1e3)],
    supply: Annotated[float | None, Given("V", "At its near end.", above=0, at_most=1e3)] = None,
    temperature: Annotated[float, _CELSIUS] = 20.0,
    ohm_per_km: Annotated[
        float | None,
        Given("", "Of one wire, from a table or measured.", above=0, at_most=1e5),
    ] = None,
) -> Found:
    """What a cable of two equal wires drops, out and back: 2 × length × Ω per metre × current.

    `length` in metres one way, `current` in A, `supply` in V for the drop in per cent. With
    `ohm_per_km` that figure is taken in place of the one of the gauge and temperature. Raises
    RepairlibError when the drop eats the whole supply. The verdict is "over a limit" above 3 W in a
    metre of one wire, about the most in a maker's table. Source: Ohm's law, the formula of the
    gauge; 3 W is common practice.

    >>> wire_drop(24, "1 m", "1 A").drop
    168.4 mV
    """
    diameter(gauge)
    each = ohm_per_km / 1000 if ohm_per_km else ohm_per_metre(gauge, temperature)
    ohm = 2 * length * each
    drop = ohm * current
    if supply is not None and drop >= supply:
        wrong = f"the cable alone would take {brief(drop, 'V')}, all of the supply"
        raise RepairlibError(brief(supply, "V"), wrong, "a thicker or shorter cable, less current")
    values: dict[str, object] = {
        "drop": Quantity(drop, "V", 4),
        "resistance": Quantity(ohm, "Ω", 4),
        "heat": Quantity(drop * current, "W", 3),
    }
    per_metre = current**2 * each
    values["heat_per_metre"] = Quantity(per_metre, "W", 3)
    working = [
        f"one wire: {each * 1000:.4g} Ω/km",
        f"out and back: 2 × {brief(length, 'm')} × {each:.4g} Ω/m = {brief(ohm, 'Ω')}",
        f"V = R I = {brief(ohm, 'Ω')} × {brief(current, 'A')} = {brief(drop, 'V')}",
        f"in a metre of one wire I² R = {brief(per_metre, 'W')}",
    ]
    if supply is not None:
        values["share"] = Quantity(100 * drop / supply, "%", 3)
        values["left"] = Quantity(supply - drop, "V", 4)
        working.append(f"{brief(drop, 'V')} of {brief(supply, 'V')}: {100 * drop / supply:.3g} %")
    notes = [
        "Contacts come on top, two for each end: see contact_heat.",
        "A drop that is too small to notice says nothing about heat: see contact_current.",
    ]
    if ohm_per_km is None and temperature == 20.0:
        notes.append("A warm cable has more: at 75 °C 22 % more than at 20 °C.")
    cautions = ("mains",) if (supply or 0.0) > TOUCHABLE_DC else ()
    if cautions:
        notes.insert(0, f"Above {TOUCHABLE_DC:g} V dc it is for a qualified person.")
    if per_metre <= HOTTEST:
        return found(values, working=working, notes=notes, cautions=cautions)
    reason = f"{brief(per_metre, 'W')} in a metre of wire is above {HOTTEST:g} W: it gets hot, a "
    reason += "bundle of it burns; take a thicker one"
    return found(
        values, working=working, verdict=OVER, reason=reason, notes=notes, cautions=cautions
    )
