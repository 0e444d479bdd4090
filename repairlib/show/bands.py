"""Colour bands: on the body of a part, and in a large drawing of their own.

The colours are named in the words of the picture always, beside the bands where it is asked for.
"""

from __future__ import annotations

from collections.abc import Callable

from repairlib.core.errors import RepairlibError
from repairlib.markings import bands_of, read_bands
from repairlib.show.anatomy import Name
from repairlib.show.canvas import INK, METAL, PAPER, QUIET, Canvas, wrapped
from repairlib.show.picture import Picture

INKS = {
    "black": "#1d1d1d", "brown": "#7a4a21", "red": "#c62f2f", "orange": "#e8791e",
    "yellow": "#f2d22e", "green": "#2f7d3b", "blue": "#2f62b5", "violet": "#8a4fa5",
    "grey": "#979ea5", "white": "#ffffff", "gold": "#c39b3a", "silver": "#c5ccd2",
    "pink": "#ef9ab5",
}  # fmt: skip
TAN, CLOSE = "#e9d7b0", "#b4d3e4"  # a body of 5 % and more, and one of 2 % and less
CHOKE = "#b9d3b3"
CLOSE_COLOURS = ("brown", "red", "green", "blue", "violet", "grey")
MOST_BANDS = 6
BAND = 14  # width
NAME = 15  # text size

# The places of the bands on the body, first band left, by their number.
_PLACES = {
    1: (0,),
    2: (-62, -32),
    3: (-62, -32, -2),
    4: (-62, -32, -2, 64),
    5: (-64, -38, -12, 14, 64),
    6: (-66, -42, -18, 6, 30, 66),
}
EVEN = "even distances"
_EVEN_REACH = 60  # from the middle to the outer bands at even distances
LARGE_WIDTH, LARGE_HEIGHT = 660, 182


def draw_bands(
    text: str, *meanings: str, body: str = "resistor", named: bool = True, mark: str = ""
) -> Picture:
    """A large drawing of bands, each with its name above and what it means below.

    text: the colours, first band first. meanings: one for each band, such as "4" or "times 100".
    body: "resistor" or "inductor". named: False leaves the names off, so that the colours have to
    be seen; who cannot see them is told them all the same, in the words of the picture.
    mark: "even distances" where no band stands apart. Raises RepairlibError for a word that is no
    colour, more than six bands, or a number of meanings that is not that of the bands.

    >>> draw_bands("brown-black-red-gold", "1", "0", "times 100", "±5 %")
    A resistor. Bands from left to right: brown (1), black (0), red (times 100), gold (±5 %).
    """
    bands = read_bands(text)
    if len(bands) > MOST_BANDS:
        raise RepairlibError(text, "no part has so many bands", f"at most {MOST_BANDS}")
    if meanings and len(meanings) != len(bands):
        raise RepairlibError(", ".join(meanings), "not one meaning for each band", f"{len(bands)}")
    if body not in ("resistor", "inductor"):
        raise RepairlibError(body, "not a body with bands", "resistor, inductor")
    canvas = Canvas(LARGE_WIDTH, LARGE_HEIGHT if meanings else LARGE_HEIGHT - 52)
    fill = body_colour(bands) if body == "resistor" else CHOKE
    with canvas.at(LARGE_WIDTH / 2, 84):
        for side in (-1, 1):
            canvas.line((side * 260, 0), (side * 326, 0), stroke=INK, pen=6)
            canvas.line((side * 260, 0), (side * 326, 0), stroke=METAL, pen=3)
        canvas.rect(-276, -42, 552, 84, fill, round=16 if body == "resistor" else 40)
        places = _places(len(bands), mark)
        for place, colour in enumerate(bands):
            x = 3.55 * places[place]
            canvas.rect(x - 17, -42, 34, 84, INKS[colour], pen=1.5)
            if named:
                canvas.text(x, -60, colour, 17, bold=True)
            for row, line in enumerate(wrapped(meanings[place] if meanings else "", 84, 16)):
                canvas.text(x, 62 + 20 * row, line, 16)
    said = [
        f"{colour} ({meanings[place]})" if meanings else colour
        for place, colour in enumerate(bands)
    ]
    article = "An" if body == "inductor" else "A"
    return canvas.picture(f"{article} {body}. Bands from left to right: {', '.join(said)}.")


def bands_in(marking: str) -> list[str]:
    """The colours of a marking; none when it is a text, or more than a body holds."""
    colours = bands_of(marking)
    return colours if len(colours) <= MOST_BANDS else []


def body_colour(bands: list[str]) -> str:
    """As resistors are painted as a rule: tan from 5 % up, light blue for what is closer."""
    tolerance = bands[3:4] if len(bands) == 4 else bands[4:5]
    return CLOSE if tolerance and tolerance[0] in CLOSE_COLOURS else TAN


def bands_along(
    canvas: Canvas,
    bands: list[str],
    end: int,
    half: Callable[[float], float],
    *,
    squeeze: float = 1.0,
    mark: str = "",
) -> dict:
    """Draw bands along a part that lies down; `bands` and `names` for its Anatomy.

    end: 1 puts the first band on the right. half: half the height of the body at x.
    """
    places = [-end * squeeze * x for x in _places(len(bands), mark)]
    order = sorted(zip(places, bands, strict=True))
    names = []
    for number, (x, colour) in enumerate(order):
        canvas.rect(x - BAND / 2, -half(x), BAND, 2 * half(x), INKS[colour], pen=1.2)
        up = -1 if number % 2 == 0 else 1
        far = 62 + 21 * (number // 2 % 2)
        line = ((x, up * half(x)), (x, up * (far - 11)))
        names.append(Name(colour, _inside(x, colour), up * far, "middle", line))
    return {"bands": tuple(colour for _, colour in order), "names": tuple(names)}


def bands_across(
    canvas: Canvas,
    colours: list[str],
    tops: list[float],
    half: Callable[[float], float],
    foot: float,
) -> tuple[Name, ...]:
    """Paint a standing body in colours from the top down; their names at the right.

    tops: where each colour begins. half: half the width of the body at y. foot: where it ends.
    """
    names = []
    for colour, top, bottom in zip(colours, tops, [*tops[1:], foot], strict=True):
        steps = [top + (bottom - top) * step / 12 for step in range(13)]
        right = [(half(y), y) for y in steps]
        canvas.polygon([*right, *((-x, y) for x, y in reversed(right))], INKS[colour], pen=1)
        y = (top + bottom) / 2
        names.append(Name(colour, 84, y, "start", ((half(y), y), (80, y))))
    return tuple(names)


def label_names(canvas: Canvas, names: tuple[Name, ...]) -> None:
    """Write the names of colours beside the part, each with its line."""
    for name in names:
        canvas.line(*name.line, stroke=QUIET, pen=1.2)
        canvas.text(name.x, name.y, name.words, NAME, name.anchor, bold=True)


def ink_on(colour: str) -> str:
    """The ink that can be read on a colour of the code."""
    return (
        INK if colour in ("orange", "yellow", "white", "gold", "silver", "pink", "grey") else PAPER
    )


def _places(count: int, mark: str) -> tuple[float, ...]:
    if mark != EVEN or count < 2:
        return _PLACES[count]
    step = 2 * _EVEN_REACH / (count - 1)
    return tuple(step * place - _EVEN_REACH for place in range(count))


def _inside(x: float, name: str) -> float:
    """x, moved in so that a long name stays near the part."""
    room = 130 - 0.4 * NAME * len(name)
    return max(-room, min(room, x))
