"""A sheet to draw on: a few shapes and text, written out as SVG.

The same calls give the same bytes on every machine: no ids, dates or random numbers.
Lengths are in SVG units, which are screen pixels at full size. y grows downwards.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import contextmanager
from typing import TypeVar

from repairlib.core.html import escape
from repairlib.show.box import Box, around
from repairlib.show.picture import Picture

INK = "#22303c"  # outlines and words
PAPER = "#ffffff"
QUIET = "#5b6b79"  # leader lines, small print
METAL = "#aab4be"  # leads, terminals
POSITIVE = "#a3271c"  # also: a warning
NEGATIVE = "#1d4e89"
BOARD = "#e3efe3"
COPPER = "#d8a648"

FONT = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"

SMALLEST = 12.0  # letters; smaller ones are not read at the size that is shown
MARGIN = 12.0  # round what is drawn on a sheet that is cut to it

SCALED_LINES = "<style>.scaled * {stroke-width: 1.3px; vector-effect: non-scaling-stroke}</style>"

Point = tuple[float, float]
Said = TypeVar("Said")


def text_width(words: str, size: float, bold: bool = False) -> float:
    """Width of one line of text, on the safe side for the usual sans-serif fonts.

    >>> text_width("100 nF", 10)
    36.7
    """
    ems = sum(_char_width(char) for char in words)
    return round(ems * size * (1.13 if bold else 1.0), 1)


def wrapped(words: str, width: float, size: float, bold: bool = False) -> list[str]:
    """The words in lines that are at most `width` wide; a longer word stays whole.

    >>> wrapped("stripe with minus signs", 120, 16)
    ['stripe with', 'minus signs']
    """
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _char_width(char: str) -> float:
    if char in "ijl.,:;'|!":
        return 0.35
    if char in "ft()[]/ -r":
        return 0.42
    if char in "mwMW@%+±−~→…":
        return 0.98
    if ord(char) > 0x2E80:
        return 1.05
    return 0.7 if char.isupper() else 0.64


def _num(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _printable(words: str) -> str:
    # XML forbids most control characters; a lone surrogate cannot be written as UTF-8.
    return "".join(
        char if char.isprintable() or char in "\u00a0\u202f" else "\N{REPLACEMENT CHARACTER}"
        for char in words
    )


class Canvas:
    """Shapes in drawing order. `at` moves the origin for what is drawn inside it."""

    def __init__(self, width: float, height: float) -> None:
        self.width = width
        self.height = height
        self._origin: Point = (0.0, 0.0)
        self._shapes: list[str] = []
        self._boxes: list[Box] = []
        self._solid: list[Box] = []
        self._scale: tuple[float, float, float, float] | None = None
        self._quarters = 0  # turns by 90 degrees clockwise inside `scaled`

    @property
    def extent(self) -> Box:
        """The box round everything drawn so far."""
        return around(self._boxes)

    @property
    def solid(self) -> Box:
        """The box round everything that is no line and no text: a body without its leads."""
        return around(self._solid)

    @contextmanager
    def scaled(
        self, x: float, y: float, across: float, down: float, turned: float = 0
    ) -> Iterator[None]:
        """Draw with the origin at x, y and lengths made larger or smaller; lines stay thin.

        turned: degrees by which it is then turned clockwise, a multiple of 90. Text is left off.
        Not inside another `scaled`.
        """
        x, y = self._place(x, y)
        before, self._origin, self._scale = self._origin, (0.0, 0.0), (x, y, across, down)
        self._quarters = round(turned / 90) % 4
        turn = f" rotate({_num(turned % 360)})" if self._quarters else ""
        self._shapes.append(
            f'<g class="scaled" transform="translate({_num(x)} {_num(y)}){turn}'
            f' scale({across:.5g} {down:.5g})">'
        )
        try:
            yield
        finally:
            self._shapes.append("</g>")
            self._origin, self._scale = before, None

    @contextmanager
    def at(self, x: float, y: float) -> Iterator[None]:
        """Draw with the origin moved by x and y."""
        before = self._origin
        self._origin = (before[0] + x, before[1] + y)
        try:
            yield
        finally:
            self._origin = before

    def rect(
        self, x: float, y: float, width: float, height: float, fill: str = "none", **style
    ) -> None:
        """A rectangle from its top left corner; round=5 rounds the corners."""
        x, y = self._place(x, y)
        round_ = style.pop("round", 0)
        corner = f' rx="{_num(round_)}"' if round_ else ""
        self._add(
            f'<rect x="{_num(x)}" y="{_num(y)}" width="{_num(width)}" height="{_num(height)}"'
            f"{corner}{_style(fill, style)}/>",
            [(x, y), (x + width, y + height)],
            style,
        )

    def circle(self, x: float, y: float, radius: float, fill: str = "none", **style) -> None:
        x, y = self._place(x, y)
        self._add(
            f'<circle cx="{_num(x)}" cy="{_num(y)}" r="{_num(radius)}"{_style(fill, style)}/>',
            [(x - radius, y - radius), (x + radius, y + radius)],
            style,
        )

    def ellipse(self, x: float, y: float, rx: float, ry: float, fill: str = "none", **style):
        x, y = self._place(x, y)
        self._add(
            f'<ellipse cx="{_num(x)}" cy="{_num(y)}" rx="{_num(rx)}" ry="{_num(ry)}"'
            f"{_style(fill, style)}/>",
            [(x - rx, y - ry), (x + rx, y + ry)],
            style,
        )

    def polygon(self, points: Iterable[Point], fill: str = "none", **style) -> None:
        self._path("polygon", points, fill, style)

    def line(self, *points: Point, **style) -> None:
        """A line through the points."""
        self._path("polyline", points, "none", style)

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 16,
        anchor: str = "middle",
        fill: str = INK,
        bold: bool = False,
    ) -> None:
        """One line of text; x is its start, middle or end by `anchor`, y its middle height."""
        x, y = self._place(x, y)
        if self._scale:
            return
        weight = ' font-weight="bold"' if bold else ""
        wide = text_width(words, size, bold)
        left = x - {"start": 0, "middle": wide / 2, "end": wide}[anchor]
        self._add(
            f'<text x="{_num(x)}" y="{_num(y + 0.36 * size)}" font-size="{_num(size)}"'
            f' text-anchor="{anchor}" fill="{fill}"{weight}>{escape(_printable(words))}</text>',
            [(left, y - 0.45 * size), (left + wide, y + 0.61 * size)],
            {"pen": 0},
        )

    def fitted_text(
        self, x: float, y: float, lines: Sequence[str], width: float, size: float, **style
    ) -> None:
        """Lines centred on x, y, made smaller until the widest fits; the rest is cut with …"""
        smallest = min(SMALLEST, size)
        widest = max(text_width(line, size, style.get("bold", False)) for line in lines)
        size = max(smallest, min(size, size * width / widest)) if widest else size
        step = 1.2 * size
        top = y - step * (len(lines) - 1) / 2
        for row, line in enumerate(lines):
            self.text(x, top + row * step, _cut(line, width, size, style), size, **style)

    def picture(self, alt: str, per_mm: float = 0) -> Picture:
        """Finish: the shapes as one SVG document, with its words.

        per_mm: so many units are a millimetre on paper; left out, a unit is a pixel.
        """
        width, height = _num(self.width), _num(self.height)
        wide, high = width, height
        if per_mm:
            wide, high = (f"{_num(length / per_mm)}mm" for length in (self.width, self.height))
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}"'
            f' viewBox="0 0 {width} {height}" role="img" font-family="{FONT}">'
        )
        sheet = f'<rect width="{width}" height="{height}" fill="{PAPER}"/>'
        title = f"<title>{escape(_printable(alt))}</title>"
        shapes = [SCALED_LINES, *self._shapes] if _has_scaled(self._shapes) else self._shapes
        return Picture("\n".join([head, title, sheet, *shapes, "</svg>"]) + "\n", alt)

    def _place(self, x: float, y: float) -> Point:
        return (x + self._origin[0], y + self._origin[1])

    def _on_the_sheet(self, box: Box) -> Box:
        """Where a box drawn inside `scaled` comes to lie."""
        assert self._scale
        x, y, across, down = self._scale
        box = Box(across * box.left, down * box.top, across * box.right, down * box.bottom)
        for _ in range(self._quarters):
            box = _turned(box)
        return Box(x + box.left, y + box.top, x + box.right, y + box.bottom)

    def _path(self, shape: str, points: Iterable[Point], fill: str, style: dict) -> None:
        placed = [self._place(*point) for point in points]
        corners = " ".join(f"{_num(x)},{_num(y)}" for x, y in placed)
        self._add(f'<{shape} points="{corners}"{_style(fill, style)}/>', placed, style)

    def _add(self, shape: str, reach: Sequence[Point], style: dict) -> None:
        """Add a shape that reaches through these points, and a half pen further."""
        self._shapes.append(shape)
        xs, ys = [x for x, _ in reach], [y for _, y in reach]
        if not xs:
            return
        box = Box(min(xs), min(ys), max(xs), max(ys))
        if self._scale:
            box = self._on_the_sheet(box)
        self._boxes.append(box.grown(style.get("pen", 2) / 2))
        if not shape.startswith(("<polyline", "<text")):
            self._solid.append(box)


def _turned(box: Box) -> Box:
    """The box turned round the origin by 90 degrees clockwise."""
    return Box(-box.bottom, box.left, -box.top, box.right)


def _has_scaled(shapes: list[str]) -> bool:
    return any(shape.startswith("<g ") for shape in shapes)


def sheet_round(
    draw: Callable[[Canvas], Said], width: float = 0, margin: float = MARGIN
) -> tuple[Canvas, Said]:
    """A sheet cut to what `draw` puts on it, and what `draw` returns.

    width: of the sheet, with the origin of the drawing in its middle; 0 cuts the sides too.

    >>> sheet, _ = sheet_round(lambda canvas: canvas.rect(-20, -10, 40, 20, pen=0))
    >>> sheet.width, sheet.height
    (64.0, 44.0)
    """
    trial = Canvas(0, 0)
    draw(trial)
    drawn = trial.extent.grown(margin)
    sheet = Canvas(width or drawn.right - drawn.left, drawn.bottom - drawn.top)
    with sheet.at(width / 2 if width else -drawn.left, -drawn.top):
        return sheet, draw(sheet)


def _style(fill: str, style: dict) -> str:
    stroke = style.get("stroke", INK)
    pen = style.get("pen", 2)
    text = f' fill="{fill}" stroke="{stroke}" stroke-width="{_num(pen)}"'
    if "opacity" in style:
        text += f' fill-opacity="{_num(style["opacity"])}"'
    if "dash" in style:
        text += f' stroke-dasharray="{style["dash"]}"'
    return text + ' stroke-linejoin="round" stroke-linecap="round"'


def _cut(line: str, width: float, size: float, style: dict) -> str:
    bold = style.get("bold", False)
    if text_width(line, size, bold) <= width:
        return line
    line = line[:200]
    while line and text_width(line + "…", size, bold) > width:
        line = line[:-1]
    return line + "…"
