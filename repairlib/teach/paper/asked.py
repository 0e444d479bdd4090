"""What a group is asked: its lessons by name, and the questions of each member."""

from __future__ import annotations

from repairlib.core.errors import RepairlibError
from repairlib.learn.exercise import questions_of
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.learn.own.known import own_files, own_lesson
from repairlib.learn.progress import stated
from repairlib.learn.question import Question


def asked(lesson: str, group: Group) -> list[tuple[Member, tuple[Question, ...]]]:
    """Each member of the group with the questions of their variant."""
    if not group.members:
        raise RepairlibError(group.name, "nobody is in this group", "a group with members")
    return [
        (member, questions_of(lesson, member_of(group, member), group)) for member in group.members
    ]


def called(lesson: str, group: Group) -> str:
    """The number and the title of a lesson; of an own lesson its title.

    >>> called("00-start-here", Group("Tuesday bench"))
    '00 Start here'
    """
    if is_own(lesson, group):
        return own_lesson(lesson, group).title
    return f"{lesson.partition('-')[0]} {stated(lesson)[0]}"


def minutes(lesson: str, group: Group) -> int | None:
    """How long a lesson says it takes, None where it does not."""
    return own_lesson(lesson, group).minutes if is_own(lesson, group) else stated(lesson)[1]


def is_own(lesson: str, group: Group) -> bool:
    """True for a lesson that the group brings itself: its text stands in the group."""
    return lesson in own_files(group)
