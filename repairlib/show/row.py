"""Parts, or places on a board, side by side, each with a few words under it: to compare them."""

from __future__ import annotations

from math import ceil

from repairlib.core.errors import RepairlibError
from repairlib.show.anatomy import Anatomy
from repairlib.show.bands import label_names
from repairlib.show.box import around
from repairlib.show.canvas import MARGIN, Canvas, wrapped
from repairlib.show.footprints import (
    HALF_WIDTH,
    MARKS,
    Footprint,
    draw_footprint,
    mark_in_words,
)
from repairlib.show.parts import draw_body, part_words, sign_end
from repairlib.show.picture import Picture, Pieces

COLUMN, WIDE_COLUMN = 232, 276
LEAD_AT_THE_SIDE = 90  # a lead that ends further out belongs to a part lying down
CAPTION = 16
PAIR = 2  # parts that stay together on a narrow page
READ, NARROW = 12.0, 300  # px: the smallest letters as shown, and a narrow page
PLACE_COLUMN, PLACE_MIDDLE, PLACE_CAPTION = 2 * HALF_WIDTH + 20, 84, 172


def draw_row(*parts: tuple, ends: bool = False) -> Picture:
    """Draw parts in a row, each given as (body, marking, words under it).

    A fourth entry, a dict, holds more of what draw_part takes: mark, state, flip. `ends` puts a
    sign to each end, such as + and −. On a narrow page a long row
    goes on below. Raises RepairlibError for a body that is not in BODIES.

    >>> draw_row(("disc", "104", "ceramic"), ("film box", "4n7J", "film"))
    ceramic: A round flat disc on two leads. Printed on it: 104.
    film: A rectangular plastic box on two leads. Printed on it: 4n7J.
    """
    tries = [Canvas(0, 0) for _ in parts]
    bodies = [_draw(sheet, ends, *part) for sheet, part in zip(tries, parts, strict=True)]
    lying = any(abs(end.x) > LEAD_AT_THE_SIDE for body in bodies for end in body.terminals)
    column = WIDE_COLUMN if lying else COLUMN
    reach = around(sheet.extent for sheet in tries)
    top, floor = MARGIN - reach.top, MARGIN - reach.top + reach.bottom
    size = max(CAPTION, ceil(READ * column * min(PAIR, len(parts)) / NARROW))
    captions = [wrapped(part[2], column - 8, size, bold=True) for part in parts]
    step = 1.3 * size
    high = floor + step * (1 + max(map(len, captions)))

    def drawn(places: range) -> Picture:
        canvas = Canvas(column * len(places), high)
        said = []
        for at, place in enumerate(places):
            part, x = parts[place], column * (at + 0.5)
            with canvas.at(x, top):
                _draw(canvas, ends, *part)
            for row, line in enumerate(captions[place]):
                canvas.text(x, floor + step * (row + 1), line, size, bold=True)
            said.append(f"{part[2]}: {part_words(bodies[place], part[1], ends)}")
        return canvas.picture("\n".join(said))

    whole, every = drawn(range(len(parts))), range(len(parts))
    if len(parts) <= PAIR:
        return whole
    pairs = [drawn(every[at : at + PAIR]) for at in every[::PAIR]]
    return Pieces(whole.svg, whole.alt, pairs)


def _draw(
    canvas: Canvas, ends: bool, body: str, marking: str, words: str, more: dict | None = None
) -> Anatomy:
    anatomy = draw_body(canvas, body, marking, **(more or {}))
    label_names(canvas, anatomy.names)
    for end in anatomy.terminals if ends else ():
        if end.word != "either":
            sign_end(canvas, end, 0, 0)
    return anatomy


def draw_places(*places: tuple[str, str, str], look: str = "green") -> Picture:
    """Draw empty places on a board in a row, each given as (body, mark on the board, words).

    look: of the board, a name from LOOKS. Raises RepairlibError for a body that is not in BODIES,
    a mark that no board carries, or a look that is not drawn.

    >>> draw_places(("radial", "plus sign", "plus is left"))
    plus is left: An empty place on a board. On the board: plus sign (left).
    """
    captions = [wrapped(words, PLACE_COLUMN - 20, CAPTION, bold=True) for *_, words in places]
    high = PLACE_CAPTION + 22 * max(map(len, captions))
    canvas = Canvas(PLACE_COLUMN * len(places), high)
    said = []
    for number, (body, mark, words) in enumerate(places):
        if mark not in MARKS:
            raise RepairlibError(mark, "not a mark on a board", ", ".join(MARKS))
        x = PLACE_COLUMN * (number + 0.5)
        anatomy = draw_body(Canvas(0, 0), body)
        with canvas.at(x, PLACE_MIDDLE):
            draw_footprint(canvas, Footprint(anatomy, -1, look), mark)
        for row, line in enumerate(captions[number]):
            canvas.text(x, PLACE_CAPTION + 22 * row + 8, line, CAPTION, bold=True)
        said.append(f"{words}: An empty place on a board. {mark_in_words(mark)}")
    return canvas.picture("\n".join(said))
