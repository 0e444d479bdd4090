"""Discharge view: a capacitor, a resistor and a limit, and how long the one needs for the other.

The panel is a thin view. The time comes from `repairlib.stored_charge`, the chart from
`repairlib.show.discharge`.
"""

from __future__ import annotations

from repairlib.core.finding import Finding
from repairlib.core.html import picture, told
from repairlib.core.limits import AFTER_UNPLUGGING, ES1
from repairlib.core.quantity import brief, read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.show.discharge import draw_discharge
from repairlib.stored_charge import NOT_TRIED, OWN, QUALIFIED, discharge_time

SIZE = Fields("9rem", "28rem")


def discharge_view(
    capacitance: str = "1000 µF",
    voltage: str = "63 V",
    resistance: str = "1 kΩ",
    limit: str = ES1,
    own: str = "1 V",
    kept: str = "discharge",
) -> FieldPanel:
    """The discharge panel, ready to be shown. All values are text, as typed.

    What is typed is kept under the name `kept`.

    Its parts: `capacitance`, `voltage`, `resistance`, `limit`, `own`; then `answer`, `chart`.

    >>> view = discharge_view("220 µF", "400 V", "100 kΩ")
    >>> "41.74" in view.answer.value
    True
    """
    fields = {
        "capacitance": SIZE.text("Capacitance", capacitance),
        "voltage": SIZE.text("Voltage at first", voltage),
        "resistance": SIZE.text("Resistor", resistance),
        "limit": SIZE.choice("Limit", (*AFTER_UNPLUGGING, OWN), limit),
        "own": SIZE.text("Your own limit", own),
    }
    return FieldPanel(fields, discharged, ("answer", "chart"), kept=kept)


def discharged(
    capacitance: str, voltage: str, resistance: str, limit: str, own: str = "1 V"
) -> tuple[str, str]:
    """The answer and the chart, as HTML. Where a rule asks for nothing, your own limit counts."""
    volt = read_quantity(voltage, "V").value
    idle = limit != OWN and 0 < volt <= AFTER_UNPLUGGING[limit].volts
    remark = (
        f"{AFTER_UNPLUGGING[limit].words} ({limit}) is not below the {brief(volt, 'V')} at the "
        "start: that rule asks for nothing here. Your own limit was taken."
        if idle
        else ""
    )
    if idle:
        limit = OWN
    mine = {"own": own} if limit == OWN else {}
    finding = discharge_time(capacitance, voltage, resistance, limit, **mine)
    farad = read_quantity(capacitance, "F").value
    ohm = read_quantity(resistance, "Ω").value
    chart = draw_discharge(farad, volt, ohm, limit, finding.down_to if mine else None)
    return answer_html(finding, remark), picture(chart)


def answer_html(finding: Finding, remark: str = "") -> str:
    """The verdict first: in red, cautions open, when the work is handed on or the part bursts."""
    values = finding.values
    handed_on = finding.verdict == QUALIFIED
    burst = "" if handed_on else next((one for one in finding.notes if NOT_TRIED in one), "")
    says = [remark] if remark else []
    if handed_on:
        says.append(f"{values['time']} by calculation: {finding.verdict}.")
    says += [
        f"{finding.reason}.",
        f"{values['energy']} are in it; the resistor has {values['first_power']} at the first "
        "instant.",
        *(note for note in finding.notes if note != burst),
        *(f"{step}." for step in finding.working[:2]),
    ]
    shown = caution(*finding.cautions)
    if handed_on:
        headline = f"{QUALIFIED.capitalize()}: this one can hurt or kill"
        return told("unsafe", headline, says, shown.in_full())
    if burst:
        return told("unsafe", burst, says, shown.in_full())
    headline = f"{values['time']} to {values['down_to']} by calculation: {finding.verdict}"
    return told("partly right", headline, says, shown.folded())
