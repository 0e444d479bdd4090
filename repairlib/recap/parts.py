"""Reading a parts list: every line of it ends up as parts, or is set aside with a reason.

The way of a text, each step by files that know nothing of the steps after it:

    text → lines → cells            core/typed/table.py: line ends, separator, quotation marks
    cells → references and roles    entries.py, by core/typed/references.py and headings.py
    a cell → figures and words      tokens.py, said.py, by wording.py and words.py
    what was said → the capacitor   ratings.py

This file goes down the lines, keeps what titles (sections.py) and headings said above, and accounts
for every line. Which parts are to be replaced is decided in planner.py.
"""

from __future__ import annotations

import re

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headings import Columns
from repairlib.core.typed.references import (
    CAPACITORS,
    ON_THE_MAINS,
    TRIMMERS,
)
from repairlib.core.typed.set_aside import HEADING, OTHER_PART, TITLE, UNREADABLE, SetAside
from repairlib.core.typed.table import (
    QUOTED_LINES,
    SPACES,
    UNCLOSED,
    WORDS,
    Row,
    Table,
    find_separator,
    lines_of,
)
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.entries import Entry, headings_in, read_entry, reference_column
from repairlib.recap.ratings import describe
from repairlib.recap.sections import is_footer, section_kind
from repairlib.recap.words import CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM

# Their exact value decides nothing, so a code such as 104 may stay unread.
STAYING_KINDS = (CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM)
MOST_COLUMNS = 60
MOST_BY_RANGES = 10_000  # parts that a list may name beside the first of each line

_capacitor_inside = re.compile(r"\bC[ -]?[0-9]{1,5}[A-Z]?\b").search


class PartsList:
    """A parts list as read. Every line gave parts or is in `set_aside`, by its number from 1.

    The parts stand in three lists of equal length: `references`, `part_lines` (the number of the
    line that names it) and `capacitors` (what that line says). `doubts` holds, by the place in
    those lists, what is doubtful about a line beyond its capacitor.
    """

    def __init__(self, name: str, lines: list[str]):
        self.name = name
        self.lines = lines
        self.references: list[str] = []
        self.part_lines: list[int] = []
        self.capacitors: list[Capacitor] = []
        self.doubts: dict[int, str] = {}
        self.set_aside: list[SetAside] = []
        self.notes: list[str] = []
        self.separator = find_separator(lines)

    def text_of(self, line: int) -> str:
        """The text of that line, numbered from 1, as it stood in the list."""
        return self.lines[line - 1]

    def lines_with_parts(self) -> set[int]:
        """The numbers of the lines that gave parts."""
        return set(self.part_lines)


def read_parts(text: str, name: str = "the list", from_file: bool = False) -> PartsList:
    """The parts list in `text`, with all of its lines accounted for.

    `from_file` says that the text should be a whole file, so that an end in the middle of a line
    is an error. Raises RepairlibError for that, for more than 60 columns, and for a text without
    any line.

    >>> listing = read_parts("Ref,Value,Type\\nC1-C2,10/16,elect\\nR1,10k,carbon\\n")
    >>> listing.references, listing.set_aside
    (['C1', 'C2'], [line 1: heading, line 3: not a capacitor (R1)])
    """
    lines = lines_of(text, name, "the lines of a parts list")
    ended = text.endswith(("\n", "\r"))
    reader = _ListReader(PartsList(name, lines), from_file and not ended)
    reader.read_all()
    return reader.list


class _ListReader:
    """Goes down the lines once, keeping what titles and headings said above."""

    def __init__(self, parts_list: PartsList, may_be_cut: bool):
        self.list = parts_list
        self.may_be_cut = may_be_cut
        self.separator = parts_list.separator
        self.columns: Columns | None = None
        self.section = ""
        self.shortest_row = MOST_COLUMNS
        self.besides_the_first = 0  # references, over all lines
        # Lines that say the same share one capacitor: a long list repeats itself.
        self.described: dict[tuple, Capacitor] = {}

    def read_all(self) -> None:
        for row in Table(self.list.lines, self.separator).rows():
            self.read_row(row)
        if self.may_be_cut:
            self.list.notes.append(
                "The file does not end with a line end: check its last line against the paper."
            )

    def aside(self, number: int, what: str, why: str = "") -> None:
        self.list.set_aside.append(SetAside(number, self.list.text_of(number), what, why))

    def read_row(self, row: Row) -> None:
        """Add the parts of a row to the list, or set it aside."""
        self.refuse_cut_quotes_and_columns(row)
        if row.what:
            self.aside(row.line, row.what, row.why)
        elif headings := headings_in(row):
            self.columns = headings if self.separator else None
            self.aside(row.line, HEADING)
        elif (at := reference_column(row.cells, self.columns)) is not None:
            self.refuse_a_cut_row(row)
            self.read_parts_in(row, at)
        else:
            section = section_kind(row.text)
            if section is not None:
                self.section = section
            self.aside(row.line, *_what_words_are(row, section))

    def refuse_cut_quotes_and_columns(self, row: Row) -> None:
        at_the_end = row.line + QUOTED_LINES > len(self.list.lines)
        if self.may_be_cut and at_the_end and row.why == UNCLOSED:
            raise self.cut(f"line {row.line} opens a quotation mark and the file ends")
        if len(row.cells) > MOST_COLUMNS and self.separator not in (SPACES, WORDS):
            wrong = f"line {row.line} has {len(row.cells)} columns"
            raise RepairlibError(self.list.name, wrong, f"at most {MOST_COLUMNS} columns")

    def cut(self, wrong: str) -> RepairlibError:
        return RepairlibError(
            self.list.name,
            f"{wrong}: the file was cut off",
            "a whole file; if the last line is whole, end it with a line end",
        )

    def refuse_a_cut_row(self, row: Row) -> None:
        """Raise an error for a last row that stops early where all others are whole."""
        if not self.columns or self.separator in (SPACES, WORDS):
            return
        width, wanted = len(row.cells), len(self.columns.roles)
        is_last = row.line == len(self.list.lines)
        if self.may_be_cut and is_last and width < wanted <= self.shortest_row:
            raise self.cut(f"its last line, {row.line}, has {width} of {wanted} columns")
        self.shortest_row = min(self.shortest_row, width)

    def read_parts_in(self, row: Row, at: int) -> None:
        """Add the parts that a row names in its cell `at`."""
        try:
            entry = read_entry(row, at, self.columns, self.separator)
        except RepairlibError as problem:
            return self.aside(row.line, UNREADABLE, problem.wrong)
        letters, names = entry.references.letters, entry.references.names
        besides = self.besides_the_first + len(names) - 1
        if len(names) > 1 and besides > MOST_BY_RANGES:
            why = f"ranges named {MOST_BY_RANGES} parts before: one part on each line from here"
            return self.aside(row.line, UNREADABLE, why)
        self.besides_the_first = besides
        if letters not in CAPACITORS:
            trimmer = " (a trimmer stays)" if letters in TRIMMERS else ""
            return self.aside(row.line, OTHER_PART, ", ".join(names[:4]) + trimmer)
        capacitor = self.capacitor_of(entry)
        if not capacitor.text:
            return self.aside(row.line, UNREADABLE, f"nothing stands after {names[-1]}")
        doubt = _doubt_of_quantity(entry.in_columns("quantity"), capacitor, len(names))
        for name in names:
            if doubt:
                self.list.doubts[len(self.list.references)] = doubt
            self.list.references.append(name)
            self.list.part_lines.append(row.line)
            self.list.capacitors.append(capacitor)
        return None

    def capacitor_of(self, entry: Entry) -> Capacitor:
        """What an entry says of its parts; the same object where the same was said before."""
        said = tuple((role, cell) for role, cell in entry.cells if cell and role != "quantity")
        if entry.references.letters in ON_THE_MAINS:
            said = (*said, ("other", "mains"))
        if (said, self.section) not in self.described:
            self.described[said, self.section] = describe(said, self.section)
        return self.described[said, self.section]


def _what_words_are(row: Row, section: str | None) -> tuple[str, str]:
    """What a row without references is, and why; `section` is what it announces as a title."""
    if section is not None:
        return TITLE, f"the lines below are {section}" if section else "a title of other parts"
    if is_footer(row.text):
        return TITLE, "a page number"
    inside = _capacitor_inside(row.text)
    if inside:
        return UNREADABLE, f"names {inside[0]} but does not begin with it"
    said = describe((("free", " ".join(row.cells)),))
    if said.farad is not None or said.volts is not None:
        return UNREADABLE, "a value, but no reference such as C5"
    return TITLE, "no reference and no value"


def _doubt_of_quantity(quantities: list[str], capacitor: Capacitor, references: int) -> str:
    """What is doubtful about the figures of a row that are neither value nor rating; else ""."""
    for quantity in quantities:
        digits = quantity.lower().strip(" x.pcs")
        if digits.isascii() and digits.isdigit() and int(digits) != references:
            return f"the quantity says {digits}, the references are {references}"
    # Without headings a last bare figure that agrees with the references is the quantity.
    spare = list(capacitor.spare)
    if spare and spare[-1] == str(references) and capacitor.text.endswith(f" {spare[-1]}"):
        spare.pop()
    if spare and not capacitor.doubts and capacitor.kind not in STAYING_KINDS:
        return f"'{spare[0]}' was not understood"
    return ""
