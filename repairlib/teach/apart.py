"""The variants of a group kept apart: which draws are thrown anew so that neighbours differ.

Every learner's variant is drawn by itself, so two who sit together can draw the same. Whoever makes
a group throws some of the draws anew, and the file of the group says how often. Nothing here is
left to chance: the same names in the same order give the same throws on every machine.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations
from operator import eq
from typing import Any, NamedTuple

from repairlib.core.draws import Draw
from repairlib.learn.arranging import Order, Table
from repairlib.learn.asking import each_graded, names
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import LESSONS, module_of, questions_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import Again, Member
from repairlib.learn.learner import Learner
from repairlib.learn.question import Number, Question

NEAR = 11  # how many of those before in the list a member is compared with: twelve sit together
AT_MOST = 0.25  # share of equal right answers of two who sit together, safety questions left out
THROWS_FOR_EACH = 6  # throws tried for each answer that a question can have
FEWEST, MOST = 12, 90  # throws tried at least and at most
MOST_FOR_ONE = 500  # throws of one question for a variant that nobody in the group has yet


class Shared(NamedTuple):
    """What the variants of two learners in one lesson have in common.

    `share` is how many of the questions have equal right answers (0 to 1), safety questions left
    out; `with_safety` counts them in.
    """

    share: float
    with_safety: float


class Throw(NamedTuple):
    """One draw of one question: whether it is about safety, its right answer, all it asks."""

    about_safety: bool
    answers: tuple
    question: Question


Sheet = dict[str, Throw]  # the variant of one member: each part of the draw, as thrown


def shared(lesson: str, learners: Iterable[Learner]) -> Iterator[Shared]:
    """The share of equal right answers of each pair of learners in a lesson.

    >>> alone = [Learner("Ada Example"), Learner("Ada  example")]
    >>> list(shared("00-start-here", alone))
    [Shared(share=1.0, with_safety=1.0)]
    """
    sheets = [list(map(_throw, questions_of(lesson, learner))) for learner in learners]
    for pair in combinations(sheets, 2):
        yield Shared(_share(*pair), sum(map(_same, *pair)) / len(pair[0]))


def is_about_safety(question: Question) -> bool:
    """True for a safety question: a wrong answer to it is dangerous.

    Everybody must know the same then, so its right answer may be the same for a whole group. A
    table is one when every cell is: a cell that is none must differ between neighbours.
    """
    if isinstance(question, Bench):  # what can hurt there is for all the same, the board is not
        return False
    asked = cells_of(question) if isinstance(question, Table) else [question]
    return all(one.hazards() for one in asked)


def right_answers(question: Question) -> tuple:
    """The right answer, in each form in which a neighbour could copy it.

    A number and an option count as they read, whatever place an option stands at; an order is all
    of its steps; a table all of its cells, by their rows or by their places; of a repair what is
    wrong, whatever its figures are.

    >>> from repairlib.learn import Choice
    >>> ask = Choice(options=("left", "right"), answer="left")
    >>> turned = Choice(options=("right", "left"), answer="left")
    >>> right_answers(ask) == right_answers(turned)
    True
    """
    if isinstance(question, Order):
        return (tuple(question.steps),)
    if isinstance(question, Table):
        rows = [
            (row, column, _right(cell))
            for row, cells in question.cells.items()
            for column, cell in cells.items()
        ]
        return frozenset(rows), tuple(answer for *_, answer in rows)
    return (_right(question),)


def whole(questions: Iterable[Question]) -> tuple[str, ...]:
    """All that a variant asks but for its pictures, to tell two variants apart.

    The order of the options belongs to it. Two variants that differ in a picture only count as
    equal here.
    """
    return tuple(fingerprint(replace(one, picture=None)) for one in questions)


def cells_of(table: Table) -> list[Question]:
    """The cells of a table, row by row."""
    return [cell for row in table.cells.values() for cell in row.values()]


def _right(question: Any) -> str:
    return f"{question.answer:.6g}" if isinstance(question, Number) else question.answer


def _throw(question: Question) -> Throw:
    return Throw(is_about_safety(question), right_answers(question), question)


def choose_again(
    group: str,
    added: Sequence[str],
    before: Sequence[Member] = (),
    lessons: Sequence[str] = LESSONS,
) -> dict[str, Again]:
    """For each name that is added how often its draws are thrown anew, as `Member.again` says it.

    Two that stand at most eleven apart in the list of the group share at most a quarter of their
    right answers in a lesson, safety questions left out, as far as the questions have answers
    enough; and no two of the group get the same variant, as long as there is another. Those who are
    in the group `before` keep theirs. Draws that are not thrown anew are left out.

    >>> choose_again("Tuesday bench", ["Ada Example"], lessons=["00-start-here"])
    {'Ada Example': {}}
    """
    found: dict[str, dict[str, dict[str, int]]] = {name: {} for name in added}
    for lesson in lessons:
        apart = _Apart(group, lesson)
        for member in before:
            apart.keep(member.name, member.again.get(lesson, {}))
        for name in added:
            thrown = {part: times for part, times in apart.choose(name).items() if times}
            if thrown:
                found[name][lesson] = thrown
    return dict(found)


class _Apart:
    """The variants of one lesson in one group, member by member."""

    def __init__(self, group: str, lesson: str):
        self.group, self.lesson = group, lesson
        module = module_of(lesson)
        called = names(module)  # each question in short, as the parts of the draw are called
        self.asks = {called[entry.id]: entry.ask for entry in each_graded(module)}
        self.answers = {part: self._answers_of(part) for part in self.asks}
        self.order = sorted(self.asks, key=self.answers.__getitem__)  # those with few first
        self.near: deque[Sheet] = deque(maxlen=NEAR)
        self.taken: set[tuple[str, ...]] = set()

    def keep(self, name: str, again: Mapping[str, int]) -> None:
        """Take in a member whose variant stands."""
        throws = _Throws(self, name)
        self._take_in({part: throws[part, again.get(part, 0)] for part in self.asks})

    def choose(self, name: str) -> dict[str, int]:
        """Find and take in the variant of a member: part of the draw, how often thrown anew.

        Questions with few answers go first, so that the others can make up for them. A member who
        then shares too much with somebody is gone through again, question by question.
        """
        throws = _Throws(self, name)
        times: dict[str, int] = {}
        for strictly in (False, True, True, True):
            for part in self.order:
                times[part] = self._best(part, times, throws, strictly)
            sheet = throws.sheet(times)
            if not self._too_much(sheet):
                break
        richest = self.order[-1]
        for _ in range(MOST_FOR_ONE):
            if _whole(sheet) not in self.taken:
                break
            times[richest] += 1
            sheet = throws.sheet(times)
        self._take_in(sheet)
        return times

    def _best(self, part: str, times: Mapping[str, int], throws: _Throws, strictly: bool) -> int:
        """The first throw of a part whose answer no more neighbours have than must be.

        `strictly`, none may have it. Where no throw tried is so, it is the one of least harm: an
        answer that somebody has counts the more, the more answers the two have in common already.
        At first the answers of safety questions are made to differ too, where they can.
        """
        many = self.answers[part]
        must_be = 0 if strictly else len(self.near) // many
        others = [one for one in times if one != part]
        weights = [
            THROWS_FOR_EACH ** sum(_equal(throws[one, times[one]], near[one]) for one in others)
            for near in self.near
        ]
        least, best = float("inf"), 0
        for count in range(min(max(FEWEST, THROWS_FOR_EACH * many), MOST)):
            mine = throws[part, count]
            harm = 0
            for weight, near in zip(weights, self.near, strict=True):
                if _equal(mine, near[part]):
                    harm += weight
                elif not strictly and _same(mine, near[part]):
                    harm += 1
            if harm < least:
                least, best = harm, count
            if harm <= must_be:
                break
        return best

    def _too_much(self, sheet: Sheet) -> bool:
        """True when a sheet shares more than it may with that of a neighbour."""
        return any(_share(sheet.values(), near.values()) > AT_MOST for near in self.near)

    def _take_in(self, sheet: Sheet) -> None:
        self.near.append(sheet)
        self.taken.add(_whole(sheet))

    def _answers_of(self, part: str) -> int:
        """How many different right answers a question has among some draws of its own."""
        draws = (Draw(f"answers of {part}\n{count}") for count in range(60))
        forms = zip(*(right_answers(self.asks[part](draw)) for draw in draws), strict=True)
        return min(len(set(form)) for form in forms)


class _Throws(dict):
    """The draws of one member, each made when it is first looked at: (part, times) to Throw."""

    def __init__(self, apart: _Apart, name: str):
        super().__init__()
        self.apart, self.name = apart, name

    def __missing__(self, key: tuple[str, int]) -> Throw:
        part, times = key
        apart = self.apart
        draw = Draw.for_learner(apart.group, self.name, apart.lesson, {part: times})
        self[key] = _throw(apart.asks[part](draw.part(part)))
        return self[key]

    def sheet(self, times: Mapping[str, int]) -> Sheet:
        """The throw of each part, in the order in which they are asked."""
        return {part: self[part, times[part]] for part in self.apart.asks}


def _share(sheet: Iterable[Throw], other: Iterable[Throw]) -> float:
    """The share of equal right answers, safety questions left out; 0 where there are no others."""
    pairs = list(zip(sheet, other, strict=True))
    free = sum(_counts(*pair) for pair in pairs)
    return sum(_equal(*pair) for pair in pairs) / free if free else 0.0


def _equal(one: Throw, other: Throw) -> bool:
    """True when two throws have the same right answer and are not about safety."""
    return _same(one, other) and _counts(one, other)


def _counts(one: Throw, other: Throw) -> bool:
    """True when neither of two throws of a question is about safety."""
    return not (one.about_safety or other.about_safety)


def _same(one: Throw, other: Throw) -> bool:
    """True when two throws have the same right answer, in any form in which it can be copied."""
    return any(map(eq, one.answers, other.answers))


def _whole(sheet: Sheet) -> tuple[str, ...]:
    return whole(one.question for one in sheet.values())
