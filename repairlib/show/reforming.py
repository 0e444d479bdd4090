"""How a stored electrolytic is woken up on the bench: supply, series resistor, part, and meter."""

from __future__ import annotations

from repairlib.health import reforming_schedule
from repairlib.show.circuits import new_sheet, picture_of
from repairlib.show.picture import Picture


def draw_reforming(capacitance: str, rated_voltage: str, years_stored: float) -> Picture:
    """Draw a stored part on a bench supply, through the resistor of its re-forming schedule.

    As reforming_schedule takes them. Raises RepairlibError where it does.

    >>> draw_reforming("470 µF", "25 V", 12)
    A bench supply with its current limited, a resistor of 5.6 kΩ, 250 mW, and the stored part,
    470 µF 25 V, plus to plus. A meter across the resistor shows the current: its voltage must
    fall. The supply goes up in steps: 6.25 V, 12.5 V, 18.75 V, 25 V.
    """
    finding = reforming_schedule(capacitance, rated_voltage, years_stored)
    resistor = f"{finding.values['series_resistor']}, {finding.values['resistor_power']}"
    sheet, elements = new_sheet()
    top, bottom, left, right, far = 0.0, -3.2, 1.0, 6.0, 7.0
    supply = elements.SourceV().endpoints((0, bottom), (0, top))
    sheet += supply.label("bench supply,\ncurrent limited", "bottom", ofst=0.25)
    sheet += elements.Line().at((0, top)).to((left, top))
    sheet += (
        elements.Resistor().at((left, top)).to((right, top)).label(resistor, "bottom", ofst=0.2)
    )
    for x in (left, right):
        sheet += elements.Dot().at((x, top))
        sheet += elements.Line().at((x, top)).to((x, top + 1.1))
    meter = elements.MeterV().endpoints((left, top + 1.1), (right, top + 1.1))
    sheet += meter.label("its voltage must fall", "top", ofst=0.2)
    sheet += elements.Line().at((right, top)).to((far, top))
    part = elements.Capacitor2(polar=True).endpoints((far, top), (far, bottom))
    sheet += part.label(f"stored part\n{capacitance}\n{rated_voltage}", "top", ofst=0.35)
    sheet += elements.Line().at((far, bottom)).to((0, bottom))
    return picture_of(
        sheet,
        f"A bench supply with its current limited, a resistor of {resistor}, and the stored part, "
        f"{capacitance} {rated_voltage}, plus to plus. A meter across the resistor shows the "
        f"current: its voltage must fall. The supply goes up in steps: {finding.steps}.",
    )
