"""Lines of words inside a parts list: titles such as ELECTROLYTIC CAPACITORS, and page numbers."""

from __future__ import annotations

import re

from repairlib.core.typed.letters import without_accents
from repairlib.core.typed.table import Row
from repairlib.recap import words
from repairlib.recap.wording import join_phrases, meaning
from repairlib.recap.words import ALUMINIUM, BIPOLAR, POLYMER, TANTALUM

# A title with one of these words names a sub-board, in English, German, French, Italian, Spanish,
# Dutch; its references begin anew.
_BOARDS = """board pcb pwb assy assembly unit module chassis platte platine leiterplatte baugruppe
    einheit modul carte plaquette circuit scheda piastra basetta placa tarjeta modulo print
    printplaat bord"""
BOARDS = set(_BOARDS.split())
_MOST_IN_A_TITLE = 6  # words
_AGAIN = re.compile(
    r"\s*\(?\b(?:continued|contd?|cont'd|forts|fortsetzung|suite|segue|vervolg)\b.*", re.I
)
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


def board_of(row: Row) -> str:
    """The sub-board that a title names for the lines below it; "" when it names none.

    >>> from repairlib.core.typed.table import Row
    >>> board_of(Row(1, "** MAIN BOARD (cont'd) **")), board_of(Row(1, "see the board"))
    ('MAIN BOARD', '')
    """
    text = _AGAIN.sub("", row.text).strip(' *-=_#|,;:.\t"')
    said = re.findall(r"[\w'/-]+", text)
    plain = {without_accents(word) for word in said}
    if not plain & BOARDS or len(said) > _MOST_IN_A_TITLE or plain & words.NOT_IN_TITLES:
        return ""
    return "" if len(re.findall(r"[0-9]+", text)) > 1 else " ".join(text.split())


def is_footer(line: str) -> bool:
    """Whether the line is a page number, alone or after `Page`.

    >>> is_footer("Page 2 of 9"), is_footer("- 14 -"), is_footer("see page 2")
    (True, True, False)
    """
    return bool(_FOOTER.fullmatch(line.strip()))
