"""The expected gain of a repair against the chance that it works, with the range and break-even."""

from __future__ import annotations

from math import floor, log10

from repairlib.core.quantity import brief, brief_range
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import NEGATIVE, PAPER, POSITIVE, QUIET, Canvas, text_width
from repairlib.show.picture import Picture
from repairlib.worth import Job, decide_on

WIDTH, HEIGHT = 540.0, 412.0
LEFT, RIGHT, TOP, BOTTOM = 76.0, 516.0, 126.0, 356.0
SIZE = 14.0
_HATCH = 12.0  # between two strokes of the range


def draw_worth(job: Job) -> Picture:
    """Draw the expected gain from a chance of 0 to 100 %, the range hatched, break-even marked.

    >>> print(draw_worth(Job(60, 8, 2, 50, 80, hour_worth=5, name="radio")).alt)
    Expected gain of repairing radio against the chance that it works, a rising line.
    At 0 %: -18 tokens. At 100 %: 42 tokens.
    Your range, hatched: 50 % to 80 %, with an expected gain from 12 tokens to 30 tokens.
    Break-even at 30 %: below it the repair loses, above it gains.
    Decision: repair, gains 12 tokens to 30 tokens at a chance of 50 % to 80 %.
    """
    decision = decide_on(job)
    ends = job.gain(0), job.gain(100)
    axes, step = _axes(*ends)
    canvas = Canvas(WIDTH, HEIGHT)
    _range(canvas, axes, job)
    _frame(canvas, axes, step, job)
    canvas.line(axes.at((0, ends[0])), axes.at((100, ends[1])), stroke=NEGATIVE, pen=3)
    for chance in (job.success_low, job.success_high):
        canvas.circle(*axes.at((chance, job.gain(chance))), 5, NEGATIVE, stroke=PAPER)
    said = [_break_even(canvas, axes, job)]
    canvas.fitted_text(
        WIDTH / 2, 22, [f"{job.name}: {decision.verdict}"], WIDTH - 24, SIZE + 4, bold=True
    )
    lines = decision.reason.replace(" at a chance", "\nat a chance").split("\n")
    canvas.fitted_text(WIDTH / 2, 54, lines, WIDTH - 24, SIZE)
    low, high = (job.money(job.gain(chance)) for chance in (job.success_low, job.success_high))
    alt = [
        f"Expected gain of repairing {job.name} against the chance that it works, a rising line.",
        f"At 0 %: {job.money(ends[0])}. At 100 %: {job.money(ends[1])}.",
        f"Your range, hatched: {_percent(job)}, with an expected gain from {low} to {high}.",
        *said,
        f"Decision: {decision.verdict}, {decision.reason}.",
    ]
    return canvas.picture("\n".join(alt))


def _percent(job: Job) -> str:
    return brief_range(job.success_low, job.success_high, "%")


def _axes(least: float, most: float) -> tuple[Axes, float]:
    """Axes on which both gains and zero lie, and the step between two lines across."""
    least, most = min(least, 0.0), max(most, 0.0)
    span = (most - least) or 1.0
    power = 10 ** floor(log10(span / 5))
    step = next(size * power for size in (1, 2, 5, 10) if size * power * 6 >= span)
    low, high = floor(least / step), -floor(-most / step)
    high += high == low
    return Axes(Scale(0, 100, LEFT, RIGHT), Scale(low * step, high * step, BOTTOM, TOP)), step


def _frame(canvas: Canvas, axes: Axes, step: float, job: Job) -> None:
    lines = round((axes.y.high - axes.y.low) / step)
    for line in range(lines + 1):
        value = axes.y.low + line * step
        axes.x.line(canvas, axes.y(value))
        words = [brief(float(f"{value / step:.0f}") * step, "")]
        canvas.fitted_text(LEFT - 8, axes.y(value), words, LEFT - 12, SIZE, anchor="end")
    axes.ticks(canvas, range(0, 101, 10))
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    zero = axes.y(0)
    canvas.line((LEFT, zero), (RIGHT, zero), pen=2)
    canvas.text((LEFT + RIGHT) / 2, BOTTOM + 44, "chance that it works (%)", SIZE)
    canvas.text(12, TOP - 40, f"expected gain ({job.currency})", SIZE, "start")


def _range(canvas: Canvas, axes: Axes, job: Job) -> None:
    """The range of the chance: slanting strokes between two lines, and words above them."""
    left, right = axes.x(job.success_low), axes.x(job.success_high)
    at = left - (BOTTOM - TOP)
    while at < right:  # a stroke rises from (at, BOTTOM) to the right, cut to the range
        start, end = max(at, left), min(at + BOTTOM - TOP, right)
        if start < end:
            points = [(x, BOTTOM - (x - at)) for x in (start, end)]
            canvas.line(*points, stroke="#b9c6d2", pen=1)
        at += _HATCH
    for x in (left, right):
        canvas.line((x, TOP - 8), (x, BOTTOM), stroke=QUIET, pen=1.4)
    words = f"your range: {_percent(job)}"
    half = text_width(words, SIZE) / 2
    middle = min(max((left + right) / 2, LEFT + half), RIGHT - half)
    canvas.text(middle, TOP - 20, words, SIZE)


def _break_even(canvas: Canvas, axes: Axes, job: Job) -> str:
    """Draw the point of break-even with its words, or that there is none; returns a sentence."""
    chance = job.break_even_chance()
    zero = axes.y(0)
    if chance is None or chance > 100:
        words = "no chance breaks even" if chance else "the chance changes nothing"
        canvas.text(RIGHT - 6, zero - 14, words, SIZE, "end", POSITIVE, bold=True)
        return f"{words.capitalize()}."
    x = axes.x(chance)
    percent = brief(float(f"{chance:.3g}"), "%")
    canvas.line((x, zero), (x, BOTTOM), stroke=POSITIVE, dash="6 5")
    canvas.polygon([(x - 8, zero), (x, zero - 8), (x + 8, zero), (x, zero + 8)], PAPER)
    words = f"break-even {percent}"
    wide = text_width(words, SIZE, bold=True) + 12
    # The line rises: below it there is room to the right, above it to the left.
    at, y = (x + 14, zero + 20) if x + 14 + wide < RIGHT else (x - 14 - wide, zero - 20)
    if y + 14 > BOTTOM:  # hardly a loss anywhere: above zero, far enough from the line
        at, y = x + 90, zero - 20
    canvas.rect(at, y - 12, wide, 24, PAPER, stroke=POSITIVE, pen=1.4)
    canvas.text(at + wide / 2, y, words, SIZE, fill=POSITIVE, bold=True)
    return f"Break-even at {percent}: below it the repair loses, above it gains."
