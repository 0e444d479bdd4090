"""The bench before work begins: mat, strap, common ground, and the tools that keep it dead."""

from __future__ import annotations

from repairlib.show.canvas import INK, METAL, NEGATIVE, PAPER, QUIET, Canvas, Point
from repairlib.show.capacitors import ALUMINIUM, SLEEVE
from repairlib.show.looks import LOOKS
from repairlib.show.picture import Picture
from repairlib.show.tools import BLACK, RED, clip, curve, meter, probe

MAT = "#c9dcef"
WOOD = "#ecdfc6"
SKIN, SHIRT = "#d9a982", "#5d7f9c"
STEEL, DARK = "#8b959e", "#3d454d"
TOP, FRONT = 110, 372  # of the bench top
GROUND: Point = (664, 446)  # the common point
FINGERS = (  # from knuckle to tip, the thumb last
    ((298, 384), (282, 338)),
    ((309, 380), (304, 328)),
    ((321, 382), (325, 332)),
    ((331, 390), (343, 346)),
    ((292, 408), (264, 384)),
)
LETTERS, SMALL = 20, 18  # large enough for a phone


def draw_bench() -> Picture:
    """Draw a bench ready for work, every thing named.

    >>> draw_bench().alt.splitlines()[0]
    'A bench ready for work, seen from above and in front.'
    """
    canvas = Canvas(860, 530)
    canvas.rect(20, TOP, 820, FRONT - TOP, WOOD, round=6)
    canvas.rect(20, FRONT, 820, 12, "#c7b184", round=3)
    canvas.rect(196, 196, 404, 164, MAT, round=6)
    canvas.text(476, 346, "mat that drains charge", LETTERS)
    _meter(canvas)
    _set(canvas)
    _hood(canvas)
    _iron(canvas)
    _ground(canvas)
    _arm(canvas)
    return canvas.picture(
        "A bench ready for work, seen from above and in front.\n"
        "On the mat: the set, open, its plug pulled and lying in sight. Left: the meter with its "
        "two leads, and a discharge resistor between an insulated probe and a clip. Right: the "
        "iron in its stand, beside its station. Behind the set, on a hose: the hood that takes the "
        "fumes away, close above the work. In front: the arm, with a wrist strap.\n"
        "Strap and mat each have a cord of their own with 1 MΩ in it. Both cords meet at one "
        "common point, and that is joined to the ground of the building."
    )


def _meter(canvas: Canvas) -> None:
    with canvas.scaled(76, 186, 0.62, 0.62):
        meter(canvas, "")
    canvas.text(76, 149, "0.0 V", 14, bold=True)
    for start, end, tip, colour in (
        ((61, 234), (128, 214), (158, 184), BLACK),
        ((91, 234), (150, 232), (180, 202), RED),
    ):
        canvas.line(
            *curve(start, (start[0], 272), (end[0] - 26, end[1] + 46), end), stroke=colour, pen=4
        )
        probe(canvas, end, tip, colour)
    canvas.text(158, 136, "meter", LETTERS)
    canvas.line((78, 304), (140, 304), stroke=BLACK, pen=3)
    probe(canvas, (78, 304), (34, 304), RED)
    canvas.rect(92, 295, 40, 18, DARK, round=6)
    canvas.rect(101, 299, 22, 10, PAPER, round=2, pen=1)
    with canvas.scaled(138, 304, 0.5, 0.6):
        clip(canvas, 0, 0)
    canvas.text(108, 332, "discharge resistor,", LETTERS)
    canvas.text(108, 355, "probe and clip", LETTERS)


def _set(canvas: Canvas) -> None:
    """An open set: its board with parts, and the mains lead with its plug."""
    canvas.rect(236, 214, 216, 96, "#a7b1b9", round=6)
    canvas.rect(248, 222, 192, 64, LOOKS["green"].ground, round=3)
    for x, radius in ((272, 13), (304, 9), (328, 7)):
        canvas.circle(x, 246, radius, SLEEVE)
        canvas.circle(x, 246, radius - 4, ALUMINIUM, pen=1)
    canvas.rect(352, 238, 52, 18, DARK, round=2)
    for x in range(358, 404, 10):
        canvas.rect(x, 233, 4, 5, METAL, pen=1)
        canvas.rect(x, 256, 4, 5, METAL, pen=1)
    canvas.text(344, 275, "board", SMALL, fill=PAPER)
    canvas.text(344, 299, "the set, dead", LETTERS, bold=True)
    canvas.line(*curve((452, 288), (500, 300), (470, 242), (508, 246)), stroke=DARK, pen=6)
    canvas.rect(506, 232, 40, 28, DARK, round=8)
    for y in (239, 253):
        canvas.line((546, y), (562, y), stroke=INK, pen=5)
        canvas.line((546, y), (562, y), stroke=METAL, pen=2.5)
    canvas.text(530, 215, "plug, in sight", LETTERS)


def _hood(canvas: Canvas) -> None:
    """A hose from the wall, bent over the work, with a hood at its end."""
    hose = curve((852, 44), (700, 30), (430, -6), (356, 88))
    canvas.line(*hose, stroke=INK, pen=30)
    canvas.line(*hose, stroke="#c3cad0", pen=26)
    for x, y in hose[2:-1:2]:
        canvas.line((x - 4, y - 12), (x + 4, y + 12), stroke=STEEL, pen=2)
    canvas.polygon([(338, 74), (374, 84), (404, 144), (282, 144)], "#c3cad0")
    canvas.rect(276, 142, 134, 12, STEEL, round=4)
    for x in (312, 340, 368):  # fumes, on their way up
        smoke = curve((x, 206), (x - 14, 190), (x + 14, 178), (x, 162), 12)
        canvas.line(*smoke, stroke=QUIET, pen=2, dash="4 5")
    canvas.text(420, 128, "fume hood, close above the work", LETTERS, "start")
    canvas.text(790, 76, "air out", LETTERS)


def _iron(canvas: Canvas) -> None:
    """The station with its knob; the stand with its spiral; the iron stuck into it."""
    canvas.rect(736, 206, 84, 62, DARK, round=6)
    canvas.rect(746, 216, 40, 18, "#d5e3d0", round=2)
    canvas.circle(804, 225, 9, METAL)
    canvas.line(*curve((736, 250), (700, 262), (752, 150), (712, 190)), stroke=DARK, pen=4)
    canvas.rect(620, 302, 92, 16, STEEL, round=4)
    canvas.rect(624, 292, 34, 10, "#d8b24a", round=3)  # the sponge
    for number in range(6):
        x, y = 650 + 7 * number, 288 - 9 * number
        canvas.ellipse(x, y, 14, 6, stroke=STEEL, pen=3)
    canvas.line((640, 302), (672, 258), stroke=METAL, pen=5)
    canvas.line((672, 258), (686, 236), stroke=STEEL, pen=9)
    canvas.line((684, 238), (712, 192), stroke=INK, pen=18)
    canvas.line((684, 238), (712, 192), stroke="#2f62b5", pen=14)
    canvas.text(682, 336, "iron in its stand", LETTERS)
    canvas.text(778, 284, "station", LETTERS)


def _ground(canvas: Canvas) -> None:
    x, y = GROUND
    _cord(canvas, (584, 360), (584, y), (x, y), at=(622, y), name="mat cord 1 MΩ")
    canvas.circle(x, y, 9, PAPER, pen=3)
    canvas.text(x + 18, y - 16, "common point", LETTERS, "start")
    canvas.line((x, y + 9), (x, y + 40), pen=3)
    for row, half in enumerate((22, 14, 6)):
        canvas.line((x - half, y + 40 + 9 * row), (x + half, y + 40 + 9 * row), pen=3)
    canvas.text(x + 34, y + 38, "ground of", LETTERS, "start")
    canvas.text(x + 34, y + 61, "the building", LETTERS, "start")


def _arm(canvas: Canvas) -> None:
    """A forearm in its sleeve, a hand on the edge of the mat, the strap round the wrist."""
    for knuckle, finger in FINGERS:
        canvas.line(knuckle, finger, stroke=INK, pen=15)
        canvas.line(knuckle, finger, stroke=SKIN, pen=12)
    palm = [(288, 392), (298, 376), (328, 376), (338, 392), (336, 424), (326, 446)]
    canvas.polygon([*palm, (296, 446), (286, 424)], SKIN, stroke=INK, pen=1.5)
    canvas.polygon([(292, 376), (334, 376), (336, 400), (290, 400)], SKIN, stroke="none")
    canvas.polygon([(295, 440), (327, 440), (332, 500), (286, 500)], SKIN, pen=1.5)
    canvas.polygon([(278, 492), (340, 492), (348, 530), (266, 530)], SHIRT)
    canvas.rect(289, 456, 42, 20, NEGATIVE, round=4)
    canvas.rect(302, 460, 16, 12, METAL, round=2)
    canvas.text(270, 460, "wrist strap", LETTERS, "end")
    canvas.text(270, 483, "on bare skin", SMALL, "end", fill=QUIET)
    x, y = GROUND
    _cord(canvas, (331, 466), (400, 516), (600, 516), (x - 8, y + 6), at=(500, 516), name="")
    canvas.text(500, 494, "strap cord 1 MΩ", LETTERS)


def _cord(canvas: Canvas, *points: Point, at: Point, name: str) -> None:
    """A cord through the points with its resistor at `at`, lying level there."""
    canvas.line(*points, pen=3, stroke=NEGATIVE)
    canvas.rect(at[0] - 20, at[1] - 7, 40, 14, PAPER, stroke=NEGATIVE)
    if name:
        canvas.text(at[0] - 46, at[1] - 18, name, LETTERS, "end")
