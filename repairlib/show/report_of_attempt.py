"""The report of an attempt as HTML: the mark with its reasons, the time line, each move again."""

from __future__ import annotations

from collections.abc import Sequence

from repairlib.bench import Attempt, Judgement, Moment, judge, replayed
from repairlib.core import html
from repairlib.core.html import Html
from repairlib.core.safety import caution
from repairlib.show.attempt_line import draw_attempt
from repairlib.show.set_out import SetOut

FINDINGS = ("what", "points", "why")
FINDING_WIDTHS = (9.0, 6.0, 36.0)
MOVES = ("move", "clock, purse", "done", "what it showed", "what it could tell")
MOVE_WIDTHS = (3.0, 7.0, 11.0, 18.0, 18.0)


def attempt_report(attempt: Attempt, judgement: Judgement | None = None) -> Html:
    """The report of an attempt; `judgement` where it is known already.

    >>> from repairlib.bench import Task, demo_set, walked
    >>> task = Task(demo_set("desk radio"), (), "demo")
    >>> "Not passed" in attempt_report(walked(task, ["plug in", "unplug"]))
    True
    """
    found = judge(attempt) if judgement is None else judgement
    moments = replayed(attempt, found)
    pieces = [_mark(attempt, found), _findings(found), html.picture(draw_attempt(moments))]
    pieces += [html.fold("Move by move", _moves(moments))]
    return Html("".join(pieces))


def _mark(attempt: Attempt, found: Judgement) -> Html:
    state = "unsafe" if found.dangers else "right" if found.passed else "wrong"
    head = f"{'Passed' if found.passed else 'Not passed'}: {_percent(found.share)}"
    says = [str(act) for act in found.dangers]
    says += [f"By luck nothing happened. {act}" for act in found.luck]
    end = attempt.state.ended
    more = caution(end.hazard).in_brief() if end and end.hazard else ""
    return html.told(state, head, says, more)


def _percent(share: float) -> str:
    return f"{share * 100:.0f} %"


def _findings(found: Judgement) -> Html:
    rows = [(one.subject, _points(one.got, one.of), one.words) for one in found.findings]
    return Html(SetOut(FINDINGS, rows, FINDING_WIDTHS)._repr_html_())


def _points(got: float, of: float) -> str:
    return f"{got:.3g} of {of:.3g}" if of else f"{got:.3g}".replace("-", "−")


def _moves(moments: Sequence[Moment]) -> Html:
    return Html(SetOut(MOVES, map(_move, moments), MOVE_WIDTHS)._repr_html_())


def _move(one: Moment) -> tuple[object, ...]:
    spent = f"{int(one.clock // 60)}:{int(one.clock % 60):02d}, {one.spent:.3g}"
    shown = f"{one.shown} ⚠ {one.unsafe}" if one.unsafe else one.shown
    return one.number, spent, one.said, shown, _told(one)


def _told(one: Moment) -> str:
    """What the reading did to the suspects, and what would have told more."""
    if one.cut is None:
        return ""
    cut = one.cut
    said = f"{cut.before:.1f} bits of doubt became {cut.after:.1f}; suspects left: {cut.left}."
    if one.best and cut.best_bits > cut.expected + 0.05:
        said += (
            f" It could be expected to tell {cut.expected:.1f} bits; {one.best} could have told "
            f"{cut.best_bits:.1f}."
        )
    return said
