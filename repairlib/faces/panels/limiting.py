"""The limit to set for a first power-up, by what there is: bench supply, lamp, or neither.

The panel is a thin view; limit, steps and lamp come from `repairlib.power_up`.
"""

from __future__ import annotations

from repairlib.core.html import fold
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.power_up import LAMP, LIMITED, SUPPLIES, current_limit, series_lamp

SIZE = Fields("10rem", "26rem")


def power_limit(
    voltage: str = "11 V",
    current: str = "150 mA",
    have: str = LIMITED,
    power: str = "12 W",
    mains: str = "230 V",
    kept: str = "power limit",
) -> FieldPanel:
    """The panel of the limit, ready to be shown. All values are text, as typed.

    What is typed is kept under the name `kept`. Its parts: `have`, `voltage`, `current`, `power`,
    `mains`; then `answer`.

    >>> panel = power_limit("12 V", "250 mA")
    >>> "begin at" in panel.answer.value
    True
    """
    fields = {
        "have": SIZE.choice("You have", SUPPLIES, have),
        "voltage": SIZE.text("Volts of the set, dc", voltage),
        "current": SIZE.text("Current, expected", current),
        "power": SIZE.text("Watts on its label", power),
        "mains": SIZE.text("Mains, V", mains),
    }
    panel = FieldPanel(fields, limited, ("answer",), kept=kept)
    panel.answer.add_class("rl-beside")
    return panel


def limited(have: str, voltage: str, current: str, power: str, mains: str) -> tuple[str]:
    """What to set, or whom to hand it to, as HTML; a lamp's own figures folded."""
    found = current_limit(voltage, current, have).under_its_title()
    if have == LAMP:
        lamp = series_lamp(power, mains).under_its_title()
        found += fold("The lamp that a qualified person takes", lamp)
    return (found,)
