"""The answers of one learner in one lesson, saved as typed, each with what was asked.

Beside the answers a file has, by question id, the fingerprint of the question at the moment when
its answer was last saved, and the version of the library; when that was; and the ids of the
questions that were once answered dangerously, which stay there for good. Files of before that have
none of it.

Every save reads the file again, adds what is new and puts the whole in place, all under a lock:
two kernels that answer different questions lose nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from repairlib.core.version import VERSION
from repairlib.learn import files
from repairlib.learn.home import home
from repairlib.learn.learner import DEMO, Demo, Learner, named_in, names_somebody
from repairlib.learn.times import are_times, now

NONE: Mapping[str, str] = MappingProxyType({})


class Saved(NamedTuple):
    """What a file holds: answers by question id, and what was asked, by id too.

    `asked` has {"fingerprint": …, "version": …} for each question answered since these are kept;
    `unsafe` the ids of those that were once answered dangerously.
    """

    answers: dict[str, Any]
    asked: dict[str, dict[str, str]]
    unsafe: tuple[str, ...] = ()

    @classmethod
    def of(cls, found: dict | None) -> Saved:
        """What the content of a file says, or nothing when there is no file."""
        if not found:
            return cls({}, {})
        return cls(found["answers"], found.get("asked", {}), tuple(found.get("unsafe", ())))


class SavedAnswers:
    """The file with the answers of `learner` to `lesson`.

    `note` is one sentence about a file that had to be kept aside, or "".
    """

    def __init__(self, lesson: str, learner: Learner | Demo = DEMO, folder: Path | None = None):
        self.lesson = lesson
        self.learner = learner
        answers = (folder or home()) / "answers"
        self.path = answers / learner.folder() / f"{lesson}.json"
        self.note = ""

    def read(self) -> dict[str, Any]:
        """All saved answers: question id to what was typed. Raises RepairlibError when barred."""
        return self.read_all().answers

    def read_all(self) -> Saved:
        """All that is saved: the answers, and what was asked. Raises RepairlibError when barred."""
        found, note = files.read_or_keep_aside(self.path, is_answers)
        self.note = note or self.note
        return Saved.of(found)

    def save(
        self,
        changes: Mapping,
        fingerprints: Mapping[str, str] = NONE,
        unsafe: Iterable[str] = (),
    ) -> dict[str, Any]:
        """Add or replace these answers; give back all that are saved now.

        `fingerprints` are those of the questions answered. Cells of a table are added one by one.
        `unsafe` are ids of questions answered dangerously: they join those already noted.
        When this returns, the answers are on the disk. Raises RepairlibError when they cannot be.
        """
        with files.locked(self.path):
            found, note = files.settle(self.path, is_answers)
            self.note = note or self.note
            saved = Saved.of(found)
            answers = merged(saved.answers, changes)
            asked = {name: of for name, of in saved.asked.items() if name not in changes}
            asked |= {
                name: {"fingerprint": fingerprints[name], "version": VERSION}
                for name in changes
                if name in fingerprints
            }
            content = (found or {}) | named_in(self.learner)  # keys not known here stay
            content.pop("class_code", None)  # the group's name in files of before
            content |= {"lesson": self.lesson, "answers": answers, "asked": asked}
            content["at"] = now((found or {}).get("at", {}), changes)
            noted = sorted({*saved.unsafe, *unsafe})
            if noted:
                content["unsafe"] = noted
            files.write(self.path, content)
        return answers


def merged(old: Mapping, new: Mapping) -> dict:
    """`old` with `new` put over it, down to the cells of tables.

    >>> merged({"q7": {"C3": {"volt": "25"}}}, {"q7": {"C3": {"fit": "a"}}, "q1": "9"})
    {'q7': {'C3': {'volt': '25', 'fit': 'a'}}, 'q1': '9'}
    """
    result = dict(old)
    for key, value in new.items():
        both = isinstance(value, Mapping) and isinstance(result.get(key), Mapping)
        result[key] = merged(result[key], value) if both else value
    return result


def is_answers(found: dict) -> bool:
    """True when a file's content is saved answers: texts, and tables of texts."""
    answers, asked = found.get("answers"), found.get("asked", {})
    unsafe = found.get("unsafe", [])
    if not isinstance(unsafe, list) or not all(isinstance(one, str) for one in unsafe):
        return False
    if not isinstance(found.get("lesson"), str) or not names_somebody(found):
        return False
    if not is_texts(answers, depth=3) or not are_times(found.get("at", {})):
        return False
    return is_texts(asked, depth=2) and all(map(_is_asked, asked.values()))


def _is_asked(value) -> bool:
    return isinstance(value, dict) and set(value) == {"fingerprint", "version"}


def is_texts(value, depth: int) -> bool:
    """True for a dict of texts, or of dicts of texts and so on, at most `depth` of them deep."""
    if not isinstance(value, dict) or not depth:
        return False
    for one in value.values():  # in a loop: a thousand hand-ins are looked at in one go
        if not isinstance(one, str) and not is_texts(one, depth - 1):
            return False
    return True
