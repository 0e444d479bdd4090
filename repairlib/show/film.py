"""Film and paper capacitors: box, mains box, dipped drop, tube of waxed paper."""

from __future__ import annotations

from math import sqrt

from repairlib.show.anatomy import (
    NO_POLARITY,
    Anatomy,
    Mark,
    either_ends,
    either_way,
    leads,
    print_marking,
    wires,
)
from repairlib.show.bands import bands_across, bands_in
from repairlib.show.canvas import INK, PAPER, Canvas

FILM = "#8fb3c4"
MAINS = "#e6c551"
DROP = "#964b30"
WAX = "#dccb98"
WAX_END = "#bfa566"
OUTER_FOIL = "line or band at one end"
DROP_TOP, DROP_FOOT, DROP_HALF, DROP_CORNER = -96.0, 56.0, 58.0, 26.0


def film_box(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    leads(canvas, (-64, 112), (64, 112), top=50)
    canvas.rect(-92, -70, 184, 122, FILM, round=5)
    canvas.line((-92, 40), (92, 40), pen=1.5)
    marks: tuple[Mark, ...] = ()
    if mark == OUTER_FOIL:
        canvas.rect(min(end * 86, end * 76), -70, 10, 110, INK, stroke="none")
        marks = (Mark(end * 81, -30, mark, "outer foil, not a polarity"),)
    print_marking(canvas, marking, 0, -16, 150, 100)
    return _standing(
        "A rectangular plastic box on two leads.", end, 64, ("box", 90, 26), marks=marks
    )


def mains_box(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """A capacitor of class X or Y: a box, printed all over."""
    leads(canvas, (-58, 112), (58, 112), top=60)
    canvas.rect(-84, -94, 168, 162, MAINS, round=3)
    canvas.rect(-76, -86, 152, 146, pen=1)
    print_marking(canvas, marking, 0, -13, 140, 124)
    return _standing("A square plastic box, full of print, on two leads.", end, 58, ("box", 84, 40))


def film_drop(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: a text, or up to five colours, the one at the top first."""
    leads(canvas, (-34, 112), (34, 112), top=50)
    high = DROP_FOOT - DROP_TOP
    canvas.rect(-DROP_HALF, DROP_TOP, 2 * DROP_HALF, high, DROP, round=DROP_CORNER)
    bands = bands_in(marking)
    looks = "A flat drop of resin, taller than wide, on two leads."
    if not bands:
        print_marking(canvas, marking, 0, -20, 98, 120, PAPER)
        return _standing(looks, end, 34, ("box", 58, 20))
    step = high / len(bands)
    tops = [DROP_TOP + step * number for number in range(len(bands))]
    names = bands_across(canvas, bands, tops, _drop_half, DROP_FOOT)
    more = {"bands": tuple(bands), "read": "top to bottom", "names": names}
    return _standing(looks, end, 34, ("box", 58, 20), **more)


def paper_tube(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    wires(canvas, 96)
    canvas.rect(-102, -42, 204, 84, WAX_END, round=10)
    canvas.rect(-90, -44, 180, 88, WAX, round=3)
    band = end * 74
    canvas.rect(band - 5, -43, 10, 86, INK, stroke="none")
    print_marking(canvas, marking, -end * 10, 0, 140, 72)
    return Anatomy(
        looks="A tube of waxed paper, lying down, with a lead out of each end.",
        terminals=either_ends(114, 36),
        marks=(Mark(band, -26, OUTER_FOIL, "outer foil, not a polarity"),),
        outline=("box", 100, 42),
        pads=((end * 114, 0), (-end * 114, 0)),
        notes=NO_POLARITY,
    )


def _drop_half(y: float) -> float:
    """Half the width of the drop at y."""
    into = max(DROP_TOP + DROP_CORNER - y, y - DROP_FOOT + DROP_CORNER, 0)
    return DROP_HALF - DROP_CORNER + sqrt(max(0.0, DROP_CORNER**2 - into**2))


def _standing(looks: str, end: int, x: float, outline: tuple, **more) -> Anatomy:
    return either_way(looks, outline, (-end * x, 112), **more)
