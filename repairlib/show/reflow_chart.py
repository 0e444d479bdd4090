"""A reflow profile as a chart, with the windows that it must keep to drawn in.

Drawn on a Canvas, not with matplotlib: a panel draws it again at every change. It is small, so that
its letters can be read beside a panel, in a question and on a phone.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from repairlib.core.html import sign_of
from repairlib.heat import CANNOT_TELL, FAIL, PASS, Criterion, Judgement, Profile, ReflowLimits
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import INK, NEGATIVE, PAPER, POSITIVE, Canvas, Point, text_width
from repairlib.show.picture import Picture

MOST_POINTS = 2000  # drawn; a longer log is thinned, its highest readings kept
WIDTH = 500.0
LEFT, RIGHT, TOP, BOTTOM = 56.0, 484.0, 34.0, 244.0
LETTERS = 16
LANE = 47.0  # one time measured, in words and as a bar
BAND = "#f3ead2"
COLOURS = {PASS: "#2f6f4f", FAIL: POSITIVE, CANNOT_TELL: "#8a5a00"}
_ALLOWED = "#2f6f4f"
_GAP = 17.0  # between two numbers at the axis


def draw_reflow(judged: Judgement) -> Picture:
    """The profile with its preheat band, liquidus and highest peak; under it the times measured.

    Each time is a black bar from its begin to its end. It may end where the green bar lies.

    >>> from repairlib.heat import read_points
    >>> from repairlib.heat import judge_profile
    >>> from repairlib.heat import standard_limits
    >>> profile = read_points("0 25, 90 150, 180 200, 210 217, 250 245, 285 217, 360 25")
    >>> print(draw_reflow(judge_profile(profile, standard_limits("Pb-free", 260), 0)).alt[:61])
    Temperature against time, with the windows of J-STD-020 Pb-fr
    """
    lanes = [key for key in ("soak", "above") if key in judged.criteria]
    canvas = Canvas(WIDTH, BOTTOM + 32 + LANE * len(lanes))
    most = [judged.begins[key] + (judged.criteria[key].limits[1] or 0) for key in lanes]
    axes = axes_for(judged.profile, judged.limits, *(one for one in most if one == one))
    draw_levels(canvas, axes, judged.profile, judged.limits)
    _spread(canvas, axes, judged)
    draw_curve(canvas, axes, judged.profile)
    words = f"{sign_of(judged.verdict)} {judged.verdict}"
    canvas.text(RIGHT, 16, words, 18, "end", COLOURS[judged.verdict], bold=True)
    canvas.text(LEFT + 6, 16, judged.profile.name, LETTERS, "start", bold=True)
    _peak(canvas, axes, judged)
    for place, key in enumerate(lanes):
        _lane(canvas, axes, judged, key, BOTTOM + 44 + LANE * place)
    return canvas.picture(_in_words(judged))


def axes_for(profile: Profile, limits: ReflowLimits, *seconds: float) -> Axes:
    """The axes that hold a profile, its highest allowed peak, and those seconds."""
    times, celsius = profile.seconds, profile.celsius
    end = max(float(times[-1]), *seconds, float(times[0]) + 1)
    top = max(float(celsius.max()), limits.peak[1] or 0) + 16
    low = min(float(celsius.min()), 20.0)
    return Axes(Scale(float(times[0]), end, LEFT, RIGHT), Scale(low, top, BOTTOM, TOP), LETTERS)


def draw_levels(canvas: Canvas, axes: Axes, profile: Profile, limits: ReflowLimits) -> None:
    """The frame, the band of the preheat, and a line with its name at each temperature asked for.

    Stretches of which nothing is known are grey, with a question mark.
    """
    low, high = axes.y(limits.soak_from), axes.y(limits.soak_to)
    canvas.rect(LEFT, high, RIGHT - LEFT, low - high, BAND, pen=0)
    _doubts(canvas, axes, profile)
    canvas.text(LEFT - 8, 16, "°C", LETTERS, "end")
    names = [
        (limits.liquidus, "liquidus", INK),
        (limits.peak[0], "lowest peak", INK),
        (limits.peak[1], "highest peak", POSITIVE),
    ]
    levels = [(celsius, words, ink) for celsius, words, ink in names if celsius is not None]
    taken = _points(axes, profile) + _along(*_hottest(axes, profile), 48)
    for celsius, words, ink in levels:
        y = axes.y(celsius)
        canvas.line((LEFT, y), (RIGHT, y), stroke=ink, pen=1.2, dash="5 3")
        _name(canvas, y - 10, words, ink, taken)
    _name(canvas, (low + high) / 2, "preheat", INK, taken)
    written = [celsius for celsius, _, _ in levels] + [limits.soak_from, limits.soak_to]
    written += [one for one in (50, 100) if all(abs(one - other) > 25 for other in written)]
    _numbers(canvas, axes, written)
    axes.ticks(canvas, axes.x.round_values(7))
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    canvas.text(LEFT - 16, BOTTOM + 18, "s", LETTERS, "end")


def draw_curve(canvas: Canvas, axes: Axes, profile: Profile) -> None:
    """The temperature against time."""
    canvas.line(*_points(axes, profile), stroke=NEGATIVE, pen=2.4)


def _points(axes: Axes, profile: Profile) -> list[Point]:
    return [axes.at(point) for point in zip(*_thinned(profile), strict=True)]


def _doubts(canvas: Canvas, axes: Axes, profile: Profile) -> None:
    for doubt in profile.doubts:
        left, right = axes.x(max(doubt.start, axes.x.low)), axes.x(min(doubt.end, axes.x.high))
        canvas.rect(left, TOP, max(right - left, 2), BOTTOM - TOP, "#dfe3e7", pen=0)
        canvas.text((left + right) / 2, BOTTOM - 16, "?", LETTERS, bold=True)


def _name(canvas: Canvas, y: float, words: str, ink: str, taken: list[Point]) -> None:
    """The name of a level at that end of its line where less is taken; then it is taken too."""
    width = text_width(words, LETTERS)

    def crowded(start: float) -> int:
        return sum(
            start - 4 < x < start + width + 4 and abs(height - y) < 13 for x, height in taken
        )

    start = min((LEFT + 6, RIGHT - width - 4, LEFT + 110), key=crowded)
    canvas.text(start, y, words, LETTERS, "start", ink)
    taken += _along(start, y, width)


def _along(x: float, y: float, width: float) -> list[Point]:
    """Points along words that begin there."""
    return [(x + part * width / 20, y) for part in range(21)]


def _hottest(axes: Axes, profile: Profile) -> Point:
    """The last of the hottest points."""
    place = len(profile.celsius) - 1 - int(profile.celsius[::-1].argmax())
    return axes.at((float(profile.seconds[place]), float(profile.celsius[place])))


def _numbers(canvas: Canvas, axes: Axes, celsius: Iterable[float]) -> None:
    """The temperatures at the axis, moved apart where two would touch."""
    before = BOTTOM + _GAP
    for one in sorted(set(celsius)):
        before = min(axes.y(one), before - _GAP)
        canvas.text(LEFT - 8, before, f"{one:g}", LETTERS, "end")


def _spread(canvas: Canvas, axes: Axes, judged: Judgement) -> None:
    """How far the sensor may be off, as a band round the curve."""
    if not judged.uncertainty:
        return
    seconds, celsius = _thinned(judged.profile)
    upper = [axes.at(one) for one in zip(seconds, celsius + judged.uncertainty, strict=True)]
    lower = [axes.at(one) for one in zip(seconds, celsius - judged.uncertainty, strict=True)]
    canvas.polygon([*upper, *reversed(lower)], "#c9d6e3", pen=0)


def _peak(canvas: Canvas, axes: Axes, judged: Judgement) -> None:
    """A dot at the hottest point and its figure to the right, where the curve has fallen."""
    x, y = _hottest(axes, judged.profile)
    canvas.circle(x, y, 4, NEGATIVE, pen=0)
    words = f"{judged.profile.celsius.max():.0f}"
    canvas.rect(x + 8, y - 9, text_width(words, LETTERS, bold=True), 18, PAPER, pen=0)
    canvas.text(x + 8, y, words, LETTERS, "start", NEGATIVE, bold=True)


def _lane(canvas: Canvas, axes: Axes, judged: Judgement, key: str, y: float) -> None:
    """One time: its verdict in words, the bar of what was measured, and where it may end."""
    one = judged.criteria[key]
    canvas.text(8, y, _lane_words(one), LETTERS, "start", COLOURS[one.verdict], bold=True)
    if not one.value:
        return
    begin, high = judged.begins[key], y + 20
    least, most = one.limits
    if most is not None:
        start, end = axes.x(begin + (least or 0)), axes.x(begin + most)
        canvas.rect(start, high - 6, end - start, 12, "#bcdcc9", pen=1.4, stroke=_ALLOWED)
    start, end = axes.x(begin), axes.x(begin + one.value)
    canvas.line((start, high), (end, high), pen=3)
    for x in (start, end):
        canvas.line((x, high - 8), (x, high + 8), pen=2)


def _lane_words(one: Criterion) -> str:
    value = "not found" if one.value is None else f"{one.value:.0f} {one.unit}"
    name = one.name.replace(" to ", "–") if one.name.startswith("preheat") else one.name
    return f"{sign_of(one.verdict)} {name}: {value}; {one.asked()}"


def _in_words(judged: Judgement) -> str:
    lines = [
        f"Temperature against time, with the windows of {judged.limits.name} drawn in.",
        f"{judged.profile.name}: {judged.verdict}.",
        *(f"{one}." for one in judged.criteria.values()),
        *(f"Grey, with a question mark: {doubt.why}." for doubt in judged.profile.doubts),
    ]
    return "\n".join(lines)


def _thinned(profile: Profile):
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
    kept = np.unique([0, *keep, len(seconds) - 1])
    return seconds[kept], celsius[kept]
