"""A small board with several eight-lead chips and what stands round them, seen from above.

From it a learner finds which chip holds the firmware: by its marks, body, neighbours and tracks.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.show.canvas import BOARD, COPPER, METAL, PAPER, Canvas, text_width
from repairlib.show.memory_chip import BODIES, CASE, DOT, PITCH
from repairlib.show.picture import Picture

PER_MM = 10.0
LETTERS = 15  # 12 px on a phone, where 400 units have 330 px
MARGIN = 8.0


class OnBoard(NamedTuple):
    """One thing on the board: what it is (a word of KINDS), its name, its middle in mm, its marks.

    x, y: from the top left corner. turned: the long way down instead of across.
    """

    kind: str
    name: str
    x: float
    y: float
    marks: str = ""
    turned: bool = False


def draw_small_board(
    things: Iterable[OnBoard],
    tracks: Iterable[tuple[str, str]] = (),
    width: float = 38.0,
    height: float = 34.0,
    title: str = "Board",
) -> Picture:
    """Draw the things to scale on a board of that size in mm, with tracks between those named.

    Raises RepairlibError for a kind that is not drawn, one that is off the board, a name that is
    there twice, and a track to a name that is not there.

    >>> chip = OnBoard("150 mil", "U3", 10, 10, "24C02")
    >>> draw_small_board([chip, OnBoard("connector", "J1", 30, 8)], [("U3", "J1")])
    Board, seen from above. U3, eight leads, 150 mil, marked 24C02, 10 mm from the left and 10 mm
    from the top. J1, connector, 30 mm from the left and 8 mm from the top. Tracks: U3 to J1.
    """
    things, tracks = list(things), list(tracks)
    named = _named(things, width, height)
    canvas = Canvas(width * PER_MM + 2 * MARGIN, height * PER_MM + 2 * MARGIN + 24)
    canvas.text(MARGIN, 16, title, LETTERS, "start", bold=True)
    with canvas.at(MARGIN, MARGIN + 22):
        canvas.rect(0, 0, width * PER_MM, height * PER_MM, BOARD, round=4)
        for number, (one, other) in enumerate(tracks):
            _draw_track(canvas, _of(named, one), _of(named, other), number)
        for thing in things:
            with canvas.at(thing.x * PER_MM, thing.y * PER_MM):
                KINDS[thing.kind](canvas, thing)
    return canvas.picture(_in_words(title, things, tracks))


def _named(things: list[OnBoard], width: float, height: float) -> dict[str, OnBoard]:
    named: dict[str, OnBoard] = {}
    for thing in things:
        if thing.kind not in KINDS:
            raise RepairlibError(thing.kind, "nothing of this kind is drawn", ", ".join(KINDS))
        if thing.name in named:
            raise RepairlibError(thing.name, "this name is on the board twice", "each name once")
        if not (0 <= thing.x <= width and 0 <= thing.y <= height):
            accepted = f"x from 0 to {width:g} mm, y from 0 to {height:g} mm"
            raise RepairlibError(f"{thing.name}: {thing.x}, {thing.y}", "off the board", accepted)
        named[thing.name] = thing
    return named


def _of(named: dict[str, OnBoard], name: str) -> OnBoard:
    if name not in named:
        raise RepairlibError(name, "a track to what is not on the board", ", ".join(named))
    return named[name]


def _draw_track(canvas: Canvas, one: OnBoard, other: OnBoard, number: int) -> None:
    """A track with corners; neighbours lie side by side."""
    aside = (number % 4 - 1.5) * 3
    x, y, far, low = (mm * PER_MM + aside for mm in (one.x, one.y, other.x, other.y))
    canvas.line((x, y), (far, y), (far, low), stroke=COPPER, pen=3)


def _name(canvas: Canvas, y: float, words: str) -> None:
    """The name of a thing, on a ground of its own, so that no track runs through it."""
    wide = text_width(words, LETTERS, bold=True)
    canvas.rect(-wide / 2, y - 9, wide, 18, BOARD, stroke="none")
    canvas.text(0, y, words, LETTERS, bold=True)


def _chip(canvas: Canvas, thing: OnBoard) -> None:
    body = BODIES[thing.kind]
    long, wide, over = (mm * PER_MM for mm in (body.length, body.width, body.over_leads))
    across = (lambda a, b: (b, a)) if thing.turned else (lambda a, b: (a, b))
    for number in range(4):
        along = PITCH * PER_MM * (number - 1.5)
        x, y = across(along - 2.2, -over / 2)
        canvas.rect(x, y, *across(4.4, over), METAL, pen=0.8)
    x, y = across(-long / 2, -wide / 2)
    canvas.rect(x, y, *across(long, wide), CASE, round=2, pen=1)
    # Pin 1 at the lower left of a chip that lies across, at the upper left of one that is turned.
    dot = (-wide / 2 + 6, -long / 2 + 6) if thing.turned else (-long / 2 + 6, wide / 2 - 6)
    canvas.circle(*dot, 3, DOT, pen=0.8)
    lines = thing.marks.split("\n")[:2] if thing.marks else []
    if lines:
        canvas.fitted_text(0, -2, lines, (wide if thing.turned else long) + 3, LETTERS, fill=PAPER)
    half = (long if thing.turned else over) / 2
    _name(canvas, -half - 10, thing.name)


def _processor(canvas: Canvas, thing: OnBoard) -> None:
    half = 5.0 * PER_MM
    for number in range(12):
        along = (number - 5.5) * 8
        canvas.rect(along - 2, -half - 8, 4, 2 * half + 16, METAL, pen=0.6)
        canvas.rect(-half - 8, along - 2, 2 * half + 16, 4, METAL, pen=0.6)
    canvas.rect(-half, -half, 2 * half, 2 * half, CASE, round=3)
    canvas.circle(-half + 10, -half + 10, 4, DOT, pen=0.8)
    lines = [thing.name, *thing.marks.split("\n")[:2]] if thing.marks else [thing.name]
    canvas.fitted_text(0, 0, lines, 2 * half - 8, LETTERS, fill=PAPER, bold=True)


def _crystal(canvas: Canvas, thing: OnBoard) -> None:
    canvas.rect(-32, -14, 64, 28, METAL, round=14)
    canvas.fitted_text(0, 0, [thing.marks or "~"], 58, LETTERS)
    _name(canvas, -25, thing.name)


def _small_crystal(canvas: Canvas, thing: OnBoard) -> None:
    canvas.rect(-24, -8, 48, 16, METAL, round=3)
    _name(canvas, -19, thing.name)


def _connector(canvas: Canvas, thing: OnBoard) -> None:
    wide, high = (22, 60) if thing.turned else (60, 22)
    canvas.rect(-wide / 2, -high / 2, wide, high, "#e9e4d6", round=2)
    for number in range(5):
        along = (number - 2) * 11
        x, y = (0, along) if thing.turned else (along, 0)
        canvas.rect(x - 3, y - 3, 6, 6, COPPER, pen=0.8)
    _name(canvas, -high / 2 - 10, thing.name)


def _coil(canvas: Canvas, thing: OnBoard) -> None:
    canvas.rect(-24, -24, 48, 48, "#6b747c", round=10)
    canvas.circle(0, 0, 17, "#555e66", pen=1)
    canvas.fitted_text(0, 0, [thing.marks or thing.name], 40, LETTERS, fill=PAPER, bold=True)
    if thing.marks:
        _name(canvas, -34, thing.name)


def _chip_part(canvas: Canvas, thing: OnBoard) -> None:
    wide, high = (8, 16) if thing.turned else (16, 8)
    canvas.rect(-wide / 2, -high / 2, wide, high, "#c9b28f", pen=1)
    _name(canvas, -high / 2 - 9, thing.name)


KINDS: dict[str, Callable[[Canvas, OnBoard], None]] = {
    "150 mil": _chip,
    "208 mil": _chip,
    "processor": _processor,
    "crystal": _crystal,
    "watch crystal": _small_crystal,
    "connector": _connector,
    "coil": _coil,
    "chip resistor": _chip_part,
    "chip capacitor": _chip_part,
}


def _in_words(title: str, things: list[OnBoard], tracks: list[tuple[str, str]]) -> str:
    said = [f"{title}, seen from above."]
    for thing in things:
        kind = f"eight leads, {thing.kind}" if thing.kind in BODIES else thing.kind
        marks = f", marked {' '.join(thing.marks.split())}" if thing.marks else ""
        place = f"{thing.x:g} mm from the left and {thing.y:g} mm from the top"
        said.append(f"{thing.name}, {kind}{marks}, {place}.")
    if tracks:
        said.append(f"Tracks: {', '.join(f'{one} to {other}' for one, other in tracks)}.")
    return " ".join(said)
