"""Parts, or places on a board, side by side, each with a few words under it: to compare them."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.show.canvas import Canvas, wrapped
from repairlib.show.footprints import (
    HALF_WIDTH,
    MARKS,
    Footprint,
    draw_footprint,
    mark_in_words,
)
from repairlib.show.parts import draw_body, part_words
from repairlib.show.picture import Picture

COLUMN, WIDE_COLUMN = 232, 276
LEAD_AT_THE_SIDE = 90  # a lead that ends further out belongs to a part lying down
HEIGHT = 270
MIDDLE = 122
CAPTION = 16
PLACE_COLUMN, PLACE_HEIGHT, PLACE_MIDDLE, PLACE_CAPTION = 2 * HALF_WIDTH + 20, 230, 84, 182


def draw_row(*parts: tuple[str, str, str]) -> Picture:
    """Draw parts in a row, each given as (body, marking, words under it).

    Raises RepairlibError for a body that is not in BODIES.

    >>> draw_row(("disc", "104", "ceramic"), ("film box", "4n7J", "film"))
    ceramic: A round flat disc on two leads. Printed on it: 104.
    film: A rectangular plastic box on two leads. Printed on it: 4n7J.
    """
    bodies = [draw_body(Canvas(0, 0), body) for body, _, _ in parts]
    lying = any(abs(end.x) > LEAD_AT_THE_SIDE for body in bodies for end in body.terminals)
    column = WIDE_COLUMN if lying else COLUMN
    canvas = Canvas(column * len(parts), HEIGHT)
    size = max(CAPTION, canvas.width // 46)  # a long row is shown smaller
    said = []
    for place, (body, marking, words) in enumerate(parts):
        x = column * (place + 0.5)
        with canvas.at(x, MIDDLE):
            anatomy = draw_body(canvas, body, marking)
        canvas.text(x, HEIGHT - CAPTION, words, size, bold=True)
        said.append(f"{words}: {part_words(anatomy, marking, labels=False)}")
    return canvas.picture("\n".join(said))


def draw_places(*places: tuple[str, str, str]) -> Picture:
    """Draw empty places on a board in a row, each given as (body, mark on the board, words).

    Raises RepairlibError for a body that is not in BODIES, or a mark that no board carries.

    >>> draw_places(("radial", "plus sign", "plus is left"))
    plus is left: An empty place on a board. On the board: plus sign (left).
    """
    canvas = Canvas(PLACE_COLUMN * len(places), PLACE_HEIGHT)
    said = []
    for number, (body, mark, words) in enumerate(places):
        if mark not in MARKS:
            raise RepairlibError(mark, "not a mark on a board", ", ".join(MARKS))
        x = PLACE_COLUMN * (number + 0.5)
        anatomy = draw_body(Canvas(0, 0), body)
        with canvas.at(x, PLACE_MIDDLE):
            draw_footprint(canvas, Footprint(anatomy, -1), mark)
        for row, line in enumerate(wrapped(words, PLACE_COLUMN - 20, CAPTION, bold=True)):
            canvas.text(x, PLACE_CAPTION + 22 * row, line, CAPTION, bold=True)
        said.append(f"{words}: An empty place on a board. {mark_in_words(mark)}")
    return canvas.picture("\n".join(said))
