"""The marks of a group, worked out anew from what its members answered.

Nothing that a file says of marks counts: answers are judged against the questions that this member
has, and each try is judged anew too. What a file says of dangerous answers is only ever added to.
"""

from __future__ import annotations

from collections.abc import Collection, Hashable, Mapping, Sequence
from typing import NamedTuple

from repairlib.learn.exercise import changed_since, lessons_known, module_of, remarks
from repairlib.learn.group import NOTHING, Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.marking import Sheet, mark
from repairlib.learn.question import UNSAFE
from repairlib.learn.remembered import Asked, asked_of
from repairlib.learn.saved_answers import Saved
from repairlib.learn.tries import UNFINISHED, Story, Try, stories


class Marked(NamedTuple):
    """One member in one lesson: the sheet marked anew, and by question how it went.

    `at` is when it was handed in, in ms since 1970; `partner` whom it was answered with, or "".
    `own` is how it went by the files that the member owns: what a partner's file says is not there.
    """

    word: str
    name: str
    lesson: str
    sheet: Sheet
    stories: Mapping[str, Story]
    at: int
    partner: str = ""
    own: Mapping[str, Story] = NOTHING

    @property
    def unsafe(self) -> frozenset[str]:
        """The questions that were once answered dangerously, by the member or in their pair."""
        return frozenset(line.id for line in self.sheet.lines if line.unsafe_first)


def is_lesson_of(group: Group, lesson: str) -> bool:
    """True for a lesson that is marked for this group."""
    known = lessons_known(group)
    return lesson in known and lesson in (group.lessons or known)


class _Newest(NamedTuple):
    """The file whose answers are marked, and what was asked in it."""

    owner: Member
    asked: Sequence[Asked]
    saved: Saved
    changed: Mapping
    found: Mapping
    at: int


class Joined:
    """All that the valid files of one member say of one lesson, the newest file added first.

    The newest one's answers are marked. The tries and the dangerous answers of all are joined, so
    that none is lost with the file it stands in. The questions in `anew`, as `LESSON:QUESTION`, are
    marked against today's key although they have changed since they were answered.
    """

    def __init__(self, group: Group, member: Member, lesson: str, anew: Collection[str] = ()):
        self.group, self.member, self.lesson, self.anew = group, member, lesson, anew
        self._newest: _Newest | None = None
        self._tries: dict[str, dict[Hashable, Try]] = {}  # by the word of whose questions they are
        self._unsafe: set[str] = set()

    def add(self, owner: Member, found: Mapping, tries: Sequence, at: int) -> None:
        """Add a file of `owner`: the member, or who answered with them.

        `found` is what a file of saved answers holds, `tries` are lists [at, id, typed, state,
        hazards], both checked for their form; `at` is when it was handed in.
        """
        saved = Saved.of(dict(found))
        asked = self._asked(owner)
        changed = self._changed(asked, saved)
        self._newest = self._newest or _Newest(owner, asked, saved, changed, found, at)
        known = {one.id: one for one in asked if one.id not in changed}
        here = self._tries.setdefault(owner.word, {})
        for line in tries:
            key = (line[0], line[1], line[2] if isinstance(line[2], str) else repr(line[2]))
            if line[1] in known and key not in here:
                here[key] = _judged(known[line[1]], line)
        self._unsafe.update(saved.unsafe)

    def marked(self) -> Marked:
        """The marks of the member in the lesson, once a file was added."""
        assert self._newest, "no file was added"
        owner, asked, saved, changed, found, at = self._newest
        told = {word: stories(tries.values()) for word, tries in self._tries.items()}
        told_unsafe = (name for each in told.values() for name, one in each.items() if one.unsafe)
        sheet = mark(
            asked,
            saved.answers,
            self.lesson,
            str(member_of(self.group, owner)),
            remarks(asked, saved),
            changed,
            self._unsafe.union(told_unsafe),
        )
        partner = found.get("partner") if owner == self.member else owner.name
        return Marked(
            self.member.word,
            self.member.name,
            self.lesson,
            sheet,
            told[owner.word],
            at,
            partner if isinstance(partner, str) else "",
            told.get(self.member.word, {}),
        )

    def _asked(self, owner: Member) -> Sequence[Asked]:
        draw = member_of(self.group, owner).draw(self.lesson)
        return asked_of(module_of(self.lesson, self.group), draw)

    def _changed(self, asked: Sequence[Asked], saved: Saved) -> Mapping:
        others = changed_since(asked, saved, fingerprint_of=Asked.fingerprint)
        return {
            name: one for name, one in others.items() if f"{self.lesson}:{name}" not in self.anew
        }


def _judged(asked: Asked, line: Sequence) -> Try:
    """A try to this question, with its state and hazards judged anew."""
    at, name, typed, *_ = line
    judgement = asked.judge(typed)
    state = judgement.state
    if state != UNSAFE and not asked.is_whole(typed):
        state = UNFINISHED
    return Try(at, name, typed, state, judgement.hazards)
