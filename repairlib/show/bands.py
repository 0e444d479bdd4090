"""Parts with colour bands or a short code: resistor, inductor, chip resistor, fuse.

Every band is named in words beside it, so that no colour has to be told by eye.
"""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings import bands_of, is_painted, places_of, read_bands
from repairlib.show.anatomy import NO_POLARITY, Anatomy, Terminal, print_marking
from repairlib.show.canvas import INK, METAL, PAPER, QUIET, Canvas, wrapped
from repairlib.show.picture import Picture

INKS = {
    "black": "#1d1d1d", "brown": "#7a4a21", "red": "#c62f2f", "orange": "#e8791e",
    "yellow": "#f2d22e", "green": "#3f8f4a", "blue": "#2f62b5", "violet": "#8a4fa5",
    "grey": "#8d949b", "white": "#ffffff", "gold": "#c39b3a", "silver": "#c5ccd2",
    "pink": "#ef9ab5",
}  # fmt: skip
CERAMIC_BODY = "#e9d7b0"
CHOKE_BODY = "#b9d3b3"
CHIP_BODY = "#30363c"
GLASS = "#e6f0f5"
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
LARGE_WIDTH, LARGE_HEIGHT = 660, 190


def resistor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: colours, first band first, or a text that is printed.

    mark: "even distances" where no band stands apart.
    """
    if is_painted(marking) and not isinstance(places_of(marking), str):
        return _painted(canvas, places_of(marking))
    _wires(canvas, 84)
    canvas.rect(-70, -25, 140, 50, CERAMIC_BODY, round=4)
    for x in (-88, 44):
        canvas.rect(x, -31, 44, 62, CERAMIC_BODY, round=12)
    canvas.rect(-66, -23.5, 132, 47, CERAMIC_BODY, stroke="none")
    looks = "A small body with a lead at each end, lying down."
    return _banded(canvas, marking, end, looks, even=mark == EVEN)


def inductor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: colours, first band first, or a text that is printed."""
    _wires(canvas, 84)
    canvas.rect(-88, -31, 176, 62, CHOKE_BODY, round=20)
    return _banded(canvas, marking, end, "A small rounded body with a lead at each end.")


def chip_resistor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for x in (-104, 74):
        canvas.rect(x, -50, 30, 100, METAL, round=4)
    canvas.rect(-78, -50, 156, 100, CHIP_BODY, round=4)
    print_marking(canvas, marking, 0, 0, 140, 84, PAPER)
    looks = "A tiny black block with a metal end on each side, seen from above."
    return _either_way(looks, ("box", 104, 50), ((-90, 0), (90, 0)), holes=False)


def fuse(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: a text, or four colours, first band first."""
    canvas.rect(-104, -27, 208, 54, GLASS, round=8)
    bands = _bands(marking)
    if not bands:
        canvas.line((-76, 0), (-30, 4), (30, -4), (76, 0), stroke=METAL, pen=2)
    for x in (-112, 72):
        canvas.rect(x, -30, 40, 60, METAL, round=5)
    looks = "A glass tube with a metal cap at each end."
    if bands:
        return _either_way(looks, bands=_draw_bands(canvas, bands, end, 27, squeeze=0.86))
    print_marking(canvas, marking, 0, 56, 220, 44)
    return _either_way(looks)


def draw_bands(text: str, *meanings: str, body: str = "resistor") -> Picture:
    """A large drawing of bands, each with its name above and what it means below.

    text: the colours, first band first. meanings: one for each band, such as "4" or "times 100".
    body: "resistor" or "inductor". Raises RepairlibError for a word that is no colour, more than
    six bands, or a number of meanings that is not that of the bands.

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
    canvas = Canvas(LARGE_WIDTH, LARGE_HEIGHT)
    middle = LARGE_WIDTH / 2
    fill = CERAMIC_BODY if body == "resistor" else CHOKE_BODY
    with canvas.at(middle, 84):
        for side in (-1, 1):
            canvas.line((side * 260, 0), (side * 326, 0), stroke=INK, pen=6)
            canvas.line((side * 260, 0), (side * 326, 0), stroke=METAL, pen=3)
        canvas.rect(-276, -42, 552, 84, fill, round=16 if body == "resistor" else 40)
        for place, colour in enumerate(bands):
            x = 3.55 * _PLACES[len(bands)][place]
            canvas.rect(x - 17, -42, 34, 84, INKS[colour], pen=1.5)
            canvas.text(x, -60, colour, 17, bold=True)
            for row, line in enumerate(wrapped(meanings[place] if meanings else "", 84, 16)):
                canvas.text(x, 62 + 20 * row, line, 16)
    said = [
        f"{colour} ({meanings[place]})" if meanings else colour
        for place, colour in enumerate(bands)
    ]
    article = "An" if body == "inductor" else "A"
    return canvas.picture(f"{article} {body}. Bands from left to right: {', '.join(said)}.")


def _bands(marking: str) -> list[str]:
    """The colours of a marking; none when it is a text, or more than a body holds."""
    colours = bands_of(marking)
    return colours if len(colours) <= MOST_BANDS else []


def _wires(canvas: Canvas, start: float) -> None:
    for side in (-1, 1):
        canvas.line((side * start, 0), (side * 128, 0), stroke=INK, pen=5)
        canvas.line((side * start, 0), (side * 128, 0), stroke=METAL, pen=2.5)


def _banded(canvas: Canvas, marking: str, end: int, looks: str, even: bool = False) -> Anatomy:
    bands = _bands(marking)
    if bands:
        return _either_way(looks, bands=_draw_bands(canvas, bands, end, 24, knobs=31, even=even))
    print_marking(canvas, marking, 0, 0, 150, 44)
    return _either_way(looks)


def _painted(canvas: Canvas, places: dict[str, str]) -> Anatomy:
    """The old style: the whole body, one end and a dot are painted."""
    _wires(canvas, 84)
    canvas.rect(-88, -29, 176, 58, INKS[places["body"]], round=6)
    named = [(-58, 1, f"body {places['body']}")]
    for place, x, side in (("tolerance", -88, -1), ("end", 58, -1)):
        if place in places:
            canvas.rect(x, -29, 30, 58, INKS[places[place]], round=6)
            named.append((x + 15, side, f"{place} {places[place]}"))
    if "dot" in places:
        canvas.circle(0, 0, 13, INKS[places["dot"]])
        named.append((0, 1, f"dot {places['dot']}"))
    for x, up, words in named:
        far = 84 if words.startswith(("dot", "tolerance")) else 60
        start = 13 if words.startswith("dot") else 29
        canvas.line((x, up * start), (x, up * (far - 11)), stroke=QUIET, pen=1.2)
        canvas.text(_inside(x, words), up * far, words, NAME, bold=True)
    said = ", ".join(words for _, _, words in named)
    return _either_way(f"A small body painted all over, with a lead at each end: {said}.")


def _draw_bands(
    canvas: Canvas, bands: list[str], end: int, half: float, *, squeeze=1.0, knobs=0.0, even=False
) -> tuple[str, ...]:
    """Draw the bands and their names; the colours from left to right. end=1: first band right.

    half: half the height of the body; knobs: the same at its thicker ends.
    """
    middle = half
    places = [-end * squeeze * x for x in _places(len(bands), even)]
    order = sorted(zip(places, bands, strict=True))
    for number, (x, colour) in enumerate(order):
        half = max(knobs, middle) if abs(x) > 52 else middle
        canvas.rect(x - BAND / 2, -half, BAND, 2 * half, INKS[colour], pen=1.2)
        up = -1 if number % 2 == 0 else 1
        far = 62 + 21 * (number // 2 % 2)
        canvas.line((x, up * half), (x, up * (far - 11)), stroke=QUIET, pen=1.2)
        canvas.text(_inside(x, colour), up * far, colour, NAME, bold=True)
    return tuple(colour for _, colour in order)


def _places(count: int, even: bool) -> tuple[float, ...]:
    if not even or count < 2:
        return _PLACES[count]
    step = 2 * _EVEN_REACH / (count - 1)
    return tuple(step * place - _EVEN_REACH for place in range(count))


def _inside(x: float, name: str) -> float:
    """x, moved in so that a long name stays on the sheet."""
    room = 130 - 0.4 * NAME * len(name)
    return max(-room, min(room, x))


def _either_way(
    looks: str,
    outline: tuple = ("box", 88, 30),
    pads: tuple = ((-112, 0), (112, 0)),
    holes: bool = True,
    bands: tuple[str, ...] = (),
) -> Anatomy:
    return Anatomy(
        looks=looks,
        terminals=(Terminal(-112, 30, "", "either"), Terminal(112, 30, "", "either")),
        outline=outline,
        pads=pads,
        holes=holes,
        notes=NO_POLARITY,
        bands=bands,
    )
