"""An eight-lead memory chip on its pads, to scale, seen from above, with every lead named."""

from __future__ import annotations

from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.firmware import OUTLINES, PADS, Pads, feet_on_pads, pins_of
from repairlib.show.canvas import BOARD, COPPER, INK, METAL, PAPER, Canvas, wrapped
from repairlib.show.picture import Picture

PER_MM = 25.0
WIDTH = 400.0
LETTERS, LINE = 15, 19.0
CASE, DOT = "#3d454d", "#dfe5ea"
PITCH = 1.27  # mm
HALF_HIGH = 2.9 * PER_MM  # of the piece of board


class Body(NamedTuple):
    """A body in mm: its width and length, over its leads, and how long a foot stands on the pad."""

    width: float
    length: float
    over_leads: float
    foot: float


# Middles of the makers' ranges.
BODIES = {
    width: Body(
        *(round(sum(size) / 2, 2) for size in (one.width, one.length, one.over_leads, foot))
    )
    for width, one in OUTLINES.items()
    if (foot := one.foot) and width in PADS
}


def draw_on_pads(
    body: str = "208 mil", pads: str = "", series: str = "25-series", marking: str = ""
) -> Picture:
    """Draw a body of 150 or 208 mil on the pads for one of them; pads left out are its own.

    series: whose leads are named, 25-series, 24-series or 93-series. Raises RepairlibError for
    other words.

    >>> print(draw_on_pads("150 mil", "208 mil").alt[:83])
    A chip of 150 mil on pads for 208 mil, from above. Its feet reach their pads by 0.2
    """
    chip, place = _one_of(BODIES, body), _one_of(PADS, pads or body)
    names = pins_of(series)
    verdict = how_it_stands(body, pads or body)
    head = wrapped(f"{body} chip on pads for {pads or body}", WIDTH - 16, LETTERS, bold=True)
    says = wrapped(verdict, WIDTH - 16, LETTERS)
    middle = 18 + LINE * len(head) + HALF_HIGH
    below = middle + HALF_HIGH + 10
    canvas = Canvas(WIDTH, below + 3 * LINE + LINE * len(says) + 8)
    for number, line in enumerate(head):
        canvas.text(8, 18 + LINE * number, line, LETTERS, "start", bold=True)
    with canvas.at(WIDTH / 2, middle):
        _draw_chip(canvas, chip, place, names, marking)
    sizes = (
        f"body {chip.width:g} mm wide, {chip.over_leads:g} mm over the leads",
        f"pads from {place.inside:g} mm to {place.outside:g} mm, leads {PITCH} mm apart",
    )
    for number, line in enumerate((*sizes, *says)):
        y = below + LINE * (number + 0.5) + (8 if number >= len(sizes) else 0)
        canvas.text(8, y, line, LETTERS, "start", bold=number >= len(sizes))
    counted = ", ".join(f"{number} {name}" for number, name in enumerate(names, 1))
    alt = (
        f"A chip of {body} on pads for {pads or body}, from above. {verdict} "
        f"Pin 1 has the dot, top left; down the left side, then up the right: {counted}."
    )
    return canvas.picture(alt)


def how_it_stands(body: str, pads: str) -> str:
    """In a sentence whether the feet of a body stand on pads, from the lengths in mm.

    >>> how_it_stands("208 mil", "208 mil")
    'Its feet stand whole on their pads.'
    """
    chip, place = _one_of(BODIES, body), _one_of(PADS, pads)
    return feet_on_pads(chip.over_leads, chip.foot, place).sentence


def _draw_chip(canvas: Canvas, chip: Body, place: Pads, names: tuple, marking: str) -> None:
    mm = PER_MM
    half = place.outside * mm / 2
    edge = max(place.outside, chip.over_leads) * mm / 2 + 8
    canvas.rect(-edge, -HALF_HIGH, 2 * edge, 2 * HALF_HIGH, BOARD, pen=0.8)
    rows = [mm * PITCH * (number - 1.5) for number in range(4)]
    long = (place.outside - place.inside) * mm / 2
    for side in (-1, 1):
        for y in rows:
            left = min(side * place.inside * mm / 2, side * half)
            canvas.rect(left, y - 0.3 * mm, long, 0.6 * mm, COPPER, pen=1)
    for side in (-1, 1):
        for y in rows:
            inner, tip = side * chip.width * mm / 2, side * chip.over_leads * mm / 2
            heel = tip - side * chip.foot * mm
            canvas.rect(min(inner, tip), y - 5, abs(tip - inner), 10, METAL, pen=1)
            canvas.line((heel, y - 5), (heel, y + 5), pen=1)
    wide, high = chip.width * mm, chip.length * mm
    canvas.rect(-wide / 2, -high / 2, wide, high, CASE, round=3)
    canvas.circle(-wide / 2 + 12, -high / 2 + 12, 5, DOT, pen=1)
    if marking:
        canvas.fitted_text(0, 0, marking.split("\n")[:3], wide - 12, 18, fill=PAPER, bold=True)
    for number, name in enumerate(names, 1):
        left = number <= 4
        y = rows[number - 1] if left else rows[8 - number]
        words = f"{name} {number}" if left else f"{number} {name}"
        x, anchor = (-edge - 6, "end") if left else (edge + 6, "start")
        canvas.text(x, y, words, LETTERS, anchor, INK, bold=number == 1)


def _one_of(table: dict, word: str):
    if word not in table:
        raise RepairlibError(word, "not a width of these chips", " or ".join(table))
    return table[word]
