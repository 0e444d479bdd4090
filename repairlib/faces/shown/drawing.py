"""The part that carries a marking, drawn; apart from the words, which the page shows before it."""

from __future__ import annotations

from repairlib.core.html import Html, picture
from repairlib.show import draw_part

DRAWN_CHARACTERS = 80


def marked(body: str, marking: str) -> Html:
    """The part with the marking on it, a new line at every space, as makers print it."""
    printed = "\n".join(marking[:DRAWN_CHARACTERS].split())
    return picture(draw_part(body, printed, labels=False, named=True))
