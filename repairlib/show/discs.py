"""Ceramic parts: discs and drops on two leads, varistor and inrush limiter, the chip."""

from __future__ import annotations

from repairlib.show.anatomy import Anatomy, either_way, leads, print_marking
from repairlib.show.canvas import INK, METAL, PAPER, Canvas

CERAMIC = "#dca368"
MULTILAYER = "#e3b23f"
VARISTOR = "#2f5f9e"
MLCC = "#c8ad8c"
INRUSH = "#40463f"


def disc(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _disc(canvas, marking, CERAMIC, INK, "A round flat disc on two leads.")


def varistor(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _disc(canvas, marking, VARISTOR, PAPER, "A round flat blue disc on two leads.")


def inrush_disc(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    return _disc(canvas, marking, INRUSH, PAPER, "A round flat dark disc on two stiff leads.", 7)


def multilayer_drop(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    for side in (-1, 1):  # the leads are bent outwards, so that the drop stands off the board
        for stroke, pen in ((INK, 5.0), (METAL, 2.5)):
            canvas.line(
                (side * 22, 30),
                (side * 22, 56),
                (side * 34, 70),
                (side * 34, 112),
                stroke=stroke,
                pen=pen,
            )
    canvas.rect(-50, -50, 100, 92, MULTILAYER, round=26)
    print_marking(canvas, marking, 0, -4, 84, 62)
    return either_way(
        "A small rounded bead of resin on two equal leads.", ("box", 50, 20), (34, 112)
    )


def ceramic_chip(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    canvas.rect(-84, -44, 168, 88, MLCC, round=5)
    for x in (-84, 52):
        canvas.rect(x, -44, 32, 88, METAL, round=5)
    print_marking(canvas, marking, 0, 0, 94, 78)
    return either_way(
        "A small block with a metal cap at each end, seen from above. Usually unprinted.",
        ("box", 92, 34),
        (76, 44),
        holes=False,
    )


def _disc(
    canvas: Canvas, marking: str, fill: str, ink: str, looks: str, lead: float = 5
) -> Anatomy:
    leads(canvas, (-28, 112), (28, 112), top=20, width=lead)
    canvas.polygon([(-38, 10), (38, 10), (32, 48), (24, 52), (-24, 52), (-32, 48)], fill)
    canvas.circle(0, -24, 64, fill)
    canvas.rect(-30, 30, 60, 12, fill, stroke="none")
    print_marking(canvas, marking, 0, -24, 112, 92, ink)
    return either_way(looks, ("box", 62, 16), (28, 112))
