"""A simulated supply: choose what is wrong, see the volts, the symptoms, the part, what decides.

The panel is a thin view. Waves and symptoms come from `repairlib.circuits`, the chart from
`repairlib.show.rail_chart`.
"""

from __future__ import annotations

from repairlib.circuits import (
    FAULTS,
    SOUND,
    SYMPTOMS,
    look_at,
    most_ripple,
    symptoms_of,
    that_fit,
)
from repairlib.core.html import fold, picture, row, sources, table, told
from repairlib.core.quantity import Quantity
from repairlib.core.safety import caution
from repairlib.core.wording import counted, sentence
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.show.rail_chart import draw_rail

SIZE = Fields("5rem", "24rem")
WIDE = 'style="text-align:left;vertical-align:top;padding:2px 14px 2px 0"'


def supply_faults(fault: str = SOUND, kept: str = "supply faults") -> FieldPanel:
    """The simulated supply, ready to be shown, with that fault at first.

    What is chosen is kept under the name `kept`. Its parts: `fault`; then `answer`, `picture`.

    >>> panel = supply_faults("one diode open")
    >>> "each diode on the diode range" in panel.answer.value
    True
    """
    fields = {"fault": SIZE.choice("Fault", tuple(FAULTS), fault)}
    return FieldPanel(fields, simulated, kept=kept)


def simulated(fault: str) -> tuple[str, str]:
    """The symptoms with what fits them, and the volts, as HTML."""
    return symptoms_html(fault), picture(draw_rail(fault))


def symptoms_html(fault: str) -> str:
    """The symptoms that were worked out, each likely part with its measurement, and the figures."""
    seen = symptoms_of(fault)
    fits = that_fit(seen)
    says = [sentence(SYMPTOMS[symptom]) for symptom in seen]
    head = row(("These signs fit", "The measurement that decides"), WIDE, "th")
    likely = table((row((one.fault, one.decides), WIDE) for one in fits), head) if fits else ""
    folded = fold("Figures", _figures(fault)) + fold(
        "Sources", sources(dict.fromkeys(one.source for one in fits))
    )
    headline = counted(len(seen), "symptom")
    if not seen:
        headline, folded = "No symptom", fold("Figures", _figures(fault))
    held = caution("stored charge").in_brief() if seen else ""
    return told("wrong" if seen else "right", headline, says, likely + held + folded)


def _figures(fault: str) -> str:
    """What the instruments show, beside the sound supply."""
    now, sound = look_at(fault), look_at(SOUND)
    pairs = (
        ("mean of the reservoir", "mean", "V"),
        ("its ripple, peak to peak", "ripple", "V"),
        ("times a second", "hertz", "Hz"),
        ("output, lowest", "low", "V"),
        ("output, highest", "high", "V"),
        ("current in the winding, RMS", "amps", "A"),
        ("power in the reservoir", "watts", "W"),
    )
    rows = [
        row((name, *(Quantity(getattr(look, key), unit, 3) for look in (now, sound))), WIDE)
        for name, key, unit in pairs
    ]
    most = row(("ripple at most, by the formula", Quantity(most_ripple(), "V", 3), ""), WIDE)
    return table([*rows, most], row(("", "now", "sound"), WIDE, "th"))
