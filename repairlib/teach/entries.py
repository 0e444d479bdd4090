"""What each member of a group has given to each question: at the first try, and as it stands now.

Mark book and room view are both made of these entries. Members who have handed in nothing have
entries too, so that nobody is missing from a list.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from repairlib.core.once import Once
from repairlib.learn.exercise import lessons_known, module_of, questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import DEMO, member_of
from repairlib.learn.marking import Line, mark_question
from repairlib.learn.progress import number_of
from repairlib.learn.question import CHANGED, RIGHT, UNANSWERED
from repairlib.learn.remembered import Asked, asked_of
from repairlib.learn.tries import Story, Try
from repairlib.teach.marked import Marked

NO_STORY = Story(None, 0, (), None)


class Entry(NamedTuple):
    """One question of one lesson for one member.

    `state`, `points`, `out_of` and `hints` are those of the answer now; `first_state`,
    `first_points` and `first_hints` those of the first try, with "" and None where none is
    recorded. `tries` counts them, `unsafe` are the dangerous ones, `once_unsafe` is True when
    there was one, recorded or not. `last` is when it was last tried and `handed_in` when the file
    was, in milliseconds since 1970, 0 for never. `sheet_of` is the word of whose questions these
    are: of a pair that answered on one sheet, one of the two.
    """

    word: str
    name: str
    partner: str
    lesson: str
    id: str
    state: str
    points: float
    out_of: float
    hints: tuple[str, ...] = ()
    first_state: str = ""
    first_points: float | None = None
    first_hints: tuple[str, ...] = ()
    tries: int = 0
    unsafe: tuple[Try, ...] = ()
    once_unsafe: bool = False
    last: int = 0
    handed_in: int = 0
    sheet_of: str = ""

    @property
    def number(self) -> str:
        """The lesson in short: "03"."""
        return number_of(self.lesson)

    @property
    def times_unsafe(self) -> int:
        """How often it was answered dangerously; 1 where only that it was is recorded."""
        return len(self.unsafe) or int(self.once_unsafe)

    @property
    def begun(self) -> bool:
        """True when there is an answer, or was one."""
        return self.state != UNANSWERED or self.tries > 0


def questions_for(group: Group) -> Mapping:
    """The questions of a member's own variant by id, as `found[word, lesson]`, when asked for."""

    learners = {one.word: member_of(group, one) for one in group.members}

    def drawn(word: str, lesson: str) -> dict[str, Asked]:
        draw = learners[word].draw(lesson)
        return {one.id: one for one in asked_of(module_of(lesson, group), draw)}

    return Once(drawn)


def entries_of(group: Group, marked: Iterable[Marked], asked: Mapping) -> list[Entry]:
    """The entries of all members, in the order of the group and of its lessons.

    A lesson that somebody has handed in comes in too, when it is none of the group's. `asked` are
    the `questions_for` the group.
    """
    by_variant = {str(member_of(group, one)): one.word for one in group.members}
    given = {
        (one.word, one.lesson): _entries(one, by_variant.get(one.sheet.variant, one.word), asked)
        for one in marked
    }
    known = lessons_known(group)
    taken = group.lessons or known
    others = {lesson for _, lesson in given} - set(taken)
    lessons = (*taken, *sorted(others, key=known.index))
    blank = Once(lambda lesson: [(one.id, one.points) for one in questions_of(lesson, DEMO, group)])
    made: list[Entry] = []
    for member in group.members:
        for lesson in lessons:
            theirs = given.get((member.word, lesson))
            made += _nothing(member, lesson, blank[lesson]) if theirs is None else theirs
    return made


def _nothing(member: Member, lesson: str, asked: Iterable[tuple[str, float]]) -> list[Entry]:
    return [
        Entry(member.word, member.name, "", lesson, name, UNANSWERED, 0, points)
        for name, points in asked
    ]


def _entries(one: Marked, whose: str, asked: Mapping) -> list[Entry]:
    return [
        _entry(one, whose, line, one.stories.get(line.id, NO_STORY), asked)
        for line in one.sheet.lines
    ]


def _entry(one: Marked, whose: str, line: Line, story: Story, asked: Mapping) -> Entry:
    state, points, hints = _first(one, whose, line, story.first, asked)
    return Entry(
        one.word,
        one.name,
        one.partner,
        one.lesson,
        line.id,
        line.state,
        line.points,
        line.counted,
        line.judgement.says,
        state,
        points,
        hints,
        story.tries,
        tuple(story.unsafe),
        line.unsafe_first or bool(story.unsafe),
        story.last.at if story.last else 0,
        one.at,
        whose,
    )


def _first(
    one: Marked, whose: str, line: Line, first: Try | None, asked: Mapping
) -> tuple[str, float | None, tuple[str, ...]]:
    """State, points and hints of the first try. A right one needs no second look."""
    if first is None:
        return "", None, ()
    if line.state == CHANGED:
        return CHANGED, None, ()
    if first.state == RIGHT:
        return RIGHT, line.out_of, ()
    judged = mark_question(asked[whose, one.lesson][line.id], first.typed)
    return judged.state, judged.points, judged.judgement.says
