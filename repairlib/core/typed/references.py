"""Reference designators: `C5`, and the short ways in which lists write many of them.

Covers one name (`C5`, `C 5`, `C-5`, `C.5`, `[C5]`, `C12A`, `C1-1`, `2C13` of board 2), ranges
(`C1-C4`, `C1~4`, `C1 to C4`, `C1 bis C4`, `C(1-4)`), lists (`C1, C7`, `C12/13`, `C1 C2`,
`C1 et C2`) and left and right in one (`C12L/R`, `C12LR`). What kind of part a letter stands for is
decided here too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError

MOST_IN_A_RANGE = 500
# Letters that stand for a fixed capacitor. Usual in service manuals; common practice.
ON_THE_MAINS = ("CX", "CY")  # capacitors of class X and Y
WET = ("CE", "EC")  # electrolytic ones; CE04W is no reference but a kind of part
PACKS = ("CP",)  # a capacitor, or a pack of several parts
CAPACITORS = ("C", *WET, *PACKS, *ON_THE_MAINS)
TRIMMERS = ("TC", "VC", "CT", "CV")
# Letters of other parts, so that a line of theirs is known as such.
OTHER_PARTS = (
    *("R", "VR", "RV", "RN", "RA", "TH", "RT", "L", "T", "TR", "LF", "FB", "D", "ZD", "LED"),
    *("BR", "DB", "Q", "TRANS", "IC", "U", "M", "X", "XTAL", "Y", "CF", "F", "FU", "FS", "S"),
    *("SW", "RL", "RY", "K", "J", "P", "CN", "JK", "CON", "W", "TP", "BT", "BAT", "SP", "LS"),
    *("A", "N", "H", "Z", "PL", "NE"),
)
_KNOWN = {*CAPACITORS, *TRIMMERS, *OTHER_PARTS}

_NAME = r"([A-Za-z]{1,5})[ ._‐‑–—-]?([0-9]{1,5})(LR|AB|[A-Za-z])?"
_ENDS = r"(?!\w|\.[0-9]|%)"  # not in the middle of a word or number
_NO_UNIT = r"(?!\s*(?:[pnuµμm]?F\b|[µμV%]))"  # and not the number of a value
# Between references, in English, German, French, Italian, Spanish and Dutch.
_TO = r"(?i:to|thru|through|bis|à|al?|jusqu'à|fino a|hasta|t/m|tot)"
_AND = r"(?i:and|und|u\.|et|ed?|y|en)"
_RANGE_SIGN = rf"(?:\s*(?:-|‐|‑|–|—|~|÷|\.\.\.?|…)\s*|\s+{_TO}\s+)"
_LIST_SIGN = rf"(?:\s*[,;/&+]\s*|\s+{_AND}\s+|\s*\band\b\s*|\s+)"
_CALLED = r"(?!CE0[2-9])"  # a kind of part
_FIRST = re.compile(_CALLED + _NAME + _ENDS)
_ON_A_BOARD = re.compile(r"([1-9][0-9]?E?C)([0-9]{1,4})(?!\w|\.[0-9])")
_IN_ITS_GROUP = re.compile(r"(E?C)0*([0-9]{1,4})-0*\2(?!\w)")  # C1-1 is no range
_IN_A_GROUP = re.compile(r"(E?C)0*([0-9]{1,2})-0*([0-9]{1,4})(?!\w)")  # of a list in groups
_NEXT_IN_A_GROUP = re.compile(r"\s*[,;/&+\s]\s*(E?C[0-9]{1,4}-[0-9]{1,4})(?!\w)")
_NEXT_NAME = re.compile(rf"(?P<sign>{_RANGE_SIGN}|{_LIST_SIGN}){_NAME}{_ENDS}")
_NEXT_NUMBER = re.compile(
    rf"(?P<sign>{_RANGE_SIGN}|\s*[,;/&+]\s*|\s+{_AND}\s+)"
    rf"([0-9]{{1,5}})(LR|AB|[A-Za-z])?{_ENDS}{_NO_UNIT}"
)
_NEXT_SUFFIX = re.compile(r"\s*[/,+&]\s*([A-Z])(?![\w.])")
# A capacitor named anywhere, also right behind a word whose line end was lost. Not 2SC1815.
_INSIDE = re.compile(
    r"(?<![A-Z0-9_.])(?!CE0[2-9])[1-9]?(E?C[EPXY]?)[.‐‑–—-]?([0-9]{1,4})"
    r"(?:[A-Z]?(?![\w%])|(?=[µμunp][0-9]))"  # or its value right behind it: C6µ47
)
_BETWEEN = " \t,;:|=)]}"
_NUMBERED = re.compile(r"(.*?)([0-9]+)([^0-9]*)\Z")
_RANGE_ONLY = re.compile(_RANGE_SIGN)
_MARKED = re.compile(
    r"[*•·#!△▲⚠†'\s]+(?=[\[({A-Za-z0-9])"
)  # a bullet, or the sign of a safety part
_BRACKETS = re.compile(r"[\[({]\s*([A-Za-z]{1,5}[^\[\](){}]*)[\])}]")
_NUMBERS_IN_BRACKETS = re.compile(r"([A-Za-z]{1,5})\s?[\[({]\s*([0-9][^\[\](){}]*)[\])}]")


@dataclass(eq=False, slots=True)
class References:
    """The `letters` (upper case) that a text begins with, its `names` in order, and what is left.

    `rest` is the text after the references.
    """

    letters: str
    names: tuple[str, ...]
    rest: str


def begins_with_reference(text: str) -> bool:
    """Whether `text` begins with a reference of a known kind of part.

    >>> [text for text in ("C5", "[C7] 10", "2C13", "CE04W", "12V") if begins_with_reference(text)]
    ['C5', '[C7] 10', '2C13']
    """
    if text[:1].isdigit():
        return _ON_A_BOARD.match(text) is not None
    found = _FIRST.match(text)
    if found is None and text[:1].isalpha() and text[1:2].isalpha() and "(" not in text:
        return False  # a word
    found = found or _FIRST.match(_plain(text))
    return found is not None and found[1].upper() in _KNOWN


def capacitors_inside(text: str) -> list[str]:
    """The names of the capacitors that stand anywhere in `text`.

    >>> capacitors_inside("10/16 leftC2, 105°C 2SC1815 beside C7"), capacitors_inside("CE04W 85C")
    (['C2', 'C7'], [])
    >>> capacitors_inside("C5, C6µ47")
    ['C5', 'C6']
    """
    return [found[1] + _number(found[2]) for found in _INSIDE.finditer(text)]


def _plain(text: str) -> str:
    """`text` without the bullet or the brackets about its first reference."""
    marked = _MARKED.match(text)
    text = text[marked.end() :] if marked else text
    found = _BRACKETS.match(text)
    if found:
        return f"{found[1]} {text[found.end() :]}"
    found = _NUMBERS_IN_BRACKETS.match(text)
    return f"{found[1]}{found[2]} {text[found.end() :]}" if found else text


def counts_in_groups(text: str) -> bool:
    """Whether `text` begins with a name that can be no range, so that its list counts in groups.

    >>> counts_in_groups("C2-1 10/16"), counts_in_groups("C1-4"), counts_in_groups("C205-6")
    (True, False, False)
    """
    found = _IN_A_GROUP.match(text.lstrip(' \t|"'))
    return found is not None and int(found[3]) <= int(found[2])


def read_references(text: str, groups: bool = False) -> References | None:
    """The references that `text` begins with, or None when it begins with none.

    `groups` says that its list counts in groups: C2-3 is the third part of group 2, no range.
    Raises RepairlibError for a range that runs backwards, or that is longer than 500.

    >>> read_references("C1-C4, C7").names
    ('C1', 'C2', 'C3', 'C4', 'C7')
    >>> read_references("C12/13").names, read_references("C12L/R").names
    (('C12', 'C13'), ('C12L', 'C12R'))
    >>> read_references("C2-3, C2-4", groups=True).names
    ('C2-3', 'C2-4')
    >>> read_references("10/16") is None
    True
    """
    text = text.strip()
    found = _FIRST.match(text)
    if not found:
        text, groups = _plain(text), False  # C(4-6) is a range
        found = _FIRST.match(text)
    if not found:
        found = _ON_A_BOARD.match(text)
        if not found:
            return None
        name = found[1].upper() + _number(found[2])
        return References("C", (name,), text[found.end() :].strip(_BETWEEN))
    letters = found[1].upper()
    if letters not in _KNOWN:
        return None
    names = _names(letters, found[2], found[3])
    at = found.end()
    grouped = (_IN_A_GROUP if groups else _IN_ITS_GROUP).match(text) if at < len(text) else None
    if grouped:
        return _grouped(letters, grouped, text)
    while at < len(text):
        suffix_only = _NEXT_SUFFIX.match(text, at) if names[-1][-1].isalpha() else None
        if suffix_only:
            names.append(names[-1][:-1] + suffix_only[1])
            at = suffix_only.end()
            continue
        following = _NEXT_NAME.match(text, at)
        if following and following[2].upper() == letters:
            number, suffix = following[3], following[4]
        else:
            following = _NEXT_NUMBER.match(text, at)
            if not following or _is_a_value(following, text):
                break
            number, suffix = _in_full(following[2], names[-1]), following[3]
        if _RANGE_ONLY.fullmatch(following["sign"]):
            names += _between(names[-1], letters, number + (suffix or ""), text)
        else:
            names += _names(letters, number, suffix)
        at = following.end()
    return References(letters, tuple(names), text[at:].strip(_BETWEEN))


def names_alone(text: str) -> tuple[str, ...]:
    """The names in `text` when it holds references and nothing else; else none.

    >>> names_alone("C1, C2"), names_alone("C1 10/16")
    (('C1', 'C2'), ())
    """
    try:
        found = read_references(text)
    except RepairlibError:
        return ()
    return found.names if found and not found.rest else ()


def _is_a_value(following: re.Match[str], text: str) -> bool:
    """Whether the number behind a joining word belongs to a value such as 10/16."""
    word = following["sign"].strip()
    return word[:1].isalpha() and text[following.end() :].lstrip()[:1] in ("/", ",", ".")


def _in_full(number: str, former: str) -> str:
    """A number as it is meant behind the name `former`: C205,6 and C201-4 leave figures out.

    >>> _in_full("6", "C205"), _in_full("7", "C12"), _in_full("206", "C205")
    ('206', '7', '206')
    """
    found = _NUMBERED.match(former)
    digits = found[2] if found else ""
    if len(digits) < 3 or len(number) >= len(digits):
        return number
    full = digits[: -len(number)] + number
    return full if int(full) > int(digits) else number


def _names(letters: str, number: str, suffix: str | None) -> list[str]:
    """The name, or both names where left and right stand in one."""
    name = letters + _number(number)
    return [name + one for one in suffix.upper()] if suffix else [name]


def _grouped(letters: str, first: re.Match[str], text: str) -> References:
    """Names such as C1-1: the first part of group 1."""
    names, at = [f"{letters}{first[2]}-{first[first.lastindex or 2]}"], first.end()
    while following := _NEXT_IN_A_GROUP.match(text, at):
        names.append(following[1])
        at = following.end()
    return References(letters, tuple(names), text[at:].strip(_BETWEEN))


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
    found = _NUMBERED.match(name)
    return (found[1], int(found[2]), found[3]) if found else (name, 0, "")
