"""The temperatures of a heated joint against time, with the solder's melting line drawn in.

Drawn on a Canvas, not with matplotlib: a panel draws it again at every change.
"""

from __future__ import annotations

from repairlib.heat import SOFTENS, Heating, alloy, figure
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET, Canvas, text_width
from repairlib.show.picture import Picture

WIDTH, HEIGHT = 800.0, 400.0
LEFT, RIGHT, TOP, BOTTOM = 62.0, 560.0, 40.0, 350.0
LOOKS = {
    "joint": (POSITIVE, "", 3),
    "far side": (NEGATIVE, "9 4", 3),
    "board under the pad": ("#8a5a00", "2 5", 3),
    "plastic at the lead": ("#2f6f4f", "12 4 2 4", 2.4),
    "neighbour": (INK, "5 5", 2),
    "mat top": (QUIET, "", 2),
    "mat underside": (QUIET, "2 4", 2),
}
_GAP = 19.0  # between two labels


def draw_joint_chart(run: Heating) -> Picture:
    """Temperature against time of the joint and what is around it, heating and first cooling.

    >>> from repairlib.heat import heat_joint
    >>> print(draw_joint_chart(heat_joint(kind="surface")).alt.splitlines()[0])
    Temperatures against time; the iron is taken away after about 1 s.
    """
    end = min(float(run.seconds[-1]), run.heat_on * 2 + 1)
    hottest = max(run.peak(spot) for spot in LOOKS if spot in run.traces)
    top = 50 * (int(max(hottest, run.setup.preheat) / 50) + 1)
    axes = Axes(Scale(0, end, LEFT, RIGHT), Scale(0, top, BOTTOM, TOP), size=13)
    canvas = Canvas(WIDTH, HEIGHT)
    _grid(canvas, axes)
    x = axes.x(min(run.heat_on, end))
    canvas.line((x, TOP - 6), (x, BOTTOM), pen=1.4, dash="3 3")
    canvas.text(x, TOP - 16, f"{run.setup.source} away: {run.held}", 13)
    said = [f"Temperatures against time; the {run.setup.source} is taken away after {run.held}."]
    more, points = _curves(canvas, axes, run)
    said += more
    melting = alloy(run.setup.solder).liquidus
    softens = figure(run.setup.board, SOFTENS).value
    _level(canvas, axes, melting, f"{run.setup.solder} liquid above {melting:g} °C", points)
    _level(canvas, axes, softens, f"board softens (Tg) at {softens:g} °C", points)
    words = "a model, not a measurement"
    canvas.text(WIDTH - 10, HEIGHT - 12, words, 12, anchor="end", fill=QUIET)
    return canvas.picture("\n".join([*said, f"{words[0].upper()}{words[1:]}."]))


def _grid(canvas: Canvas, axes: Axes) -> None:
    axes.grid(canvas, range(0, int(axes.y.high) + 1, 50))
    axes.ticks(canvas, axes.x.round_values(8))
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    canvas.text((LEFT + RIGHT) / 2, BOTTOM + 38, "seconds since the tool touched", 14)
    canvas.text(10, TOP - 16, "°C", 14, anchor="start")


def _level(canvas: Canvas, axes: Axes, celsius: float, words: str, points) -> None:
    """A dotted line across with its words where the fewest curves pass."""
    if not 0 < celsius < axes.y.high:
        return
    y = axes.y(celsius)
    canvas.line((LEFT, y), (RIGHT, y), pen=1.2, stroke=INK, dash="1 4")
    width = text_width(words, 12)

    def crowded(end: float) -> int:
        return sum(end - width < x < end and y - 18 < height < y + 2 for x, height in points)

    middle = (LEFT + RIGHT + width) / 2
    end = min((RIGHT - 4, LEFT + width + 8, middle), key=crowded)
    canvas.text(end, y - 9, words, 12, anchor="end", fill=INK)


def _curves(canvas: Canvas, axes: Axes, run: Heating):
    """Draws every curve with its label; what it says in words, and the points it passes."""
    import numpy as np

    times = np.linspace(0, axes.x.high, 90)
    ends, said, passed = [], [], []
    for spot, (colour, dash, pen) in LOOKS.items():
        if spot not in run.traces:
            continue
        celsius = np.interp(times, run.seconds, run.traces[spot])
        points = [axes.at(pair) for pair in zip(times, celsius, strict=True)]
        passed += points
        style = {"dash": dash} if dash else {}
        canvas.line(*points, pen=pen, stroke=colour, **style)
        ends.append((points[-1][1], spot, colour, style))
        said.append(f"{spot}: at most {run.peak(spot):.0f} °C.")
    height = TOP - _GAP
    lowest = BOTTOM - _GAP * (len(ends) - 1)
    for place, (y, spot, colour, style) in enumerate(sorted(ends, key=lambda one: one[0])):
        height = min(max(y, height + _GAP), lowest + place * _GAP)
        canvas.line((RIGHT + 3, y), (RIGHT + 16, height), pen=1, stroke=colour)
        canvas.line((RIGHT + 18, height), (RIGHT + 44, height), pen=2.4, stroke=colour, **style)
        words = f"{spot}, peak {run.peak(spot):.0f}"
        canvas.text(RIGHT + 50, height, words, 13, anchor="start", fill=colour)
    return said, passed
