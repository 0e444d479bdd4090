"""A twin: the same place on another channel or board, what stands there, how it is measured.

A twin is the best witness there is, where it is really a twin. Read in circuit it shows the part
together with all that lies beside it, so that what it allows is a range and not a value.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import Quantity, read_quantity
from repairlib.missing_parts.kinds import (
    CAPACITOR,
    CHIP,
    CRYSTAL,
    DIODE,
    FUSE,
    INDUCTIVE,
    LED,
    RESISTOR,
    TRANSISTOR,
)

_ONE_VALUE = r"(?<![\w.])\d+(?:\.\d+)?\s?(?:[pnuµmkM]?(?:F|H|Ω|ohms?|R)|[kM]|[kRpnuµ]\d+)(?!\w)"
# What names a twin, up to the end of what is said of it.
SPEAKS = re.compile(
    r"\b(?:twins?|sister|donor|counterpart|sibling"
    r"|(?:other|second|next|good|working|identical|parallel|neighbour(?:ing)?)"
    r" (?:channel|board|half|unit|port|circuit|stage|phase)s?"
    r"|(?:same|corresponding) (?:part|place|position|spot|pads?|reference)"
    r"|(?:left|right|first|third|fourth|channel \w+) ?(?:channel|half|port|one)?"
    r" (?:has|shows|reads|measures|carries|is fitted with))\b"
    # "left one is 0.22 ohm", "right stick has one 100 nF", "others are 100 ohm"
    r"|\b(?:(?:left|right|upper|lower|first|second|third|fourth|other|neighbour)"
    r"(?! (?:pad|side|end|net|terminal|hole|land)s?\b)(?: [\w'’-]+){1,3}?"
    r"|(?:the )?(?:others?|neighbours|rest|sisters)(?! (?:pad|side|end|net|terminal|hole|land)s?\b)"
    r"(?: [\w'’-]+){0,4}?|[\w'’]+ one)"
    r" (?:has|have|is|are|shows?|reads?|measures?|carr(?:y|ies))\b(?=[^,;]*?" + _ONE_VALUE + r")",
    re.IGNORECASE,
)
_VALUE = re.compile(
    r"(?<![\w.])(?:\d+(?:\.\d+)?\s?(?:[pnuµμmkKM]\s?(?:F|H|Ω|ohms?|R)?|F|Ω|ohms?|R|meg|Meg|[kM]?ohms?)"
    r"|\d+[pnuµkKRM]\d+(?:F|H)?)(?![\w])",
)
_EMPTY = re.compile(
    r"\b(?:empty|unpopulated|not fitted|never fitted|nothing|bare|dnp|no part|unfitted|vacant"
    r"|not populated|also missing|without part)\b",
    re.IGNORECASE,
)
_IN_CIRCUIT = re.compile(
    r"\b(?:in.?circuit|on the board|reads|reading|measures?|measured|meter)\b", re.IGNORECASE
)
_FAMILIES = (
    (LED, r"\bleds?\b|light.?emitting"),
    (INDUCTIVE, r"\bferrite|bead|inductor|choke|coil\b|[nµu]H\b"),
    (FUSE, r"\bfuse|polyfuse|varistor|resettable"),
    (DIODE, r"\bdiode|schottky|zener|tvs|suppress|diode.?test|[kk]athode.?band"),
    (CRYSTAL, r"\bcrystal|quartz|resonator|\bmhz\b|\bkhz\b"),
    (TRANSISTOR, r"\btransistor|mosfet|npn|pnp"),
    (CHIP, r"\bregulator|\bchip\b(?! (?:cap|res|tant|ceramic|fuse|bead|part|capacitor|resistor))"),
    (CAPACITOR, r"\bcap\b|capacit|tantal|electrolytic|ceramic|[pnµu]F\b|\belko\b|farad|mlcc"),
    (
        RESISTOR,
        r"\bresist|\bohms?\b|Ω|\blink\b|jumper|\b0r0?\b|\bzero.?ohm|\b\d+(?:\.\d+)?\s?[kM]\b",
    ),
)
_UNITS = {"F": CAPACITOR, "H": INDUCTIVE, "Ω": RESISTOR}
_BY_LETTER = {
    "C": CAPACITOR,
    "R": RESISTOR,
    "L": INDUCTIVE,
    "FB": INDUCTIVE,
    "D": DIODE,
    "F": FUSE,
    "Q": TRANSISTOR,
}


@dataclass(frozen=True, slots=True)
class Twin:
    """What is said of a twin: its `text`, the `family` of its part or "", its `value` or None.

    `empty` says that nothing stands there either; `in_circuit` that the value was measured on the
    board, so that what lies beside it was measured too.
    """

    text: str
    family: str = ""
    value: Quantity | None = None
    empty: bool = False
    in_circuit: bool = False


def read_twin(text: str) -> Twin:
    """What a text says of a twin channel's part.

    >>> read_twin("twin channel has 10 µF").value
    10 µF
    >>> read_twin("the other channel reads 4k7 in circuit").in_circuit
    True
    >>> read_twin("same place on the other board is empty").empty
    True
    """
    value = _value_in(text)
    family = _UNITS.get(value.unit, "") if value is not None else ""
    for name, words in _FAMILIES:
        ohms = name == CAPACITOR and value is not None and value.unit == "Ω"  # a ceramic resistor
        if not ohms and re.search(words, text, re.IGNORECASE):
            family = name
            break
    if not family:
        letter = re.search(r"\b(FB|[CRLDFQ])\d+\b", text)
        family = _BY_LETTER[letter[1]] if letter else ""
    empty = bool(_EMPTY.search(text)) and value is None
    return Twin(text.strip(), family, value, empty, bool(_IN_CIRCUIT.search(text)))


def _value_in(text: str) -> Quantity | None:
    """The first value of a part that stands in `text`: not volts, amperes or millimetres."""
    for found in _VALUE.finditer(text):
        said = re.sub(r"\s", "", found[0])
        if said[-1] == "m" and said[-2].isdigit():  # a length
            continue
        unit = next((one for sign, one in (("F", "F"), ("H", "H")) if said.endswith(sign)), "")
        if not unit:
            unit = "F" if said[-1] in "pnuµμ" or re.search(r"\d[pnuµ]\d", said) else "Ω"
        if said[-2:] == "mR" or said.endswith(("mΩ", "mohm", "mohms")):
            unit = "Ω"
        try:
            return read_quantity(said, unit)
        except RepairlibError:
            continue
    return None
