"""A memory as rows of boxes, its first address at the top left: what pictures of images share.

What a box holds is said by how far it is filled and by a letter, never by colour alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.firmware import address
from repairlib.show.canvas import INK, PAPER, POSITIVE, QUIET, Canvas, wrapped
from repairlib.show.picture import Picture

COLUMNS = 16
BOX = 18.0
LEFT, WIDTH = 100.0, 400.0  # where the boxes begin; narrow, so that a phone shows all its letters
LETTERS, LINE = 15, 19.0
FILLED, STRONG = "#a9c3dc", "#f0b8a8"
MARGIN = 8.0
MOST_SAID = 12  # places in the words for those who cannot see the picture


class Cell(NamedTuple):
    """One box: filled up to `level` (0 to 1), with a letter; `marked` has a thick outline."""

    level: float
    letter: str = ""
    fill: str = FILLED
    marked: bool = False


Legend = Sequence[tuple[Cell, str]]


def draw_cells(title: str, cells: Sequence[Cell], each: int, legend: Legend, alt: str) -> Picture:
    """Draw the boxes of `each` so many bytes, with the address of each row and what is meant."""
    head = wrapped(title, WIDTH - 2 * MARGIN, LETTERS, bold=True)
    meant = [(cell, wrapped(words, WIDTH - 50, LETTERS)) for cell, words in legend]
    rows = -(-len(cells) // COLUMNS)
    top = MARGIN + LINE * len(head) + 6
    below = top + BOX * rows + 14
    lines = sum(len(words) for _, words in meant)
    canvas = Canvas(WIDTH, below + LINE * lines + 4 * len(meant) + MARGIN)
    for number, line in enumerate(head):
        canvas.text(MARGIN, MARGIN + LINE * (number + 0.5), line, LETTERS, "start", bold=True)
    for number in range(rows):
        first = address(number * COLUMNS * each)
        canvas.text(LEFT - 6, top + BOX * (number + 0.5), first, LETTERS, "end")
    places = [divmod(number, COLUMNS) for number in range(len(cells))]
    # What is marked is drawn last, so that no neighbour covers its outline.
    for (row, column), cell in sorted(zip(places, cells, strict=True), key=lambda one: one[1][3]):
        _draw(canvas, LEFT + BOX * column, top + BOX * row, cell)
    for cell, words in meant:
        _draw(canvas, MARGIN + 4, below, cell)
        for number, line in enumerate(words):
            canvas.text(40, below + BOX / 2 + LINE * number, line, LETTERS, "start")
        below += LINE * len(words) + 4
    return canvas.picture(alt)


def places_said(places: Sequence[int | tuple[int, int]]) -> str:
    """Addresses, or half-open ranges of them, in words, at most MOST_SAID of them.

    >>> places_said([0, (256, 512)]), places_said(range(0, 40, 2))[-6:]
    ('0x000000, 0x000100 to 0x0001FF', '8 more')
    """
    said = [
        address(one) if isinstance(one, int) else f"{address(one[0])} to {address(one[1] - 1)}"
        for one in places[:MOST_SAID]
    ]
    more = len(places) - len(said)
    return ", ".join([*said, *([f"{more} more"] if more else [])])


def _draw(canvas: Canvas, x: float, y: float, cell: Cell) -> None:
    high = BOX * cell.level
    canvas.rect(x, y, BOX, BOX, PAPER, stroke=QUIET, pen=0.8)
    if high:
        canvas.rect(x, y + BOX - high, BOX, high, cell.fill, stroke=QUIET, pen=0.8)
    if cell.letter:
        canvas.text(x + BOX / 2, y + BOX / 2, cell.letter, LETTERS, fill=INK, bold=True)
    if cell.marked:
        canvas.rect(x, y, BOX, BOX, stroke=POSITIVE, pen=3)
