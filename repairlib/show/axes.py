"""The axes of a chart that is drawn on a Canvas: scales, lines across with numbers, ticks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, floor, log10

from repairlib.show.canvas import QUIET, Canvas, Point

GRID = "#d5dbe0"


@dataclass(frozen=True)
class Scale:
    """Values from `low` to `high`, laid from the place `start` to the place `end` on the sheet.

    >>> Scale(0, 100, 78, 638)(50)
    358.0
    """

    low: float
    high: float
    start: float
    end: float

    def __call__(self, value: float) -> float:
        return self.start + (self.end - self.start) * (value - self.low) / (self.high - self.low)

    def round_values(self, most: int, least: float = 0) -> list[float]:
        """Round values along the scale, in at most so many steps, none of them below `least`.

        >>> Scale(0, 360, 56, 484).round_values(7)
        [0.0, 100.0, 200.0, 300.0]
        """
        step = max(round_step(self.high - self.low, most), least)
        first, last = ceil(self.low / step - 1e-9), floor(self.high / step + 1e-9)
        return [number * step for number in range(first, last + 1)]

    def line(self, canvas: Canvas, y: float) -> None:
        """A thin line at the height `y` on the sheet, as long as the scale."""
        canvas.line((self.start, y), (self.end, y), stroke=GRID, pen=1)


@dataclass(frozen=True)
class Axes:
    """The field between two scales, that of `y` from the bottom up. `size`: of its numbers.

    >>> Axes(Scale(0, 10, 50, 150), Scale(0, 1, 90, 10)).at((5, 0.5))
    (100.0, 50.0)
    """

    x: Scale
    y: Scale
    size: float = 14

    def at(self, point: Point) -> Point:
        """Where a pair of values is drawn."""
        return self.x(point[0]), self.y(point[1])

    def grid(self, canvas: Canvas, values: Iterable[float], unit: str = "") -> None:
        """A line across the field at each value of y, with the number to its left."""
        for value in values:
            self.x.line(canvas, self.y(value))
            words = f"{value:g} {unit}".strip()
            canvas.text(self.x.start - 8, self.y(value), words, self.size, "end")

    def ticks(self, canvas: Canvas, values: Iterable[float]) -> None:
        """A short line below the field at each value of x, with the number under it."""
        for value in values:
            x, bottom = self.x(value), self.y.start
            canvas.line((x, bottom), (x, bottom + 6), stroke=QUIET, pen=1)
            canvas.text(x, bottom + 18, f"{value:g}", self.size)


def round_step(span: float, most: int) -> float:
    """The least of ..., 0.5, 1, 2, 5, 10, ... with which a span above 0 has at most so many steps.

    >>> round_step(360, 7), round_step(2.5, 8)
    (100.0, 0.5)
    """
    power = 10.0 ** floor(log10(span / most))
    return next(size * power for size in (1, 2, 5, 10) if size * power * most >= span)
