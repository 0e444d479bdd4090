"""A part that is gone: type what is seen of its place, and see what may have stood there.

A thin view: what is said stands in `repairlib.faces.shown.missing`.
"""

from __future__ import annotations

from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.shown.missing import place_html

SIZE = Fields("8.5rem", "26rem")
BESIDE = ("not known", "others of its kind on the same net", "none")
PLACE = "C? 2 pads 3.2 x 1.6 mm, bar printed at one end"


def missing_part(
    place: str = PLACE,
    one_side: str = "+3.3 V",
    other_side: str = "ground",
    near: str = "regulator U2 output",
    twin: str = "",
    kept: str = "missing part",
) -> FieldPanel:
    """The panel, ready to be shown. All values are free words as typed, and may be empty.

    Its parts: a field for each value and `beside`, then `answer`, `deciding`. What is typed is
    kept under the name `kept`.

    >>> "<h4>1. " in missing_part(kept="").answer.value
    True
    """
    fields = {
        "place": SIZE.lines("The place", place, 3),
        "one_side": SIZE.text("One side is", one_side),
        "other_side": SIZE.text("Other side is", other_side),
        "near": SIZE.text("Near it", near),
        "twin": SIZE.text("A twin has", twin),
        "beside": SIZE.choice("Beside it", BESIDE),
    }
    hints = {
        "place": "C? 0603, a bar at one end, white outline",
        "one_side": "+3.3 V, SDA, pin 4 of U2",
        "other_side": "ground",
        "near": "regulator U2 output",
        "twin": "10 µF, read on the board",
    }
    for name, hint in hints.items():
        fields[name].placeholder = hint
    return FieldPanel(fields, place_html, ("answer", "deciding"), beside=("deciding",), kept=kept)
