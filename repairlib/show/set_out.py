"""A table of words that stands on a wide page in columns, and on a phone line under line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from repairlib.core.html import Html, text

ROW = "display:flex;flex-wrap:wrap;gap:0 .5rem;padding:1px 0;line-height:1.35"
RULE = ";border-bottom:1px solid #8886"
CELL = "flex:{0} 1 {0}rem;min-width:0;text-align:left;overflow-wrap:break-word"


class SetOut:
    """A table with its headings; `widths` are those of its columns in rem, as far as there is room.

    In a notebook each row breaks where the page is too narrow for it, and all rows at one place, so
    that nothing has to be scrolled sideways. Elsewhere it is lines of text.

    >>> SetOut(("part", "place"), [("C1", "left")], (4, 8))
    part | place
    C1 | left
    """

    def __init__(
        self, head: Sequence[str], rows: Iterable[Iterable[object]], widths: Sequence[float]
    ) -> None:
        self.head, self.widths = tuple(head), tuple(widths)
        self.rows = [tuple(map(str, row)) for row in rows]

    def __repr__(self) -> str:
        return "\n".join(" | ".join(row) for row in (self.head, *self.rows))

    def _repr_html_(self) -> str:
        rows = [self._row(self.head, "columnheader", "columnheader")]
        rows += [self._row(row, "rowheader", "cell") for row in self.rows]
        return Html(f'<div role="table" style="max-width:64rem">{"".join(rows)}</div>')

    def _row(self, cells: Sequence[str], first: str, others: str) -> str:
        made = ""
        for cell, width in zip(cells, self.widths, strict=True):
            role = others if made else first
            bold = "" if role == "cell" else ";font-weight:600"
            style = CELL.format(f"{width:g}") + bold
            made += f'<div role="{role}" style="{style}">{text(cell)}</div>'
        return f'<div role="row" style="{ROW}{RULE}">{made}</div>'
