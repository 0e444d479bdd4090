"""Reference designators: `C5`, and the short ways in which lists write many of them.

Covers one name (`C5`, `C 5`, `C-5`, `C12A`), ranges (`C1-C4`, `C1~4`, `C1 to C4`) and lists
(`C1, C7`, `C12/13`, `C1 C2`). What kind of part a letter stands for is decided here too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError

MOST_IN_A_RANGE = 500
# Letters that stand for a fixed capacitor. Usual in service manuals; common practice.
ON_THE_MAINS = ("CX", "CY")  # capacitors of class X and Y
CAPACITORS = ("C", "EC", *ON_THE_MAINS)  # not CE: CE04W is a kind of part
TRIMMERS = ("TC", "VC", "CT", "CV")
# Letters of other parts, so that a line of theirs is known as such.
OTHER_PARTS = (
    *("R", "VR", "RV", "RN", "RA", "TH", "RT", "L", "T", "TR", "LF", "FB", "D", "ZD", "LED"),
    *("BR", "DB", "Q", "TRANS", "IC", "U", "M", "X", "XTAL", "Y", "CF", "F", "FU", "FS", "S"),
    *("SW", "RL", "RY", "K", "J", "P", "CN", "JK", "CON", "W", "TP", "BT", "BAT", "SP", "LS"),
    *("A", "N", "H", "Z", "PL", "NE"),
)
_KNOWN = {*CAPACITORS, *TRIMMERS, *OTHER_PARTS}

_NAME = r"([A-Za-z]{1,5})[ -]?([0-9]{1,5})([A-Za-z]?)"
_ENDS = r"(?!\w|\.[0-9]|%)"  # not in the middle of a word or number
_NO_UNIT = r"(?!\s*(?:[pnuµμm]?F\b|[µμV%]))"  # and not the number of a value
_RANGE_SIGN = r"\s*(?:-|–|—|~|\.\.\.?|…|\bto\b|\bthru\b|\bthrough\b)\s*"
_LIST_SIGN = r"\s*(?:[,;/&+]|\band\b|\s)\s*"
_FIRST = re.compile(_NAME + _ENDS)
_NEXT_NAME = re.compile(rf"(?P<sign>{_RANGE_SIGN}|{_LIST_SIGN}){_NAME}{_ENDS}")
_NEXT_NUMBER = re.compile(
    rf"(?P<sign>{_RANGE_SIGN}|\s*[,;/&+]\s*)([0-9]{{1,5}})([A-Za-z]?){_ENDS}{_NO_UNIT}"
)
_RANGE_ONLY = re.compile(_RANGE_SIGN)


@dataclass(eq=False, slots=True)
class References:
    """The `letters` (upper case) that a text begins with, its `names` in order, and what is left.

    `rest` is the text after the references.
    """

    letters: str
    names: tuple[str, ...]
    rest: str


def begins_with_reference(text: str) -> bool:
    """Whether `text` begins with a reference of a known kind of part."""
    found = _FIRST.match(text)
    return found is not None and found[1].upper() in _KNOWN


def read_references(text: str) -> References | None:
    """The references that `text` begins with, or None when it begins with none.

    Raises RepairlibError for a range that runs backwards, or that is longer than 500.

    >>> read_references("C1-C4, C7").names
    ('C1', 'C2', 'C3', 'C4', 'C7')
    >>> read_references("C12/13").names, read_references("C 5").names
    (('C12', 'C13'), ('C5',))
    >>> read_references("10/16") is None
    True
    """
    text = text.strip()
    found = _FIRST.match(text)
    if not found or found[1].upper() not in _KNOWN:
        return None
    letters = found[1].upper()
    names = [letters + _number(found[2]) + found[3].upper()]
    at = found.end()
    while at < len(text):
        following = _NEXT_NAME.match(text, at)
        if following and following[2].upper() == letters:
            number, suffix = following[3], following[4]
        else:
            following = _NEXT_NUMBER.match(text, at)
            if not following:
                break
            number, suffix = following[2], following[3]
        if _RANGE_ONLY.fullmatch(following["sign"]):
            names += _between(names[-1], letters, number + suffix, text)
        else:
            names.append(letters + _number(number) + suffix.upper())
        at = following.end()
    return References(letters, tuple(names), text[at:].strip(" \t,;:|"))


def _number(digits: str) -> str:
    return digits.lstrip("0") or "0"


def _between(first: str, letters: str, last: str, text: str) -> list[str]:
    """The names after `first` up to `letters` + `last`."""
    begin, end = first[len(letters) :], last
    accepted = "a range from a lower to a higher number, such as C1-C4"
    if not (begin.isdigit() and end.isdigit()):
        raise RepairlibError(text, f"a range from {begin} to {end} cannot be counted", accepted)
    low, high = int(begin), int(end)
    if high <= low:
        raise RepairlibError(text, f"the range from {low} to {high} does not go up", accepted)
    if high - low > MOST_IN_A_RANGE:
        wrong = f"the range from {low} to {high} is longer than {MOST_IN_A_RANGE}"
        raise RepairlibError(text, wrong, accepted)
    return [f"{letters}{number}" for number in range(low + 1, high + 1)]


def in_natural_order(name: str) -> tuple[str, int, str]:
    """A sorting key that puts C2 before C10.

    >>> sorted(["C10", "C2", "C2A"], key=in_natural_order)
    ['C2', 'C2A', 'C10']
    """
    if name[1:].isdigit():
        return name[0], int(name[1:]), ""
    letters = name.rstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ") if name[-1:].isalpha() else name
    digits = letters.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
    prefix = letters[: len(letters) - len(digits)]
    return prefix, int(digits or 0), name[len(letters) :]
