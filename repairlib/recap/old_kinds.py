"""Old parts that a word or a value gives away: paper, oil in a can, parts of the line, cells.

Which word stands in a description is asked here; what follows from it is decided in rules.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from repairlib.core.limits import is_of_a_run_part
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.words import MAINS, PAPER

# The smallest paper part; the rating from which any unnamed part may be one, and that in the list
# of a valve set, where film of 250 V was not yet made. Common practice.
PAPER_FARAD, PAPER_VOLTS, VALVE_SET_VOLTS = 0.99e-9, 400.0, 150.0
# The smallest double-layer cell, the smallest where the list speaks of memory, the highest rating;
# common practice: most are rated 5.5 V, and no electrolytic of so few volts is made so large.
_CELL_FARAD, _NAMED_CELL_FARAD, _CELL_VOLTS = 0.0199, 9.9e-3, 6.0
POLYPROPYLENE, POLYESTER, POLYSTYRENE = "polypropylene", "polyester", "polystyrene"

_oil = re.compile(r"\boil|\bmotor(?!.{0,3}start)|\bballast|fluorescent|\brun\b|\bpio\b")
_free_of_pcb = re.compile(r"\bnon?[ -]?pcb|\bpcb[ -]?free")
_class = re.compile(r"[xy][1-4]|\bx-cap\b|\by-cap\b|line-filter|film")
_flash = re.compile(r"\b(?:photo|elektronen)?-?(?:flash|strobe|blitz)")
_line = re.compile(
    r"\bac(?:ross)? (?:the )?(?:line|mains)|\bmains\b|\bline\b|\bchassis\b|\bacross\b|"
    r"\bsafety\b|\bmp\b|\bmetal(?:lised|lized)?[ -]paper"
)
_DIELECTRICS = {
    POLYPROPYLENE: re.compile(r"polyprop|\bm?pp\b|\b[mf]kp\b|\bkp\b|\bcbb"),
    POLYESTER: re.compile(r"polyester|mylar|\bpet\b|\bpetp\b|\bmk[ts]\b|\bmkh\b|\bfkt\b"),
    POLYSTYRENE: re.compile(r"polysty|styrol|styrofl|\bfks\b|\bks\b"),
}


def is_oil_filled(old: Capacitor) -> bool:
    """Whether it is a can that may hold oil, and so PCB: motor-run, ballast, oil-paper.

    A part of the mains without a safety class that is large enough for a motor is one too.

    >>> is_oil_filled(Capacitor(4e-6, 440, MAINS, ac=True, text="4uF 440V~ motor-run"))
    True
    """
    if old.kind not in ("", PAPER, MAINS):
        return False
    said = old.text.casefold()
    if _free_of_pcb.search(said):
        return False
    unnamed = not (_class.search(said) or dielectric(said))
    by_value = unnamed and is_of_a_run_part(old.farad, old.volts, old.ac)
    return by_value or bool(_oil.search(said))


def is_of_a_flash(old: Capacitor) -> bool:
    """Whether the list calls it a part of a flash.

    >>> is_of_a_flash(Capacitor(120e-6, 330, "", text="120µF 330V photoflash"))
    True
    """
    return bool(_flash.search(old.text.casefold()))


def is_on_the_line(old: Capacitor) -> bool:
    """Whether a paper part or a mains part sits across the line or from the line to the chassis.

    >>> is_on_the_line(Capacitor(47e-9, 400, PAPER, text=".047 400V paper, line to chassis"))
    True
    >>> is_on_the_line(Capacitor(47e-9, 400, PAPER, text=".047 400V paper coupling"))
    False
    """
    if old.kind == PAPER:
        return old.ac or bool(_line.search(old.text.casefold()))
    return old.kind == MAINS


def of_a_valve_set(capacitors: Iterable[Capacitor]) -> bool:
    """Whether a list is that of a valve set: it names paper, or writes its values in MFD.

    >>> of_a_valve_set([Capacitor(1e-7, 200, "", text=".1 MFD 200V")])
    True
    """
    return any(one.kind == PAPER or "mfd" in one.text.casefold() for one in capacitors)


def may_be_paper(old: Capacitor, valve_set: bool = False) -> bool:
    """Whether a part without a kind has the value and the rating of waxed paper.

    >>> small = Capacitor(1e-7, 250, "")
    >>> may_be_paper(small), may_be_paper(small, valve_set=True)
    (False, True)
    """
    if old.kind or old.ac or old.volts is None or old.farad is None:
        return False
    least = VALVE_SET_VOLTS if valve_set else PAPER_VOLTS
    return old.volts >= least and old.farad >= PAPER_FARAD


def may_be_a_cell(farad: float | None, volts: float | None, named: bool = False) -> bool:
    """Whether so many farads at so few volts are a double-layer cell that keeps a memory alive.

    `named` says that the list speaks of memory. Where no volts are stated it may be one too.

    >>> may_be_a_cell(0.047, 5.5), may_be_a_cell(0.047, 16), may_be_a_cell(0.01, 5.5, named=True)
    (True, False, True)
    """
    least = _NAMED_CELL_FARAD if named else _CELL_FARAD
    return farad is not None and farad >= least and (volts is None or volts <= _CELL_VOLTS)


def dielectric(text: str) -> str:
    """The dielectric of a film part that its description names; "" where it names none.

    >>> dielectric("10n 630V MKP"), dielectric("1n styroflex"), dielectric("film")
    ('polypropylene', 'polystyrene', '')
    """
    said = text.casefold()
    return next((name for name, named in _DIELECTRICS.items() if named.search(said)), "")
