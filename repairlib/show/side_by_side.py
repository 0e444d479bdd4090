"""Drawings and notes side by side where there is room, and one under the other where not."""

from __future__ import annotations

from repairlib.core.html import Html


class Beside:
    """Things shown side by side: in a notebook as they are shown there, elsewhere their words."""

    def __init__(self, things: tuple, room: str) -> None:
        self.things = things
        self.room = room

    def __repr__(self) -> str:
        return "\n".join(repr(thing) for thing in self.things)

    def _repr_html_(self) -> str:
        place = f'<div style="flex:1 1 {self.room};min-width:0">'
        places = "".join(f"{place}{thing._repr_html_()}</div>" for thing in self.things)
        return Html(
            f'<div style="display:flex;flex-wrap:wrap;align-items:flex-start;gap:4px 16px">'
            f"{places}</div>"
        )


def beside(*things, room: str = "14rem") -> Beside:
    """Show drawings, or whatever else a notebook shows, side by side.

    room: how wide each must be, as a length of CSS; where the page is too narrow for that, they
    stand one under the other.

    >>> from repairlib.show import draw_row
    >>> beside(draw_row(("disc", "104", "ceramic")), draw_row(("film box", "4n7J", "film")))
    ceramic: A round flat disc on two leads. Printed on it: 104.
    film: A rectangular plastic box on two leads. Printed on it: 4n7J.
    """
    return Beside(things, room)
