"""Drawings and notes side by side where there is room, and one under the other where not."""

from __future__ import annotations

from repairlib.core.html import Html, text


class Beside:
    """Things shown side by side: in a notebook as they are shown there, elsewhere their words."""

    def __init__(self, things: tuple[object, ...], room: str) -> None:
        self.things = things
        self.room = room

    def __repr__(self) -> str:
        return "\n".join(map(str, self.things))

    def _repr_html_(self) -> str:
        look = f"flex:1 1 {self.room};min-width:0;max-width:34rem;overflow-x:auto"
        places = "".join(f'<div style="{look}">{_shown(thing)}</div>' for thing in self.things)
        row = "display:flex;flex-wrap:wrap;align-items:flex-start;gap:4px 16px"
        return Html(f'<div style="{row}">{places}</div>')


def _shown(thing: object) -> str:
    drawn = getattr(thing, "_repr_html_", None)
    return drawn() if drawn else f'<div style="white-space:pre-wrap">{text(thing)}</div>'


def beside(*things: object, room: str = "14rem") -> Beside:
    """Show drawings, or whatever else a notebook shows, side by side.

    room: how wide each must be, as a length of CSS; where the page is too narrow for that, they
    stand one under the other. What has no look of its own in a notebook is shown as its text.

    >>> from repairlib.show import draw_row
    >>> beside(draw_row(("disc", "104", "ceramic")), draw_row(("film box", "4n7J", "film")))
    ceramic: A round flat disc on two leads. Printed on it: 104.
    film: A rectangular plastic box on two leads. Printed on it: 4n7J.
    """
    return Beside(things, room)
