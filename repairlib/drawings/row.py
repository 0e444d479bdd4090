"""Parts side by side, each with a few words under it: to compare bodies and their markings."""

from __future__ import annotations

from repairlib.drawings.canvas import Canvas
from repairlib.drawings.parts import draw_body, part_words
from repairlib.drawings.picture import Picture

COLUMN = 232
HEIGHT = 270
MIDDLE = 122
CAPTION = 16


def draw_row(*parts: tuple[str, str, str]) -> Picture:
    """Draw parts in a row, each given as (body, marking, words under it).

    Raises RepairlibError for a body that is not in BODIES.

    >>> draw_row(("disc", "104", "ceramic"), ("film box", "4n7J", "film"))
    ceramic: A round flat disc on two leads. Printed on it: 104.
    film: A rectangular plastic box on two leads. Printed on it: 4n7J.
    """
    canvas = Canvas(COLUMN * len(parts), HEIGHT)
    said = []
    for place, (body, marking, words) in enumerate(parts):
        x = COLUMN * (place + 0.5)
        with canvas.at(x, MIDDLE):
            anatomy = draw_body(canvas, body, marking)
        canvas.text(x, HEIGHT - CAPTION, words, CAPTION, bold=True)
        said.append(f"{words}: {part_words(anatomy, marking, labels=False)}")
    return canvas.picture("\n".join(said))
