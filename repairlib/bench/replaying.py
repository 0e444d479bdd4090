"""An attempt again, move by move: the clock, the purse, what was shown and what it could tell."""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.bench.attempt import Attempt, Done
from repairlib.bench.care import HANDS
from repairlib.bench.information import Cut, cuts
from repairlib.bench.judging import Judgement, judge
from repairlib.bench.state import OFF
from repairlib.bench.typed_move import say_move

MEASURED, SEEN, HANDLED = "measured", "looked, smelt, felt", "hands on the board"
AT_THE_BENCH, CARD, END = "power, load, time", "job card", "the end"
MOMENT_KINDS = (MEASURED, SEEN, HANDLED, AT_THE_BENCH, CARD, END)
OF_VERBS = {
    **dict.fromkeys(("look", "smell", "touch", "read chip"), SEEN),
    **dict.fromkeys((*HANDS, "write chip"), HANDLED),
    "write": CARD,
}


@dataclass(frozen=True, slots=True)
class Moment:
    """A move as it is replayed.

    `kind` is one of MOMENT_KINDS. `clock` in s and `spent` in tokens when it was done, `fed` by
    what the set was fed then. `said` is the move as it is typed, `shown` what was told. `unsafe` is
    what could have hurt somebody, in words. `cut` is what a reading did to the suspects, None where
    nothing was read; `best` the measurement that could have told most then, as it is typed, or "".
    """

    number: int
    clock: float
    spent: float
    kind: str
    said: str
    shown: str
    fed: str
    unsafe: str
    cut: Cut | None
    best: str


def replayed(
    attempt: Attempt, judgement: Judgement | None = None, with_cuts: bool = False
) -> tuple[Moment, ...]:
    """Each move of an attempt; `judgement` is that of the attempt, where it is known already.

    `with_cuts`: also what each reading told and what would have told most, which takes seconds.

    >>> from repairlib.bench.attempt import Task, walked
    >>> from repairlib.bench.practice_set import demo_set
    >>> one, _ = replayed(walked(Task(demo_set("desk radio"), (), "demo"), ["plug in", "unplug"]))
    >>> one.number, one.kind, one.said, one.fed
    (1, 'power, load, time', 'plug in', 'own plug')
    """
    unsafe: dict[int, str] = {}
    found = judge(attempt) if judgement is None else judgement
    for act in (*found.dangers, *found.luck):
        unsafe[act.number] = f"{unsafe.get(act.number, '')} {act.words}".strip()
    told = cuts(attempt) if with_cuts else (None,) * len(attempt.done)
    return tuple(
        _moment(number, done, unsafe.get(number, ""), cut)
        for number, (done, cut) in enumerate(zip(attempt.done, told, strict=True), 1)
    )


def _moment(number: int, done: Done, unsafe: str, cut: Cut | None) -> Moment:
    kind = OF_VERBS.get(done.move.verb, MEASURED if done.told.reading else AT_THE_BENCH)
    if done.after.ended:
        kind = END
    best = say_move(cut.best) if cut and cut.best else ""
    after = done.after
    fed = after.feed.kind
    return Moment(
        number, after.clock, after.spent, kind, say_move(done.move), done.told.words, fed, unsafe,
        cut, best,
    )  # fmt: skip


def is_off(moment: Moment) -> bool:
    """Whether nothing fed the set."""
    return moment.fed == OFF
