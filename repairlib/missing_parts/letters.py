"""What the letter of a reference says of the kind of part: strong evidence, and never sure.

Common practice: C capacitor, R resistor, L coil, D diode, Q transistor, U chip, F fuse, Y crystal.
Layouts differ: a ferrite bead may stand as L, FB, R or F, a link as R, J or W.
"""

from __future__ import annotations

from repairlib.missing_parts.kinds import (
    CAPACITOR,
    CHIP,
    CRYSTAL,
    DIODE,
    FUSE,
    INDUCTIVE,
    LED,
    NOTHING,
    RESISTOR,
    TRANSISTOR,
    Kind,
)

STANDS, ALSO, HARDLY = 6, -1, -6  # points: what the letter is for, may be for, and is not for
_ALIKE = {
    CAPACITOR: "C CE EC CP CX CY",
    RESISTOR: "R RS RN RT TH NTC PTC",
    INDUCTIVE: "L FB FL LF FER",
    DIODE: "D ZD VD CR TVS DZ VZ Z",
    LED: "LED LD DS D",
    FUSE: "F FU FS PF RV MOV VR",
    CRYSTAL: "Y X XTAL",
    TRANSISTOR: "Q TR T VT",
    CHIP: "U IC",
}
_FAMILY = {
    letters: [family for family, known in _ALIKE.items() if letters in known.split()]
    for words in _ALIKE.values()
    for letters in words.split()
}
# The kind in a word, as good as its letter.
WORDS = {
    "capacitor": "C",
    "cap": "C",
    "resistor": "R",
    "inductor": "L",
    "coil": "L",
    "choke": "L",
    "bead": "FB",
    "diode": "D",
    "zener": "ZD",
    "led": "LED",
    "fuse": "F",
    "crystal": "Y",
    "transistor": "Q",
    "thermistor": "TH",
    "varistor": "RV",
}
_LINKS = ("J", "JP", "JR", "W", "LK")
# Letters: the kinds of another family that they are used for too.
_USED_FOR = {
    "L": ("zero-ohm link",),
    "FB": ("zero-ohm link",),
    "R": ("ferrite bead", "fuse", "varistor"),
    "F": ("ferrite bead", "zero-ohm link"),
    "U": ("ESD protection diode", "voltage regulator"),
    "Q": ("voltage regulator",),
    "T": ("common-mode choke",),
    "D": ("transistor",),
    "CR": ("LED",),
    "V": ("varistor", "transistor", "ESD protection diode"),
    "RV": ("thermistor",),
    "X": ("crystal",),
}
# Letters that are kept for one kind of their family.
_ONE_KIND = {
    "FB": ("ferrite bead",),
    "FER": ("ferrite bead",),
    "ZD": ("zener diode", "supply protection diode"),
    "DZ": ("zener diode", "supply protection diode"),
    "TVS": ("ESD protection diode", "supply protection diode"),
    "RT": ("thermistor", "timing resistor"),
    "TH": ("thermistor",),
    "NTC": ("thermistor",),
    "PTC": ("thermistor", "fuse"),
    "RV": ("varistor",),
    "MOV": ("varistor",),
    "F": ("fuse",),
    "CE": ("aluminium can", "chip tantalum"),
    "EC": ("aluminium can", "chip tantalum"),
    "CX": ("mains suppression capacitor",),
    "CY": ("mains suppression capacitor",),
}


def points_of_letters(letters: str, kind: Kind) -> tuple[int, str]:
    """What the letters of a reference say of a kind: points, and why in plain words.

    >>> from repairlib.missing_parts.kinds import kind_named
    >>> points_of_letters("R", kind_named("ferrite bead"))
    (-1, 'The letter R is used for it by some')
    """
    if not letters or kind.family == NOTHING:
        return 0, ""
    if letters in WORDS:
        points, why = points_of_letters(WORDS[letters], kind)
        return points, why.replace(f"The letter {WORDS[letters]}", f"The word “{letters}”")
    if letters in _ONE_KIND and kind.name in _ONE_KIND[letters]:
        return STANDS + 2, f"The letter {letters} is kept for it"
    families = _FAMILY.get(letters, [])
    if letters in _LINKS:
        links = kind.name == "zero-ohm link"
        return (STANDS, f"The letter {letters} stands for a link") if links else _no(letters)
    if kind.family in families and letters not in ("VR",):
        doubt = 2 if letters in _ONE_KIND else 0
        return STANDS - doubt, f"The letter {letters} stands for that kind of part"
    if kind.name in _USED_FOR.get(letters, ()):
        return ALSO, f"The letter {letters} is used for it by some"
    return _no(letters)


def _no(letters: str) -> tuple[int, str]:
    return HARDLY, f"The letter {letters} stands for another kind of part"
