"""A small table to type into: a heading over each column, a field in each cell."""

from __future__ import annotations

from collections.abc import Sequence

import ipywidgets as widgets
import traitlets

from repairlib.core.errors import RepairlibError
from repairlib.core.html import text
from repairlib.core.typed.headed import read_headed
from repairlib.faces.panels.look import named, words

_STROKES = str.maketrans("|\n\r\t", "/   ")  # what parts the cells stands in none


class CellTable(widgets.GridBox):
    """A field whose `value` is a table as text, headings first, cells parted by strokes.

    Blank rows are left out of it; a value that is put in fills the cells.

    >>> table = CellTable(("part", "value"), 3, "part | value\\nC1 | 100 µF")
    >>> table.cells[1][0].value = "R1"
    >>> table.value
    'part | value\\nC1 | 100 µF\\nR1 | '
    """

    value = traitlets.Unicode()

    def __init__(self, columns: Sequence[str], rows: int, value: str):
        self.columns = tuple(columns)
        self.cells = [
            [_cell(f"{column}, row {row}") for column in self.columns] for row in range(1, rows + 1)
        ]
        heads = [words(f"<strong>{text(column)}</strong>") for column in self.columns]
        each = f"repeat({len(self.columns)}, minmax(0, 7rem))"
        layout = widgets.Layout(grid_template_columns=each, grid_gap="2px 6px", max_width="100%")
        super().__init__([*heads, *(cell for row in self.cells for cell in row)], layout=layout)
        self._filling = False
        self.observe(self._fill, "value")
        self.value = value
        for row in self.cells:
            for cell in row:
                cell.observe(self._typed, "value")

    def _typed(self, _change) -> None:
        if self._filling:
            return
        rows = [[cell.value.strip().translate(_STROKES) for cell in row] for row in self.cells]
        lines = [" | ".join(row) for row in (self.columns, *(row for row in rows if any(row)))]
        self._filling = True
        self.value = "\n".join(lines)
        self._filling = False

    def _fill(self, change) -> None:
        if self._filling:
            return
        try:
            table = read_headed(change["new"], "the table", self.columns, ())
            typed = [table.by_heading(row, self.columns) for row in table.rows_below()]
        except RepairlibError:
            raise traitlets.TraitError("no such table") from None
        self._filling = True
        for number, row in enumerate(self.cells):
            cells = typed[number] if number < len(typed) else {}
            for column, cell in zip(self.columns, row, strict=True):
                cell.value = cells.get(column, "")
        self._filling = False


def _cell(name: str) -> widgets.Text:
    return named(widgets.Text(layout=widgets.Layout(width="auto", margin="0")), name)
