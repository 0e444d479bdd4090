"""What stays with the instructor of a group: `instructor.json` beside `group.json`.

Who signed for whom at the bench stands here, the words that release what is held, and every word
that a member ever had; whatever else the file holds is left as it is.

A word is given once. On a server the home of a member is called by it, and sheets are printed with
it: whoever got it later would come into what was left there. So it stays among the used ones when
its member is left out or forgotten, tied to nobody.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import LONGEST

FILE = "instructor.json"
BETWEEN = ", "  # the used words
MINE = 0o600  # names and release words: nobody else's
A_NAME = f"--by with the name of who signs, up to {LONGEST} letters"


class Signed(NamedTuple):
    """A bench permit that was signed for: whose word and name, by whom, and the day."""

    word: str
    name: str
    by: str
    on: str


def instructor_file(folder: str | Path) -> Path:
    """Where the instructor's own file of a class folder lies."""
    return Path(folder) / FILE


def signed_for(folder: str | Path, group: Group) -> dict[str, Signed]:
    """Which members were signed for, by their word; only where word and name are still theirs.

    Raises RepairlibError when the file cannot be used.
    """
    noted = _content(instructor_file(folder)).get("signed", [])
    found = {one.word: one for one in map(_signed, noted)}
    members = {one.word: normal(one.name) for one in group.members}
    return {word: one for word, one in found.items() if members.get(word) == normal(one.name)}


def sign(folder: str | Path, group: Group, who: str, by: str, on: str) -> Signed:
    """Note that `by` talked the safety questions through with a member, and signs for them.

    `who` is their word or name, `on` the day. Signing again takes the place of the earlier one.
    Raises RepairlibError for somebody unknown, an empty name, and when it cannot be noted.
    """
    by = " ".join(by.split())
    if not by or not by.isprintable() or len(by) > LONGEST:
        raise RepairlibError(by, "this names nobody who signs", A_NAME)
    member = group.member(who)
    made = Signed(member.word, member.name, by, on)
    path = instructor_file(folder)
    with files.locked(path):
        found = _content(path)
        others = [one for one in found.get("signed", []) if one["word"] != made.word]
        files.write(path, {**found, "signed": [*others, made._asdict()]}, MINE)
    return made


def used_words(folder: str | Path) -> list[str]:
    """Every word that a member has or had, as far as it was noted. Raises as `signed_for` does."""
    noted = _content(instructor_file(folder)).get("used_words", "")
    return [word for word in noted.split(BETWEEN) if word]


def note_members(folder: str | Path, group: Group, gone: Iterable[Member] = ()) -> None:
    """Note the words of a group and of those `gone` as used; nobody gone is signed for any longer.

    Raises RepairlibError when it cannot be noted.
    """
    gone, path = list(gone), instructor_file(folder)
    out = {one.word for one in gone}
    with files.locked(path):
        found = _content(path)
        words = dict.fromkeys((*used_words(folder), *(one.word for one in (*group.members, *gone))))
        noted = {"group": group.name, **found, "used_words": BETWEEN.join(words)}
        if "signed" in found:
            noted["signed"] = [one for one in found["signed"] if one["word"] not in out]
        files.write(path, noted, MINE)


def release_words(folder: str | Path) -> dict[str, str]:
    """The words that release lessons, by lesson. Raises RepairlibError as `signed_for` does."""
    return _content(instructor_file(folder)).get("release_words", {})


def keep_release_word(folder: str | Path, lesson: str, word: str) -> None:
    """Keep the word that releases a lesson. Raises RepairlibError when it cannot be kept."""
    path = instructor_file(folder)
    with files.locked(path):
        found = _content(path)
        words = {**found.get("release_words", {}), lesson: word}
        files.write(path, {**found, "release_words": words}, MINE)


def _content(path: Path) -> dict[str, Any]:
    found, trouble = files.read(path, _is_ours)
    if trouble:
        raise RepairlibError(path, trouble, "the file as the commands of class wrote it")
    return found or {}


def _is_ours(found: dict) -> bool:
    signed, words = found.get("signed", []), found.get("release_words", {})
    if not isinstance(found.get("used_words", ""), str):
        return False
    if not isinstance(words, dict) or not all(isinstance(one, str) for one in words.values()):
        return False
    return isinstance(signed, list) and all(map(_is_signed, signed))


def _is_signed(found: object) -> bool:
    """True for what makes a signature; in files of before no name stands in it."""
    if not isinstance(found, dict) or not {"word", "by", "on"} <= set(found):
        return False
    return all(isinstance(found.get(name, ""), str) for name in Signed._fields)


def _signed(found: dict[str, str]) -> Signed:
    return Signed(found["word"], found.get("name", ""), found["by"], found["on"])
