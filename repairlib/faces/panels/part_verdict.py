"""One measured capacitor: type what is printed and what was read, and see on which side it lies.

The panel is a thin view. The verdict comes from `repairlib.health`, the picture from
`repairlib.show`, the cautions from `repairlib.core.safety`.
"""

from __future__ import annotations

from repairlib.core import html
from repairlib.core.finding import Finding
from repairlib.core.html import picture, state_of, told
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.health import STATED_HZ, families, judge_capacitor
from repairlib.show import draw_esr_verdicts

SIZE = Fields("10rem", "26rem")


def judge_part(
    family: str = "aluminium general 105",
    capacitance: str = "100 µF",
    rated_voltage: str = "25 V",
    measured: str = "92 µF",
    esr: str = "9 Ω",
    kept: str = "judge part",
) -> FieldPanel:
    """The panel of one measured part; all values but the family are text, as typed. A reading that
    was not taken is left empty. kept: the name under which what is typed is kept.

    Its parts: a field for each value of the calculator, then `answer`, `picture`.

    >>> panel = judge_part(esr="3 Ω")
    >>> "Marginal" in panel.answer.value
    True
    """
    kinds = [(one.words, name) for name, one in families().items()]
    fields = {
        "family": SIZE.choice("It is", kinds, family),
        "capacitance": SIZE.text("Printed on it", capacitance),
        "rated_voltage": SIZE.text("and", rated_voltage),
        "measured": SIZE.text("Measured capacitance", measured),
        "esr": SIZE.text("Measured ESR", esr),
        "frequency": SIZE.text("at", "120 Hz"),
        "uncertainty": SIZE.text("The meter is good to", "5 %"),
    }
    return FieldPanel(fields, judged, kept=kept)


def judged(
    family: str,
    capacitance: str,
    rated_voltage: str,
    measured: str,
    esr: str,
    frequency: str,
    uncertainty: str,
) -> tuple[str, str]:
    """The verdict, and the ESR beside its two limits, as HTML."""
    taken = {"measured": measured, "esr": esr, "frequency": frequency, "uncertainty": uncertainty}
    read = {name: typed for name, typed in taken.items() if typed.strip()}
    part = family, capacitance, rated_voltage
    finding = judge_capacitor(*part, **read)
    if "esr" not in read or not _at_120(finding, frequency):
        return judged_html(finding), ""
    shown = [("your part", measured.strip(), esr.strip())]
    drawn = draw_esr_verdicts(*part, shown, read.get("uncertainty", "5 %"))
    return judged_html(finding), picture(drawn)


def judged_html(finding: Finding) -> str:
    """The verdict with its reason; what was taken, the working and the cautions are folded."""
    verdict, reason = finding.verdict or "", finding.reason or ""
    more = html.fold("What was taken", html.listed(finding.notes))
    more += html.fold("Working", html.listed(finding.working, "ol"))
    more += html.fold("Sources", html.sources(finding.sources))
    more += caution(*finding.cautions).folded()
    return told(state_of(verdict), verdict.capitalize(), [reason], more)


def _at_120(finding: Finding, frequency: str) -> bool:
    """Whether the limits in the finding are those of the picture."""
    limited = "esr_limit_new" in finding.values
    return limited and read_quantity(frequency, "Hz").value == STATED_HZ
