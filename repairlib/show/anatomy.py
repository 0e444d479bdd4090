"""What a drawn body tells the layout: where its ends are, what marks it carries, its footprint.

A body is drawn around (0, 0) inside x -130..130, y -120..120. `end` is -1 or +1: the side
(left or right) where the polarity mark sits.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, pi, sin

from repairlib.show.canvas import INK, METAL, SMALLEST, Canvas, Point

MOST_LINES = 4
LINE_STEP = 1.2  # from one line to the next, in letter sizes


@dataclass(frozen=True)
class Terminal:
    """An end, lead or pin. sign: what its badge says; word: the same said in a word."""

    x: float
    y: float
    sign: str = ""
    word: str = ""


@dataclass(frozen=True)
class Mark:
    """A polarity mark on the part: where it is, its name, and the end it shows."""

    x: float
    y: float
    name: str
    shows: str


@dataclass(frozen=True)
class Name:
    """The name of a colour: where it is written, and the line that leads there from the part."""

    words: str
    x: float
    y: float
    anchor: str
    line: tuple[Point, Point]


@dataclass(frozen=True)
class Anatomy:
    """A drawn body.

    looks: one sentence on the shape, without giving an end away.
    outline: the board's outline for it, ("round", radius) or ("box", half width, half height).
    pads: where its pads lie on the board, the first one belonging to the marked end.
    notes: what must be said beside it, a line each.
    bands: the colours of its bands, where it carries bands instead of a text, in the order `read`.
    names: the same colours as they may be written beside it.
    """

    looks: str
    terminals: tuple[Terminal, ...]
    marks: tuple[Mark, ...] = ()
    outline: tuple = ("box", 60, 30)
    pads: tuple[Point, ...] = ((-40, 0), (40, 0))
    holes: bool = True
    notes: tuple[str, ...] = ()
    bands: tuple[str, ...] = ()
    read: str = "left to right"
    names: tuple[Name, ...] = ()


Body = Callable[[Canvas, str, int, str], Anatomy]


def print_marking(
    canvas: Canvas,
    marking: str,
    x: float,
    y: float,
    width: float,
    height: float,
    colour: str = INK,
) -> None:
    """The marking centred on x, y, as large as the room allows; at most four lines.

    Lines for which there is no room are put on the last one.
    """
    lines = [line.strip() for line in marking.split("\n") if line.strip()][:MOST_LINES]
    most = max(1, int(height / (LINE_STEP * SMALLEST)))
    if len(lines) > most:
        lines[most - 1 :] = [" ".join(lines[most - 1 :])]
    if lines:
        size = min(28, height / (LINE_STEP * len(lines)))
        canvas.fitted_text(x, y, lines, width, size, fill=colour, bold=True)


def leads(canvas: Canvas, *xs_and_ends: tuple[float, float], top: float, width: float = 5) -> None:
    """Straight leads going down from `top`."""
    for x, bottom in xs_and_ends:
        canvas.line((x, top), (x, bottom), stroke=INK, pen=width)
        canvas.line((x, top), (x, bottom), stroke=METAL, pen=width - 2.5)


def wires(canvas: Canvas, start: float, stop: float = 128) -> None:
    """The two leads of a part that lies down, from `start` to `stop` on each side."""
    for side in (-1, 1):
        canvas.line((side * start, 0), (side * stop, 0), stroke=INK, pen=5)
        canvas.line((side * start, 0), (side * stop, 0), stroke=METAL, pen=2.5)


def arc(x: float, y: float, radius: float, start: float, stop: float, steps: int = 24):
    """Points on a circle between two angles in degrees, 0 to the right, 90 downwards."""
    span = (stop - start) / steps
    angles = [(start + span * step) * pi / 180 for step in range(steps + 1)]
    return [(x + radius * cos(angle), y + radius * sin(angle)) for angle in angles]


def either_ends(x: float, y: float) -> tuple[Terminal, Terminal]:
    """Two terminals that may be changed for each other."""
    return Terminal(-x, y, "", "either"), Terminal(x, y, "", "either")


def either_way(looks: str, outline: tuple, at: Point, **more) -> Anatomy:
    """A body without polarity: two equal terminals, the second one `at`, and pads under them."""
    x, y = at
    usual = {"terminals": either_ends(x, y), "pads": ((-x, 0), (x, 0)), "notes": NO_POLARITY}
    return Anatomy(looks, outline=outline, **(usual | more))


def two_ends(end: int, x: float, y: float, marked: str, *, y_marked: float | None = None):
    """Two terminals, the first at the marked end. marked: positive, negative, cathode, anode."""
    other = {
        "positive": "negative",
        "negative": "positive",
        "cathode": "anode",
        "anode": "cathode",
    }[marked]
    y_first = y if y_marked is None else y_marked
    return (
        Terminal(end * x, y_first, SIGNS[marked], marked),
        Terminal(-end * x, y, SIGNS[other], other),
    )


NO_POLARITY = ("no polarity:", "either way round")
SIGNS = {"positive": "+", "negative": "−", "cathode": "K", "anode": "A"}
