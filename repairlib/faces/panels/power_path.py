"""Power through a plug: type contact, wire and lead, see whether it carries and what arrives.

The panel is a thin view. The verdict comes from `repairlib.connectors`, the picture from
`repairlib.show`.
"""

from __future__ import annotations

from repairlib.connectors import FAMILIES, OWN, power_path
from repairlib.core import html
from repairlib.core.finding import Finding, spoken
from repairlib.core.quantity import read_quantity
from repairlib.core.safety import caution
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.show import draw_power_path

OF_THE_SHEET = ("single", "new")  # what only the maker's sheet of an own rating says
SIZE = Fields("11rem", "24rem")


def power_path_panel(
    family: str = OWN,
    contacts: str = "2",
    current: str = "3 A",
    gauge: str = "24",
    length: str = "1.5 m",
    temperature: str = "20 °C",
    supply: str = "12 V",
    needs: str = "11 V",
    measured: str = "120 mΩ",
    single: str = "5 A",
    new: str = "30 mΩ",
    kept: str = "power path",
) -> FieldPanel:
    """The panel, ready to be shown. All values but the family are text, as typed; `needs` and
    `measured` may be empty. What is typed is kept under the name `kept`.

    Its parts: a field for each value of the calculator, then `answer`, `held`.

    >>> "outside the limits" in power_path_panel().answer.value
    True
    """
    kinds = [("see its data sheet" if one == OWN else one, one) for one in FAMILIES]
    fields = {
        "current": SIZE.text("Current in each", current),
        "measured": SIZE.text("Worse contact has", measured),
        "family": SIZE.choice("Contact", kinds, family),
        "single": SIZE.text("Sheet: one carries", single),
        "new": SIZE.text("Sheet: new, at most", new),
        "contacts": SIZE.text("Contacts loaded", contacts),
        "gauge": SIZE.text("Wire, AWG", gauge),
        "length": SIZE.text("Lead, one way", length),
        "temperature": SIZE.text("Lead is at", temperature),
        "supply": SIZE.text("Supply gives", supply),
        "needs": SIZE.text("Set needs at least", needs),
    }
    panel = FieldPanel(fields, carried, ("answer", "held"), kept=kept)
    panel.answer.add_class("rl-beside")
    panel.held.remove_class("rl-below")  # under the fields, beside the answer

    def offer(_change: object = None) -> None:
        for name in OF_THE_SHEET:
            fields[name].disabled = fields["family"].value != OWN

    for field in fields.values():
        field.add_class("rl-stacked")
    fields["family"].observe(offer, "value")
    offer()
    return panel


def carried(family: str, needs: str, measured: str, **typed: str) -> tuple[str, str]:
    """The verdict with its picture and what stands behind it; the note and the cautions."""
    if family != OWN:
        typed = {name: text for name, text in typed.items() if name not in OF_THE_SHEET}
    may_be_empty = {"needs": needs, "measured": measured}
    typed |= {name: text for name, text in may_be_empty.items() if text.strip()}
    finding = power_path(family=family, **typed)
    volts = read_quantity(needs, "V").value if needs.strip() else None
    answer = answer_html(finding, html.picture(draw_power_path(finding, volts)))
    return answer, html.listed(finding.notes[:1]) + caution(*finding.cautions).short()


def answer_html(finding: Finding, drawn: str) -> str:
    """The verdict and the picture; folded, all values, the working and the sources."""
    values = html.named((spoken(name), value) for name, value in finding.values.items())
    pieces = [
        html.answer(finding.verdict, finding.reason),
        drawn,
        html.fold("All values", values),
        html.fold("More to know", html.listed(finding.notes[1:])),
        html.fold("Working", html.listed(finding.working, "ol")),
        html.fold("Sources", html.sources(finding.sources)),
    ]
    return "".join(pieces)
