"""A group is made: a folder with its members, their words and variants, and what it takes.

Run again with a longer list or for another evening, it adds: words and variants of those who are in
the group stay, and so do its lessons. Who is no longer in the list is named.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.exercise import LESSONS, ONE_EVENING
from repairlib.learn.group import GROUP_FILE, Group, Member, group_of, is_group
from repairlib.learn.learner import Learner
from repairlib.learn.progress import number_of
from repairlib.teach.apart import choose_again
from repairlib.teach.collecting import HANDED_IN
from repairlib.teach.instructor import note_members, used_words
from repairlib.teach.lesson_named import lesson_among
from repairlib.teach.names import NameList
from repairlib.teach.words import give_words

WAYS = {"one-evening": ONE_EVENING, "all": LESSONS}


class Prepared(NamedTuple):
    """What came of it: the `group`, who is new in it, and who is no longer in the list.

    Those `gone` stay in the group, unless they are `left_out`.
    """

    folder: Path
    group: Group
    new: tuple[str, ...]
    gone: tuple[str, ...]
    left_out: bool


def prepare(
    folder: str | Path,
    listed: NameList,
    called: str = "",
    lessons: Sequence[str] = (),
    leave_out: bool = False,
) -> Prepared:
    """Make the folder of a group, or add to the group in it; nobody's word or variant changes.

    Where nothing is said, the group is `called` as its folder and takes the lessons of one evening.
    Raises RepairlibError when the folder has another group or a file that cannot be used, when a
    new name is the word of a member, and when it cannot be written.
    """
    folder = Path(folder).expanduser()
    path = folder / GROUP_FILE
    with files.locked(path):
        before = _group_there(path, called or folder.absolute().name, called)
        prepared = _added_to(before, listed, lessons, leave_out, used_words(folder))
        out = [one for one in before.members if one not in prepared.group.members]
        note_members(folder, prepared.group, out)  # first: no word is given before it is noted
        files.write(path, prepared.group.to_dict())
    with files.saying_why(folder):
        (folder / HANDED_IN).mkdir(mode=0o700, exist_ok=True)
    return prepared._replace(folder=folder)


def lessons_named(text: str) -> tuple[str, ...]:
    """The lessons meant by "one-evening", "all", or numbers with commas between them.

    >>> lessons_named("00, 03")
    ('00-start-here', '03-capacitor-markings')
    >>> lessons_named("99")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: '99': no lesson has this number. Accepted: one-evening, \
all, 00, 01, ...
    """
    if text in WAYS:
        return WAYS[text]
    asked = [piece.strip() for piece in text.split(",") if piece.strip()]
    chosen = {one: lesson_among(one, LESSONS) for one in asked}
    unknown = next((one for one in asked if chosen[one] is None), "" if asked else text)
    if unknown or not asked:
        accepted = ", ".join((*WAYS, *map(number_of, LESSONS)))
        raise RepairlibError(unknown, "no lesson has this number", accepted)
    return tuple(name for name in LESSONS if name in chosen.values())


def _group_there(path: Path, name: str, called: str) -> Group:
    """The group in the folder, or a new one without members."""
    found, trouble = files.read(path, is_group)
    if trouble:
        raise RepairlibError(path, trouble, "another folder, or this file put elsewhere")
    if found is None:
        Learner("somebody", name)  # raises where this is no name of a group
        return Group(" ".join(name.split()))
    group = group_of(found)
    if called and normal(called) != normal(group.name):
        wrong = f"this folder has the group {group.name}"
        raise RepairlibError(called, wrong, "another folder with --out, or no --called")
    return group


def _added_to(
    before: Group,
    listed: NameList,
    lessons: Sequence[str],
    leave_out: bool,
    used: Sequence[str],
) -> Prepared:
    names = [one.name for one in listed.names]
    there, wanted = before.by_name(), {normal(name) for name in names}
    new = [name for name in names if normal(name) not in there]
    gone = [one.name for key, one in there.items() if key not in wanted]
    stay = [one for one in before.members if not leave_out or normal(one.name) in wanted]
    for name in new:
        _refuse_word(name, stay)
    known = [text for one in before.members for text in (one.word, one.name)]
    words = give_words(before.name, new, [*used, *known])
    again = choose_again(before.name, new, before=stay)
    lessons = lessons or (() if before.members else ONE_EVENING)
    added = [Member(name, words[name], again[name]) for name in new]
    group = before._replace(members=(*stay, *added), lessons=_joined(before.lessons, lessons))
    return Prepared(Path(), group, tuple(new), tuple(gone), leave_out)


def _refuse_word(name: str, members: Sequence[Member]) -> None:
    """Raise RepairlibError for a name that is the word of a member: whose would it be?"""
    for one in members:
        if normal(name) == normal(one.word):
            wrong = f"this is the word of {one.name}, by which they are known"
            raise RepairlibError(name, wrong, f"more of the name, as in {name} Example")


def _joined(before: Sequence[str], lessons: Sequence[str]) -> tuple[str, ...]:
    """The lessons of both, in the order of the workbook; what is not of it comes behind."""
    both = dict.fromkeys((*before, *lessons))
    return tuple(sorted(both, key=lambda one: LESSONS.index(one) if one in LESSONS else 99))
