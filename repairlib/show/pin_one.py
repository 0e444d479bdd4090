"""Parts whose mark shows pin 1: ICs and connectors, seen from above."""

from __future__ import annotations

from repairlib.show.anatomy import Anatomy, Mark, Terminal, arc, print_marking
from repairlib.show.canvas import INK, METAL, PAPER, Canvas

CASE = "#3d454d"
EDGE = "#8b959e"
HOUSING = "#e9e4d6"
PIN_XS = (-66, -22, 22, 66)


def dip(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for x in PIN_XS:
        for y in (-66, 40):
            canvas.rect(x - 11, y, 22, 26, METAL)
    return _chip(canvas, marking, end, mark or "notch", half_width=100, holes=True)


def soic(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for x in PIN_XS:
        for y in (-72, 38):
            canvas.rect(x - 8, y, 16, 34, METAL)
    return _chip(canvas, marking, end, mark or "dot", half_width=92, holes=False)


def connector(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    canvas.rect(-100, -36, 200, 72, HOUSING, round=4)
    first, low = end * 66, 36
    for x in PIN_XS:
        canvas.rect(x - 13, -13, 26, 26, CASE)
        canvas.rect(x - 7, -7, 14, 14, METAL)
    if mark == "figure 1":
        canvas.text(first, -52, "1", 26, bold=True)
        place = (first + end * 12, -52)
    elif mark == "coloured wire":
        for x in PIN_XS:
            wire = "#a3271c" if x == first else "#b9c0c6"
            canvas.line((x, 0), (x, 96), stroke=INK, pen=11)
            canvas.line((x, 0), (x, 96), stroke=wire, pen=8)
        place, low = (first + end * 4, 70), 96
    else:
        mark = "triangle"
        canvas.polygon([(first, -38), (first - 13, -62), (first + 13, -62)], INK)
        place = (first + end * 6, -56)
    print_marking(canvas, marking.replace("\n", " "), 0, 25, 160, 18)
    return Anatomy(
        looks="A plastic connector with four contacts in a row, seen from above.",
        terminals=_pins([(x, low) for x in sorted(PIN_XS, key=lambda x: -end * x)]),
        marks=(Mark(*place, mark, "pin 1"),),
        outline=("box", 100, 26),
        pads=tuple((x, 0) for x in sorted(PIN_XS, key=lambda x: -end * x)),
    )


def _chip(
    canvas: Canvas, marking: str, end: int, mark: str, half_width: float, holes: bool
) -> Anatomy:
    canvas.rect(-half_width, -46, 2 * half_width, 92, CASE, round=4)
    # Turning the package half round moves pin 1 to the diagonally opposite corner.
    low = -end
    if mark == "notch":
        start = 270 if end < 0 else 90
        canvas.polygon(arc(end * half_width, 0, 15, start, start + 180), PAPER)
        place = Mark(end * (half_width - 8), 0, "notch at one end", "end with pin 1")
    elif mark == "bevel":
        canvas.line((-half_width, low * 34), (half_width, low * 34), stroke=EDGE, pen=3)
        place = Mark(end * (half_width - 14), low * 38, "bevelled edge", "side with pin 1")
    else:
        canvas.circle(end * (half_width - 20), low * 28, 7, EDGE)
        place = Mark(end * (half_width - 20), low * 28, "dot", "pin 1")
    shift = 10 if mark == "notch" else 0
    print_marking(canvas, marking, -end * shift, -6 * low, 130, 68, PAPER)
    near = [(x, low * 66) for x in sorted(PIN_XS, key=lambda x: -end * x)]
    far = [(x, -low * 66) for x, _ in reversed(near)]
    return Anatomy(
        looks="A black block with four leads on each long side, seen from above.",
        terminals=_pins(near + far),
        marks=(place,),
        outline=("box", half_width, 20),
        pads=tuple((x, low * 34 * (1 if y * low > 0 else -1)) for x, y in near + far),
        holes=holes,
    )


def _pins(places: list) -> tuple[Terminal, ...]:
    return tuple(Terminal(x, y, str(number)) for number, (x, y) in enumerate(places, 1))
