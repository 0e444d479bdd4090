"""The volts of a small supply over two cycles of mains: with a fault, beside the sound one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from repairlib.circuits import SOUND, look_at, symptoms_of, waves_of
from repairlib.power_up import windows
from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import (
    INK,
    NEGATIVE,
    PAPER,
    POSITIVE,
    QUIET,
    Canvas,
    Point,
    text_width,
)
from repairlib.show.picture import Picture

WIDTH, HEIGHT = 500.0, 330.0
LEFT, RIGHT, TOP, BOTTOM = 46.0, 380.0, 46.0, 274.0
LETTERS = 15.0
MOST = 12.0  # V at the top
BAND = "#dcebdd"
CYCLES = 2


def draw_rail(fault: str = SOUND, name: str = "") -> Picture:
    """Draw reservoir and output of the supply with that fault, and the sound reservoir, dashed.

    With a `name`, that stands above and the fault is not told, as in a question. Raises
    RepairlibError for a fault that is not known.

    >>> print(draw_rail("one diode open"))
    Volts of a small supply against time, over two cycles of 50 Hz mains.
    Sound, dashed: the reservoir goes from 9.37 V to 10.51 V, 100 times a second.
    With this fault, one diode open: from 7.78 V to 10.34 V, 50 times a second.
    The output behind the regulator: from 5.00 V to 5.00 V. Its window, 4.75 V to 5.25 V, is a band.
    Symptoms: ripple at mains.
    """
    canvas = Canvas(WIDTH, HEIGHT)
    sound, now = waves_of(SOUND), waves_of(fault)
    window = windows()["+5 V"]
    axes = Axes(Scale(0, 1000 * CYCLES * sound.seconds[-1], LEFT, RIGHT), _volts(), LETTERS)
    high, low = axes.y(window.high), axes.y(window.low)
    canvas.rect(LEFT, high, RIGHT - LEFT, low - high, BAND, pen=0)
    axes.grid(canvas, range(0, int(MOST) + 1, 2))
    axes.ticks(canvas, range(0, 41, 10))
    canvas.line((LEFT, TOP), (LEFT, BOTTOM), (RIGHT, BOTTOM), pen=1.4)
    canvas.text(LEFT - 8, TOP - 22, "V", LETTERS, "end")
    canvas.text((LEFT + RIGHT) / 2, BOTTOM + 42, "time (ms)", LETTERS)
    lines: list[tuple[str, str, Any, Any, dict[str, Any]]] = [
        ("sound reservoir", QUIET, sound.seconds, sound.volts["rail"], {"dash": "6 5", "pen": 2}),
        ("output", POSITIVE, now.seconds, now.volts["out"], {"pen": 2}),
    ]
    if fault != SOUND:
        lines.append(("reservoir now", NEGATIVE, now.seconds, now.volts["rail"], {"pen": 3}))
    for _, ink, seconds, volts, style in lines:
        canvas.line(*_points(axes, seconds, volts), stroke=ink, **style)
    _names(canvas, axes, [(name, ink, float(volts[-1])) for name, ink, _, volts, _ in lines])
    canvas.text(LEFT + 4, TOP - 22, name or fault, LETTERS + 1, "start", bold=True)
    return canvas.picture(_in_words(fault, name))


def _volts() -> Scale:
    return Scale(0, MOST, BOTTOM, TOP)


def _points(axes: Axes, seconds: Sequence[float], volts: Sequence[float]) -> list[Point]:
    """Every fourth step, and each turn of the line, once for each cycle."""
    end = float(seconds[-1])
    one = [(1000 * float(t), float(v)) for t, v in zip(seconds, volts, strict=True)][3::4]
    return [axes.at((x + 1000 * end * turn, y)) for turn in range(CYCLES) for x, y in one]


def _names(canvas: Canvas, axes: Axes, named: Iterable[tuple[str, str, float]]) -> None:
    """The name of each line at its right end, moved apart where two would touch."""
    before = BOTTOM + LETTERS
    for name, ink, volts in sorted(named, key=lambda one: one[2]):
        y = min(axes.y(volts), before - LETTERS - 4)
        wide = text_width(name, LETTERS)
        canvas.rect(RIGHT + 6, y - 9, wide, 18, PAPER, pen=0)
        canvas.text(RIGHT + 6, y, name, LETTERS, "start", ink or INK)
        before = y


def _in_words(fault: str, name: str) -> str:
    sound, now, window = look_at(SOUND), look_at(fault), windows()["+5 V"]
    lines = [
        "Volts of a small supply against time, over two cycles of 50 Hz mains.",
        f"Sound, dashed: the reservoir goes {_span(SOUND)}, {sound.hertz:.0f} times a second.",
        f"{name or f'With this fault, {fault}'}: {_span(fault)}, {now.hertz:.0f} times a second.",
        f"The output behind the regulator: from {now.low:.2f} V to {now.high:.2f} V. Its window, "
        f"{window.low:.2f} V to {window.high:.2f} V, is a band.",
        f"Symptoms: {', '.join(symptoms_of(fault)) or 'none'}.",
    ]
    if fault == SOUND:
        del lines[2]
    if name:
        lines.pop()
    return "\n".join(lines)


def _span(fault: str) -> str:
    rail = waves_of(fault).volts["rail"]
    return f"from {abs(rail.min()):.2f} V to {rail.max():.2f} V"
