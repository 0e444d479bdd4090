"""Invented evenings: groups that answer by themselves, always the same, some of it dangerously."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from hashlib import sha256
from itertools import cycle, product

from repairlib.learn.arranging import Order
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import ONE_EVENING
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import read_hand_in
from repairlib.learn.question import Choice, Question
from repairlib.teach.marked import Joined, Marked
from repairlib.teach.rehearsal import handed_in

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


def wrong_answer(ask: Question) -> str:
    """What somebody types who makes the first usual mistake, or any."""
    known = [one.when for one in ask.mistakes if not callable(one.when) and not one.hazard]
    if known:
        return known[0] if isinstance(known[0], str) else f"{known[0]:.6g} {ask.unit}"
    if isinstance(ask, Order):
        return " > ".join((*ask.steps[1:], ask.steps[0]))
    if isinstance(ask, Choice):
        return next(one for one in ask.options if one != ask.answer)
    if isinstance(ask, Bench):
        return "look\ngive up\n"
    return f"{ask.answer * 10:.6g} {ask.unit}"


def evening(group: Group, begun: float = 0.8) -> Iterator[Marked]:
    """What the group has handed in by NOON: each member about that share of the lessons."""
    for place, member in enumerate(group.members):
        share = begun + 0.3 * (chance(member.word, "share") - 0.5)
        some = group.lessons[: max(1, round(share * len(group.lessons)))]
        found = read_hand_in(handed_in(group._replace(lessons=some), member).data)
        late = NOON - found["at"] - int(5 * MINUTE * chance(member.word, "late"))
        for lesson in some:
            tries = [[line[0] + late, *line[1:]] for line in found["tries"][lesson]]
            answers = found["lessons"][lesson]
            one = Joined(group, member, lesson)
            one.add(member, answers, tries, found["at"] + late)
            yield one.marked()._replace(partner="Uma Example" if place == 4 else "")
