"""The floor clock of a damp part: the hours used, day after day, against what its level allows."""

from __future__ import annotations

from itertools import pairwise
from math import inf

from repairlib.core.errors import RepairlibError
from repairlib.heat import FLOOR_LIFE, Event, clock_readings
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import NEGATIVE, POSITIVE, Canvas
from repairlib.show.picture import Picture

WIDTH, HEIGHT = 500.0, 280.0
LEFT, RIGHT, TOP, BOTTOM = 64.0, 484.0, 36.0, 200.0
LETTERS = 16
TINTS = {
    "sealed": ("#e6ebf0", "sealed"),
    "out": ("#f6ddd6", "open"),
    "dry": ("#d9e9f5", "dry"),
    "bake": ("#f3ead2", "oven"),
    "reflow": ("#f6ddd6", "reflow"),
}


def draw_floor_clock(events: list[Event], level: str, thickness_mm: float) -> Picture:
    """How the floor clock of a part ran through its history, and where its floor life ends.

    Raises RepairlibError as `judge_exposure` does, and for levels 1 and 6: no table ends their
    floor life.

    >>> from repairlib import demo_path
    >>> from repairlib.heat import read_exposure_log
    >>> events = read_exposure_log(demo_path("switch-chip-history.csv"))
    >>> print(draw_floor_clock(events, "3", 1.0))
    The floor clock of a part of level 3: its floor life is 168 h.
    sealed for 168 h: the clock shows 0 h.
    open for 80 h: the clock shows 80 h.
    dry for 88 h: the clock shows 80 h.
    open for 104 h: the clock shows 184 h.
    """
    used = clock_readings(events, level, thickness_mm)
    life = FLOOR_LIFE.get(level, inf)
    if life == inf:
        wrong = "its floor life has no hour at which it ends"
        raise RepairlibError(f"level {level}", wrong, "2, 2a, 3, 4, 5, 5a")
    first, last = events[0].hour, events[-1].hour
    top = 1.15 * max(life, *used)
    axes = Axes(Scale(first, last, LEFT, RIGHT), Scale(0, top, BOTTOM, TOP), LETTERS)
    canvas = Canvas(WIDTH, HEIGHT)
    said = [f"The floor clock of a part of level {level}: its floor life is {life:g} h."]
    for (one, after), shown in zip(pairwise(events), used[1:], strict=True):
        start, end = axes.x(one.hour), axes.x(after.hour)
        tint, words = TINTS[one.event]
        canvas.rect(start, TOP, end - start, BOTTOM - TOP, tint, pen=1, stroke="#ffffff")
        canvas.text((start + end) / 2, BOTTOM + 42, words, LETTERS, bold=True)
        hours = after.hour - one.hour
        canvas.text((start + end) / 2, BOTTOM + 64, f"{hours:g} h", LETTERS)
        said.append(f"{words} for {hours:g} h: the clock shows {shown:g} h.")
    _frame(canvas, axes, life)
    points = [axes.at((one.hour, shown)) for one, shown in zip(events, used, strict=True)]
    canvas.line(*points, stroke=NEGATIVE, pen=3)
    x, y = points[-1]
    canvas.circle(x, y, 5, NEGATIVE, pen=0)
    canvas.text(x - 10, y - 4, f"{used[-1]:g} h", LETTERS, "end", NEGATIVE, bold=True)
    return canvas.picture("\n".join(said))


def _frame(canvas: Canvas, axes: Axes, life: float) -> None:
    canvas.text(LEFT + 4, 18, "hours used", LETTERS, "start")
    for value in (0, life / 2, life):
        canvas.text(LEFT - 8, axes.y(value), f"{value:g}", LETTERS, "end")
    y = axes.y(life)
    canvas.line((LEFT, y), (RIGHT, y), stroke=POSITIVE, pen=1.6, dash="5 3")
    canvas.text(LEFT + 6, y - 11, f"floor life {life:g} h", LETTERS, "start", POSITIVE, bold=True)
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    days = Scale(0, (axes.x.high - axes.x.low) / 24, LEFT, RIGHT)
    Axes(days, axes.y, LETTERS).ticks(canvas, days.round_values(9, least=1))
    canvas.text(LEFT - 12, BOTTOM + 18, "day", LETTERS, "end")
