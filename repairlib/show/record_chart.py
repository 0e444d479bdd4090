"""The work of a bench, month after month: a bar of hours for each, and its jobs in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from repairlib.core.wording import counted
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import INK, NEGATIVE, Canvas
from repairlib.show.picture import Picture

WIDTH = 500.0
LEFT, RIGHT = 96.0, 280.0
STEP, BAR = 28.0, 18.0
BELOW = 34.0  # for the numbers of the axis and what they are
LETTERS = 14
MOST = 12  # months; of more, the last ones are drawn


def draw_work(months: Sequence[Mapping[str, str | int | float]]) -> Picture:
    """The rows of `repairlib.record.per_month` as bars of hours; the last MOST months.

    Beside each bar stand its hours, and how many jobs and parts they were.

    >>> print(draw_work([{"month": "2026-11", "jobs": 2, "hours": 3.5, "parts": 9}]))
    Hours worked in each month that has jobs.
    2026-11: 3.5 h, 2 jobs, 9 parts.
    """
    drawn = months[-MOST:]
    said = ["Hours worked in each month that has jobs."]
    if len(drawn) < len(months):
        said.append(f"The last {MOST} of {len(months)} months.")
    if not drawn:
        said.append("No job is on a card yet.")
    top = 14 + 22.0 * len(said)
    bottom = top + STEP * len(drawn)
    canvas = Canvas(WIDTH, bottom + (BELOW if drawn else 4))
    for at, sentence in enumerate(said):
        canvas.text(16, 18 + 22 * at, sentence, LETTERS, "start", bold=not at)
    most = max([float(one["hours"]) for one in drawn], default=0) or 1
    axes = Axes(Scale(0, most, LEFT, RIGHT), Scale(0, 1, bottom, top))
    for at, one in enumerate(drawn):
        y = top + STEP * (at + 0.5)
        end = axes.x(float(one["hours"]))
        words = f"{one['hours']:g} h, {_many(one, 'job')}, {_many(one, 'part')}"
        canvas.text(LEFT - 8, y, str(one["month"]), LETTERS, "end")
        canvas.rect(LEFT, y - BAR / 2, end - LEFT, BAR, NEGATIVE, pen=0)
        canvas.text(end + 8, y, words, LETTERS, "start")
        said.append(f"{one['month']}: {words}.")
    if drawn:
        canvas.line((LEFT, top), (LEFT, bottom), (RIGHT, bottom), stroke=INK, pen=1.4)
        axes.ticks(canvas, axes.x.round_values(4))
        canvas.text(LEFT - 16, bottom + 18, "month", LETTERS, "end")
        canvas.text(RIGHT + 28, bottom + 18, "hours worked", LETTERS, "start")
    return canvas.picture("\n".join(said))


def _many(row: Mapping[str, str | int | float], name: str) -> str:
    return counted(row[f"{name}s"], name)
