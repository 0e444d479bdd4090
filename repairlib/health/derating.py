"""What a part may be asked for at most: working voltage, reverse voltage, charge that returns."""

from __future__ import annotations

from typing import Annotated, NamedTuple

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity, brief
from repairlib.core.verdicts import CANNOT_TELL, NEVER

MNO2, POLYMER = "tantalum", "tantalum polymer"
OHM_PER_VOLT = 3.0  # in series with solid tantalum, encyclopaedia
REVERSE_VOLTS = 1.5  # wet aluminium at most, GE 23A
ABSORPTION = {"wet aluminium": (0.10, 0.15), "solid tantalum": (0.02, 0.03)}  # encyclopaedia
RATINGS = (2.5, 4.0, 6.3, 10.0, 16.0, 20.0, 25.0, 35.0, 50.0)  # V, made; AVX TAJ
HOTTEST_C = 85.0  # to which these deratings hold


class Derating(NamedTuple):
    """The part of the rated voltage that may be used, and where that figure is from."""

    part: float
    source: str
    note: str


_DERATING = {
    MNO2: Derating(0.5, "KEMET derating 2015", "To 85 °C; less above."),
    POLYMER: Derating(
        0.8,
        "encyclopaedia, Electrolytic capacitor",
        "A choice: 20 % less, to 85 °C. From memory, 10 % is enough for ratings to 10 V.",
    ),
}


DERATED = tuple(_DERATING)  # the families that are never used at their full rating


def working_share(family: str) -> float:
    """What part of its rated voltage a tantalum part may work at, to 85 °C.

    Manganese dioxide: half (KEMET). Polymer: 80 % (encyclopaedia); that 90 % would do for ratings
    to 10 V is from memory, and not followed.

    >>> working_share("tantalum"), working_share("tantalum polymer")
    (0.5, 0.8)
    """
    return _DERATING[family].part


@calculator(
    topic="health",
    title="Highest working voltage of a tantalum part",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("heat and fire",),
)
def tantalum_working_voltage(
    family: Annotated[str, Choice(tuple(_DERATING), "What kind of tantalum part it is.")],
    rated_voltage: Annotated[float, Given("V", "The marked rated voltage.", above=0, at_most=1e3)],
    temperature: Annotated[float, Given("°C", "Of the part.", at_least=-55, at_most=125)] = 40.0,
) -> Found:
    """The voltage that a solid tantalum part may see in use: half of its rating, or 80 %.

    `rated_voltage` in volts, `temperature` of the part in °C. Above 85 °C less is allowed, and no
    figure is known here: the verdict is then "cannot tell". Raises RepairlibError outside 0 to
    1000 V. Source: a maker's answer on derating for manganese dioxide, an encyclopaedia for
    polymer.

    >>> print(tantalum_working_voltage("tantalum", "25 V"))
    Highest working voltage of a tantalum part: working voltage 12.5 V; series resistance 37.5 Ω
    """
    rule = _DERATING[family]
    volts = rated_voltage * rule.part
    if temperature > HOTTEST_C:
        reason = f"above {HOTTEST_C:g} °C less than {brief(volts, 'V')} is allowed"
        reason += ": read the data sheet"
        return found({}, verdict=CANNOT_TELL, reason=reason, sources=(rule.source,))
    values = {"working_voltage": Quantity(volts, "V")}
    notes = [rule.note]
    if family == MNO2:
        values["series_resistance"] = Quantity(volts * OHM_PER_VOLT, "Ω")
        notes.append("On a stiff supply rail, 3 Ω for each volt in series limits the surge.")
    working = [f"{rated_voltage:g} V × {rule.part:g} = {brief(volts, 'V')}"]
    return found(values, working=working, notes=notes, sources=(rule.source,))


@calculator(
    topic="health",
    title="Rating of a tantalum part for a rail",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("heat and fire",),
)
def tantalum_rating(
    family: Annotated[str, Choice(tuple(_DERATING), "What kind of tantalum part it is.")],
    rail_voltage: Annotated[
        float, Given("V", "The highest voltage of the rail.", above=0, at_most=500)
    ],
) -> Found:
    """The lowest rating made that a tantalum part needs on a rail: twice the rail, or 1.25 times.

    `rail_voltage` in volts, to 500; above what the highest rating made bears the verdict is "do
    not". Raises RepairlibError outside that range. Source: as for `tantalum_working_voltage`;
    ratings of one maker's standard series.

    >>> print(tantalum_rating("tantalum", "12 V"))
    Rating of a tantalum part for a rail: rated voltage 25 V; at least 24 V
    """
    rule = _DERATING[family]
    volts = rail_voltage / rule.part
    working = [f"{rail_voltage:g} V / {rule.part:g} = {brief(volts, 'V')}, then the next rating up"]
    made = next((one for one in RATINGS if one >= volts * (1 - 1e-9)), None)
    if made is None:
        reason = (
            f"it would need {brief(volts, 'V')}, and the highest usual rating is "
            f"{RATINGS[-1]:g} V: take another kind"
        )
        return found(
            {"at_least": Quantity(volts, "V")},
            working=working,
            verdict=NEVER,
            reason=reason,
            notes=[rule.note],
            sources=(rule.source,),
        )
    values = {"rated_voltage": Quantity(made, "V"), "at_least": Quantity(volts, "V")}
    return found(values, working=working, notes=[rule.note], sources=(rule.source,))


@calculator(
    topic="health",
    title="Charge that comes back",
    sources=("encyclopaedia, Electrolytic capacitor",),
    cautions=("stored charge",),
)
def returning_voltage(
    inside: Annotated[str, Choice(tuple(ABSORPTION), "What is inside the capacitor.")],
    voltage: Annotated[
        float, Given("V", "The voltage before it was discharged.", at_least=0, at_most=1e5)
    ],
) -> Found:
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
    return found(values, working=working, notes=notes)
