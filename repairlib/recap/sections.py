"""Lines of words inside a parts list: titles such as ELECTROLYTIC CAPACITORS, and page numbers."""

from __future__ import annotations

import re

from repairlib.recap import words
from repairlib.recap.wording import join_phrases, meaning
from repairlib.recap.words import ALUMINIUM, BIPOLAR, POLYMER, TANTALUM

_DIGIT = re.compile("[0-9]")
_FOOTER = re.compile(
    r"(?:page|p\.|sheet)\s*[0-9]+(?:\s*(?:/|of|-)\s*[0-9]+)?|[-–]+\s*[0-9]+\s*[-–]+|[0-9]+",
    re.IGNORECASE,
)
_OTHER_SECTION = {"resistor", "resistors", "diode", "diodes", "transistor", "transistors"}
_OTHER_SECTION |= {"coil", "coils", "ics", "semiconductors", "inductors", "misc", "miscellaneous"}


def section_kind(line: str) -> str | None:
    """The kind of part that a title announces for the lines below it.

    "" for a title of other parts; None when the title announces nothing.

    >>> section_kind("** ELECTROLYTIC CAPACITORS **"), section_kind("MAIN BOARD")
    ('aluminium electrolytic', None)
    """
    if _DIGIT.search(line):
        return None
    found = re.findall(r"[^\W\d_][\w./-]*", join_phrases(line))
    says = {word.lower(): meaning(word) for word in found}
    kinds = {kind for one in says.values() for kind in one.kinds}
    if kinds & {BIPOLAR, POLYMER, TANTALUM}:
        kinds.discard(ALUMINIUM)
    rest = {word for word, one in says.items() if one.unknown or not any(one)}
    rest -= words.TITLE_FILLERS
    if len(kinds) == 1 and not rest:
        return kinds.pop()
    if _OTHER_SECTION & set(says):
        return ""
    return None


def is_footer(line: str) -> bool:
    """Whether the line is a page number, alone or after `Page`.

    >>> is_footer("Page 2 of 9"), is_footer("- 14 -"), is_footer("see page 2")
    (True, True, False)
    """
    return bool(_FOOTER.fullmatch(line.strip()))
