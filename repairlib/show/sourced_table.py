"""A table to read: its headings, what it holds in words, and where its figures stand."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.core import html
from repairlib.show.set_out import SetOut

FIGURES = 'style="text-align:right;padding:2px 5px"'


class SourcedTable:
    """A table with its headings, what it holds in words, and the keys of its sources.

    With `widths` of its columns in rem it holds words and breaks where a page is narrow. Without,
    it holds figures.
    """

    def __init__(
        self,
        caption: str,
        head: Sequence[str],
        rows: Sequence[Sequence[str]],
        keys: Sequence[str],
        widths: Sequence[float] = (),
    ) -> None:
        self.caption, self.head, self.rows, self.keys = caption, head, rows, keys
        self.widths = widths

    def __repr__(self) -> str:
        return "\n".join([self.caption, *(" | ".join(row) for row in (self.head, *self.rows))])

    def _repr_html_(self) -> str:
        made = self._of_words() if self.widths else self._of_figures()
        return made + html.fold("Sources", html.sources(self.keys))

    def _of_words(self) -> html.Html:
        titled = html.Html(f"<strong>{html.text(self.caption)}</strong>")
        return html.Html(titled + SetOut(self.head, self.rows, self.widths)._repr_html_())

    def _of_figures(self) -> html.Html:
        head = html.row(self.head, FIGURES, "th")
        rows = [html.row(row, FIGURES, first="th") for row in self.rows]
        table = html.table(rows, head, html.Html(f"<strong>{html.text(self.caption)}</strong>"))
        return html.Html(f'<div style="overflow-x:auto">{table}</div>')  # scrolls on a phone
