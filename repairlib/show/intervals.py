"""Readings with their uncertainty beside a limit, as bars on one scale: what passes and why.

The verdicts come from the decision rules; this module only draws them.
"""

from __future__ import annotations

import math

from repairlib.core.decide import NON_BINARY, Decision, decide
from repairlib.core.errors import RepairlibError
from repairlib.core.quantity import brief
from repairlib.show.axes import Scale
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET, Canvas, wrapped
from repairlib.show.picture import Picture

WIDTH, LEFT, RIGHT = 500, 118, 340
ROW, TOP = 44, 54
WORDS = 15
MOST_BARS = 12


def draw_intervals(
    bars: list[tuple[str, float, float]],
    limit_low: float | None = None,
    limit_high: float | None = None,
    unit: str = "",
    rule: str = NON_BINARY,
    guard: float = 1.0,
) -> Picture:
    """Draw intervals, each given as (name, low, high), against one limit or two, with verdicts.

    All figures are finite and in the same `unit`. Raises RepairlibError where `decide` does, for an
    infinite end, and for none or more than 12 bars.

    >>> draw_intervals([("C1", 0.4, 0.6), ("C2", 0.9, 1.1)], limit_high=1.0, unit="Ω")
    Limit: at most 1 Ω.
    C1: 400 mΩ to 600 mΩ, pass.
    C2: 900 mΩ to 1.1 Ω, cannot tell.
    """
    if not 1 <= len(bars) <= MOST_BARS:
        raise RepairlibError(len(bars), "not a number of bars that can be drawn", "1 to 12 bars")
    limits = [limit for limit in (limit_low, limit_high) if limit is not None]
    ends = [end for _, low, high in bars for end in (low, high)] + limits
    if not all(map(math.isfinite, ends)):
        raise RepairlibError(ends, "an open end cannot be drawn", "finite numbers")
    decisions = [
        decide(low, high, limit_low, limit_high, rule, guard, unit) for _, low, high in bars
    ]
    low, high = min(ends), max(ends)
    margin = (high - low) * 0.12 or abs(high) * 0.12 or 1.0
    scale = Scale(low - margin, high + margin, LEFT, RIGHT)
    bottom = TOP + ROW * len(bars)
    canvas = Canvas(WIDTH, bottom + 8)
    said = [_draw_limits(canvas, limit_low, limit_high, unit, scale, bottom)]
    for row, ((name, start, end), decision) in enumerate(zip(bars, decisions, strict=True)):
        y = TOP + ROW * (row + 0.5)
        _draw_bar(canvas, scale, name, (start, end), y, decision)
        said.append(f"{name}: {brief(start, unit)} to {brief(end, unit)}, {decision.verdict}.")
    return canvas.picture("\n".join(said))


def _draw_limits(canvas: Canvas, low, high, unit: str, scale: Scale, bottom: float) -> str:
    """The limits as dashed lines with their words; returns them as a sentence."""
    words = []
    # Two limits name themselves to the outer side, so that their words never meet.
    for limit, word, anchor in ((low, "at least", "end"), (high, "at most", "start")):
        if limit is None:
            continue
        x = scale(limit)
        canvas.line((x, TOP - 22), (x, bottom), stroke=POSITIVE, dash="6 5")
        both = low is not None and high is not None
        shift = {"end": 6, "start": -6}[anchor] if both else 0
        text = f"{word} {brief(limit, unit)}"
        canvas.text(
            x + shift, TOP - 36, text, WORDS, anchor if both else "middle", POSITIVE, bold=True
        )
        words.append(text)
    return f"Limit: {' and '.join(words)}."


def _draw_bar(
    canvas: Canvas,
    scale: Scale,
    name: str,
    ends: tuple[float, float],
    y: float,
    decision: Decision,
) -> None:
    lines = wrapped(name, LEFT - 20, WORDS)[:2]
    for row, line in enumerate(lines):
        canvas.text(12, y + 18 * (row - (len(lines) - 1) / 2), line, WORDS, "start")
    scale.line(canvas, y)
    start, end = map(scale, ends)
    bar(canvas, start, end, y)
    canvas.circle((start + end) / 2, y, 5, INK)
    canvas.text(RIGHT + 14, y, decision.verdict, WORDS + 1, "start", INK, bold=True)
    if decision.zone != decision.verdict:
        canvas.text(RIGHT + 14, y + 19, f"({decision.zone})", WORDS - 2, "start", QUIET)


def bar(canvas: Canvas, start: float, end: float, y: float) -> None:
    """What a reading may be: a bar from one place to another, closed at both ends."""
    canvas.line((start, y), (end, y), stroke=NEGATIVE, pen=5)
    for x in (start, end):
        canvas.line((x, y - 9), (x, y + 9), stroke=NEGATIVE, pen=3)
