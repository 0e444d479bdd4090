"""What a part may be asked for at most: working voltage, reverse voltage, charge that returns."""

from __future__ import annotations

from math import log10
from typing import NamedTuple

from repairlib.calculator import Choice, Given, calculator, found
from repairlib.health.decision_rules import brief
from repairlib.quantity import Quantity

MNO2, POLYMER = "tantalum", "tantalum polymer"
OHM_PER_VOLT = 3.0  # in series with solid tantalum, encyclopaedia
REVERSE_VOLTS = 1.5  # wet aluminium at most, GE 23A
ABSORPTION = {"wet aluminium": (0.10, 0.15), "solid tantalum": (0.02, 0.03)}  # encyclopaedia
CERAMIC_LOSS_A_DECADE = {"C0G": (0.0, 0.0), "X7R": (2.5, 2.5), "X5R": (5.0, 7.0)}  # per cent


class Derating(NamedTuple):
    """The part of the rated voltage that may be used, and where that figure is from."""

    part: float
    source: str
    note: str


_DERATING = {
    MNO2: Derating(0.5, "KEMET tantalum derating", "To 85 °C; less above."),
    POLYMER: Derating(
        0.8,
        "encyclopaedia, Electrolytic capacitor",
        "A choice: 20 % less. From memory, 10 % is enough for ratings to 10 V.",
    ),
}


@calculator(
    topic="health",
    title="Highest working voltage of a tantalum part",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("heat and fire",),
    family=Choice(tuple(_DERATING), "What kind of tantalum part it is."),
    rated_voltage=Given("V", "The marked rated voltage.", above=0, at_most=1e3),
)
def tantalum_working_voltage(family, rated_voltage):
    """The voltage that a solid tantalum part may see in use: half of its rating, or 80 %.

    `rated_voltage` in volts. Raises RepairlibError outside 0 to 1000 V. Source: a maker's answer
    on derating for manganese dioxide, an encyclopaedia for polymer.

    >>> print(tantalum_working_voltage("tantalum", "25 V"))
    Highest working voltage of a tantalum part: working voltage 12.5 V; series resistance 37.5 Ω
    """
    rule = _DERATING[family]
    volts = rated_voltage * rule.part
    values = {"working_voltage": Quantity(volts, "V")}
    notes = [rule.note]
    if family == MNO2:
        values["series_resistance"] = Quantity(volts * OHM_PER_VOLT, "Ω")
        notes.append("On a stiff supply rail, 3 Ω for each volt in series limits the surge.")
    working = [f"{rated_voltage:g} V × {rule.part:g} = {brief(volts, 'V')}"]
    return found(values, working, notes=notes, sources=(rule.source,))


@calculator(
    topic="health",
    title="Rating of a tantalum part for a rail",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("heat and fire",),
    family=Choice(tuple(_DERATING), "What kind of tantalum part it is."),
    rail_voltage=Given("V", "The highest voltage of the rail.", above=0, at_most=500),
)
def tantalum_rating(family, rail_voltage):
    """The lowest rated voltage a tantalum part needs on a rail: twice the rail, or 1.25 times.

    `rail_voltage` in volts, to 500. Raises RepairlibError outside that range. Source: as for
    `tantalum_working_voltage`.

    >>> print(tantalum_rating("tantalum", "12 V"))
    Rating of a tantalum part for a rail: rated voltage 24 V
    """
    rule = _DERATING[family]
    volts = rail_voltage / rule.part
    working = [f"{rail_voltage:g} V / {rule.part:g} = {brief(volts, 'V')}, then the next rating up"]
    values = {"rated_voltage": Quantity(volts, "V")}
    return found(values, working, notes=[rule.note], sources=(rule.source,))


@calculator(
    topic="health",
    title="Charge that comes back",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("stored charge",),
    inside=Choice(tuple(ABSORPTION), "What is inside the capacitor."),
    voltage=Given("V", "The voltage before it was discharged.", at_least=0, at_most=1e5),
)
def returning_voltage(inside, voltage):
    """The voltage that a capacitor may win back after a brief discharge: dielectric absorption.

    `voltage` in volts. Source: an encyclopaedia, 10 to 15 % for wet aluminium, 2 to 3 % for solid
    tantalum. Raises RepairlibError outside 0 to 100 kV.

    >>> print(returning_voltage("wet aluminium", "400 V"))
    Charge that comes back: lowest 40 V; highest 60 V
    """
    low, high = ABSORPTION[inside]
    values = {"lowest": Quantity(voltage * low, "V"), "highest": Quantity(voltage * high, "V")}
    working = [f"{voltage:g} V × {low:g} to {high:g}"]
    notes = ["Keep the discharge resistor on, wait, and measure before you touch."]
    if inside == "solid tantalum":
        notes.append("10 % is also listed for solid tantalum.")
    return found(values, working, notes=notes)


@calculator(
    topic="health",
    title="Ageing of a ceramic capacitor",
    sources=("parts library article",),
    kind=Choice(tuple(CERAMIC_LOSS_A_DECADE), "Its temperature characteristic."),
    hours=Given("", "Hours since it was last soldered.", at_least=1, at_most=1e9),
)
def ceramic_ageing(kind, hours):
    """How much of its capacitance a ceramic part has lost since it was last heated.

    `hours` since soldering, 1 or more: the loss is the same for each tenfold of time, and heating
    above its Curie point undoes it. Raises RepairlibError outside the range. Source: a parts
    library's article.

    >>> print(ceramic_ageing("X7R", 1000))
    Ageing of a ceramic capacitor: lost at least 7.50 %; lost at most 7.50 %
    """
    low, high = (loss * log10(hours) for loss in CERAMIC_LOSS_A_DECADE[kind])
    working = [f"log10({hours:g}) = {log10(hours):.3g} decades of hours"]
    values = {"lost_at_least": Quantity(low, "%", 3), "lost_at_most": Quantity(high, "%", 3)}
    return found(values, working)
