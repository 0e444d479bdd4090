"""An attempt at the practice board as two tables: its moves with what they showed, and its mark."""

from __future__ import annotations

from repairlib.bench import Attempt, Done, Judgement, say_move
from repairlib.show.set_out import SetOut
from repairlib.show.sheets.sheet_pieces import short

MOVES, MOVE_WIDTHS = ("", "done", "what it showed", "min"), (2.0, 16.0, 34.0, 4.0)
FINDINGS, FINDING_WIDTHS = ("what", "points", "why"), (9.0, 6.0, 36.0)
LONGEST = 200  # characters of what was told


def moves_made(attempt: Attempt) -> SetOut:
    """Each move with what was told after it, and the clock then in minutes.

    >>> from repairlib.bench import Task, demo_set, walked
    >>> print(moves_made(walked(Task(demo_set("desk radio"), (), "demo"), ["plug in"])))
     | done | what it showed | min
    1 | plug in | It is plugged in and on. | 0.2
    """
    rows = [
        (str(number), say_move(one.move), short(one.told.words, LONGEST), _minutes(one))
        for number, one in enumerate(attempt.done, start=1)
    ]
    return SetOut(MOVES, rows, MOVE_WIDTHS)


def points_given(found: Judgement) -> SetOut:
    """What was judged, the points it got of how many, and why."""
    rows = [(one.subject, _points(one.got, one.of), one.words) for one in found.findings]
    return SetOut(FINDINGS, rows, FINDING_WIDTHS)


def _minutes(done: Done) -> str:
    return f"{done.after.clock / 60:.1f}"


def _points(got: float, of: float) -> str:
    return f"{got:.3g} of {of:.3g}" if of else f"{got:.3g}".replace("-", "−") if got else ""
