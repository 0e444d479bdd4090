"""Tables as people type and save them: text → lines → what separates the columns → rows of cells.

Covers commas, semicolons, tabs, upright strokes with or without a frame, columns by runs of spaces,
plain lines of words, and quoted cells, which may run on over a few lines. Every reader of a typed
table begins here; what the columns hold is its own business. Tables with fixed headings: headed.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import islice

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.references import (
    begins_with_reference,
    capacitors_inside,
    names_alone,
)
from repairlib.core.typed.set_aside import BLANK, HEADING, UNREADABLE

TABS, STROKES, SEMICOLONS, COMMAS = "\t", "|", ";", ","
FRAMED, SPACES, BLANKS, WORDS = "|…|", "  ", " ", ""
SIGNS = (TABS, STROKES, SEMICOLONS, COMMAS)  # one sign parts two cells; the surest one first
LONGEST_LINE = 2000
QUOTED_LINES = 5  # a quoted cell that runs over more lines than this was never closed
CONTINUES = "continues line"
UNCLOSED = "a quotation mark is opened and not closed"

_GAP = re.compile(r"\s{2,}|\t")
_PARTING_COMMA = re.compile(r",(?![0-9])|(?<![0-9]),|^[^,]*[A-Za-z][0-9]+,|,[^,]*,[^,]*,")
_DIGIT = re.compile("[0-9]")
_RULE = re.compile(r"[\s|+:=_*~.–—-]+")
_SAMPLE = 200
_QUOTED = {sign: re.compile(rf' *"((?:[^"]|"")*)" *(?=[{sign}]|$)') for sign in SIGNS}


@dataclass(eq=False, slots=True)
class Row:
    """A row: its `cells`, on the lines `line` to `last` of its table; `text` as its line stood.

    `what` is "" for a row of cells. Else it is BLANK, HEADING (a rule, or the rest of the row
    above) or UNREADABLE; `why` says more, and there are no cells.
    """

    line: int
    text: str
    what: str = ""
    why: str = ""
    cells: list[str] = field(default_factory=list)
    last: int = 0

    def __post_init__(self):
        self.last = self.last or self.line


class Table:
    """The `lines` of a table, numbered from 1, and the `separator` of its columns.

    >>> table = Table(["C1;4,7", "----", '"C2', 'C3";10'], ";")
    >>> [row.cells for row in table.rows() if not row.what]
    [['C1', '4,7'], ['C2 C3', '10']]
    """

    def __init__(self, lines: list[str], separator: str):
        self.lines = lines
        self.separator = separator

    def row(self, number: int) -> Row:
        """The row that begins on that line, with the lines that its quoted cells run on to."""
        line = self.lines[number - 1]
        if not line.strip():
            return Row(number, line, BLANK)
        if is_rule(line):
            return Row(number, line, HEADING, "a rule")
        if len(line) > LONGEST_LINE:
            return Row(number, line, UNREADABLE, f"longer than {LONGEST_LINE} characters")
        cells = cells_of(line, self.separator)
        return Row(number, line, cells=cells) if cells is not None else self._longer_row(number)

    def _longer_row(self, number: int) -> Row:
        """The row on that line and those that its open quoted cell runs on to."""
        line = self.lines[number - 1]
        for last in range(number + 1, min(number + QUOTED_LINES, len(self.lines) + 1)):
            whole = " ".join(self.lines[number - 1 : last])
            cells = cells_of(whole, self.separator) if len(whole) <= LONGEST_LINE else None
            if cells is not None:
                if not _keeps_references(self.lines[number:last], cells):
                    break
                return Row(number, line, cells=cells, last=last)
        return Row(number, line, UNREADABLE, UNCLOSED)

    def rows(self, first: int = 1) -> Iterator[Row]:
        """One row for each line from `first` on; a line that continues another is a HEADING."""
        while first <= len(self.lines):
            row = self.row(first)
            yield row
            for number in range(first + 1, row.last + 1):
                yield Row(number, self.lines[number - 1], HEADING, f"{CONTINUES} {first}")
            first = row.last + 1


def _keeps_references(continued: list[str], cells: list[str]) -> bool:
    """Whether each reference on lines that a quoted cell runs on to is still read as one.

    A line that begins with a reference continues nothing but a cell of references.
    """
    kept: set[str] = set()
    for cell in cells:
        if begins_with_reference(cell):
            kept.update(names_alone(cell))
    for line in continued:
        named = names_alone(line.partition('"')[0].strip(" \t,;|"))
        if not named and begins_with_reference(line.lstrip(' \t"|')):
            return False
        if not kept.issuperset([*named, *capacitors_inside(line)]):
            return False
    return True


def lines_of(text: str, name: str, accepted: str) -> list[str]:
    r"""The lines of `text`, whatever ends them, without a byte order mark.

    Raises RepairlibError when the text is blank.

    >>> lines_of("\ufeffC1\r\nC2\rC3\n", "list", "lines")
    ['C1', 'C2', 'C3']
    """
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", accepted)
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise RepairlibError(name, "there is no line in it", accepted)
    return with_plain_ends(text).removesuffix("\n").split("\n")


def with_plain_ends(text: str) -> str:
    """`text` with every line ended in one way."""
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def find_separator(lines: list[str]) -> str:
    """What separates the columns of `lines`, of which nothing else is known; WORDS when nothing.

    >>> find_separator(["Ref;Value", "C1;4,7/25", "C2, C3;10/16"])
    ';'
    >>> find_separator(["C1-C4, C7   10/16   elect", "C8   47/25   elect"]) == SPACES
    True
    """
    with_figures = (line for line in lines if _DIGIT.search(line))
    sample = list(islice(with_figures, _SAMPLE)) or lines[:_SAMPLE]
    shares = ((1, TABS), (1, STROKES), (1, SEMICOLONS), (1.6, COMMAS), (1, SPACES), (1, COMMAS))
    for share, separator in shares:
        holding = [line for line in map(str.strip, sample) if _holds(line, separator)]
        if sample and len(holding) * 2 >= len(sample) * share:
            framed = separator == STROKES and sum(map(is_framed, holding)) * 2 > len(holding)
            return FRAMED if framed else separator
    return WORDS


def _holds(line: str, separator: str) -> bool:
    """Whether the line has that separator; the comma in `C1 4,7 µF` is none."""
    if separator != COMMAS:
        return separator in line
    return "," in line and _PARTING_COMMA.search(line) is not None


def cells_of(line: str, separator: str) -> list[str] | None:
    """The cells of one line, stripped; None when a quoted cell does not end on it.

    A quotation mark inside a cell, as in `5" case`, is part of it; one that fills a cell is a ditto
    mark.

    >>> cells_of('"4,7" , 5" case,', COMMAS), cells_of("| C1 | 10 |", FRAMED)
    (['4,7', '5" case', ''], ['C1', '10'])
    >>> cells_of('C2,",16,"', COMMAS)
    ['C2', '"', '16', '"']
    """
    if separator == WORDS:
        return [line.strip()]
    if separator == BLANKS:
        return line.split()
    if separator == SPACES:
        return _GAP.split(line.strip())
    if separator == FRAMED:
        line, separator = line.strip().removeprefix("|").removesuffix("|"), STROKES
    if '"' in line:
        return _quoted_cells(line, separator)
    return [cell.strip() for cell in line.split(separator)]


def _quoted_cells(line: str, sign: str) -> list[str] | None:
    cells: list[str] = []
    at = 0
    while at <= len(line):
        found = _QUOTED[sign].match(line, at)
        inside = found[1].strip(" ") if found else ""
        if found and not (inside.startswith(sign) and inside.endswith(sign)):
            cells.append(" ".join(inside.replace('""', '"').split()))
            at = found.end() + 1
            continue
        # No cell in quotation marks begins here; two ditto marks look like one with signs inside.
        end = line.find(sign, at)
        end = end if end >= 0 else len(line)
        cell = line[at:end].strip()
        if cell.startswith('"') and cell != '"':
            return None
        cells.append(cell)
        at = end + 1
    return cells


def wrong_width(cells: list[str], width: int, separator: str) -> str:
    """What is wrong with a row of other than `width` cells, which its headings are."""
    hint = "; is a comma inside a value?" if separator == COMMAS and len(cells) > width else ""
    return f"{len(cells)} columns where the headings are {width}{hint}"


def is_rule(line: str) -> bool:
    """Whether the line only rules off others, such as `|---|---|` or `=====`."""
    return bool(_RULE.fullmatch(line))


def is_framed(line: str) -> bool:
    """Whether the line stands between two upright strokes."""
    return len(line) > 1 and line.startswith("|") and line.endswith("|")


def with_point(figure: str) -> str:
    """A figure with a decimal point where it has a decimal comma, for float() or Decimal().

    What is no figure comes back as it is. Raises RepairlibError for one that may be thousands.

    >>> with_point("4,7"), with_point("0,125"), with_point("4.7"), with_point("ten")
    ('4.7', '0.125', '4.7', 'ten')
    >>> with_point("1,000")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: '1,000': may be 1.000 or 1000. Accepted: 1000, or 1.0
    """
    whole, comma, part = figure.partition(",")
    if not comma or not part.isdigit() or not whole.lstrip("+-").isdigit():
        return figure
    if len(part) == 3 and whole.strip("+-0"):
        wrong = f"may be {whole}.{part} or {whole}{part}"
        raise RepairlibError(figure, wrong, f"{whole}{part}, or {whole}.{part.rstrip('0') or 0}")
    return f"{whole}.{part}"
