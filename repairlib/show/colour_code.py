"""The colour code as a table with the colours in it."""

from __future__ import annotations

from repairlib.show.bands import INKS, ink_on
from repairlib.show.canvas import Canvas
from repairlib.show.picture import Picture

# colour, figure, zeros or factor, tolerance; the tolerances that no two editions disagree on
CODE = (
    ("black", "0", "no zero", ""),
    ("brown", "1", "1 zero", "±1 %"),
    ("red", "2", "2 zeros", "±2 %"),
    ("orange", "3", "3 zeros", ""),
    ("yellow", "4", "4 zeros", ""),
    ("green", "5", "5 zeros", "±0.5 %"),
    ("blue", "6", "6 zeros", "±0.25 %"),
    ("violet", "7", "7 zeros", "±0.1 %"),
    ("grey", "8", "8 zeros", "see text"),
    ("white", "9", "9 zeros", ""),
    ("gold", "", "times 0.1", "±5 %"),
    ("silver", "", "times 0.01", "±10 %"),
)
HEADS = ("colour", "figure", "multiplier", "tolerance")
COLUMNS = (12, 190, 300, 430)  # where each begins
WIDTH, ROW, TOP, LETTERS = 560, 26, 36, 16


def draw_colour_code() -> Picture:
    """Draw the table of the colour code, each row in its colour.

    >>> draw_colour_code().alt.splitlines()[2]
    'red: figure 2, 2 zeros, tolerance ±2 %'
    """
    canvas = Canvas(WIDTH, TOP + ROW * len(CODE) + 8)
    for x, head in zip(COLUMNS, HEADS, strict=True):
        canvas.text(x + (10 if x == COLUMNS[0] else 0), 20, head, LETTERS, "start", bold=True)
    said = []
    for number, (colour, figure, zeros, tolerance) in enumerate(CODE):
        y = TOP + ROW * number
        canvas.rect(COLUMNS[0], y, 150, ROW - 3, INKS[colour], pen=1)
        middle = y + (ROW - 3) / 2
        canvas.text(COLUMNS[0] + 10, middle, colour, LETTERS, "start", ink_on(colour), bold=True)
        for x, words in zip(COLUMNS[1:], (figure, zeros, tolerance), strict=True):
            canvas.text(x, middle, words, LETTERS, "start", bold=words == figure)
        more = [f"figure {figure}" if figure else "no figure", zeros]
        more += [f"tolerance {tolerance}"] if tolerance else []
        said.append(f"{colour}: {', '.join(more)}")
    return canvas.picture("\n".join(said))
