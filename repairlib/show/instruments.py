"""The instruments of the practice bench as they stand after a reading: display, screen, supply."""

from __future__ import annotations

from repairlib.bench import Reading, Trace
from repairlib.core.quantity import brief
from repairlib.show.canvas import INK, PAPER, Canvas, Point
from repairlib.show.picture import Picture
from repairlib.show.tools import BLACK, CASE, CASE_EDGE, DISPLAY, RED

WIDE = 300.0
LETTERS = 15.0
SCREEN, GRID, BEAM = "#14202b", "#3c5468", "#ffd166"
LEVELS, DOWN, ACROSS = 256, 8, 10  # of the oscilloscope's screen: levels, divisions
DIVISION = 27.0


def draw_instrument(reading: Reading) -> Picture:
    """Draw the instrument that gave a reading, with what it shows and where its probes are.

    >>> draw_instrument(Reading("multimeter, V dc", ("out", "0"), "9.01 V", 9.01, "V"))
    Multimeter, V dc: 9.01 V. Red probe on out, black on 0.
    """
    if reading.trace:
        return _oscilloscope(reading, reading.trace)
    lines = _lines(reading.shown)
    high = 92.0 + 26 * (len(lines) - 1)
    canvas = Canvas(WIDE, high + 34)
    canvas.rect(4, 4, WIDE - 8, high + 26, CASE_EDGE, round=12)
    canvas.rect(10, 10, WIDE - 20, high + 14, CASE, round=8)
    canvas.fitted_text(WIDE / 2, 27, [reading.instrument], WIDE - 40, LETTERS + 1, bold=True)
    canvas.rect(20, 42, WIDE - 40, high - 42, DISPLAY, round=4)
    middle = 42 + (high - 42) / 2
    canvas.fitted_text(WIDE / 2, middle, lines, WIDE - 56, 30, bold=True)
    _draw_probes(canvas, reading, high + 12)
    return canvas.picture(_in_words(reading))


def _lines(shown: str) -> list[str]:
    """A long display in several lines, as a supply has volts, amps and what it holds."""
    return shown.split(", ")


def _draw_probes(canvas: Canvas, reading: Reading, y: float) -> None:
    one, other = reading.points
    if not other:
        canvas.fitted_text(WIDE / 2, y, [f"at {one}"], WIDE - 40, LETTERS)
        return
    for x, colour, sign, where in ((34, RED, "+", one), (WIDE / 2 + 20, BLACK, "−", other)):
        canvas.circle(x, y, 9, colour, stroke=PAPER, pen=1.5)
        canvas.text(x, y, sign, LETTERS + 2, fill=PAPER, bold=True)
        room = WIDE / 2 - 50
        canvas.text(x + 15, y, _short(where, room), LETTERS, "start", INK)


def _short(words: str, room: float) -> str:
    """The name of a point, cut where it has no room."""
    fits = int(room / (0.64 * LETTERS))
    return words if len(words) <= fits else f"{words[: fits - 1]}…"


def _oscilloscope(reading: Reading, trace: Trace) -> Picture:
    wide, high = ACROSS * DIVISION, DOWN * DIVISION
    said = _lines(reading.shown)
    canvas = Canvas(WIDE, high + 102 + 19 * len(said))
    canvas.rect(4, 4, WIDE - 8, high + 94 + 19 * len(said), CASE_EDGE, round=12)
    canvas.rect(10, 10, WIDE - 20, high + 82 + 19 * len(said), "#c9ced3", round=8)
    canvas.text(WIDE / 2, 26, f"{reading.instrument}, {trace.coupling}", LETTERS + 1, bold=True)
    with canvas.at((WIDE - wide) / 2, 40):
        canvas.rect(0, 0, wide, high, SCREEN, round=3)
        for column in range(1, ACROSS):
            x = column * DIVISION
            canvas.line((x, 0), (x, high), stroke=GRID, pen=1)
        for row in range(1, DOWN):
            canvas.line((0, row * DIVISION), (wide, row * DIVISION), stroke=GRID, pen=1)
        zero = high * (1 - trace.zero / LEVELS)
        canvas.line((0, zero), (wide, zero), stroke=PAPER, pen=1, dash="5 4")
        canvas.line(*_beam(trace, wide, high), stroke=BEAM, pen=2)
    foot = 40 + high
    canvas.fitted_text(
        WIDE / 2,
        foot + 16,
        [f"{brief(trace.per_division, 'V')}, {brief(trace.sweep, 's')} per division"],
        WIDE - 40,
        LETTERS,
    )
    for row, line in enumerate(said):
        canvas.text(WIDE / 2, foot + 35 + 19 * row, line, LETTERS, bold=True)
    _draw_probes(canvas, reading, foot + 36 + 19 * len(said))
    return canvas.picture(
        f"{_in_words(reading)} The screen: {brief(trace.per_division, 'V')} and "
        f"{brief(trace.sweep, 's')} per division, coupled {trace.coupling}."
    )


def _beam(trace: Trace, wide: float, high: float) -> list[Point]:
    step = wide / max(1, len(trace.levels) - 1)
    return [(step * at, high * (1 - level / LEVELS)) for at, level in enumerate(trace.levels)]


def _in_words(reading: Reading) -> str:
    one, other = reading.points
    where = f"Red probe on {one}, black on {other}." if other else f"At {one}."
    named = f"{reading.instrument[:1].upper()}{reading.instrument[1:]}"
    note = f" ({reading.note})" if reading.note else ""
    return f"{named}: {reading.shown}{note}. {where}"
