"""A reflow profile as a chart, with the windows that it must keep to drawn in.

Importing this module loads matplotlib, so it is not part of `repairlib.show` itself.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from matplotlib import rc_context
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from repairlib.heat import CANNOT_TELL, FAIL, PASS, Judgement
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET
from repairlib.show.picture import Picture
from repairlib.show.plotting import STYLE, svg_of

MOST_POINTS = 2000  # drawn; a longer log is thinned, its highest readings kept
_COLOURS = {PASS: "#2f6f4f", FAIL: POSITIVE, CANNOT_TELL: "#8a5a00"}
_ALLOWED = "#2f6f4f"


def draw_reflow(judged: Judgement) -> Picture:
    """The profile with its preheat band, liquidus and highest peak, and bars for allowed times.

    Each bar stands under the time that was measured: where it lies, this time may end. Beside the
    chart stand the verdicts in words.

    >>> from repairlib.heat import read_points
    >>> from repairlib.heat import judge_profile
    >>> from repairlib.heat import standard_limits
    >>> profile = read_points("0 25, 90 150, 180 200, 210 217, 250 245, 285 217, 360 25")
    >>> print(draw_reflow(judge_profile(profile, standard_limits("Pb-free", 260), 0)).alt[:61])
    Temperature against time, with the windows of J-STD-020 Pb-fr
    """
    with rc_context(STYLE):
        figure = Figure(figsize=(9.6, 5.4), layout="constrained")
        axes = figure.add_subplot()
        _curve(axes, judged)
        _levels(axes, judged)
        ends = [_window(axes, judged, key) for key in ("soak", "above")]
        _finish(axes, judged, max(ends))
        _verdicts(axes, judged)
        return Picture(svg_of(figure), _in_words(judged))


def _curve(axes: Axes, judged: Judgement) -> None:
    seconds, celsius = _thinned(judged.profile)
    spread = judged.uncertainty
    if spread:
        axes.fill_between(seconds, celsius - spread, celsius + spread, color="#c9d6e3", lw=0)
    axes.plot(seconds, celsius, color=NEGATIVE, linewidth=1.8)
    for doubt in judged.profile.doubts:
        axes.axvspan(doubt.start, doubt.end, facecolor="none", edgecolor=QUIET, hatch="//", lw=0)


def _levels(axes: Axes, judged: Judgement) -> None:
    """The band of the preheat, and lines for liquidus and peaks, named in the left margin."""
    limits = judged.limits
    axes.axhspan(limits.soak_from, limits.soak_to, color="#f3ead2", lw=0, zorder=0)
    lines = [
        (limits.soak_from, "preheat from", INK),
        (limits.soak_to, "preheat to", INK),
        (limits.liquidus, "liquidus", INK),
        (limits.peak[0], "lowest peak", INK),
        (limits.peak[1], "highest peak", POSITIVE),
    ]
    for celsius, words, colour in lines:
        if celsius is None:
            continue
        axes.axhline(celsius, color=colour, linewidth=1, linestyle=(0, (4, 2)))
        down = words == "preheat to"  # liquidus is close above it
        axes.annotate(
            f"{words} {celsius:g} °C",
            (0, celsius),
            (4, -2 if down else 2),
            xycoords=axes.get_yaxis_transform(),
            textcoords="offset points",
            va="top" if down else "bottom",
            fontsize=10,
            color=colour,
        )


def _window(axes: Axes, judged: Judgement, key: str) -> float:
    """The time measured, and under it the bar in which it may end. Returns where the bar ends."""
    one = judged.criteria.get(key)
    if one is None or not one.value:
        return float(judged.profile.seconds[-1])
    level = judged.limits.soak_from if key == "soak" else judged.limits.liquidus
    least, most = one.limits
    begin, height = judged.begins[key], level - 9
    span = [begin, begin + one.value]
    axes.plot(span, [height] * 2, color=INK, linewidth=1.2, marker="|", markersize=10)
    if most is None:
        return span[1]
    allowed = [begin + (least or 0), begin + most]
    axes.plot(allowed, [height - 8] * 2, color=_ALLOWED, linewidth=6, solid_capstyle="butt")
    axes.text(allowed[0], height - 13, "may end here", fontsize=9, color=_ALLOWED, va="top")
    return allowed[1]


def _finish(axes: Axes, judged: Judgement, bars_end: float) -> None:
    seconds, celsius = judged.profile.seconds, judged.profile.celsius
    left, right = float(seconds[0]), max(float(seconds[-1]), bars_end)
    top = max(float(celsius.max()), judged.limits.peak[1] or 0)
    axes.set_xlim(left, right)
    ticks = [tick for tick in axes.get_xticks() if left <= tick <= right]
    axes.set_xlim(left - 0.24 * (right - left), right + 0.01 * (right - left))
    axes.set_xticks(ticks)
    axes.set_ylim(min(float(celsius.min()), 20) - 6, top + 18)
    axes.set_xlabel("time (s)")
    axes.set_ylabel("temperature (°C)")
    axes.grid(True, color="#e3e8ec", linewidth=0.6)
    axes.spines[["top", "right"]].set_visible(False)


def _verdicts(axes: Axes, judged: Judgement) -> None:
    """The verdict on the whole and on each criterion, in words, to the right of the chart."""
    look: dict[str, Any] = {"transform": axes.transAxes, "va": "top"}
    colour = _COLOURS[judged.verdict]
    axes.text(1.02, 1.0, judged.verdict, fontsize=14, fontweight="bold", color=colour, **look)
    for place, one in enumerate(judged.criteria.values()):
        words = f"{one.verdict}: {one.name}\n{one.measured()}\n{one.asked()}"
        colour = _COLOURS[one.verdict]
        axes.text(1.02, 0.91 - 0.131 * place, words, fontsize=10, color=colour, **look)


def _in_words(judged: Judgement) -> str:
    lines = [
        f"Temperature against time, with the windows of {judged.limits.name} drawn in.",
        f"{judged.profile.name}: {judged.verdict}.",
        *(f"{one}." for one in judged.criteria.values()),
        *(f"Hatched: {doubt.why}." for doubt in judged.profile.doubts),
    ]
    return "\n".join(lines)


def _thinned(profile):
    """The points to draw: all, or of a long log the lowest and highest in each small stretch."""
    import numpy as np

    seconds, celsius = profile.seconds, profile.celsius
    if len(seconds) <= MOST_POINTS:
        return seconds, celsius
    edges = np.linspace(0, len(seconds), MOST_POINTS // 2 + 1).astype(int)
    keep = []
    for first, after in pairwise(edges.tolist()):
        piece = celsius[first:after]
        keep += sorted((first + int(piece.argmin()), first + int(piece.argmax())))
    keep = np.unique([0, *keep, len(seconds) - 1])
    return seconds[keep], celsius[keep]
