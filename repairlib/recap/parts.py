"""Reading a parts list: every line of it ends up as parts, or is set aside with a reason.

The way of a text, each step by files that know nothing of the steps after it:

    text → lines → cells            core/typed/table.py: line ends, separator, quotation marks
    cells → references and roles    entries.py, by core/typed/references.py and headings.py
    a cell → figures and words      tokens.py, said.py, by wording.py and words.py
    what was said → the capacitor   ratings.py
    rows without references         no_parts.py, sections.py; ditto marks: ditto.py

This file goes down the lines, keeps what titles (sections.py) and headings said above, and accounts
for every line. Which parts are to be replaced is decided in planner.py.
"""

from __future__ import annotations

import re
from functools import cached_property

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headings import Columns
from repairlib.core.typed.references import (
    CAPACITORS,
    ON_THE_MAINS,
    PACKS,
    TRIMMERS,
    WET,
    begins_with_reference,
    capacitors_inside,
    counts_in_groups,
)
from repairlib.core.typed.set_aside import (
    BLANK,
    HEADING,
    NOT_FITTED,
    OTHER_PART,
    TITLE,
    UNREADABLE,
    SetAside,
)
from repairlib.core.typed.table import (
    CONTINUES,
    QUOTED_LINES,
    SPACES,
    UNCLOSED,
    WORDS,
    Row,
    Table,
    find_separator,
    lines_of,
)
from repairlib.recap.capacitor import NEARLY_1_UF, Capacitor
from repairlib.recap.ditto import without_dittos
from repairlib.recap.entries import Entry, headings_in, read_entry, reference_column
from repairlib.recap.no_parts import what_words_are
from repairlib.recap.ratings import describe, weigh
from repairlib.recap.said import Cells, Says
from repairlib.recap.sections import board_of, section_kind
from repairlib.recap.words import ALUMINIUM, BIPOLAR, CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM

# Their exact value decides nothing, so a code such as 104 may stay unread.
STAYING_KINDS = (CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM)
WITH_PARTS = "lines with parts"
MOST_COLUMNS = 60
MOST_ALIKE = 500  # parts on a line of a list without references
MOST_BY_RANGES = 10_000  # parts that a list may name beside the first of each line

_REMARKS = ("other", "form", "tolerance", "code")  # columns that may name a neighbour
_PIECES = r"(?:[x×]|pcs\.?|pieces|off|of|st(?:ü|u|ue)?ck\.?|pz\.?|pi[eè]ces)"
_HOW_MANY = re.compile(rf"([0-9]{{1,3}})\s*{_PIECES}\s+", re.IGNORECASE)
_HOW_MANY_AT_THE_END = re.compile(
    rf"[\s,;(]+(?:[x×]\s*([0-9]{{1,3}})|([0-9]{{1,3}})\s*{_PIECES})[\s).]*$", re.IGNORECASE
)
_CODE = re.compile(r"(?<![\w.,/-])[0-9]{2}[0-9R]\s?[A-Z]?(?![\w.,/-])")  # 104, 335 C


class PartsList:
    """A parts list as read. Every line gave parts or is in `set_aside`, by its number from 1.

    The parts stand in four lists of equal length: `references`, `part_lines` (the number of the
    line that names it), `boards` (the title of a sub-board above it, or "") and `capacitors` (what
    that line says). `doubts` holds, by the place in those lists, what is doubtful about a line
    beyond its capacitor.
    """

    def __init__(self, name: str, lines: list[str]):
        self.name = name
        self.lines = lines
        self.references: list[str] = []
        self.part_lines: list[int] = []
        self.boards: list[str] = []
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

    def lines_as(self) -> dict[str, int]:
        """How many lines were read as what; they add up to the lines of the list."""
        counted = {WITH_PARTS: len(self.lines_with_parts())}
        for line in self.set_aside:
            counted[line.what] = counted.get(line.what, 0) + 1
        return counted


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
        self.groups = any(map(counts_in_groups, parts_list.lines))
        self.columns: Columns | None = None
        self.section = ""
        self.board = ""
        self.shortest_row = MOST_COLUMNS
        self.above: tuple[int, list[str]] | None = None  # line and cells, for ditto marks
        self.named_beside: list[tuple[int, list[str]]] = []  # in remarks: line, names
        self.besides_the_first = 0  # references, over all lines
        # Lines that say the same share one capacitor: a long list repeats itself.
        self.cells = Cells()
        self.described: dict[tuple[tuple[Says, ...], str], Capacitor] = {}

    def read_all(self) -> None:
        for row in Table(self.list.lines, self.separator).rows():
            self.read_row(row)
        if self.groups:
            told = "The list counts in groups, as C2-1 does: C2-3 is one part there, and no range."
            self.list.notes.append(told)
        self.tell_names_in_remarks()
        if self.may_be_cut:
            self.list.notes.append(
                "The file does not end with a line end: check its last line against the paper."
            )

    def tell_names_in_remarks(self) -> None:
        """A note for each capacitor that only a remark names: its own line may be lost."""
        known = set(self.list.references) if self.named_beside else set()
        for line, names in self.named_beside:
            missing = ", ".join(name for name in dict.fromkeys(names) if name not in known)
            if missing:
                told = f"Line {line} names {missing} beside its part; no line begins with it."
                self.list.notes.append(told)

    def aside(self, number: int, what: str, why: str = "") -> None:
        if what != BLANK:
            self.above = None
        self.list.set_aside.append(SetAside(number, self.list.text_of(number), what, why))

    def read_row(self, row: Row) -> None:
        """Add the parts of a row to the list, or set it aside."""
        self.refuse_cut_quotes_and_columns(row)
        if row.why.startswith(CONTINUES) and self.is_unreadable(row.line - 1):
            self.aside(row.line, UNREADABLE, row.why)
        elif row.what:
            self.aside(row.line, row.what, row.why)
        else:
            self.read_cells(row)

    def read_cells(self, row: Row) -> None:
        at = reference_column(row.cells, self.columns)
        headings = headings_in(row) if at != 0 else None
        if headings:
            self.columns = headings if self.separator else None
            self.aside(row.line, HEADING)
        elif at is None:
            self.read_words(row)
        else:
            self.refuse_a_cut_row(row)
            self.read_parts_in(row, at)

    def read_words(self, row: Row) -> None:
        """A row without references: a title, a note, a part of a list without references."""
        if self.takes_a_part_without_reference(row):
            return
        section, board = section_kind(row.text), board_of(row)
        if section is not None:
            self.section = section
        elif board:
            self.board = board
            self.section = ""
        what, why = what_words_are(row, section, board, self.columns)
        code = _CODE.search(row.text) if what == TITLE and self.has_no_references else None
        if code:
            what, why = UNREADABLE, f"'{code[0]}' may be a code: write its value, as 100n"
        self.aside(row.line, what, why)

    def takes_a_part_without_reference(self, row: Row) -> bool:
        """Add `4x 10uF 16V` or `10uF 16V` of a list in which no line begins with a reference."""
        stated, words = how_many(row.text.strip())
        count = 1 if stated is None else stated
        if not 1 <= count <= MOST_ALIKE or not self.has_no_references:
            return False
        said = (("free", words), ("look", "the list has no references"))
        capacitor = describe(said, self.section)
        if capacitor.farad is None:
            return False
        for number in range(count):
            name = f"LINE{row.line}{'' if stated is None else _letters(number)}"
            self.add(name, row.line, capacitor, "")
        return True

    @cached_property
    def has_no_references(self) -> bool:
        """Whether no line of the list begins with a reference: it is written from the board."""
        starts = (line.lstrip(' \t|"') for line in self.list.lines)
        return not any(map(begins_with_reference, starts))

    def add(self, name: str, line: int, capacitor: Capacitor, doubt: str) -> None:
        if doubt:
            self.list.doubts[len(self.list.references)] = doubt
        self.list.references.append(name)
        self.list.part_lines.append(line)
        self.list.boards.append(self.board)
        self.list.capacitors.append(capacitor)

    def is_unreadable(self, line: int) -> bool:
        """Whether the line read last is that one, and was unreadable."""
        last = self.list.set_aside[-1] if self.list.set_aside else None
        return last is not None and last.line == line and last.what == UNREADABLE

    def refuse_cut_quotes_and_columns(self, row: Row) -> None:
        at_the_end = row.line + QUOTED_LINES > len(self.list.lines)
        if row.why == UNCLOSED and self.may_be_cut and at_the_end:
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
        if not self.may_be_cut or not self.columns or self.separator in (SPACES, WORDS):
            return
        width, wanted = len(row.cells), len(self.columns.roles)
        is_last = row.line == len(self.list.lines)
        if is_last and width < wanted <= self.shortest_row:
            raise self.cut(f"its last line, {row.line}, has {width} of {wanted} columns")
        self.shortest_row = min(self.shortest_row, width)

    def read_parts_in(self, row: Row, at: int) -> None:
        """Add the parts that a row names in its cell `at`."""
        row.cells, ditto = without_dittos(row.cells, at, self.above, self.groups)
        try:
            entry = read_entry(row, at, self.columns, self.separator, self.groups)
        except RepairlibError as problem:
            return self.aside(row.line, UNREADABLE, problem.wrong)
        letters, names = entry.references.letters, entry.references.names
        besides = self.besides_the_first + len(names) - 1
        if len(names) > 1 and besides > MOST_BY_RANGES:
            why = f"ranges named {MOST_BY_RANGES} parts before: one part on each line from here"
            return self.aside(row.line, UNREADABLE, why)
        self.besides_the_first = besides
        others = self.names_beside(row.line, entry)
        if letters not in CAPACITORS and others:
            return self.aside(row.line, UNREADABLE, f"names {others[0]} behind {names[0]}")
        if ditto:
            entry.cells.append(("look", ditto))
        capacitor = self.capacitor_of(entry)
        if letters not in CAPACITORS and not _is_a_large_trimmer(letters, capacitor):
            trimmer = " (a trimmer stays)" if letters in TRIMMERS else ""
            return self.aside(row.line, OTHER_PART, ", ".join(names[:4]) + trimmer)
        if not capacitor.text and not capacitor.not_fitted:
            return self.aside(row.line, UNREADABLE, f"nothing stands after {names[-1]}")
        if capacitor.not_fitted and not others:
            return self.aside(row.line, NOT_FITTED, ", ".join(names))
        doubt = _doubt_of_quantity(entry.in_columns("quantity"), capacitor, len(names))
        if others:
            doubt = f"the line names {others[0]} too"
        elif letters not in CAPACITORS or (letters in PACKS and not capacitor.kind):
            doubt = f"{letters} usually names another part: look at it"
        for name in names:
            self.add(name, row.line, capacitor, doubt)
        self.above = row.line, row.cells
        return None

    def names_beside(self, line: int, entry: Entry) -> list[str]:
        """Other capacitors that an entry names in its value or kind; those in remarks are kept."""
        found: list[str] = []
        for role, cell in entry.cells:
            if "C" in cell and (named := capacitors_inside(cell)):
                own = entry.references.names
                named = [name for name in named if name not in own]
                if role not in _REMARKS:
                    found += named
                elif named:
                    self.named_beside.append((line, named))
        return found

    def capacitor_of(self, entry: Entry) -> Capacitor:
        """What an entry says of its parts; the same object where the same was said before."""
        cells = [pair for pair in entry.cells if pair[1] and pair[0] != "quantity"]
        letters = entry.references.letters
        if letters in ON_THE_MAINS:
            cells.append(("other", "mains"))
        section = self.section or (ALUMINIUM if letters in WET else "")
        said = self.cells.say(cells), section
        capacitor = self.described.get(said)
        if capacitor is None:
            capacitor = self.described[said] = weigh(*said)
        return capacitor


def how_many(line: str) -> tuple[int | None, str]:
    """How many parts a line without a reference states, and the words without the count.

    >>> how_many("4x 10uF 16V"), how_many("2200uF 35V x 2"), how_many("10uF 16V")
    ((4, '10uF 16V'), (2, '2200uF 35V'), (None, '10uF 16V'))
    """
    first = _HOW_MANY.match(line)
    if first:
        return int(first[1]), line[first.end() :]
    last = _HOW_MANY_AT_THE_END.search(line)
    if last:
        return int(last[1] or last[2]), line[: last.start()]
    return None, line


def _letters(number: int) -> str:
    """A, B, ... Z, AA, AB, ... for 0, 1, ..."""
    return (_letters(number // 26 - 1) if number >= 26 else "") + chr(ord("A") + number % 26)


def _is_a_large_trimmer(letters: str, capacitor: Capacitor) -> bool:
    """Whether a part with the letters of a trimmer is none by its value or kind."""
    if letters not in TRIMMERS:
        return False
    large = capacitor.farad is not None and capacitor.farad >= NEARLY_1_UF
    return large or capacitor.kind in (ALUMINIUM, BIPOLAR, TANTALUM, POLYMER)


def _doubt_of_quantity(quantities: list[str], capacitor: Capacitor, references: int) -> str:
    """What is doubtful about the figures of a row that are neither value nor rating; else ""."""
    for quantity in quantities:
        digits = quantity.lower().strip(" x.pcs")
        if digits.isascii() and digits.isdigit() and int(digits) != references:
            return f"the quantity says {digits}, the references are {references}"
    spare = capacitor.spare
    if not spare or capacitor.doubts or capacitor.kind in STAYING_KINDS:
        return ""
    # Without headings a last bare figure that agrees with the references is the quantity.
    if spare[-1] == str(references) and capacitor.text.endswith(f" {spare[-1]}"):
        spare = spare[:-1]
    return f"'{spare[0]}' was not understood" if spare else ""
