"""Reading a parts list: every line of it ends up as parts, or is set aside with a reason.

Covers what the lines say. Which parts are to be replaced is decided in planner.py.
"""

from __future__ import annotations

import re
from functools import lru_cache

from repairlib.core.errors import RepairlibError
from repairlib.core.typed import layout
from repairlib.core.typed.headings import Columns, read_headings
from repairlib.core.typed.layout import SPACES, WORDS
from repairlib.core.typed.references import (
    CAPACITORS,
    ON_THE_MAINS,
    TRIMMERS,
    References,
    begins_with_reference,
    read_references,
)
from repairlib.core.typed.set_aside import BLANK, HEADING, OTHER_PART, TITLE, UNREADABLE, SetAside
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.ratings import describe
from repairlib.recap.sections import section_kind
from repairlib.recap.words import CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM

# Their exact value decides nothing, so a code such as 104 may stay unread.
STAYING_KINDS = (CERAMIC, FILM, MAINS, PAPER, POLYMER, TANTALUM)
MOST_COLUMNS = 60
LONGEST_LINE = 2000
MOST_REMEMBERED = 20_000
QUOTED_LINES = 5  # a quoted cell that runs over more lines than this was never closed

_plain_reference = re.compile(r"C[1-9][0-9]{0,4}").fullmatch
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
        self.separator = WORDS

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
    if not isinstance(text, str):
        raise RepairlibError(text, "not a text", "the lines of a parts list")
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    if not text.strip():
        raise RepairlibError(name, "there is no line in it", "the lines of a parts list")
    ended = text.endswith("\n")
    lines = (text[:-1] if ended else text).split("\n")
    reader = _ListReader(PartsList(name, lines), from_file and not ended)
    reader.read_all()
    return reader.list


class _ListReader:
    """Goes through the lines once, keeping what titles and headings said above."""

    def __init__(self, parts_list: PartsList, may_be_cut: bool):
        self.list = parts_list
        self.may_be_cut = may_be_cut
        self.separator = parts_list.separator = layout.find_separator(parts_list.lines)
        self.columns: Columns | None = None
        self.section = ""
        self.shortest_row = MOST_COLUMNS
        self.one_line = True
        self.known = self.seen_before()

    def read_all(self) -> None:
        lines, separator = self.list.lines, self.separator
        add_reference = self.list.references.append
        add_line = self.list.part_lines.append
        add_capacitor = self.list.capacitors.append
        skip_to = 0
        for number, line in enumerate(lines, 1):
            if number <= skip_to:
                continue
            if separator:
                # Most lines repeat what another line said, of another part.
                reference, _, rest = line.partition(separator)
                capacitor = self.known.get(rest)
                if capacitor is not None and _plain_reference(reference):
                    add_reference(reference)
                    add_line(number)
                    add_capacitor(capacitor)
                    continue
            skip_to = self.read_line(number, line)
        if self.may_be_cut:
            self.list.notes.append(
                "The file does not end with a line end: check its last line against the paper."
            )

    def seen_before(self) -> dict[str, Capacitor]:
        roles = tuple(self.columns.roles) if self.columns else ()
        return _seen_before(self.separator, roles, self.section)

    def aside(self, number: int, what: str, why: str = "") -> None:
        self.list.set_aside.append(SetAside(number, self.list.text_of(number), what, why))

    def read_line(self, number: int, line: str) -> int:
        """Read one line; returns the number of the last line that belongs to it."""
        if not line.strip():
            self.aside(number, BLANK)
        elif layout.is_rule(line):
            self.aside(number, HEADING, "a rule")
        elif len(line) > LONGEST_LINE:
            self.aside(number, UNREADABLE, f"longer than {LONGEST_LINE} characters")
        else:
            last, cells = self.cells_from(number)
            if cells is None:
                self.aside(number, UNREADABLE, "a quotation mark is opened and not closed")
                return number
            for inside in range(number + 1, last + 1):
                self.aside(inside, HEADING, f"continues line {number}")
            self.one_line = last == number
            self.read_row(number, line, cells)
            return last
        return number

    def cells_from(self, number: int) -> tuple[int, list[str] | None]:
        """The cells of the line, with the lines that its quoted cells run on to."""
        lines = self.list.lines
        for last in range(number, min(number + QUOTED_LINES, len(lines) + 1)):
            cells = layout.split_line(" ".join(lines[number - 1 : last]), self.separator)
            if cells is None:
                continue
            if len(cells) > MOST_COLUMNS and self.separator not in (SPACES, WORDS):
                wrong = f"line {number} has {len(cells)} columns"
                raise RepairlibError(self.list.name, wrong, f"at most {MOST_COLUMNS} columns")
            return last, cells
        if self.may_be_cut and number + QUOTED_LINES > len(lines):
            raise self.cut(f"line {number} opens a quotation mark and the file ends")
        return number, None

    def cut(self, wrong: str) -> RepairlibError:
        return RepairlibError(
            self.list.name,
            f"{wrong}: the file was cut off",
            "a whole file; if the last line is whole, end it with a line end",
        )

    def read_row(self, number: int, line: str, cells: list[str]) -> None:
        columns = None
        if not begins_with_reference(cells[0]):
            columns = read_headings(cells, line)
        if columns:
            self.columns = columns if self.separator else None
            self.known = self.seen_before()
            self.aside(number, HEADING)
            return
        at = self.reference_column(cells)
        if at is None:
            self.read_line_without_reference(number, line)
            return
        whole = self.is_whole(number, cells)
        try:
            references, cells, roles = self.references_and_roles(line, cells, at)
        except RepairlibError as problem:
            self.aside(number, UNREADABLE, problem.wrong)
            return
        if references.letters not in CAPACITORS:
            trimmer = references.letters in TRIMMERS
            why = ", ".join(references.names[:4]) + (" (a trimmer stays)" if trimmer else "")
            self.aside(number, OTHER_PART, why)
            return
        clear = self.add_parts(number, references, list(zip(roles, cells, strict=True)))
        if clear and whole and self.one_line:
            self.remember(line, references)

    def is_whole(self, number: int, cells: list[str]) -> bool:
        """Whether the row has a cell for each heading.

        An error for a last row that stops early where all others are whole.
        """
        if not self.columns:
            return True
        wanted = len(self.columns.roles)
        is_last = number == len(self.list.lines)
        explicit = self.separator not in (SPACES, WORDS)
        if explicit and self.may_be_cut and is_last and len(cells) < wanted <= self.shortest_row:
            raise self.cut(f"its last line, {number}, has {len(cells)} of {wanted} columns")
        self.shortest_row = min(self.shortest_row, len(cells))
        return len(cells) >= wanted

    def reference_column(self, cells: list[str]) -> int | None:
        headed = self.columns.roles if self.columns else []
        for at, (role, cell) in enumerate(zip(headed, cells, strict=False)):
            if role == "reference" and begins_with_reference(cell):
                return at
        if begins_with_reference(cells[0]):
            return 0
        for at, cell in enumerate(cells):
            found = re.match(r"(E?C|C[XY])[ -]?[0-9]", cell)
            if found and begins_with_reference(cell):
                return at
        return None

    def references_and_roles(self, line: str, cells: list[str], at: int):
        """The references of the row, its other cells, and the roles of those."""
        references = read_references(cells[at])
        if references is None:
            raise RepairlibError(cells[at], f"'{cells[at]}' is not a reference", "C1")
        while at + 1 < len(cells) and begins_with_reference(cells[at + 1]):
            # C1, C2, 10/16 without quotation marks: the second reference is a cell of its own.
            joined = f"{cells[at]}, {cells[at + 1]}"
            more = read_references(joined)
            if references.rest or more.rest or more.letters != references.letters:
                break
            references = more
            cells[at : at + 2] = [joined]
        roles = self.roles_for(line, cells, at)
        others = [
            (role, cell)
            for index, (role, cell) in enumerate(zip(roles, cells, strict=True))
            if index != at
        ]
        if references.rest:
            others.insert(0, ("free", references.rest))
        return references, [cell for _, cell in others], [role for role, _ in others]

    def roles_for(self, line: str, cells: list[str], at: int) -> list[str]:
        """The role of each cell; an error when the row does not fit its headings."""
        if not self.columns:
            return ["free"] * len(cells)
        roles = self.columns.roles
        if self.separator == SPACES and len(cells) != len(roles):
            found = self.columns.under(line, cells)
            if found:
                return found
            if any(_is_bare(cell) for index, cell in enumerate(cells) if index != at):
                wrong = f"{len(cells)} columns where the headings are {len(roles)}"
                raise RepairlibError(line, wrong, "one cell under each heading")
            return ["free"] * len(cells)
        extra = [cell for cell in cells[len(roles) :] if cell]
        if extra:
            wrong = f"{len(cells)} columns where the headings are {len(roles)}"
            wrong += "; is a comma inside a value?" if self.separator == "," else ""
            raise RepairlibError(line, wrong, "one cell under each heading")
        found = [*roles, *["other"] * len(cells)][: len(cells)]
        # A column of running numbers may be headed as if it held the references.
        return ["other" if role == "reference" else role for role in found]

    def add_parts(self, number: int, references: References, cells: list) -> bool:
        """Add the parts of a row; whether nothing about the row is doubtful."""
        names = references.names
        quantities = [cell for role, cell in cells if role == "quantity" and cell]
        said = tuple((role, cell) for role, cell in cells if cell and role != "quantity")
        if references.letters in ON_THE_MAINS:
            said = (*said, ("other", "mains"))
        capacitor = describe(said, self.section)
        if not capacitor.text:
            self.aside(number, UNREADABLE, f"nothing stands after {names[-1]}")
            return False
        doubt = _doubt_of_quantity(quantities, capacitor, len(names))
        for name in names:
            if doubt:
                self.list.doubts[len(self.list.references)] = doubt
            self.list.references.append(name)
            self.list.part_lines.append(number)
            self.list.capacitors.append(capacitor)
        return not doubt

    def remember(self, line: str, references: References) -> None:
        """Keep what the line said, for lines that say the same of another part."""
        reference, _, rest = line.partition(self.separator or "\0")
        if self.separator == SPACES or references.names != (reference,):
            return
        if references.letters in ON_THE_MAINS:
            return  # it says more than C1 with the same words
        if len(self.known) >= MOST_REMEMBERED:
            self.known.clear()
        self.known[rest] = self.list.capacitors[-1]

    def read_line_without_reference(self, number: int, line: str) -> None:
        section = section_kind(line)
        if section is not None:
            self.section = section
            self.known = self.seen_before()
            below = f"the lines below are {section}" if section else "a title of other parts"
            self.aside(number, TITLE, below)
            return
        if layout.is_footer(line):
            self.aside(number, TITLE, "a page number")
            return
        inside = _capacitor_inside(line)
        if inside:
            self.aside(number, UNREADABLE, f"names {inside[0]} but does not begin with it")
            return
        said = describe((("free", line.replace(self.separator or "\0", " ")),))
        if said.farad is not None or said.volts is not None:
            self.aside(number, UNREADABLE, "a value, but no reference such as C5")
        else:
            self.aside(number, TITLE, "no reference and no value")


@lru_cache(maxsize=32)
def _seen_before(separator: str, roles: tuple[str, ...], section: str) -> dict[str, Capacitor]:
    """What lines said of their part, by all that stood right of the first separator.

    Only lines with one plain reference are kept here. Long lists repeat themselves, and the same
    list is planned again after every change, so most lines need not be taken apart again.
    """
    return {}


def _is_bare(cell: str) -> bool:
    return cell.replace(".", "", 1).replace(",", "", 1).isdigit()


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
