"""An attempt as a drawn time line: what fed the set, each move by its kind, the doubt left.

A kind has a shape of its own, what fed the set is written, and what was unsafe carries a sign.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby

from repairlib.bench import MOMENT_KINDS, Moment, is_off
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture

ROW, STEP = 20, 22.0  # moves in a row, and the room for each
LEFT, WIDTH = 62.0, 516.0
HIGH = 176.0  # of a row
FED, MARK, NUMBER, TOP, FLOOR, CLOCK = 14.0, 50.0, 72.0, 88.0, 132.0, 148.0  # down a row
LETTERS = 13.0
OFF_FILL, FED_FILL, HELD_FILL = "#ffffff", "#d7dde3", "#eef1f4"
BAR = "#9db4c9"


def draw_attempt(moments: Sequence[Moment]) -> Picture:
    """The time line of an attempt that was replayed; without moves it says so.

    >>> from repairlib.bench import Task, demo_set, replayed, walked
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> print(draw_attempt(replayed(walked(task, ["plug in", "volts out 0", "unplug"]))))
    3 moves in 1 min, 0 tokens.
    Fed by own plug: moves 1 to 2. Off: move 3.
    Measured: move 2.
    Power, load, time: moves 1, 3.
    Doubt about the fault: 3.8 bits at first, 3.1 at the end.
    """
    rows = [moments[at : at + ROW] for at in range(0, len(moments), ROW)]
    kinds = [kind for kind in MOMENT_KINDS if any(one.kind == kind for one in moments)]
    canvas = Canvas(WIDTH, HIGH * max(len(rows), 1) + 22 * ((len(kinds) + 2) // 2) + 12)
    most = max([one.cut.before for one in moments if one.cut] or [1.0])
    bits = most
    for place, row in enumerate(rows):
        with canvas.at(0, place * HIGH):
            bits = _row(canvas, row, bits, most)
    with canvas.at(0, HIGH * len(rows) + 8):
        _legend(canvas, kinds, any(one.unsafe for one in moments))
    return canvas.picture(in_words(moments))


def in_words(moments: Sequence[Moment]) -> str:
    """What the time line shows, in sentences."""
    if not moments:
        return "Nothing was done yet."
    last = moments[-1]
    minutes = max(round(last.clock / 60), 1)
    said = [f"{len(moments)} moves in {minutes} min, {last.spent:.3g} tokens."]
    fed = []
    for feed, group in groupby(moments, key=lambda one: "" if is_off(one) else one.fed):
        some = list(group)
        fed.append(f"{f'Fed by {feed}' if feed else 'Off'}: {_numbers(some)}.")
    said.append(" ".join(fed))
    for kind in MOMENT_KINDS:
        some = [one for one in moments if one.kind == kind]
        if some:
            said.append(f"{kind[0].upper()}{kind[1:]}: {_numbers(some)}.")
    cuts = [one.cut for one in moments if one.cut]
    if cuts and cuts[0].before > 0:
        said.append(
            f"Doubt about the fault: {cuts[0].before:.1f} bits at first, {cuts[-1].after:.1f} at "
            "the end."
        )
    said += (f"Unsafe, move {one.number}: {one.unsafe}" for one in moments if one.unsafe)
    return "\n".join(said)


def _numbers(some: Sequence[Moment]) -> str:
    """The moves by their numbers, runs as `3 to 7`."""
    runs: list[list[int]] = []
    for one in some:
        if runs and one.number == runs[-1][-1] + 1:
            runs[-1].append(one.number)
        else:
            runs.append([one.number])
    words = [f"{run[0]} to {run[-1]}" if len(run) > 1 else str(run[0]) for run in runs]
    return f"{'move' if len(some) == 1 else 'moves'} {', '.join(words)}"


def _row(canvas: Canvas, row: Sequence[Moment], bits: float, most: float) -> float:
    """One row of moves; gives the bits of doubt that are left at its end."""
    for words, y in (("fed by", FED), ("move", MARK), ("doubt", (TOP + FLOOR) / 2), ("min", CLOCK)):
        canvas.text(LEFT - 8, y, words, LETTERS, "end", QUIET)
    _fed(canvas, row)
    canvas.line((LEFT, FLOOR), (LEFT + STEP * len(row), FLOOR), stroke=QUIET, pen=1)
    for place, one in enumerate(row):
        x = LEFT + STEP * (place + 0.5)
        bits = one.cut.after if one.cut else bits
        if most > 0:
            high = (FLOOR - TOP) * bits / most
            canvas.rect(x - 8, FLOOR - high, 16, high, BAR, pen=1, stroke=NEGATIVE)
        MARKS[one.kind](canvas, x)
        if one.unsafe:
            canvas.text(x, MARK - 18, "⚠", 15, fill=POSITIVE, bold=True)
        canvas.text(x, NUMBER, str(one.number), 12)
        if place % 4 == 3 or place == len(row) - 1:
            canvas.text(x, CLOCK, f"{one.clock / 60:.3g}", 12, fill=QUIET)
    return bits


def _fed(canvas: Canvas, row: Sequence[Moment]) -> None:
    at = 0
    for feed, group in groupby(row, key=lambda one: one.fed):
        some = list(group)
        wide = STEP * len(some)
        fill = OFF_FILL if is_off(some[0]) else FED_FILL
        dash = {} if is_off(some[0]) or feed == "own plug" else {"dash": "4 3"}
        canvas.rect(LEFT + STEP * at, FED - 9, wide, 18, fill, pen=1.2, stroke=QUIET, **dash)
        words = next((w for w in (feed, SHORT.get(feed, "")) if len(w) * 7.4 < wide), "")
        if words:
            canvas.text(LEFT + STEP * at + wide / 2, FED, words, 12)
        at += len(some)


SHORT = {"own plug": "plug", "series lamp": "lamp", "bench supply": "supply"}


def _legend(canvas: Canvas, kinds: Sequence[str], unsafe: bool) -> None:
    for place, kind in enumerate(kinds):
        x, y = 24 + 250 * (place % 2), 10 + 22 * (place // 2)
        with canvas.at(0, y - MARK):
            MARKS[kind](canvas, x)
        canvas.text(x + 18, y, kind, LETTERS, "start")
    if unsafe:
        x, y = 24 + 250 * (len(kinds) % 2), 10 + 22 * (len(kinds) // 2)
        canvas.text(x, y, "⚠", 15, fill=POSITIVE, bold=True)
        canvas.text(x + 18, y, "unsafe", LETTERS, "start")


def _circle(canvas: Canvas, x: float) -> None:
    canvas.circle(x, MARK, 6.5, "#ffffff", stroke=NEGATIVE, pen=2.2)


def _diamond(canvas: Canvas, x: float) -> None:
    corners = [(x, MARK - 8), (x + 8, MARK), (x, MARK + 8), (x - 8, MARK)]
    canvas.polygon(corners, "#ffffff", stroke=INK, pen=2)


def _square(canvas: Canvas, x: float) -> None:
    canvas.rect(x - 7, MARK - 7, 14, 14, INK, pen=0)


def _dash(canvas: Canvas, x: float) -> None:
    canvas.line((x - 6, MARK), (x + 6, MARK), stroke=QUIET, pen=3)


def _lines(canvas: Canvas, x: float) -> None:
    for y in (-5, 0, 5):
        canvas.line((x - 7, MARK + y), (x + 7, MARK + y), stroke=INK, pen=1.6)


def _flag(canvas: Canvas, x: float) -> None:
    canvas.line((x - 5, MARK - 8), (x - 5, MARK + 8), stroke=INK, pen=2)
    canvas.polygon([(x - 5, MARK - 8), (x + 7, MARK - 4), (x - 5, MARK)], INK, pen=0)


MARKS: dict[str, Callable[[Canvas, float], None]] = dict(
    zip(MOMENT_KINDS, (_circle, _diamond, _square, _dash, _lines, _flag), strict=True)
)
