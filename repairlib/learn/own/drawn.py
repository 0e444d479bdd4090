"""A drawn part, named as its instructor types it: `disc, 104` or `radial, 220µF / 16V, bulged`."""

from __future__ import annotations

from difflib import get_close_matches
from functools import lru_cache
from typing import NamedTuple

from repairlib.core.errors import RepairlibError


class DrawnPart(NamedTuple):
    """A part to draw: the name of its body, its marking, and what is wrong with it.

    Called, it gives the drawing, without the words that would give an answer away.
    """

    body: str
    marking: str = ""
    state: str = ""

    def __call__(self):
        from repairlib.show import draw_part

        return draw_part(self.body, self.marking, labels=False, state=self.state)

    def labelled(self):
        """The drawing with its marks and ends in words, as a lesson shows it."""
        from repairlib.show import draw_part

        return draw_part(self.body, self.marking, state=self.state)


def read_picture(text: str) -> DrawnPart:
    """The part that is named. Raises RepairlibError when there is no such drawing.

    >>> read_picture("radial, 220µF / 16V, bulged")
    DrawnPart(body='radial', marking='220µF\\n16V', state='bulged')
    """
    pieces = [piece.strip() for piece in text.split(", ")]
    if len(pieces) > 3:
        accepted = "the part, its marking, what is wrong with it: radial, 220µF / 16V, bulged"
        raise RepairlibError(text, "more than three things", accepted)
    body, marking, state = (*pieces, "", "")[:3]
    part = DrawnPart(body.lower(), marking.replace(" / ", "\n"), state.lower())
    _look_at(part)
    return part


@lru_cache(1000)
def _look_at(part: DrawnPart) -> None:
    """Raise RepairlibError for a part that cannot be drawn."""
    from repairlib.show import BODIES, draw_part

    if part.body not in BODIES:
        near = get_close_matches(part.body, BODIES, 2, 0.5) or list(BODIES)
        raise RepairlibError(part.body, "no drawing of a part has this name", ", ".join(near))
    draw_part(part.body, part.marking, labels=False, state=part.state)
