"""What a row of a parts list names: its references, and the other cells with their roles.

Covers rows of headings, a column of references anywhere in the row, references spread over several
cells, rows that do not fit their headings. What the other cells say is read in ratings.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headings import Columns, read_headings, role_of_heading
from repairlib.core.typed.references import (
    References,
    begins_with_reference,
    capacitors_inside,
    read_references,
)
from repairlib.core.typed.table import SPACES, Row, wrong_width

_figure = re.compile(r"(?<![^\W\d_])[0-9]").search
_capacitor_first = re.compile(r"[\[(]?(E?C|C[EPXY])[ .–—-]?[\[(]?[0-9]").match


@dataclass(eq=False, slots=True)
class Entry:
    """The `references` of a row and its other `cells`, each as (role, text)."""

    references: References
    cells: list[tuple[str, str]]

    def in_columns(self, role: str) -> list[str]:
        """The filled cells of that role."""
        return [cell for one, cell in self.cells if one == role and cell]


def headings_in(row: Row) -> Columns | None:
    """The columns that a row announces that begins with no reference; None when it does not."""
    if capacitors_inside(row.text):
        return None
    if any(_figure(cell) and not role_of_heading(cell) for cell in row.cells):
        return None
    return read_headings(row.cells, row.text)


def reference_column(cells: list[str], columns: Columns | None) -> int | None:
    """In which of the cells the references stand; None when there are none.

    >>> reference_column(["1", "4", "C1-C4"], None), reference_column(["see notes"], None)
    (2, None)
    """
    for at in columns.references if columns else ():
        if at < len(cells) and begins_with_reference(cells[at]):
            return at
    if begins_with_reference(cells[0]):
        return 0
    for at, cell in enumerate(cells):
        if _capacitor_first(cell) and begins_with_reference(cell):
            return at
    return None


def read_entry(
    row: Row, at: int, columns: Columns | None, separator: str, groups: bool = False
) -> Entry:
    """What the row names, with its references in the cell `at`, under the headings `columns`.

    `groups` says that the list counts in groups (see read_references).

    Raises RepairlibError for references that cannot be counted, and for a row that does not fit
    its headings.

    >>> row = Row(1, "C1,C2,10/16")
    >>> row.cells = ["C1", "C2", "10/16"]
    >>> entry = read_entry(row, 0, None, ",")
    >>> entry.references.names, entry.cells
    (('C1', 'C2'), [('free', '10/16')])
    """
    references, cells = _references(row.cells, at, groups)
    roles = _roles(row.text, cells, at, columns, separator)
    others = list(zip(roles, cells, strict=True))
    del others[at]
    if references.rest:
        others.insert(0, ("free", references.rest))
    return Entry(references, others)


def _references(cells: list[str], at: int, groups: bool) -> tuple[References, list[str]]:
    """The references from the cell `at` on, and the cells with all of them in one."""
    references = read_references(cells[at], groups)
    if references is None:
        raise RepairlibError(cells[at], f"'{cells[at]}' is not a reference", "C1")
    while at + 1 < len(cells) and begins_with_reference(cells[at + 1]):
        # C1, C2, 10/16 without quotation marks: the second reference is a cell of its own.
        joined = f"{cells[at]}, {cells[at + 1]}"
        more = read_references(joined, groups)
        if references.rest or not more or more.rest or more.letters != references.letters:
            break
        references = more
        cells = [*cells[:at], joined, *cells[at + 2 :]]
    return references, cells


def _roles(
    line: str, cells: list[str], at: int, columns: Columns | None, separator: str
) -> list[str]:
    """The role of each cell; an error when the row does not fit its headings."""
    if not columns:
        return ["free"] * len(cells)
    roles = columns.beside
    if len(cells) == len(roles):
        return roles
    if separator == SPACES:
        found = columns.under(line, cells)
        if found:
            return found
        misfit = any(_is_bare(cell) for place, cell in enumerate(cells) if place != at)
        found = ["free"] * len(cells)
    else:
        misfit = any(cells[len(roles) :])
        found = [*roles, *["other"] * len(cells)][: len(cells)]
    if misfit:
        wrong = wrong_width(cells, len(roles), separator)
        raise RepairlibError(line, wrong, "one cell under each heading")
    return found


def _is_bare(cell: str) -> bool:
    return cell.replace(".", "", 1).replace(",", "", 1).isdigit()
