"""Discharge view: a capacitor, a resistor and a limit, and how long the one needs for the other.

The panel is a thin view. The time comes from `repairlib.stored_charge`, the chart from
`repairlib.show.discharge`.
"""

from __future__ import annotations

from repairlib.core.html import picture, told
from repairlib.core.limits import AFTER_UNPLUGGING, ES1
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.look import words
from repairlib.show.discharge import draw_discharge
from repairlib.stored_charge import discharge_time

SIZE = Fields("9rem", "28rem")


def discharge_view(
    capacitance: str = "1000 µF", voltage: str = "63 V", resistance: str = "1 kΩ"
) -> FieldPanel:
    """The discharge panel, ready to be shown. All values are text, as typed.

    Its parts: `capacitance`, `voltage`, `resistance`, `limit`; then `answer`, `chart`.

    >>> view = discharge_view("220 µF", "400 V", "100 kΩ")
    >>> "41.74" in view.answer.value
    True
    """
    fields = {
        "capacitance": SIZE.text("Capacitance", capacitance),
        "voltage": SIZE.text("Voltage at first", voltage),
        "resistance": SIZE.text("Resistor", resistance),
        "limit": SIZE.choice("Limit", tuple(AFTER_UNPLUGGING), ES1),
    }
    rules = words(caution("stored charge").folded())
    return FieldPanel(fields, discharged, ("answer", "chart"), below=[rules])


def discharged(capacitance: str, voltage: str, resistance: str, limit: str) -> tuple[str, str]:
    """The time and the chart, as HTML."""
    finding = discharge_time(capacitance, voltage, resistance, limit)
    farad = read_quantity(capacitance, "F").value
    volt = read_quantity(voltage, "V").value
    ohm = read_quantity(resistance, "Ω").value
    chart = draw_discharge(farad, volt, ohm, limit)
    says = [f"{finding.reason}."] + [f"{step}." for step in finding.working[:2]]
    says += [
        f"{finding.values['energy']} are in it; the resistor has "
        f"{finding.values['first_power']} at the first instant.",
        *finding.notes,
    ]
    headline = f"{finding.values['time']} by calculation: {finding.verdict}"
    return told("cannot read", headline, says), picture(chart)
