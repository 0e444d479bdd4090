"""Tables with fixed headings: one line of them, then rows whose cells are found by heading.

Used where a file has to be such a table and nothing else; a list that somebody typed freely is
read row by row from table.py.
"""

from __future__ import annotations

from collections.abc import Iterator

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.set_aside import UNREADABLE
from repairlib.core.typed.table import (
    BLANKS,
    COMMAS,
    FRAMED,
    LONGEST_LINE,
    SEMICOLONS,
    STROKES,
    TABS,
    UNCLOSED,
    Row,
    Table,
    cells_of,
    is_framed,
    is_rule,
    lines_of,
    wrong_width,
)
from repairlib.core.typed.textfile import TextFile, as_text


class HeadedTable(Table):
    """A table whose headings are known: `headings` in lower case, on the line `heading`.

    `note` is what its encoding was when it was not plain UTF-8.
    """

    def __init__(self, lines: list[str], separator: str, heading: int, note: str):
        super().__init__(lines, separator)
        self.heading = heading
        self.note = note
        self.headings = [cell.lower() for cell in self.row(heading).cells]

    def places(self, columns: tuple[str, ...]) -> list[int]:
        """In which cell of a row each column stands; -1 for a column that is not there."""
        return [self.headings.index(name) if name in self.headings else -1 for name in columns]

    def by_heading(self, row: Row, columns: tuple[str, ...]) -> dict[str, str]:
        """The cells of a row by their column; "" where the row or the table has none."""
        cells = dict(zip(self.headings, row.cells, strict=False))
        return {name: cells.get(name, "") for name in columns}

    def rows_below(self) -> Iterator[Row]:
        """Each row under the headings that is not blank and not a rule.

        A row with more cells than there are headings is unreadable.
        """
        width = len(self.headings)
        for row in self.rows(self.heading + 1):
            if any(row.cells[width:]):
                row.what, row.why = UNREADABLE, wrong_width(row.cells, width, self.separator)
            del row.cells[width:]
            if row.what == UNREADABLE or any(row.cells) or row.last > row.line:
                yield row


def read_headed(
    given: TextFile | str | bytes, name: str, columns: tuple[str, ...], needed: tuple[str, ...]
) -> HeadedTable:
    """The table in a text whose first line of words holds headings out of `columns`.

    Raises RepairlibError for a text without lines, for headings that cannot be read or stand
    twice, for one of `needed` that is not there, and for columns set apart by spaces, in which an
    empty cell cannot be seen.

    >>> table = read_headed("Part;Price\\nA1;0,05\\n", "shop", ("part", "price"), ("part",))
    >>> table.headings, [row.cells for row in table.rows_below()]
    (['part', 'price'], [['A1', '0,05']])
    """
    text = as_text(given, name)
    accepted = f"a CSV file with the headings {', '.join(columns)}"
    lines = lines_of(text.text, name, accepted)
    heading = next(
        (at for at, line in enumerate(lines, 1) if line.strip() and not is_rule(line)), 1
    )
    line = lines[heading - 1]
    if len(line) > LONGEST_LINE:
        wrong = f"its heading is longer than {LONGEST_LINE} characters"
        raise RepairlibError(name, wrong, accepted)
    separator = separator_under(line, columns)
    if cells_of(line, separator) is None:
        raise RepairlibError(name, f"its heading cannot be read: {UNCLOSED}", accepted)
    if separator == BLANKS:
        wrong = "its columns are set apart by spaces, so that an empty cell cannot be seen"
        raise RepairlibError(name, wrong, "commas, semicolons, tabs or upright strokes between")
    table = HeadedTable(lines, separator, heading, text.note)
    missing = [column for column in needed if column not in table.headings]
    if missing:
        raise RepairlibError(name, f"no column {', '.join(missing)}", accepted)
    twice = [column for column in columns if table.headings.count(column) > 1]
    if twice:
        raise RepairlibError(name, f"two columns {', '.join(twice)}", accepted)
    return table


def separator_under(line: str, columns: tuple[str, ...]) -> str:
    """What separates the cells of a line of headings: that by which most `columns` are found.

    >>> separator_under("part | life, h | price", ("part", "price")) == STROKES
    True
    """

    def found(separator: str) -> int:
        return sum(cell.lower() in columns for cell in cells_of(line, separator) or ())

    strokes = FRAMED if is_framed(line.strip()) else STROKES
    return max((COMMAS, SEMICOLONS, TABS, strokes, BLANKS), key=found)
