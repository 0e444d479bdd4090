"""How much ripple current a part may carry at another frequency, temperature or air flow.

Multipliers are those of data sheets, and differ from series to series. Between two listed points
the lower multiplier counts; nothing is taken beyond the ends of a list.
"""

from __future__ import annotations

from typing import Annotated

from repairlib.core.calculator import Choice, Found, Given, calculator, found
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, brief
from repairlib.core.tables import read_table

LOW_IMPEDANCE, SNAP_IN = "low impedance", "snap-in"
CANS = ("can 23A", "can 23F")


@calculator(
    topic="health",
    title="Ripple current at a frequency",
    sources=("common practice",),
)
def ripple_at_frequency(
    series: Annotated[str, Choice((LOW_IMPEDANCE, SNAP_IN), "What kind of part it is.")],
    ripple_current: Annotated[
        float, Given("A", "Rated ripple, at its own frequency.", above=0, at_most=1e3)
    ],
    frequency: Annotated[float, Given("Hz", "The frequency of the ripple.", above=0, at_most=1e8)],
    capacitance: Annotated[
        float, Given("F", "Marked; for low impedance.", above=0, at_most=1)
    ] = 100e-6,
    rated_voltage: Annotated[
        float, Given("V", "Marked; for snap-in.", above=0, at_most=1e3)
    ] = 25.0,
) -> Found:
    """The ripple current allowed at `frequency`, from the rated one.

    `ripple_current` in ampere rms: low-impedance parts are rated at 100 kHz, snap-in parts at
    100 Hz. The multiplier goes by `capacitance` in farad, or by `rated_voltage` in volts. Raises
    RepairlibError below the lowest listed frequency and for parts outside the list. Source: one
    data sheet for each; the low-impedance rows from 330 µF are from memory.

    >>> print(ripple_at_frequency("low impedance", "1 A", "120 Hz", "100 µF"))
    Ripple current at a frequency: ripple current 500.0 mA; multiplier 0.5
    """
    rows = [
        row
        for row in read_table("ripple-multipliers")
        if row["series"] == series
        and row["condition"] == "frequency_hz"
        and _within(row["from_uf"], capacitance * 1e6, row["to_uf"])
        and _within(row["from_v"], rated_voltage, row["to_v"])
    ]
    if not rows:
        by_value = series == LOW_IMPEDANCE
        part = brief(capacitance, "F") if by_value else brief(rated_voltage, "V")
        accepted = "5.6 µF to 8200 µF, at values of the E6 series" if by_value else "10 V to 450 V"
        raise RepairlibError(part, f"no multiplier of {series} parts is listed for it", accepted)
    row, notes = _listed(rows, frequency, "Hz")
    multiplier = float(row["multiplier"])
    allowed = multiplier * ripple_current
    working = [f"{brief(ripple_current, 'A')} × {multiplier:g} = {brief(allowed, 'A')}"]
    rated_at = "100 kHz" if series == LOW_IMPEDANCE else "100 Hz"
    notes.append(f"The rated ripple of this kind of part is stated at {rated_at}.")
    values = {"ripple_current": Quantity(allowed, "A", 4), "multiplier": Quantity(multiplier, "")}
    return found(values, working=working, notes=notes, sources=(row["source"],))


@calculator(
    topic="health",
    title="Ripple current of a can",
    sources=("GE 23A",),
)
def ripple_of_can(
    series: Annotated[
        str, Choice(CANS, "Type of can: 23A is rated at 85 °C, 23F at 85 °C and made to 95 °C.")
    ],
    ripple_current: Annotated[float, Given("A", "Rated ripple at 85 °C.", above=0, at_most=1e3)],
    temperature: Annotated[
        float, Given("°C", "Of the air around it.", at_least=-273.15, at_most=200)
    ],
    air_flow: Annotated[float, Given("", "Feet per minute.", at_least=0, at_most=1e4)] = 0.0,
) -> Found:
    """The ripple current a large can may carry in cooler or moving air.

    `ripple_current` in ampere rms at 85 °C, `temperature` in °C, `air_flow` in feet per minute.
    Between two listed temperatures the hotter one counts. Raises RepairlibError above the hottest.
    Source: GE 23A application information, tables AP1 to AP3.

    >>> print(ripple_of_can("can 23A", "2 A", "65 °C", 50))
    Ripple current of a can: ripple current 3.910 A; by temperature 1.7; by air flow 1.15
    """
    table = read_table("ripple-multipliers")
    hot = sorted((row for row in table if row["series"] == series), key=lambda r: float(r["point"]))
    hotter = [row for row in hot if float(row["point"]) >= temperature]
    if not hotter:
        wrong = f"hotter than {series} is listed for"
        raise RepairlibError(f"{temperature:g} °C", wrong, f"at most {hot[-1]['point']} °C")
    by_temperature = float(hotter[0]["multiplier"])
    air, notes = _listed([row for row in table if row["condition"] == "air_ft_per_min"], air_flow)
    by_air = float(air["multiplier"])
    allowed = ripple_current * by_temperature * by_air
    working = [
        f"at {hotter[0]['point']} °C × {by_temperature:g}, in {air['point']} ft/min × {by_air:g}",
        f"{brief(ripple_current, 'A')} × {by_temperature:g} × {by_air:g} = {brief(allowed, 'A')}",
    ]
    values = {
        "ripple_current": Quantity(allowed, "A", 4),
        "by_temperature": Quantity(by_temperature, ""),
        "by_air_flow": Quantity(by_air, ""),
    }
    return found(values, working=working, notes=notes)


def _listed(rows, point: float, unit: str = ""):
    """The row of the highest listed point that is not above `point`, and a note on it."""
    below = [row for row in rows if float(row["point"]) <= point]
    if not below:
        lowest = f"{rows[0]['point']} {unit}".strip()
        read = f"{point:g} {unit}".strip()
        raise RepairlibError(read, "below the lowest listed point", f"{lowest} or more")
    row = below[-1]
    listed = f"{row['point']} {unit}".strip()
    exact = float(row["point"]) == point
    return row, [] if exact else [f"Not listed: the multiplier of {listed} was used."]


def _within(low: str, value: float, high: str) -> bool:
    if not low:
        return True
    return float(low) * (1 - 1e-9) <= value <= float(high) * (1 + 1e-9)
