"""Discharge view: a capacitor, a resistor and a limit, and how long the one needs for the other.

The panel is a thin view. The time comes from `repairlib.stored_charge`, the chart from
`repairlib.show.discharge`.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.errors import RepairlibError
from repairlib.core.limits import AFTER_UNPLUGGING, ES1
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.look import Panel, picture_html, told, trouble, words
from repairlib.show.discharge import draw_discharge
from repairlib.stored_charge import discharge_time

WIDE = widgets.Layout(width="28rem", max_width="100%")
LABELS = {"description_width": "9rem"}


class DischargeView(Panel):
    """The panel's parts: `capacitance`, `voltage`, `resistance`, `limit`; `answer`, `chart`.

    >>> view = DischargeView("220 µF", "400 V", "100 kΩ")
    >>> "41.74" in view.answer.value
    True
    """

    def __init__(self, capacitance: str, voltage: str, resistance: str):
        self.capacitance = _text("Capacitance", capacitance)
        self.voltage = _text("Voltage at first", voltage)
        self.resistance = _text("Resistor", resistance)
        self.limit = widgets.Dropdown(
            options=tuple(AFTER_UNPLUGGING),
            value=ES1,
            description="Limit",
            layout=WIDE,
            style=LABELS,
        )
        self.answer, self.chart = words(), words()
        fields = (self.capacitance, self.voltage, self.resistance, self.limit)
        for field in fields:
            field.observe(self._update, "value")
        cautions = caution("stored charge")._repr_html_()
        rules = words(f"<details><summary>Cautions</summary>{cautions}</details>")
        super().__init__(*fields, self.answer, self.chart, rules)
        self._update()

    def _update(self, _change=None) -> None:
        typed = (self.capacitance.value, self.voltage.value, self.resistance.value)
        try:
            finding = discharge_time(*typed, self.limit.value)
            farad, volt, ohm = (
                read_quantity(text, unit).value for text, unit in zip(typed, "FVΩ", strict=True)
            )
            self.chart.value = picture_html(draw_discharge(farad, volt, ohm, self.limit.value))
        except RepairlibError as error:
            self.answer.value, self.chart.value = trouble(error), ""
            return
        says = [f"{finding.reason}.", *(f"{step}." for step in finding.working[:2])]
        says += [
            f"{finding.values['energy']} are in it; the resistor has "
            f"{finding.values['first_power']} at the first instant.",
            *finding.notes,
        ]
        headline = f"{finding.values['time']} by calculation: {finding.verdict}"
        self.answer.value = told("cannot read", headline, says)


def discharge_view(
    capacitance: str = "1000 µF", voltage: str = "63 V", resistance: str = "1 kΩ"
) -> DischargeView:
    """The discharge panel, ready to be shown. All values are text, as typed."""
    return DischargeView(capacitance, voltage, resistance)


def _text(label: str, value: str) -> widgets.Text:
    return widgets.Text(value=value, description=label, layout=WIDE, style=LABELS)
