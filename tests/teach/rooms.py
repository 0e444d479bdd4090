"""Invented evenings: groups that answer by chance, always the same, some of it dangerously.

What is typed is judged by the real questions; skill and difficulty come from a hash.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from hashlib import sha256
from itertools import cycle, product

from repairlib.learn.arranging import Order, Table
from repairlib.learn.exercise import ONE_EVENING, questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.marking import mark
from repairlib.learn.question import Choice, Question
from repairlib.learn.tries import Story, Try
from repairlib.teach.marked import Marked
from tests.learn.asking import right_answer

NOON = 1_796_040_000_000  # an evening in milliseconds
MINUTE = 60_000
FIRST = ("Alba", "Bruno", "Cleo", "Dario", "Edda", "Falk", "Gita", "Hugo", "Ines", "Jaro")
LAST = ("Example", "Sample", "Specimen")
SYLLABLES = ("ba", "de", "fi", "go", "ku", "la", "me", "ni", "po", "ru", "sa", "te", "vi", "wo")


def group_of(size: int, lessons: Sequence[str] = ONE_EVENING, name: str = "Tuesday bench") -> Group:
    """A group of so many."""
    called = cycle(product(LAST, FIRST))
    words = ("".join(two) for two in product(SYLLABLES, repeat=2))
    return Group(
        name,
        tuple(
            Member(f"{first} {last}" + (f" {number}" if number > 29 else ""), word)
            for number, ((last, first), word) in enumerate(
                zip((next(called) for _ in range(size)), words, strict=False)
            )
        ),
        tuple(lessons),
    )


def chance(*of: object) -> float:
    """A number from 0 to 1 that hangs on these things alone."""
    return int.from_bytes(sha256(repr(of).encode()).digest()[:6]) / 256**6


def wrong_answer(ask: Question, which: float, dangerous: bool = False):
    """What somebody types who has it wrong, or dangerously wrong where the question knows such."""
    if isinstance(ask, Table):
        cells = [(row, column) for row, cells in ask.cells.items() for column in cells]
        at = cells[int(which * len(cells))]
        return {
            row: {
                column: wrong_answer(cell, which, dangerous)
                if (row, column) == at
                else right_answer(cell)
                for column, cell in columns.items()
            }
            for row, columns in ask.cells.items()
        }
    known = [
        one for one in ask.mistakes if not callable(one.when) and bool(one.hazard) == dangerous
    ]
    if known:
        when = known[int(which * len(known))].when
        return when if isinstance(when, str) else f"{when:.6g} {getattr(ask, 'unit', '')}"
    if isinstance(ask, Order):
        return " > ".join((*ask.steps[1:], ask.steps[0]))
    if isinstance(ask, Choice):
        return next(one for one in ask.options if one != ask.answer)
    return f"{ask.answer * 10:.6g} {ask.unit}"


def evening(group: Group, begun: float = 0.8) -> Iterator[Marked]:
    """What the group has handed in: about that share of all questions is tried."""
    for place, member in enumerate(group.members):
        at = NOON - int(6 * MINUTE * chance(member.word, "begin"))
        for number, lesson in enumerate(group.lessons):
            if (number + chance(member.word)) / len(group.lessons) > begun:
                break
            asked = questions_of(lesson, member_of(group, member), group)
            stories, answers = {}, {}
            for ask in asked:
                at += int(MINUTE * 1.2 * chance(member.word, lesson, ask.id, "pace"))
                story, answers[ask.id] = _story(ask, lesson, member.word, at)
                stories[ask.id] = story
            partner = "Uma Example" if place == 4 else ""
            sheet = mark(asked, answers, lesson, str(member_of(group, member)))
            yield Marked(member.word, member.name, lesson, sheet, stories, at, partner)


def _story(ask: Question, lesson: str, word: str, at: int) -> tuple[Story, object]:
    hard = chance(lesson, ask.id) ** 3 * 0.9
    tries: list[Try] = []
    for number in range(4):
        luck = chance(word, lesson, ask.id, number)
        if luck > hard * (1.1 - 0.5 * chance(word, "skill")):
            typed = right_answer(ask)
        else:
            dangerous = chance(word, lesson, ask.id, "danger", number) < 0.05
            typed = wrong_answer(ask, chance(word, ask.id, number, "which") ** 2, dangerous)
        judged = ask.judge(typed)
        tries.append(Try(at + number * 20_000, ask.id, typed, judged.state, judged.hazards))
        if judged.state == "right" or chance(word, lesson, ask.id, number, "stops") < 0.12:
            break
    unsafe = tuple(one for one in tries if one.state == "unsafe")
    return Story(tries[0], len(tries), unsafe, tries[-1]), tries[-1].typed
