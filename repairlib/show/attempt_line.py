"""An attempt as a drawn time line: what fed the set, each move by its kind, the doubt left.

A kind has a shape of its own, what fed the set is written, and what was unsafe carries a sign.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import groupby

from repairlib.bench import MOMENT_KINDS, Moment, is_off
from repairlib.show.canvas import INK, NEGATIVE, POSITIVE, QUIET, Canvas
from repairlib.show.picture import Picture, Pieces

ROW, STEP = 12, 22.0  # moves in a row, and the room for each
LEFT, WIDTH = 58.0, 330.0  # of a row: as wide as a phone
FED, MARK, NUMBER, TOP, FLOOR = 14.0, 52.0, 74.0, 88.0, 130.0  # down a row
LETTERS, KEY = 12.0, 22.0
OFF_FILL, FED_FILL, BAR = "#ffffff", "#d7dde3", "#9db4c9"
SHORT = {"own plug": "plug", "series lamp": "lamp", "bench supply": "supply"}


def draw_attempt(moments: Sequence[Moment]) -> Picture:
    """The time line of an attempt that was replayed; where nothing was done it says so.

    >>> from repairlib.bench import Task, demo_set, replayed, walked
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> print(draw_attempt(replayed(walked(task, ["plug in", "wait 30 s", "unplug"]))))
    3 moves in 45 s, 0 tokens.
    Fed by own plug: moves 1 to 2. Off: move 3.
    Power, load, time: moves 1 to 3.
    """
    rows = [moments[at : at + ROW] for at in range(0, len(moments), ROW)]
    kinds = [kind for kind in MOMENT_KINDS if any(one.kind == kind for one in moments)]
    unsafe = any(one.unsafe for one in moments)
    most = max([one.cut.before for one in moments if one.cut] or [0.0])
    step = (FLOOR if most else TOP) + 36
    key_high = KEY * (len(kinds) + unsafe) + 10
    whole = Canvas(WIDTH, step * len(rows) + key_high)
    pieces, bits = [], most
    for place, row in enumerate(rows):
        alone = Canvas(WIDTH, step)
        _row(alone, row, bits, most)
        pieces.append(alone.picture(in_words(row)))
        with whole.at(0, step * place):
            bits = _row(whole, row, bits, most)
    key = Canvas(WIDTH, key_high)
    _key(key, kinds, unsafe)
    with whole.at(0, step * len(rows)):
        _key(whole, kinds, unsafe)
    said = in_words(moments)
    return Pieces(whole.picture(said).svg, said, [*pieces, key.picture("What the signs mean.")])


def in_words(moments: Sequence[Moment]) -> str:
    """What the time line shows, in sentences."""
    if not moments:
        return "Nothing was done yet."
    last, many = moments[-1], len(moments)
    gone = f"{many} {'move' if many == 1 else 'moves'}"
    said = [f"{gone} in {_clock(last.clock)}, {last.spent:.3g} tokens."]
    fed = []
    for feed, group in groupby(moments, key=lambda one: "" if is_off(one) else one.fed):
        fed.append(f"{f'Fed by {feed}' if feed else 'Off'}: {_numbers(list(group))}.")
    said.append(" ".join(fed))
    for kind in MOMENT_KINDS:
        some = [one for one in moments if one.kind == kind]
        if some:
            said.append(f"{kind[0].upper()}{kind[1:]}: {_numbers(some)}.")
    cuts = [one.cut for one in moments if one.cut]
    if cuts:
        before, after = cuts[0].before, cuts[-1].after
        said.append(f"Doubt about the fault: {before:.1f} bits before, {after:.1f} after.")
    said += (f"Unsafe, move {one.number}: {one.unsafe}" for one in moments if one.unsafe)
    return "\n".join(said)


def _clock(seconds: float) -> str:
    return f"{seconds:.0f} s" if seconds < 60 else f"{seconds / 60:.0f} min"


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
    clock = (FLOOR if most else TOP) + 12
    names = [("fed by", FED), ("move", MARK), ("min", clock)]
    names += [("doubt", (TOP + FLOOR) / 2)] if most else []
    for words, y in names:
        canvas.text(LEFT - 8, y, words, LETTERS, "end", QUIET)
    _fed(canvas, row)
    for place, one in enumerate(row):
        x = LEFT + STEP * (place + 0.5)
        bits = one.cut.after if one.cut else bits
        if most:
            high = (FLOOR - TOP) * bits / most
            canvas.rect(x - 8, FLOOR - high, 16, high, BAR, pen=1, stroke=NEGATIVE)
        MARKS[one.kind](canvas, x)
        if one.unsafe:
            canvas.text(x, MARK - 18, "⚠", 14, fill=POSITIVE, bold=True)
        canvas.text(x, NUMBER, str(one.number), LETTERS)
        if place % 3 == 2 or (place == len(row) - 1 and place % 3 == 1):
            minutes, seconds = divmod(round(one.clock), 60)
            canvas.text(x + 8, clock, f"{minutes}:{seconds:02d}", LETTERS, "end", QUIET)
    if most:
        canvas.line((LEFT, FLOOR), (LEFT + STEP * len(row), FLOOR), stroke=QUIET, pen=1)
    return bits


def _fed(canvas: Canvas, row: Sequence[Moment]) -> None:
    """What fed the set, as a bar: a limit has a dashed edge, and where there is room its name."""
    at = 0
    for feed, group in groupby(row, key=lambda one: one.fed):
        some = list(group)
        wide = STEP * len(some)
        fill = OFF_FILL if is_off(some[0]) else FED_FILL
        dash = {} if is_off(some[0]) or feed == "own plug" else {"dash": "4 3"}
        canvas.rect(LEFT + STEP * at, FED - 9, wide, 18, fill, pen=1.2, stroke=QUIET, **dash)
        words = next((one for one in (feed, SHORT.get(feed, "")) if len(one) * 7 < wide), "")
        if words:
            canvas.text(LEFT + STEP * at + wide / 2, FED, words, LETTERS)
        at += len(some)


def _key(canvas: Canvas, kinds: Sequence[str], unsafe: bool) -> None:
    for place, kind in enumerate(kinds):
        y = KEY * (place + 0.5)
        with canvas.at(0, y - MARK):
            MARKS[kind](canvas, LEFT - 20)
        canvas.text(LEFT, y, kind, LETTERS, "start")
    if unsafe:
        y = KEY * (len(kinds) + 0.5)
        canvas.text(LEFT - 20, y, "⚠", 14, fill=POSITIVE, bold=True)
        canvas.text(LEFT, y, "unsafe", LETTERS, "start")


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
