"""What a bad part looks like: each drawn over the sound body, and said in a sentence.

That is what an eye sees before any meter is switched on. A part without any of it may be bad too.
All from common practice.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from repairlib.core.errors import RepairlibError
from repairlib.show.anatomy import arc, leads
from repairlib.show.canvas import INK, METAL, QUIET, Canvas, Point
from repairlib.show.capacitors import ALUMINIUM
from repairlib.show.looks import LOOKS
from repairlib.show.protecting import GLASS, TUBE, is_opaque

STAIN, CRUST = "#7b4a1e", "#9a7b4f"
VERDIGRIS = "#5fa08d"  # on copper and its alloys
SOOT = "#2a1d16"
GLUE = "#c9a86a"

Fault = Callable[[Canvas, str, int], str]  # draws over the body as it is drawn, and says it


def draw_fault(canvas: Canvas, body: str, state: str, marking: str, end: int) -> str:
    """Draw what is wrong over the body, around the origin; what it says, in a sentence.

    Raises RepairlibError for a state that this body has no drawing of.
    """
    if state not in FAULTS:
        raise RepairlibError(state, "no drawing of a bad part has this name", ", ".join(FAULTS))
    if body not in FAULTS[state]:
        raise RepairlibError(body, f"is not drawn {state}", ", ".join(FAULTS[state]))
    return FAULTS[state][body](canvas, marking, end)


def _bulged(canvas: Canvas, marking: str, end: int) -> str:
    dome = [*arc(0, -60, 72, 217, 323), (57, -92), (57, -86), (-57, -86), (-57, -92)]
    canvas.polygon(dome, ALUMINIUM)
    canvas.line((-30, -104), (0, -92), (30, -104), stroke=QUIET)
    canvas.line((0, -131), (0, -92), stroke=QUIET)
    return "Its top, flat when it was new, is bulged."


def _bulged_top(canvas: Canvas, marking: str, end: int) -> str:
    for radius, opacity in ((58, 0.35), (42, 0.5), (24, 0.8)):
        canvas.circle(-8, -8, radius, "#ffffff", opacity=opacity, stroke="none")
    canvas.circle(0, 0, 63, stroke=QUIET, pen=3)
    for angle in (45, 135):
        (x, y), _ = arc(0, 0, 52, angle, angle, 1)
        canvas.line((-x, -y), (x, y), stroke=INK, pen=6)
    return "It is bulged: the middle stands higher than the rim, and the cross is pulled wide."


def _vented(canvas: Canvas, marking: str, end: int) -> str:
    canvas.circle(0, 0, 64, STAIN, opacity=0.55, stroke="none")
    for turn in (0, 90, 180, 270):
        petal = [*arc(0, 0, 46, turn + 14, turn + 76, 8), *arc(0, 0, 22, turn + 70, turn + 20, 4)]
        canvas.polygon(petal, ALUMINIUM)
    star = []
    for turn in range(0, 360, 45):
        star += arc(0, 0, 54 if turn % 90 == 45 else 17, turn, turn, 1)[:1]
    canvas.polygon(star, SOOT)
    for x, y, size in ((50, 18, 8), (34, 44, 10), (-40, 40, 7), (12, 58, 6), (-56, 10, 5)):
        canvas.circle(x, y, size, CRUST, stroke="none")
    return "It has vented: the cross is torn open, with a brown crust around it."


def _leaked(canvas: Canvas, marking: str, end: int) -> str:
    _board(canvas)
    puddle = [(-104, 112), (-70, 104), (-36, 106), (-14, 99), (30, 101), (66, 106), (112, 112)]
    canvas.polygon(puddle, STAIN, stroke="none")
    canvas.polygon([*puddle[:1], (-96, 121), (-20, 124), (70, 120), *puddle[-1:]], STAIN, pen=0)
    for x, wide in ((-24, 9), (24, 13)):  # down along the leads
        run = [(x - 1.6 * wide, 60), (x + 1.6 * wide, 60), (x + 0.6 * wide, 84)]
        run += [(x + wide, 104), (x - wide, 104), (x - 0.7 * wide, 80)]
        canvas.polygon(run, STAIN, opacity=0.85, stroke="none")
    canvas.rect(-58, 50, 116, 11, STAIN, round=5, stroke="none")
    for x, y, size in ((-76, 106, 5), (-48, 105, 6), (4, 101, 7), (52, 104, 6), (84, 108, 5)):
        canvas.circle(x, y, size, CRUST, stroke="none")
    return "Brown liquid has run out at its foot and eats into the board."


def _old_glue(canvas: Canvas, marking: str, end: int) -> str:
    _board(canvas)
    lump = [(-92, 112), (-84, 88), (-64, 72), (-60, 40), (-44, 52), (-20, 60), (18, 56), (44, 62)]
    canvas.polygon([*lump, (60, 46), (66, 78), (92, 94), (104, 112)], GLUE)
    canvas.line((-70, 88), (-40, 70), stroke="#e6cf9d", pen=4)
    canvas.line((20, 72), (48, 78), stroke="#e6cf9d", pen=4)
    return (
        "A firm tan lump of the maker's glue holds its foot; the board beside it is clean and dry."
    )


def _corroded_lead(canvas: Canvas, marking: str, end: int) -> str:
    for x in (-24, 24):
        for y, across, size in ((66, -3, 7), (74, 4, 8), (83, -2, 6)):
            canvas.circle(x + across, y, size, VERDIGRIS if size != 8 else "#dfe9e4", pen=1)
    return "Green and white crust sits on its leads, close to the body."


def _burnt_sleeve(canvas: Canvas, marking: str, end: int) -> str:
    hole = [(18, -84), (46, -70), (52, -30), (40, 6), (14, -8), (4, -44)]
    canvas.polygon(_grown(hole, 1.25), SOOT, opacity=0.85, stroke="none")
    canvas.polygon(hole, ALUMINIUM, stroke=STAIN, pen=4)
    canvas.polygon(_grown(hole, 0.5), STAIN, opacity=0.5, stroke="none")
    return "Its sleeve is burnt: a hole with a brown edge, bare metal below."


def _leaked_axial(canvas: Canvas, marking: str, end: int) -> str:
    plus = -end
    canvas.ellipse(plus * 92, 0, 13, 24, STAIN, opacity=0.9, stroke="none")
    run = [(plus * 70, 38), (plus * 98, 20), (plus * 104, 44), (plus * 84, 58), (plus * 62, 52)]
    canvas.polygon(run, STAIN, opacity=0.8, stroke="none")
    for x, y, size in ((96, -10, 5), (99, 7, 6), (90, 40, 6), (76, 48, 5)):
        canvas.circle(plus * x, y, size, CRUST, stroke="none")
    canvas.line((plus * 104, 0), (plus * 124, 0), stroke=VERDIGRIS, pen=5)
    return "A brown crust sits at the rubber of one end and runs down the can; that lead is green."


def _leaked_can(canvas: Canvas, marking: str, end: int) -> str:
    for side in (-1, 1):
        spot = [(side * 60, -52), (side * 96, -40), (side * 112, -6), (side * 106, 34)]
        spot += [(side * 84, 56), (side * 62, 46)]
        canvas.polygon(spot, STAIN, opacity=0.55, stroke="none")
        canvas.rect(min(side * 64, side * 96), -11, 32, 22, "#6f6a5c")
        for x, y in ((92, -24), (100, 14), (84, 34)):
            canvas.circle(side * x, y, 5, VERDIGRIS, stroke="none")
    return "Round its two terminals the board is brown and wet, the solder dull and green."


def _burnt_tantalum(canvas: Canvas, marking: str, end: int) -> str:
    hole = [(-34, -22), (-8, -40), (26, -30), (44, -2), (24, 28), (-10, 34), (-40, 12)]
    canvas.polygon(_grown(hole, 1.2), STAIN, opacity=0.7, stroke="none")
    canvas.polygon(hole, SOOT, stroke="none")
    return "It has burnt: a black hole in its middle."


def _burnt_bead(canvas: Canvas, marking: str, end: int) -> str:
    with canvas.at(0, -34):
        return _burnt_tantalum(canvas, marking, end)


def _burnt_resistor(canvas: Canvas, marking: str, end: int) -> str:
    for reach, opacity in ((62, 0.5), (44, 0.55), (24, 0.6)):
        canvas.ellipse(2, 0, reach, 27, SOOT, opacity=opacity, stroke="none")
    crack = ((-12, -25), (-4, -10), (-10, 2), (2, 12), (-2, 25))
    canvas.line(*crack, stroke="#f4e9d8", pen=3)
    canvas.line(*crack, stroke=INK, pen=1.2)
    return "It is burnt: dark in the middle, the paint cracked, the colours no longer true."


def _cracked(canvas: Canvas, marking: str, end: int) -> str:
    _crack(canvas, (-16, -86), (4, -58), (-10, -36), (12, -12), (0, 8), (14, 32))
    return "A crack runs through it."


def _cracked_chip(canvas: Canvas, marking: str, end: int) -> str:
    _crack(canvas, (-36, -43), (-46, -16), (-26, 4), (-34, 24), (-20, 43))
    return "A fine crack runs through it, beside a metal end."


def _blown(canvas: Canvas, marking: str, end: int) -> str:
    if is_opaque(marking):
        return "It has blown; through this body nothing of it is to be seen."
    canvas.rect(-TUBE, -26, 2 * TUBE, 52, GLASS, stroke="none")
    for reach, opacity in ((40, 0.18), (26, 0.25)):
        canvas.ellipse(0, 0, reach, 20, SOOT, opacity=opacity, stroke="none")
    canvas.line((-TUBE, 0), (-26, 5), pen=2.5)
    canvas.line((TUBE, 0), (24, -5), pen=2.5)
    for x, y in ((-25, 5), (23, -5), (8, 15)):
        canvas.circle(x, y, 4, METAL, pen=1.5)
    return "It has blown: the wire inside is broken, with beads at its ends."


def _crack(canvas: Canvas, *points: Point) -> None:
    canvas.line(*points, stroke="#fff4e2", pen=5)
    canvas.line(*points, stroke=INK, pen=2.5)


def _grown(points: Sequence[Point], by: float) -> list[Point]:
    x = sum(x for x, _ in points) / len(points)
    y = sum(y for _, y in points) / len(points)
    return [(x + by * (px - x), y + by * (py - y)) for px, py in points]


def _board(canvas: Canvas) -> None:
    """The edge of the board on which the part stands."""
    leads(canvas, (-24, 112), (24, 112), top=60)
    canvas.rect(-110, 112, 220, 12, LOOKS["green"].ground)


_CANS = ("radial", "non-polar")
FAULTS: dict[str, dict[str, Fault]] = {
    "bulged": {**dict.fromkeys(_CANS, _bulged), "can from above": _bulged_top},
    "vented": {"can from above": _vented},
    "leaked": {**dict.fromkeys(_CANS, _leaked), "axial": _leaked_axial, "can": _leaked_can},
    "old glue": dict.fromkeys(_CANS, _old_glue),
    "corroded lead": dict.fromkeys(_CANS, _corroded_lead),
    "burnt sleeve": dict.fromkeys(_CANS, _burnt_sleeve),
    "burnt": {
        "resistor": _burnt_resistor,
        "moulded tantalum": _burnt_tantalum,
        "dipped tantalum": _burnt_bead,
    },
    "cracked": {"disc": _cracked, "chip": _cracked_chip},
    "blown": {"fuse": _blown},
}
