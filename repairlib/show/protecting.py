"""Parts that protect: the fuse, and the thermal cut-off."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.markings import read
from repairlib.show.anatomy import Anatomy, either_way, print_marking, wires
from repairlib.show.bands import bands_along, bands_in
from repairlib.show.canvas import METAL, Canvas

GLASS = "#e6f0f5"
FUSE_CERAMIC = "#efeae0"
RESIN = "#9c5a3c"
CAP, END, HALF = 74, 126, 30  # of a fuse: width of a cap, half its length, half its height
TUBE = END - CAP  # half the length of what is seen between the caps


def fuse(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """marking: a text, or four colours, first band first. H behind the current: a ceramic body."""
    opaque = is_opaque(marking)
    canvas.rect(-TUBE - 10, -27, 2 * TUBE + 20, 54, FUSE_CERAMIC if opaque else GLASS)
    bands = bands_in(marking)
    if not opaque and not bands:
        canvas.line((-TUBE, 0), (-18, 4), (18, -4), (TUBE, 0), stroke="#7a858f", pen=2.5)
    cap = 40 if bands else CAP
    for x in (-END, END - cap):
        canvas.rect(x, -HALF, cap, 2 * HALF, METAL, round=5)
    looks = "A glass tube with a metal cap at each end."
    if opaque:
        looks = "A white ceramic tube, which one cannot see through, with a metal cap at each end."
    drawn: dict = {}
    if bands:
        canvas.rect(-END + cap, -27, 2 * (END - cap), 54, GLASS)
        drawn = bands_along(canvas, bands, end, lambda x: 27, squeeze=0.95)
    else:
        print_marking(canvas, on_a_cap(marking), end * (END - CAP / 2), 0, CAP - 4, 54)
    return either_way(looks, ("box", 88, 30), (112, 30), **drawn)


def is_opaque(marking: str) -> bool:
    """Whether the fuse has a high breaking capacity, for which the body is ceramic as a rule.

    >>> is_opaque("T3.15AH250V"), is_opaque("T3.15AL250V"), is_opaque("a word")
    (True, False, False)
    """
    try:
        reading = read(marking, "fuse")[0]
    except RepairlibError:
        return False
    return reading.carries.get("breaking_capacity") == "high"


def on_a_cap(marking: str) -> str:
    """The marking in lines as they are pressed into a cap: a new one behind the amperes.

    >>> on_a_cap("T3.15AH250V").split()
    ['T3.15A', 'H250V']
    """
    if "\n" in marking or " " in marking.strip():
        return "\n".join(marking.split())
    current, ampere, rest = marking.partition("A")
    return f"{current}{ampere}\n{rest}"


def thermal_cut_off(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    wires(canvas, 70)
    canvas.polygon([(60, -20), (92, -5), (92, 5), (60, 20)], RESIN)
    canvas.rect(-86, -30, 150, 60, METAL, round=14)
    canvas.line((48, -29), (48, 29), pen=1.5)
    print_marking(canvas, marking, -18, 0, 122, 52)
    return either_way(
        "A small metal cylinder with a lead at each end, one end closed with resin.",
        ("box", 86, 30),
        (112, 30),
    )
