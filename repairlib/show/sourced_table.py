"""A table to read: its headings, what it holds in words, and where its figures stand."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core import html

FIGURES = 'style="text-align:right;padding:2px 5px"'
WORDS = 'style="text-align:left;vertical-align:top;padding:3px 12px 3px 0;overflow-wrap:break-word"'


class SourcedTable:
    """A table with its headings, what it holds in words, and the keys of its sources.

    `look` is that of each cell: FIGURES or WORDS.
    """

    def __init__(
        self,
        caption: str,
        head: Sequence[str],
        rows: Sequence[Sequence[str]],
        keys: Sequence[str],
        look: str = FIGURES,
    ) -> None:
        self.caption, self.head, self.rows, self.keys = caption, head, rows, keys
        self.look = look

    def __repr__(self) -> str:
        return "\n".join([self.caption, *(" | ".join(row) for row in (self.head, *self.rows))])

    def _repr_html_(self) -> str:
        head = html.row(self.head, self.look, "th")
        rows = [html.row(row, self.look, first="th") for row in self.rows]
        table = html.table(rows, head, html.Html(f"<strong>{html.text(self.caption)}</strong>"))
        wide = html.Html(f'<div style="overflow-x:auto">{table}</div>')  # scrolls on a phone
        return wide + html.fold("Sources", html.sources(self.keys))
