"""What else is on a board: thin outlines, to find one's way by."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from repairlib.core.errors import RepairlibError
from repairlib.show.anatomy import arc
from repairlib.show.canvas import COPPER, PAPER, Canvas
from repairlib.show.looks import Look
from repairlib.show.placed import field, place

PIN_STEP_MM = 2.54


def draw_others(
    canvas: Canvas, others: Iterable, width_mm: float, height_mm: float, scale: float, look: Look
) -> None:
    """Draw them on a board of that size; raises RepairlibError for a kind that is not in OTHERS."""
    for number, other in enumerate(others, 1):
        kind = field(other, "kind")
        if kind not in OTHERS:
            raise RepairlibError(kind, "no other part of this kind is drawn", ", ".join(OTHERS))
        sizes = {name: field(other, name) for name in ("x_mm", "y_mm", "width_mm", "height_mm")}
        named = {"reference": f"other part {number}", **sizes}
        part = place(named, width_mm, height_mm, scale)
        with canvas.at(part.x, part.y):
            OTHERS[kind](canvas, part.half_width, part.half_height, PIN_STEP_MM * scale, look)


def _chip(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    canvas.rect(-x, -y * 0.8, 2 * x, 1.6 * y, stroke=look.other, pen=1.3)
    canvas.line(*arc(-x, 0, min(6, y / 3), -90, 90), stroke=look.other, pen=1.3)
    for pin in _pins(x, step):
        for side in (-1, 1):
            canvas.circle(pin, side * y, 2.5, look.other, stroke="none")


def _transistor(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    canvas.polygon(arc(0, 0, x, 150, 390), stroke=look.other, pen=1.3)
    for pin in (-0.6, 0, 0.6):
        canvas.circle(pin * x, 0, 2, look.other, stroke="none")


def _resistor(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    turned = (lambda a, b: (b, a)) if y > x else (lambda a, b: (a, b))
    long, thin = max(x, y), min(x, y)
    wide, high = turned(0.6 * long, thin)
    canvas.rect(-wide, -high, 2 * wide, 2 * high, stroke=look.other, pen=1.3)
    for side in (-1, 1):
        canvas.circle(*turned(side * long, 0), 2.5, look.other, stroke="none")


def _box(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    canvas.rect(-x, -y, 2 * x, 2 * y, stroke=look.other, pen=1.3)


def _connector(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    _box(canvas, x, y, step, look)
    for pin in _pins(x, step):
        canvas.rect(pin - 2.5, -2.5, 5, 5, look.other, stroke="none")


def _edge(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    for pin in _pins(x, step):
        canvas.rect(pin - 3, -y, 6, 2 * y, COPPER, stroke="none")


def _screw_hole(canvas: Canvas, x: float, y: float, step: float, look: Look) -> None:
    canvas.circle(0, 0, x, PAPER, stroke=look.other, pen=1.3)


def _pins(half: float, step: float) -> list[float]:
    count = max(1, int(2 * half / step))
    return [(number - (count - 1) / 2) * step for number in range(count)]


OTHERS: dict[str, Callable[[Canvas, float, float, float, Look], None]] = {
    "chip": _chip,
    "transistor": _transistor,
    "resistor": _resistor,
    "connector": _connector,
    "edge contacts": _edge,
    "heat sink": _box,
    "transformer": _box,
    "screw hole": _screw_hole,
}
