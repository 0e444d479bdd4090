"""What the answers of a group say about each question: how hard it is, and whether it separates.

A question separates when those who do well in the rest of its lesson do better in it than the
others. The measure is the corrected item-total correlation: Pearson's between the points of a
question and those of all others of its lesson (S. Varma, Preliminary Item Statistics Using
Point-Biserial Correlation and P-Values, Educational Data Systems: right or wrong on an item against
the total over the remaining items). The limits are ours: at least ten learners, and 0.15. By chance
alone it lies within 2 / √n of nothing in nineteen of twenty cases: 0.6 for twelve learners.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from math import sqrt
from statistics import StatisticsError, correlation, fmean
from typing import NamedTuple

from repairlib.learn.question import CHANGED, RIGHT, UNANSWERED
from repairlib.teach.entries import Entry

HARD = 0.4  # more than this share wrong at the first try: worth a word to the whole room
FEWEST_TO_MARK = 3  # learners who have tried it, before a question is called hard
FEWEST_TO_SAY = 10  # learners, before anything is said on what separates
SEPARATES = 0.15  # a correlation below it says hardly anything
TOO_FEW = "too few to say"
ALL_RIGHT, NONE_RIGHT = "separates nobody: all had it", "separates nobody: none had it"
HARDLY, AGAINST, YES = "hardly separates", "look at it: the better ones have it less", "separates"
NO_REST = "cannot tell: all are alike in the rest"

_OF_ONE_VARIANT = re.compile(r"\S*\d\S*")
_MERE_COUNT = re.compile(r"\d+ of \d+ (steps|cells) are ")


class Item(NamedTuple):
    """What a group's answers say about one question.

    `tried` have a recorded first try, of whom `first_right` had it right; `answered` have an answer
    now, of whom `right` have it right. `mistake` is the hint that most of them earned, `mistaken`
    how many did. `unsafe` is how many ever answered it dangerously. `separation` is a number from
    -1 to 1, None where there is none, and `verdict` says what it comes to.
    """

    lesson: str
    id: str
    tried: int
    first_right: int
    answered: int
    right: int
    mistake: str
    mistaken: int
    unsafe: int
    separation: float | None
    verdict: str

    @property
    def first_wrong(self) -> float:
        """The share not right at the first try, 0 to 1; 0 when nobody has tried it."""
        return 1 - self.first_right / self.tried if self.tried else 0.0

    @property
    def by_chance(self) -> float:
        """How far from 0 the separation may lie when there is none at all."""
        return _chance(self.tried) if self.tried else 0.0

    @property
    def hard(self) -> bool:
        """True when more than 40 % had it wrong at the first try, of at least three."""
        return self.tried >= FEWEST_TO_MARK and self.first_wrong > HARD


def items_of(entries: Iterable[Entry]) -> list[Item]:
    """One item for each question, in the order in which the entries name them."""
    by_question: dict[tuple[str, str], list[Entry]] = defaultdict(list)
    scores: dict[str, dict[str, dict[str, float]]] = defaultdict(lambda: defaultdict(dict))
    for one in entries:
        by_question[one.lesson, one.id].append(one)
        if one.first_points is not None and one.out_of:
            scores[one.lesson][one.word][one.id] = one.first_points / one.out_of
    return [
        _item(lesson, name, given, separation(scores[lesson], name))
        for (lesson, name), given in by_question.items()
    ]


def hardest(items: Iterable[Item]) -> list[Item]:
    """Those wrong at the first try with more than 40 %, the worst first."""
    return sorted((one for one in items if one.hard), key=lambda one: -one.first_wrong)


def separation(scores: Mapping[str, Mapping[str, float]], name: str) -> float | None:
    """How the scores in one question go with the mean of each learner's other scores, -1 to 1.

    `scores` is learner: {question: 0 to 1}. Whoever has no score in it, or in no other, is left
    out. None where one of the two is the same for all, or fewer than two learners are left.

    >>> scores = {"a": {"q1": 1, "q2": 1, "q3": 1}, "b": {"q1": 1, "q2": 0, "q3": 1}}
    >>> scores |= {"c": {"q1": 0, "q2": 0, "q3": 1}, "d": {"q1": 0, "q2": 0, "q3": 0}}
    >>> round(separation(scores, "q1"), 3)
    0.707
    """
    pairs = [
        (one[name], fmean(score for other, score in one.items() if other != name))
        for one in scores.values()
        if name in one and len(one) > 1
    ]
    try:
        return correlation(*zip(*pairs, strict=True)) if len(pairs) > 1 else None
    except StatisticsError:
        return None


def _item(lesson: str, name: str, given: list[Entry], separates: float | None) -> Item:
    tried = [one for one in given if one.first_points is not None]
    now = [one for one in given if one.state not in (UNANSWERED, CHANGED)]
    first_right = sum(one.first_state == RIGHT for one in tried)
    return Item(
        lesson,
        name,
        len(tried),
        first_right,
        len(now),
        sum(one.state == RIGHT for one in now),
        *_usual_mistake(given),
        sum(one.once_unsafe for one in given),
        separates if len(tried) >= FEWEST_TO_SAY else None,
        _verdict(tried, first_right, separates),
    )


def _verdict(tried: list[Entry], first_right: int, separates: float | None) -> str:
    if len(tried) < FEWEST_TO_SAY:
        return TOO_FEW
    if first_right == len(tried):
        return ALL_RIGHT
    if not any(one.first_points for one in tried):
        return NONE_RIGHT
    if separates is None:
        return NO_REST
    if separates < -_chance(len(tried)):
        return AGAINST
    return YES if separates >= SEPARATES else HARDLY


def _chance(learners: int) -> float:
    return 2 / sqrt(learners)


def _usual_mistake(given: list[Entry]) -> tuple[str, int]:
    """The hint that most members earned at their first try, each counted once, and how many.

    Hints that differ only in the figures of a variant are one; how many steps or cells were right
    is no mistake.
    """
    earned: dict[str, list[str]] = defaultdict(list)
    for one in given:
        hints = one.first_hints if one.first_state else one.hints
        for hint in {_OF_ONE_VARIANT.sub("…", said): said for said in hints}.values():
            if not _MERE_COUNT.match(hint):
                earned[_OF_ONE_VARIANT.sub("…", hint)].append(hint)
    if not earned:
        return "", 0
    most = max(earned.values(), key=len)
    return Counter(most).most_common(1)[0][0], len(most)
