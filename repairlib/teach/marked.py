"""The marks of a group, worked out anew from what its members answered.

Nothing that a file says of marks counts: answers are judged against the questions that this member
has, and each try is judged anew too. What a file says of dangerous answers is only ever added to.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import NamedTuple

from repairlib.learn.exercise import changed_since, lessons_known, module_of, remarks
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.marking import Sheet, mark
from repairlib.learn.question import UNSAFE
from repairlib.learn.remembered import Asked, asked_of
from repairlib.learn.saved_answers import Saved
from repairlib.learn.tries import UNFINISHED, Story, Try, stories


class Marked(NamedTuple):
    """One member in one lesson: the sheet marked anew, and by question how it went.

    `at` is when it was handed in, in ms since 1970; `partner` whom it was answered with, or "".
    """

    word: str
    name: str
    lesson: str
    sheet: Sheet
    stories: Mapping[str, Story]
    at: int
    partner: str = ""


def is_lesson_of(group: Group, lesson: str) -> bool:
    """True for a lesson that is marked for this group."""
    known = lessons_known(group)
    return lesson in known and lesson in (group.lessons or known)


def marked_of(
    group: Group,
    member: Member,
    lesson: str,
    found: Mapping,
    tries: Sequence,
    at: int,
    anew: Collection[str] = (),
) -> Marked:
    """The marks of a member in one lesson.

    `found` is what a file of saved answers holds, `tries` are lists [at, id, typed, state,
    hazards], both checked for their form. The questions in `anew`, as `LESSON:QUESTION`, are marked
    against today's key although they have changed since they were answered.
    """
    learner = member_of(group, member)
    asked = asked_of(module_of(lesson, group), learner.draw(lesson))
    saved = Saved.of(dict(found))
    others = changed_since(asked, saved, fingerprint_of=Asked.fingerprint)
    changed = {name: one for name, one in others.items() if f"{lesson}:{name}" not in anew}
    told = stories(_judged({one.id: one for one in asked if one.id not in changed}, tries))
    unsafe = {*saved.unsafe, *(name for name, story in told.items() if story.unsafe)}
    notes = remarks(asked, saved)
    sheet = mark(asked, saved.answers, lesson, str(learner), notes, changed, unsafe)
    return Marked(member.word, member.name, lesson, sheet, told, at)


def _judged(asked: Mapping[str, Asked], tries: Sequence) -> Iterator[Try]:
    """Each try to one of these questions, with its state and hazards judged anew."""
    for at, name, typed, *_ in tries:
        if name in asked:
            judgement = asked[name].judge(typed)
            state = judgement.state
            if state != UNSAFE and not asked[name].is_whole(typed):
                state = UNFINISHED
            yield Try(at, name, typed, state, judgement.hazards)
