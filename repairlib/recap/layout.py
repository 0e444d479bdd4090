"""How a list is laid out: what separates its columns, and which lines are headings or titles.

Covers CSV, TSV, semicolons, pipes, columns by runs of spaces, and plain lines of words.
"""

from __future__ import annotations

import csv
import re
from itertools import islice

from repairlib.recap import words
from repairlib.recap.wording import join_phrases, meaning
from repairlib.recap.words import ALUMINIUM, BIPOLAR, POLYMER, TANTALUM, role_of_heading

SPACES, WORDS = "  ", ""
NAMES = {
    ",": "commas",
    "\t": "tabs",
    ";": "semicolons",
    "|": "upright strokes",
    SPACES: "runs of spaces",
    WORDS: "no columns",
}
_GAP = re.compile(r"\s{2,}|\t")
_DIGIT = re.compile("[0-9]")
_RULE = re.compile(r"[\s|+:=_*~.–—-]+")
_FOOTER = re.compile(
    r"(?:page|p\.|sheet)\s*[0-9]+(?:\s*(?:/|of|-)\s*[0-9]+)?|[-–]+\s*[0-9]+\s*[-–]+|[0-9]+",
    re.IGNORECASE,
)
_OTHER_SECTION = {"resistor", "resistors", "diode", "diodes", "transistor", "transistors"}
_OTHER_SECTION |= {"coil", "coils", "ics", "semiconductors", "inductors", "misc", "miscellaneous"}
_SAMPLE = 200


def find_separator(lines: list[str]) -> str:
    """What separates the columns of `lines`: one of NAMES.

    >>> find_separator(["Ref;Value", "C1;4,7/25", "C2, C3;10/16"])
    ';'
    >>> find_separator(["C1-C4, C7   10/16   elect", "C8   47/25   elect"]) == SPACES
    True
    """
    with_figures = (line for line in lines if _DIGIT.search(line))
    sample = list(islice(with_figures, _SAMPLE)) or lines[:_SAMPLE]
    shares = ((1, "\t"), (1, "|"), (1, ";"), (1.6, ","), (1, SPACES), (1, ","))
    for share, separator in shares:
        holding = sum(separator in line.strip() for line in sample)
        if sample and holding * 2 >= len(sample) * share:
            return separator
    return WORDS


def split_line(line: str, separator: str) -> list[str] | None:
    """The cells of one line, stripped; None when a quoted cell does not end on it."""
    if separator == WORDS:
        return [line.strip()]
    if separator == SPACES:
        return _GAP.split(line.strip())
    if separator == "|":
        return [cell.strip() for cell in line.strip().strip("|").split("|")]
    if '"' not in line:
        return [cell.strip() for cell in line.split(separator)]
    if not any(cell.lstrip().startswith('"') for cell in line.split(separator)):
        return [cell.strip() for cell in line.split(separator)]
    try:
        rows = list(csv.reader([line], delimiter=separator, skipinitialspace=True, strict=True))
    except csv.Error:
        return None
    return [" ".join(cell.split()) for cell in rows[0]]


class Columns:
    """What the columns of a list hold, as its headings say.

    `roles` has one role for each column, "unnamed" under a heading that is not known. `starts` and
    `ends` are where the headings stand on their line, so that a line with a gap can be set under
    them.
    """

    def __init__(self, roles: list[str], cells: list[str], line: str):
        self.roles = roles
        self.starts: list[int] = []
        self.ends: list[int] = []
        at = 0
        for cell in cells:
            at = max(line.find(cell, at), at)
            self.starts.append(at)
            at += len(cell)
            self.ends.append(at)

    def under(self, line: str, cells: list[str]) -> list[str] | None:
        """The roles of `cells`, by the headings under which they stand; None when unclear."""
        roles: list[str] = []
        at, last = 0, -1
        for cell in cells:
            at = line.find(cell, at)
            end = at + len(cell)
            over = [
                index
                for index in range(len(self.roles))
                if self.starts[index] < end and self.ends[index] > at
            ]
            if len(over) != 1 or over[0] <= last:
                return None
            last = over[0]
            roles.append(self.roles[last])
            at = end
        return roles


def read_headings(cells: list[str], line: str) -> Columns | None:
    """The columns that a line of headings announces, or None when it is no such line."""
    if len(cells) == 1:
        cells = cells[0].split()
        if any(c.isdigit() for c in line):
            return None
    roles = [role_of_heading(cell) for cell in cells]
    named = [role for role in roles if role]
    filled = sum(bool(cell) for cell in cells)
    if (
        len(named) < 2
        or len(named) * 2 < filled
        or "reference" not in named + ["reference"] * (len(named) > 2)
    ):
        return None
    return Columns([role or "unnamed" for role in roles], cells, line)


def is_rule(line: str) -> bool:
    """Whether the line only rules off others, such as `|---|---|` or `=====`."""
    return bool(_RULE.fullmatch(line))


def is_footer(line: str) -> bool:
    """Whether the line is a page number, alone or after `Page`."""
    return bool(_FOOTER.fullmatch(line.strip()))


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
