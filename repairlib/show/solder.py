"""Drawings of solder: where a mixture melts, and how far a plated hole is filled."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.heat import DIAGRAMS, Diagram, liquidus, solidus
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import BOARD, COPPER, INK, METAL, NEGATIVE, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture

METALS = {"Sn": "tin", "Pb": "lead", "Bi": "bismuth"}
SOLDER = "#c9d1d8"
_LEFT, _TOP, _WIDE, _HIGH = 78, 62, 560, 330  # the chart's field
_COOLEST, _HOTTEST = 80, 350  # °C at its bottom and top
_AXES = Axes(Scale(0, 100, _LEFT, _LEFT + _WIDE), Scale(_COOLEST, _HOTTEST, _TOP + _HIGH, _TOP))


def draw_melting(system: str = "Sn-Pb", mark: float | None = None) -> Picture:
    """The diagram of two metals: solid below, pasty between the lines, liquid above.

    `system` is "Sn-Pb" or "Sn-Bi"; `mark` a composition in wt % to show. Raises RepairlibError for
    another system and for a mark outside 0 to 100.

    >>> draw_melting("Sn-Pb", 63).alt.splitlines()[-1]
    '63 wt % tin: begins to melt at 183 °C, all liquid at 184 °C.'
    """
    if system not in DIAGRAMS:
        raise RepairlibError(system, "no diagram of this system here", ", ".join(DIAGRAMS))
    diagram = DIAGRAMS[system]
    axis, other = METALS[diagram.axis], METALS[diagram.other]
    canvas = Canvas(700, 470)
    canvas.text(
        _LEFT, 26, f"{other.capitalize()} and {axis}: where a mixture melts", 19, "start", bold=True
    )
    _draw_axes(canvas, axis, other)
    canvas.line(*map(_AXES.at, diagram.liquidus), stroke=POSITIVE, pen=3)
    canvas.line(*map(_AXES.at, diagram.solidus), stroke=NEGATIVE, pen=3, dash="9 5")
    middle = (diagram.left + diagram.eutectic) / 2
    canvas.text(*_AXES.at((80, 300)), "liquid", 17)
    canvas.text(
        *_AXES.at((middle, (diagram.eutectic_celsius + liquidus(system, middle)) / 2)), "pasty", 17
    )
    canvas.text(*_AXES.at((14, 110)), "solid", 17)
    words = f"eutectic: {diagram.eutectic:g} %, {diagram.eutectic_celsius:g} °C"
    x, y = _AXES.at((diagram.eutectic, diagram.eutectic_celsius))
    canvas.circle(x, y, 5, INK)
    canvas.text(x + 12, y + 22, words, 15, "start")
    said = [
        f"Melting of mixtures of {other} and {axis}, by wt % {axis}, from published points.",
        _eutectic_in_words(diagram, axis),
    ]
    if mark is not None:
        said.append(_draw_mark(canvas, system, mark, axis))
    _draw_legend(canvas)
    return canvas.picture("\n".join(said))


def draw_hole_fill(fill: float, board_mm: float = 1.6) -> Picture:
    """A plated hole cut through the middle, filled to `fill` %, 0 to 100, from below.

    Raises RepairlibError for a fill outside 0 to 100 and a board without thickness.

    >>> draw_hole_fill(60)
    A plated hole through a board of 1.6 mm, cut open, with its lead. Solder fills 60 % of its
    height, from the side of the iron.
    """
    if not 0 <= fill <= 100:
        raise RepairlibError(f"{fill:g} %", "not a hole fill", "0 % to 100 %")
    if not 0 < board_mm < 100:
        raise RepairlibError(f"{board_mm:g} mm", "not a board", "a thickness above 0 mm")
    canvas = Canvas(560, 330)
    top, bottom, left, right = 90.0, 230.0, 190.0, 300.0
    level = bottom - (bottom - top) * fill / 100
    for x, width in ((60, left - 60), (right, 430 - right)):
        canvas.rect(x, top, width, bottom - top, BOARD)
    if fill > 0:
        canvas.rect(left, level, right - left, bottom + 7 - level, SOLDER, pen=1)
        canvas.polygon(
            [(left - 42, bottom + 7), (right + 42, bottom + 7), (262, 282), (228, 282)],
            SOLDER,
            pen=1,
        )
    canvas.rect(230, 40, 30, 262, METAL)
    for x in (left - 8, right):
        canvas.rect(x, top, 8, bottom - top, COPPER, pen=1)
    for y in (top - 7, bottom):
        canvas.rect(left - 42, y, 42, 7, COPPER, pen=1)
        canvas.rect(right, y, 42, 7, COPPER, pen=1)
    canvas.text(245, 22, "lead", 16)
    canvas.text(60, top - 24, "far side, with the part", 15, "start", fill=QUIET)
    canvas.text(60, bottom + 34, "side of the iron", 15, "start", fill=QUIET)
    canvas.line((452, top), (452, bottom), stroke=QUIET, pen=1)
    for share in (0, 25, 50, 75, 100):
        y = bottom - (bottom - top) * share / 100
        canvas.line((446, y), (458, y), stroke=QUIET, pen=1)
        canvas.text(466, y, f"{share} %", 15, "start")
    words = f"A plated hole through a board of {board_mm:g} mm, cut open, with its lead. "
    return canvas.picture(
        f"{words}Solder fills {fill:g} % of its height, from the side of the iron."
    )


def _draw_axes(canvas: Canvas, axis: str, other: str) -> None:
    canvas.rect(_LEFT, _TOP, _WIDE, _HIGH, pen=1, stroke=QUIET)
    _AXES.grid(canvas, range(100, _HOTTEST + 1, 50), "°C")
    _AXES.ticks(canvas, range(0, 101, 20))
    canvas.text(_LEFT + _WIDE / 2, _TOP + _HIGH + 42, f"wt % {axis} (0 is pure {other})", 15)


def _draw_mark(canvas: Canvas, system: str, mark: float, axis: str) -> str:
    low, high = solidus(system, mark), liquidus(system, mark)
    ends = _AXES.at((mark, _COOLEST)), _AXES.at((mark, _HOTTEST))
    canvas.line(*ends, stroke=INK, pen=1, dash="3 4")
    anchor, gap = ("end", -6) if mark > 50 else ("start", 6)
    x, y = _AXES.at((mark, 338))
    canvas.text(x + gap, y, f"{mark:g} % {axis}: {low:.0f} to {high:.0f} °C", 15, anchor, bold=True)
    return f"{mark:g} wt % {axis}: begins to melt at {low:.0f} °C, all liquid at {high:.0f} °C."


def _draw_legend(canvas: Canvas) -> None:
    y = 457
    canvas.line((_LEFT, y), (_LEFT + 44, y), stroke=NEGATIVE, pen=3, dash="9 5")
    canvas.text(_LEFT + 52, y, "begins to melt (solidus)", 14, "start")
    canvas.line((_LEFT + 270, y), (_LEFT + 314, y), stroke=POSITIVE, pen=3)
    canvas.text(_LEFT + 322, y, "all liquid (liquidus)", 14, "start")


def _eutectic_in_words(diagram: Diagram, axis: str) -> str:
    return (
        f"With {diagram.eutectic:g} wt % {axis} all of it melts at {diagram.eutectic_celsius:g} °C."
        " Other mixtures are pasty over a range."
    )
