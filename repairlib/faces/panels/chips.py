"""Which chip holds the firmware: type what is seen of each, one a line, and see them ranked.

A thin view: what is said stands in `repairlib.faces.shown.chips`.
"""

from __future__ import annotations

from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.shown.chips import ranking_html

SIZE = Fields("8.5rem", "26rem")
SEEN = """\
U4: 25Q64, 8 pins, 208 mil, near U1 processor, net SPI_CLK
U5: 24C02, 8 pins, 150 mil, nets SDA SCL, pull-ups
U7: 4953, 8 pins, 150 mil, near L2 coil and connector J3
U1: 64 pins, near 25 MHz crystal"""


def which_chip(seen: str = SEEN, programmer: str = "", kept: str = "which chip") -> FieldPanel:
    """The panel, ready to be shown. `seen` is one chip a line in free words; `programmer` the
    voltage that it gives, may be empty. What is typed is kept under the name `kept`.

    Its parts: `seen`, `programmer`, then `answer`, `supply`.

    >>> "Begin with U4" in which_chip(kept="").answer.value
    True
    """
    fields = {
        "seen": SIZE.lines("Chips", seen, 8),
        "programmer": SIZE.text("Programmer gives", programmer),
    }
    fields["seen"].placeholder = "U5: 25Q64, 8 pins, 208 mil, near U4 processor, 3.3 V"
    fields["programmer"].placeholder = "3.3 V, if you have one"
    return FieldPanel(fields, ranking_html, ("answer", "supply"), beside=("supply",), kept=kept)
