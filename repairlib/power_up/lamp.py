"""A filament lamp in series with a set on the mains: which one, what it lets through, what not.

It is work for qualified people: everything behind the lamp is as live as the mains.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.quantity import Quantity, brief
from repairlib.stored_charge import QUALIFIED

LAMPS = (15, 25, 40, 60, 75, 100, 150, 200)  # W, filament lamps as made; from memory
HOT_BY_COLD = (10.0, 15.0)  # hot ohms by cold ohms: 15 by the encyclopaedia, 10 from memory
TRANSFORMER, SWITCH_MODE, NOT_KNOWN = "transformer", "switch-mode", "not known"
LIVE = (
    "The lamp limits the current and does not isolate: everything behind it can kill, with the "
    "lamp dark too."
)


def lamp_for(power: float) -> int:
    """The lamp as made, in watts, nearest to the set's own, the smaller of two as near.

    Source: watts about the set's own is common practice. `power` in watts.

    >>> lamp_for(48), lamp_for(50), lamp_for(500)
    (40, 40, 200)
    """
    return min(LAMPS, key=lambda watts: (abs(watts - power), watts))


@calculator(
    topic="power up",
    title="Lamp in series",
    sources=(
        "common practice",
        "encyclopaedia, Incandescent light bulb",
        "series lamp note",
        "from memory",
    ),
    cautions=("mains", "stored charge", "heat and fire"),
)
def series_lamp(
    power: Annotated[float, Given("W", "Of the set, on its label.", at_least=1, at_most=200)],
    voltage: Annotated[float, Given("V", "Of the mains, rms.", at_least=90, at_most=260)] = 230.0,
    supply: Annotated[
        str, Choice((TRANSFORMER, SWITCH_MODE, NOT_KNOWN), "Of the set.")
    ] = NOT_KNOWN,
) -> Found:
    """Which filament lamp a qualified person puts in series with a set, and what it lets through.

    `power` of the set in watts, to 200 W; `voltage` of the mains in volts rms. Cold it has a tenth
    to a fifteenth of its hot resistance. The verdict always leaves it to a qualified person. Raises
    RepairlibError outside the ranges. Source: a fifteenth by an encyclopaedia; a note on the
    lamp in series; a tenth, and the lamps as made, from memory.

    >>> finding = series_lamp("55 W")
    >>> finding.lamp, finding.hot, finding.verdict
    (60 W, 881.7 Ω, 'leave it to a qualified person')
    """
    watts = lamp_for(power)
    hot = voltage**2 / watts
    cold = [hot / times for times in reversed(HOT_BY_COLD)]
    values = {
        "lamp": Quantity(watts, "W"),
        "hot": Quantity(hot, "Ω", 4),
        "cold_from": Quantity(cold[0], "Ω", 3),
        "cold_to": Quantity(cold[1], "Ω", 3),
        "if_shorted": Quantity(watts / voltage, "A", 3),
    }
    working = [
        f"hot: V² / P = {brief(voltage, 'V')}² / {watts} W = {brief(hot, 'Ω')}",
        f"cold: a fifteenth to a tenth, {brief(cold[0], 'Ω')} to {brief(cold[1], 'Ω')}",
        f"the set shorted: P / V = {brief(watts / voltage, 'A')}, the lamp at full brightness",
    ]
    notes = [
        LIVE,
        "Bright and stays bright: a fault; plug out. Dim: the set gets nearly its full volts. A "
        "flash at first is the charging of capacitors.",
        "Some take a lamp of more watts than the set; then less of the volts is lost.",
    ]
    if supply != TRANSFORMER:
        notes.insert(
            1,
            "A switch-mode set may not start on it, or start again and again: that says nothing. "
            "From memory.",
        )
    reason = "the lamp and the set behind it are at the mains, and a lamp does not isolate"
    return found(values, working=working, verdict=QUALIFIED, reason=reason, notes=notes)
