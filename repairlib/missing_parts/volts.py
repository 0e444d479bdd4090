"""Voltages as people type them in the text of a place: 3.3 V, 3V3, 230 VAC, 2 x 12 V ac, 3 kV."""

from __future__ import annotations

import re
from typing import NamedTuple

from repairlib.core.quantity import read_quantity

HIGHEST_VOLTS = 1e5


class Said(NamedTuple):
    """A voltage: `signed` as said, `volts` the most that may lie there, whether `ac`, its words."""

    signed: float
    volts: float
    ac: bool
    words: str


_LETTER_VOLTS = re.compile(r"\b(\d{1,4})[vV](\d{1,3})[A-Za-z]?\b")
_VOLTS = re.compile(
    r"(?<![\w.])(?:(?P<two>2)\s?x\s?)?(?P<sign>±|\+/?-|[+-])?\s?(?P<figure>\d+(?:\.\d+)?)\s?(?P<kilo>[kK])?"
    r"[vV](?:olts?|rms)?(?:[\s-]?(?P<kind>[aAdD][cC]))?(?P<tail>[ADad])?(?!\w)"
    r"|(?<![\w.])(?P<bare>\d{2,5})\s?volts?\b"
)


def volts_said(text: str) -> list[Said]:
    """Every voltage of a text, in no order; what no bench has is left out.

    Two windings in line, "2 x 12 V", and ± are the sum of both.

    >>> [(one.volts, one.ac) for one in volts_said("3V3, 230 VAC, 2 x 35 V ac, ±40 V, 3 kV disc")]
    [(3.3, False), (230.0, True), (70.0, True), (80.0, False), (3000.0, False)]
    """
    text = text.replace("_", " ").replace("−", "-")
    said = []
    for found in _LETTER_VOLTS.finditer(text):
        volts = read_quantity(f"{found[1]}.{found[2]}").value
        said.append(Said(volts, volts, False, found[0]))
    for found in _VOLTS.finditer(text):
        figure = found["figure"] or found["bare"]
        if len(figure) > 11:
            continue
        volts = read_quantity(figure).value * (1e3 if found["kilo"] else 1)
        sign = (found["sign"] or "").replace("/", "")
        most = 2 * volts if found["two"] or sign in ("±", "+-") else volts
        signed = -volts if sign == "-" else volts
        ac = (found["kind"] or "").casefold() == "ac"
        said.append(Said(signed, most, ac, found[0].strip()))
    return [one for one in said if one.volts <= HIGHEST_VOLTS]
