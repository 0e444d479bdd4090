"""The report of an attempt as HTML: the mark with its reasons, the time line, each move again."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.bench import Attempt, Judgement, Moment, judge, replayed, say_move
from repairlib.core import html
from repairlib.core.html import Html
from repairlib.core.safety import caution
from repairlib.show.attempt_line import draw_attempt
from repairlib.show.attempt_tables import points_given
from repairlib.show.set_out import SetOut

MOVES = ("move", "clock, purse", "done", "what it showed", "what it told of the fault")
MOVE_WIDTHS = (3.0, 7.0, 11.0, 18.0, 18.0)
BITS = "One bit of doubt less halves what may be wrong."
NOTICED = 0.1  # bits, below which another measurement would not have been better


def attempt_report(
    attempt: Attempt,
    judgement: Judgement | None = None,
    with_cuts: bool = False,
    way: Attempt | None = None,
) -> Html:
    """The report of an attempt; `judgement` where it is known already.

    `with_cuts`: also what each reading told of the fault and what would have told most, which takes
    seconds. `way`: another attempt at the same board, such as an expert's, to compare.

    >>> from repairlib.bench import Task, demo_set, walked
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> "Not passed" in attempt_report(walked(task, ["plug in", "unplug"]))
    True
    """
    found = judge(attempt) if judgement is None else judgement
    moments = replayed(attempt, found, with_cuts)
    pieces = [
        _mark(attempt, found),
        Html(points_given(found)._repr_html_()),
        html.picture(draw_attempt(moments)),
    ]
    pieces.append(html.fold("Move by move", _moves(moments)))
    if way is not None:
        pieces.append(_way(way))
    return Html("".join(pieces))


def _mark(attempt: Attempt, found: Judgement) -> Html:
    state = "unsafe" if found.dangers else "right" if found.passed else "wrong"
    head = f"{'Passed' if found.passed else 'Not passed'}: {found.share * 100:.0f} %"
    says = [str(act) for act in found.dangers]
    says += [f"By luck nothing happened. {act}" for act in found.luck]
    end = attempt.state.ended
    more = caution(end.hazard).in_brief() if end and end.hazard else ""
    return html.told(state, head, says, more)


def _moves(moments: Sequence[Moment]) -> Html:
    told = any(one.cut for one in moments)
    columns = len(MOVES) if told else len(MOVES) - 1
    rows = [_move(one)[:columns] for one in moments]
    table = SetOut(MOVES[:columns], rows, MOVE_WIDTHS[:columns])._repr_html_()
    return Html(html.soft(BITS) + table if told else table)


def _move(one: Moment) -> tuple[object, ...]:
    minutes, seconds = divmod(round(one.clock), 60)
    spent = f"{minutes}:{seconds:02d}, {one.spent:.3g}"
    shown = f"{one.shown} ⚠ {one.unsafe}" if one.unsafe else one.shown
    return one.number, spent, one.said, shown, _told(one)


def _told(one: Moment) -> str:
    """What the reading did to the suspects, and what would have told more."""
    if one.cut is None:
        return ""
    cut = one.cut
    said = f"{cut.before:.1f} bits of doubt before, {cut.after:.1f} after; likely: {cut.left}."
    if one.best and cut.best_bits > cut.expected + NOTICED:
        said += (
            f" {max(cut.expected, 0):.1f} bits were to be expected of it, {cut.best_bits:.1f} of "
            f"{one.best}."
        )
    return said


def _way(way: Attempt) -> Html:
    """How somebody else went about the same board."""
    state = way.state
    title = f"An expert's way: {state.clock / 60:.0f} min, {state.spent:.3g} tokens"
    lines = [f"{say_move(one.move)}: {one.told.words}" for one in way.done]
    return html.fold(title, html.listed(lines, "ol"))
