"""The part of which nothing is known yet."""

from __future__ import annotations

from repairlib.show.anatomy import Anatomy, either_ends, print_marking
from repairlib.show.canvas import INK, QUIET, Canvas

GREY = "#dfe3e6"
QUESTION = "what part is it?"


def unknown(canvas: Canvas, marking: str, end: int, mark: str) -> Anatomy:
    """A grey box with a question, so that no kind of part is put into anybody's head."""
    canvas.rect(-110, -56, 220, 112, GREY, stroke=QUIET, dash="7 6", round=8)
    canvas.text(0, -30, QUESTION, 18, fill=INK)
    print_marking(canvas, marking, 0, 16, 196, 60)
    return Anatomy(
        looks=f"A grey box: {QUESTION}",
        terminals=either_ends(90, 56),
        outline=("box", 100, 50),
        notes=("look at the part:", "its shape says", "what it is"),
    )
