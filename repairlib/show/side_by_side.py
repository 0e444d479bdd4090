"""A picture and what belongs to it, side by side where there is room, else one under the other."""

from __future__ import annotations

from repairlib.core.html import Html, text


class Beside:
    """Pictures, findings and the like in one row, each with the same width.

    What has no look of its own in a notebook is shown as its text.

    >>> from repairlib.show.picture import Picture
    >>> Beside(Picture("<svg/>", "A chart."), Picture("<svg/>", "A table."))
    A chart.
    A table.
    """

    def __init__(self, *shown: object) -> None:
        self.shown = shown

    def __repr__(self) -> str:
        return "\n".join(map(str, self.shown))

    def _repr_html_(self) -> str:
        look = "flex:1 1 20rem;min-width:0;max-width:32rem;overflow-x:auto"
        pieces = [f'<div style="{look}">{_look(one)}</div>' for one in self.shown]
        row = "display:flex;flex-wrap:wrap;gap:8px 16px;align-items:flex-start"
        return Html(f'<div style="{row}">{"".join(pieces)}</div>')


def _look(one: object) -> str:
    drawn = getattr(one, "_repr_html_", None)
    return drawn() if drawn else f'<div style="white-space:pre-wrap">{text(one)}</div>'


def beside(*shown: object) -> Beside:
    """What is given, side by side where there is room."""
    return Beside(*shown)
