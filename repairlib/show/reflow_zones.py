"""A reflow profile cut into its four zones, each with its name: what to look at first."""

from __future__ import annotations

from itertools import pairwise

from repairlib.core.errors import RepairlibError
from repairlib.heat import Profile, ReflowLimits, measure
from repairlib.show.canvas import Canvas
from repairlib.show.picture import Picture
from repairlib.show.reflow_chart import BOTTOM, TOP, WIDTH, axes_for, draw_curve, draw_levels

ZONES = ("1 warm up", "2 preheat", "3 reflow", "4 cool down")
TINTS = ("#eef3f7", "#f3ead2", "#f6ddd6", "#e2eef2")
LETTERS = 16
_ROW = 30.0  # the names of the zones, under the chart


def draw_zones(profile: Profile, limits: ReflowLimits) -> Picture:
    """The profile with its four zones named: warm up, preheat, reflow, cool down.

    Raises RepairlibError for a profile that does not pass through all of them.

    >>> from repairlib.heat import package_limits, read_points
    >>> points = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 400 25"
    >>> print(draw_zones(read_points(points), package_limits("Pb-free", 1.0, 200)))
    A temperature against time in four zones.
    1 warm up: from 0 to 90 s.
    2 preheat: from 90 to 180 s, between 150 and 200 °C.
    3 reflow: from 180 to 285 s; the solder is liquid above 217 °C.
    4 cool down: from 285 to 400 s.
    """
    edges = _edges(profile, limits)
    axes = axes_for(profile, limits)
    canvas = Canvas(WIDTH, BOTTOM + 36 + _ROW)
    for (start, end), tint in zip(pairwise(map(axes.x, edges)), TINTS, strict=True):
        canvas.rect(start, TOP, end - start, BOTTOM - TOP, tint, pen=0)
    draw_levels(canvas, axes, profile, limits)
    draw_curve(canvas, axes, profile)
    for (start, end), tint, name in zip(pairwise(map(axes.x, edges)), TINTS, ZONES, strict=True):
        canvas.line((start, TOP), (start, BOTTOM + 34 + _ROW), pen=1, dash="2 4")
        canvas.rect(start + 1, BOTTOM + 34, end - start - 2, _ROW - 4, tint, pen=0)
        canvas.text((start + end) / 2, BOTTOM + 47, name, LETTERS, bold=True)
    more = (
        "",
        f", between {limits.soak_from:g} and {limits.soak_to:g} °C",
        f"; the solder is liquid above {limits.liquidus:g} °C",
        "",
    )
    said = [
        f"{name}: from {start:g} to {end:g} s{words}."
        for name, (start, end), words in zip(ZONES, pairwise(edges), more, strict=True)
    ]
    return canvas.picture("\n".join(["A temperature against time in four zones.", *said]))


def _edges(profile: Profile, limits: ReflowLimits) -> list[float]:
    """Where each zone begins, and where the last one ends, in seconds."""
    measured = measure(profile, limits)
    soak, down = measured["soak"], measured["ramp_down"]
    if None in (soak.value, down.value):
        wrong = "it has no whole preheat, or never melts the solder and sets it again"
        raise RepairlibError(profile.name, wrong, "a profile that passes through all four zones")
    first, last = float(profile.seconds[0]), float(profile.seconds[-1])
    return [first, *soak.span, down.span[1], last]
