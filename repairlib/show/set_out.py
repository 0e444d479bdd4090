"""A table as a notebook shows it: headings, rows, its caption, where its figures are from."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from repairlib.core import html

FIGURES = 'style="text-align:right;padding:2px 5px"'
WORDS = 'style="text-align:left;vertical-align:top;padding:3px 12px 3px 0;white-space:normal"'


class SetOut:
    """A table with its headings, what it holds in words, and the keys of its sources.

    `look` is FIGURES or WORDS. A cell is text, or HTML where it is marked as such.

    >>> SetOut("Parts", ("part", "place"), [("C1", "left")], look=WORDS)
    Parts
    part | place
    C1 | left
    """

    def __init__(
        self,
        caption: str,
        head: Sequence[str],
        rows: Iterable[Iterable[object]],
        keys: Sequence[str] = (),
        look: str = FIGURES,
    ) -> None:
        self.caption, self.head, self.keys, self.look = caption, head, keys, look
        self.rows = [tuple(map(str, row)) for row in rows]

    def __repr__(self) -> str:
        lines = [" | ".join(row) for row in (self.head, *self.rows)]
        return "\n".join([self.caption, *lines] if self.caption else lines)

    def _repr_html_(self) -> str:
        head = html.row(self.head, f'scope="col" {self.look}', "th")
        rows = [html.row(row, self.look, first="th") for row in self.rows]
        caption = html.Html(f"<strong>{html.text(self.caption)}</strong>") if self.caption else ""
        table = html.table(rows, head, caption)
        wide = html.Html(f'<div style="overflow-x:auto">{table}</div>')  # scrolls on a phone
        return wide + (html.fold("Sources", html.sources(self.keys)) if self.keys else "")
