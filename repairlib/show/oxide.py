"""Inside a polar capacitor: the oxide skin that blocks one way round and breaks up the other."""

from __future__ import annotations

from repairlib.show.canvas import INK, METAL, PAPER, POSITIVE, Canvas
from repairlib.show.parts import badge
from repairlib.show.picture import Picture

ELECTROLYTE = "#cfe3f1"
SKIN = "#22303c"
NAMES_END, STACKS, WIDE = 128, (150, 412), 232
FOIL, SKIN_TOP, WET, LOW_FOIL, BOTTOM = 84, 120, 134, 214, 250


def draw_oxide_skin() -> Picture:
    """Draw the layers of an aluminium electrolytic, once the right way round and once reversed.

    >>> draw_oxide_skin().alt.split(". ")[0]
    'The layers inside an electrolytic capacitor, drawn twice: foil, oxide skin, electrolyte, foil'
    """
    canvas = Canvas(660, 348)
    for y, name in (
        ((FOIL + SKIN_TOP) / 2, "metal foil"),
        ((SKIN_TOP + WET) / 2, "oxide skin"),
        ((WET + LOW_FOIL) / 2, "electrolyte"),
        ((LOW_FOIL + BOTTOM) / 2, "metal foil"),
    ):
        canvas.text(NAMES_END, y, name, 16, "end")
        canvas.line((NAMES_END + 6, y), (STACKS[0] + 4, y), pen=1.5)
    _stack(canvas, STACKS[0], "Right way round", "+−", reversed_=False)
    _stack(canvas, STACKS[1], "Reversed", "−+", reversed_=True)
    _told(canvas, STACKS[0], "The skin blocks.", "Almost no current flows.", INK)
    _told(canvas, STACKS[1], "The skin breaks up.", "Current, heat, gas.", POSITIVE)
    return canvas.picture(
        "The layers inside an electrolytic capacitor, drawn twice: foil, oxide skin, electrolyte, "
        "foil. Right way round: plus is on the foil with the skin; the skin blocks, almost no "
        "current flows. Reversed: minus is on the foil with the skin; the skin breaks up, current "
        "flows through it, heat and gas come up."
    )


def _stack(canvas: Canvas, x: float, title: str, signs: str, reversed_: bool) -> None:
    middle = x + WIDE / 2
    canvas.text(middle, 20, title, 18, fill=POSITIVE if reversed_ else INK, bold=True)
    for top, bottom, sign, y in ((FOIL, SKIN_TOP, signs[0], 56), (LOW_FOIL, BOTTOM, signs[1], 278)):
        canvas.rect(x, top, WIDE, bottom - top, METAL)
        canvas.line((middle, top if y < top else bottom), (middle, y), pen=3)
        badge(canvas, middle, y, sign)
    canvas.rect(x, WET, WIDE, LOW_FOIL - WET, ELECTROLYTE)
    canvas.rect(x, SKIN_TOP, WIDE, WET - SKIN_TOP, SKIN)
    if reversed_:
        for gap in (0.2, 0.5, 0.8):
            left = x + gap * WIDE
            canvas.rect(left - 9, SKIN_TOP, 18, WET - SKIN_TOP, ELECTROLYTE, stroke="none")
            _arrow(canvas, left, LOW_FOIL - 12, FOIL + 14)
        for across, down, size in ((0.08, 30, 7), (0.35, 44, 9), (0.64, 24, 6), (0.92, 50, 8)):
            canvas.circle(x + across * WIDE, WET + down, size, PAPER, pen=1.5)
    else:
        for place in (0.2, 0.5, 0.8):
            left = x + place * WIDE
            _arrow(canvas, left, FOIL + 6, SKIN_TOP - 4)


def _arrow(canvas: Canvas, x: float, start: float, tip: float) -> None:
    back = 9 if tip < start else -9
    canvas.line((x, start), (x, tip + back), stroke=POSITIVE, pen=4)
    head = [(x, tip), (x - 7, tip + 1.4 * back), (x + 7, tip + 1.4 * back)]
    canvas.polygon(head, POSITIVE, stroke="none")


def _told(canvas: Canvas, x: float, first: str, second: str, colour: str) -> None:
    canvas.text(x + WIDE / 2, 310, first, 17, fill=colour, bold=True)
    canvas.text(x + WIDE / 2, 333, second, 17, fill=colour)
