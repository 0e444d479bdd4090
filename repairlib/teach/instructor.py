"""What stays with the instructor of a group: `instructor.json` beside `group.json`.

Who signed for whom at the bench stands here, and the words that release what is held; whatever else
the file holds is left as it is.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import Group
from repairlib.learn.learner import LONGEST

FILE = "instructor.json"
A_NAME = f"--by with the name of who signs, up to {LONGEST} letters"


class Signed(NamedTuple):
    """A bench permit that was signed for: whose word, by whom, and the day."""

    word: str
    by: str
    on: str


def instructor_file(folder: str | Path) -> Path:
    """Where the instructor's own file of a class folder lies."""
    return Path(folder) / FILE


def signed_for(folder: str | Path) -> dict[str, Signed]:
    """Who was signed for, by their word. Raises RepairlibError when the file cannot be used."""
    found = _content(instructor_file(folder))
    return {
        one["word"]: Signed(one["word"], one["by"], one["on"]) for one in found.get("signed", [])
    }


def sign(folder: str | Path, group: Group, who: str, by: str, on: str) -> Signed:
    """Note that `by` talked the safety questions through with a member, and signs for them.

    `who` is their word or name, `on` the day. Signing again takes the place of the earlier one.
    Raises RepairlibError for somebody unknown, an empty name, and when it cannot be noted.
    """
    by = " ".join(by.split())
    if not by or not by.isprintable() or len(by) > LONGEST:
        raise RepairlibError(by, "this names nobody who signs", A_NAME)
    made = Signed(group.member(who).word, by, on)
    path = instructor_file(folder)
    with files.locked(path):
        found = _content(path)
        others = [one for one in found.get("signed", []) if one["word"] != made.word]
        files.write(path, {**found, "signed": [*others, made._asdict()]})
    return made


def release_words(folder: str | Path) -> dict[str, str]:
    """The words that release lessons, by lesson. Raises RepairlibError as `signed_for` does."""
    return _content(instructor_file(folder)).get("release_words", {})


def keep_release_word(folder: str | Path, lesson: str, word: str) -> None:
    """Keep the word that releases a lesson. Raises RepairlibError when it cannot be kept."""
    path = instructor_file(folder)
    with files.locked(path):
        found = _content(path)
        words = {**found.get("release_words", {}), lesson: word}
        files.write(path, {**found, "release_words": words})


def _content(path: Path) -> dict[str, Any]:
    found, trouble = files.read(path, _is_ours)
    if trouble:
        raise RepairlibError(path, trouble, "the file as the commands of class wrote it")
    return found or {}


def _is_ours(found: dict) -> bool:
    signed, words = found.get("signed", []), found.get("release_words", {})
    if not isinstance(words, dict) or not all(isinstance(one, str) for one in words.values()):
        return False
    return isinstance(signed, list) and all(
        isinstance(one, dict) and all(isinstance(one.get(name), str) for name in Signed._fields)
        for one in signed
    )
