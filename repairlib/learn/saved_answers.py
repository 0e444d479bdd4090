"""The answers of one learner in one lesson, saved as typed.

Every save reads the file again, adds what is new and puts the whole in place, all under a lock:
two kernels that answer different questions lose nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from repairlib.learn import files
from repairlib.learn.learner import DEMO, Demo, Learner, home


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

    def read(self) -> dict:
        """All saved answers: question id to what was typed. Raises RepairlibError when barred."""
        found, note = files.read_or_keep_aside(self.path, is_answers)
        self.note = note or self.note
        return found["answers"] if found else {}

    def save(self, changes: Mapping) -> dict:
        """Add or replace these answers; give back all that are saved now.

        Cells of a table are added one by one. When this returns, the answers are on the disk.
        Raises RepairlibError when they cannot be.
        """
        with files.locked(self.path):
            found, note = files.settle(self.path, is_answers)
            self.note = note or self.note
            answers = merged(found["answers"] if found else {}, changes)
            who = {"class_code": self.learner.class_code, "name": self.learner.name}
            files.write(self.path, {"lesson": self.lesson, **who, "answers": answers})
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
    words = (found.get("lesson"), found.get("class_code"), found.get("name"))
    answers = found.get("answers")
    return all(isinstance(word, str) for word in words) and _is_texts(answers, depth=3)


def _is_texts(value, depth: int) -> bool:
    if not isinstance(value, dict) or not depth:
        return False
    return all(isinstance(v, str) or _is_texts(v, depth - 1) for v in value.values())
