"""A first power-up at the bench: limited supply, set with its mains side covered, meter on a rail.

Where the leads go is common practice, no source: plus and minus of the reservoir, behind the
rectifier, whose diodes then keep the supply away from the transformer.
"""

from __future__ import annotations

from repairlib.show.canvas import INK, METAL, PAPER, POSITIVE, Canvas
from repairlib.show.capacitors import ALUMINIUM, SLEEVE
from repairlib.show.looks import LOOKS
from repairlib.show.picture import Picture
from repairlib.show.tools import BLACK, DISPLAY, RED, clip, curve, meter, probe

WIDTH, HEIGHT = 560.0, 372.0
LETTERS = 15.0
CASE, DARK, COVER = "#c3cad0", "#3d454d", "#e8c9a0"


def draw_powering(volts: str = "11.0", amps: str = "0.148", rail: str = "5.02") -> Picture:
    """Draw the bench at a first power-up; `volts`, `amps` and `rail` stand on the displays.

    >>> draw_powering().alt.splitlines()[0]
    'A first power-up at the bench, seen from above.'
    """
    canvas = Canvas(WIDTH, HEIGHT)
    _set(canvas)
    _supply(canvas, volts, amps)
    _meter(canvas, rail)
    return canvas.picture(
        "A first power-up at the bench, seen from above.\n"
        f"Left: a bench supply with a limit; its displays show {volts} V and {amps} A. Its leads "
        "end in clips at plus and minus of the reservoir C3.\n"
        "Right: the set, open. Its mains side is covered, its plug is out and lies in sight.\n"
        f"Below: a meter, its black lead clipped to ground, its red probe on the 5 V rail; it "
        f"shows {rail} V."
    )


def _supply(canvas: Canvas, volts: str, amps: str) -> None:
    canvas.rect(10, 12, 176, 158, CASE, round=8)
    canvas.text(98, 30, "bench supply", LETTERS, bold=True)
    for y, figure, unit in ((44, volts, "V"), (82, amps, "A")):
        canvas.rect(24, y, 88, 32, DISPLAY, round=4)
        canvas.fitted_text(68, y + 16, [f"{figure} {unit}"], 80, 18, bold=True)
    for y, words in ((60, "volts"), (98, "limit")):
        canvas.circle(132, y, 13, DARK)
        canvas.line((132, y), (132, y - 10), stroke=PAPER, pen=3)
        canvas.text(150, y, words, 13, "start")
    for x, colour, sign in ((60, BLACK, "−"), (136, RED, "+")):
        canvas.circle(x, 148, 11, colour)
        canvas.text(x, 148, sign, 16, fill=PAPER, bold=True)
    red = curve((136, 158), (150, 206), (196, 92), (236, 92))
    black = curve((60, 158), (70, 250), (170, 136), (236, 136))
    canvas.line(*black, stroke=BLACK, pen=4)
    canvas.line(*red, stroke=RED, pen=4)
    for y, colour in ((92, RED), (136, BLACK)):
        with canvas.scaled(232, y, 0.5, 0.6):
            clip(canvas, 0, 0, colour=colour)


def _set(canvas: Canvas) -> None:
    canvas.rect(220, 12, 330, 206, "#a7b1b9", round=8)
    canvas.rect(234, 44, 188, 160, LOOKS["green"].ground, round=4)
    canvas.text(328, 30, "the set, open", LETTERS, bold=True)
    canvas.rect(432, 44, 104, 160, COVER, round=4, dash="7 5")
    canvas.fitted_text(484, 124, ["mains", "side:", "covered"], 96, LETTERS)
    canvas.circle(306, 114, 27, SLEEVE)
    canvas.circle(306, 114, 20, ALUMINIUM, pen=1)
    canvas.text(306, 114, "C3", LETTERS, bold=True)
    for y, sign in ((92, "+"), (136, "−")):
        canvas.circle(279, y, 5, METAL)
        canvas.text(292, y - (13 if y < 100 else -13), sign, 17, fill=PAPER, bold=True)
    canvas.rect(356, 92, 44, 30, DARK, round=2)
    canvas.text(378, 80, "regulator", 13, fill=PAPER)
    for x in (364, 378, 392):
        canvas.line((x, 122), (x, 134), stroke=METAL, pen=4)
    for x, words in ((300, "ground"), (392, "+5 V")):
        canvas.circle(x, 184, 6, METAL)
        canvas.text(x, 166, words, LETTERS, fill=PAPER, bold=True)
    lead = curve((536, 180), (590, 210), (470, 232), (500, 262), 24)
    canvas.line(*lead, stroke=DARK, pen=6)
    canvas.rect(484, 260, 30, 40, DARK, round=8)
    for x in (491, 507):
        canvas.line((x, 300), (x, 316), stroke=INK, pen=5)
        canvas.line((x, 300), (x, 316), stroke=METAL, pen=2.5)
    canvas.text(499, 336, "plug out,", LETTERS)
    canvas.text(499, 355, "in sight", LETTERS)


def _meter(canvas: Canvas, rail: str) -> None:
    with canvas.scaled(126, 284, 0.72, 0.72):
        meter(canvas, "")
    canvas.fitted_text(126, 240, [f"{rail} V"], 62, 18, bold=True)
    canvas.text(60, 300, "meter", LETTERS, "end")
    black = curve((109, 340), (140, 400), (230, 330), (262, 262))
    red = curve((143, 340), (200, 400), (330, 360), (382, 256))
    canvas.line(*black, stroke=BLACK, pen=4)
    canvas.line(*red, stroke=RED, pen=4)
    with canvas.scaled(262, 264, 0.9, 0.9):
        clip(canvas, 0, 0, degrees=-65, colour=BLACK)
    probe(canvas, (382, 256), (391, 190), POSITIVE)
    for y, words in ((250, "black:"), (268, "clipped")):
        canvas.text(238, y, words, LETTERS, "end")
    canvas.text(374, 300, "red: by hand", LETTERS, "start")
