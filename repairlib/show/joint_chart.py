"""The temperatures of a heated joint against time, with the solder's melting line drawn in.

Drawn on a Canvas, not with matplotlib: a panel draws it again at every change.
"""

from __future__ import annotations

from repairlib.core.wording import sentence
from repairlib.heat import SOFTENS, Heating, alloy, figure
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET, Canvas, text_width
from repairlib.show.picture import Picture

WIDTH = 480.0  # so narrow that its letters can be read on a phone
LEFT, RIGHT, TOP, BOTTOM = 52.0, 466.0, 46.0, 330.0
LETTERS, LINE = 18, 26
KEY = BOTTOM + 74  # the first line of what the curves are
LOOKS = {
    "joint": (POSITIVE, "", 3),
    "far side": (NEGATIVE, "9 4", 3),
    "board under the pad": ("#8a5a00", "2 5", 3),
    "plastic at the lead": ("#2f6f4f", "12 4 2 4", 2.4),
    "neighbour": (INK, "5 5", 2),
    "mat top": (QUIET, "", 2),
    "mat underside": (QUIET, "2 4", 2),
}


def draw_joint_chart(run: Heating) -> Picture:
    """Temperature against time of the joint and what is around it, heating and first cooling.

    >>> from repairlib.heat import heat_joint
    >>> print(draw_joint_chart(heat_joint(kind="surface")).alt.splitlines()[0])
    Temperatures against time; the iron is taken away after about 1 s.
    """
    end = min(float(run.seconds[-1]), run.heat_on * 2 + 1)
    hottest = max(run.peak(spot) for spot in LOOKS if spot in run.traces)
    top = 50 * (int(max(hottest, run.setup.preheat) / 50) + 1)
    axes = Axes(Scale(0, end, LEFT, RIGHT), Scale(0, top, BOTTOM, TOP), size=LETTERS)
    shown = sum(spot in run.traces for spot in LOOKS)
    canvas = Canvas(WIDTH, KEY + LINE * (shown + 1))
    _grid(canvas, axes)
    x = axes.x(min(run.heat_on, end))
    canvas.line((x, TOP - 6), (x, BOTTOM), pen=1.4, dash="3 3")
    words = f"{run.setup.source} away: {run.held}"
    half = text_width(words, LETTERS) / 2
    canvas.text(min(max(x, LEFT + half), RIGHT - half), TOP - 20, words, LETTERS)
    said = [f"Temperatures against time; the {run.setup.source} is taken away after {run.held}."]
    more, points = _curves(canvas, axes, run)
    said += more
    melting = alloy(run.setup.solder).liquidus
    softens = figure(run.setup.board, SOFTENS).value
    _level(canvas, axes, melting, f"{run.setup.solder} liquid above {melting:g} °C", points)
    _level(canvas, axes, softens, f"board softens (Tg) at {softens:g} °C", points)
    words = "a model, not a measurement"
    canvas.text(LEFT, KEY + LINE * shown, words, LETTERS, anchor="start", fill=QUIET)
    return canvas.picture("\n".join([*said, sentence(words)]))


def _grid(canvas: Canvas, axes: Axes) -> None:
    axes.grid(canvas, range(0, int(axes.y.high) + 1, 50))
    axes.ticks(canvas, axes.x.round_values(6))
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    canvas.text((LEFT + RIGHT) / 2, BOTTOM + 44, "seconds since the tool touched", LETTERS)
    canvas.text(10, TOP - 20, "°C", LETTERS, anchor="start")


def _level(canvas: Canvas, axes: Axes, celsius: float, words: str, points) -> None:
    """A dotted line across with its words where the fewest curves pass."""
    if not 0 < celsius < axes.y.high:
        return
    y = axes.y(celsius)
    canvas.line((LEFT, y), (RIGHT, y), pen=1.2, stroke=INK, dash="1 4")
    width = text_width(words, LETTERS)

    def crowded(end: float) -> int:
        return sum(end - width < x < end and y - 24 < height < y + 2 for x, height in points)

    middle = (LEFT + RIGHT + width) / 2
    end = min((RIGHT - 4, LEFT + width + 8, middle), key=crowded)
    canvas.text(end, y - 11, words, LETTERS, anchor="end", fill=INK)


def _curves(canvas: Canvas, axes: Axes, run: Heating):
    """Draws every curve, and below the chart which is which; what they say, and their points."""
    import numpy as np

    times = np.linspace(0, axes.x.high, 90)
    said: list[str] = []
    passed = []
    for spot, (colour, dash, pen) in LOOKS.items():
        if spot not in run.traces:
            continue
        celsius = np.interp(times, run.seconds, run.traces[spot])
        points = [axes.at(pair) for pair in zip(times, celsius, strict=True)]
        passed += points
        style = {"dash": dash} if dash else {}
        canvas.line(*points, pen=pen, stroke=colour, **style)
        y = KEY + LINE * len(said)
        canvas.line((LEFT, y), (LEFT + 48, y), pen=pen, stroke=colour, **style)
        words = f"{spot}, peak {run.peak(spot):.0f} °C"
        canvas.text(LEFT + 58, y, words, LETTERS, anchor="start", fill=colour)
        said.append(f"{spot}: at most {run.peak(spot):.0f} °C.")
    return said, passed
