"""The group that learners belong to, as its instructor made it: who is in it, and what they do.

One file says it all, so that it can be handed out: the file named in REPAIRLIB_GROUP, or else
`group.json` in the folder where everything is remembered. Without one, nothing is different.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path, PureWindowsPath
from types import MappingProxyType
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.home import file_name, home

Again = Mapping[str, Mapping[str, int]]  # lesson: part of its draw: how often it was thrown anew
NOTHING: Mapping[str, Any] = MappingProxyType({})
GROUP_FILE = "group.json"
A_GROUP = "the file group.json, as the instructor's command made it"


_read_last: dict[Path, tuple[tuple[int, ...], Group]] = {}


class Member(NamedTuple):
    """One of a group: the name, the short word to type in its place, and draws thrown anew.

    `again` keeps the variants of a group apart: by lesson and question, how often the draw was
    thrown anew; what is not in it was not.
    """

    name: str
    word: str
    again: Again = NOTHING


class Group(NamedTuple):
    """A group: its name, its members, and the lessons it takes.

    `held` has the lessons whose marks are told later, each with the hash of the word that releases
    it. `hand_in_to` is a folder where what is handed in is put, or "". `own` are the instructor's
    own questions as typed, by the name of their file.

    >>> group = Group("Tuesday bench", (Member("Ada Example", "kite"), Member("Ben", "moss")))
    >>> group.member(" KITE ").name
    'Ada Example'
    >>> group.member("kitte")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'kitte': nobody in the group Tuesday bench has this word
    or name. Accepted: kite (Ada Example)
    """

    name: str
    members: tuple[Member, ...] = ()
    lessons: tuple[str, ...] = ()
    held: Mapping[str, str] = NOTHING
    hand_in_to: str = ""
    own: Mapping[str, str] = NOTHING

    def member(self, typed: str) -> Member:
        """The member meant by a word or a name. Raises RepairlibError that offers the nearest."""
        known = self._as_typed()
        if normal(typed) in known:
            return known[normal(typed)]
        accepted = ", ".join(f"{one.word} ({one.name})" for one in self.nearest(typed))
        wrong = f"nobody in the group {self.name} has this word or name"
        raise RepairlibError(typed, wrong, accepted or "the word on your card, or your name")

    def nearest(self, typed: str) -> list[Member]:
        """Up to three members whose word or name is most like what was typed.

        >>> group = Group("Tuesday bench", (Member("Ada Example", "kite"), Member("Ben", "moss")))
        >>> [one.name for one in group.nearest("kyte")], group.nearest("x")
        (['Ada Example'], [])
        """
        from difflib import get_close_matches

        known = self._as_typed()
        near = [known[one] for one in get_close_matches(normal(typed), known, 3)]
        return list({one.word: one for one in near}.values())

    def _as_typed(self) -> dict[str, Member]:
        return {normal(one.word): one for one in self.members} | self.by_name()

    def by_name(self) -> dict[str, Member]:
        """The members by their names, in the form in which two spellings are the same."""
        return {normal(one.name): one for one in self.members}

    def to_dict(self) -> dict[str, Any]:
        """What the file of the group holds."""
        return {
            "group": self.name,
            "lessons": list(self.lessons),
            "members": [one._asdict() | {"again": dict(one.again)} for one in self.members],
            "held": dict(self.held),
            "hand_in_to": self.hand_in_to,
            "own": dict(self.own),
        }


def group_of(found: Mapping[str, Any]) -> Group:
    """The group that a file's content says, once `is_group` has looked at it."""
    return Group(
        found["group"],
        tuple(Member(**one) for one in found["members"]),
        tuple(found["lessons"]),
        found.get("held", {}),
        found.get("hand_in_to", ""),
        found.get("own", {}),
    )


def is_group(found: dict) -> bool:
    """True when a file's content is a group, in which a word or name means one member."""
    try:
        plain = (
            _is_name(found["group"]),
            isinstance(found["members"], list) and _are_members(found["members"]),
            isinstance(found["lessons"], list)
            and all(isinstance(one, str) for one in found["lessons"]),
            _is_all(found.get("held", {}), lambda value: isinstance(value, str)),
            isinstance(found.get("hand_in_to", ""), str),
            _is_all(found.get("own", {}), lambda value: isinstance(value, str)),
            all(map(_is_file_name, found.get("own", {}))),
        )
    except (KeyError, TypeError):
        return False
    return all(plain)


def read_group(path: str | Path) -> Group:
    """The group in a file. Raises RepairlibError when there is none."""
    found, trouble = files.read(Path(path), is_group)
    if found is None:
        raise RepairlibError(path, trouble or "there is no such file", A_GROUP)
    return group_of(found)


def group_file() -> Path:
    """Where this computer looks for its group."""
    named = os.environ.get("REPAIRLIB_GROUP", "").strip()
    return Path(named).expanduser() if named else home() / GROUP_FILE


def group_put_away(name: str) -> Path:
    """Where the file of a group lies that this computer knew before it got another one.

    Its learners still come back, with the variants that they had.
    """
    return home() / "groups" / f"{file_name(name)}.json"


def known_group() -> tuple[Group | None, str]:
    """The group that this computer knows, or None; and a note when its file cannot be used.

    The file is left as it is: it may be everybody's.
    """
    return _group_in(group_file())


def group_called(name: str) -> tuple[Group | None, str]:
    """The group of that name, known or put away, or None; and a note as `known_group` gives it."""
    group, note = known_group()
    if group is not None and normal(group.name) == normal(name):
        return group, note
    before, trouble = _group_in(group_put_away(name))
    return before, note or trouble


def _group_in(path: Path) -> tuple[Group | None, str]:
    """The group in a file, read again only when it changed: it is asked for at each key."""
    try:
        stat = path.stat()
        mark = (stat.st_mtime_ns, stat.st_size, stat.st_ino)
        if path in _read_last and _read_last[path][0] == mark:
            return _read_last[path][1], ""
        found, trouble = files.read(path, is_group)
    except FileNotFoundError:
        return None, ""
    except (RepairlibError, OSError) as barred:
        return None, f"The file of the group cannot be used: {barred}"
    if found is None:
        return None, f"The file of the group cannot be used: {trouble} ({path})."
    _read_last.clear()
    _read_last[path] = (mark, group_of(found))
    return _read_last[path][1], ""


class MadeKnown(NamedTuple):
    """What became of a group that was made known: itself, and who or which group it replaced.

    `gone` are the names of those who were in it before; `put_away` is the other group that this
    computer knew, or "".
    """

    group: Group
    gone: tuple[str, ...] = ()
    put_away: str = ""


def make_known(path: str | Path) -> MadeKnown:
    """Let this computer know the group in a file, in place of the one that it knew.

    The file of another group is put away, so that its learners come back with their variants. A
    file here that cannot be used is kept aside. Raises RepairlibError when there is no group in the
    file, when another is named in REPAIRLIB_GROUP, and when it cannot be saved.
    """
    group, place = read_group(path), home() / GROUP_FILE
    if group_file() != place:
        wrong = "the group of this computer is named in REPAIRLIB_GROUP"
        raise RepairlibError(group_file(), wrong, "that file itself renewed, or the variable unset")
    with files.locked(place):
        found, _ = files.settle(place, is_group)
        before = group_of(found) if found else Group("")
        same = normal(before.name) == normal(group.name)
        if found and not same:
            _put_away(found)
        files.write(place, group.to_dict())
        with files.saying_why(place):
            group_put_away(group.name).unlink(missing_ok=True)
    now = group.by_name()
    gone = [one.name for key, one in before.by_name().items() if key not in now]
    return MadeKnown(group, tuple(gone) if same else (), "" if same else before.name)


def _put_away(found: dict) -> None:
    aside = group_put_away(found["group"])
    with files.locked(aside):
        files.write(aside, found)


def _are_members(found: list) -> bool:
    """True for members each of whom has a word and a name of their own."""
    if not all(map(_is_member, found)):
        return False
    words = {normal(one["word"]): normal(one["name"]) for one in found}
    names = set(words.values())
    ambiguous = any(word in names and name != word for word, name in words.items())
    return len(words) == len(names) == len(found) and not ambiguous


def _is_file_name(name: str) -> bool:
    """True for a plain name of a file, which leads to no other folder on any computer."""
    return PureWindowsPath(name).name == name and name.isprintable() and bool(name.strip(" ."))


def _is_member(found: object) -> bool:
    return (
        isinstance(found, dict)
        and set(found) <= set(Member._fields)
        and _is_name(found["name"])
        and _is_name(found["word"])
        and _is_all(found.get("again", {}), lambda by_part: _is_all(by_part, _is_count))
    )


def _is_name(value: object) -> bool:
    return isinstance(value, str) and bool(normal(value)) and value.isprintable()


def _is_count(value: object) -> bool:
    return type(value) is int and value >= 0


def _is_all(found: object, fits: Callable[[Any], bool]) -> bool:
    """True for a dict of texts to values that fit."""
    return isinstance(found, dict) and all(
        isinstance(key, str) and fits(value) for key, value in found.items()
    )
