"""Which answers were handed in, so that nothing is forgotten here that nobody else has."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path

from repairlib.learn import files
from repairlib.learn.home import home
from repairlib.learn.learner import Demo, Learner


def note_handed_in(learner: Learner | Demo, lessons: Mapping[str, Mapping]) -> None:
    """Remember that these are handed in: by lesson what the file of answers holds.

    Raises RepairlibError when it cannot be remembered.
    """
    path = _path(learner)
    with files.locked(path):
        files.write(path, {"lessons": {name: _mark(one) for name, one in lessons.items()}})


def never_handed_in(learner: Learner | Demo, lessons: Mapping[str, Mapping]) -> tuple[str, ...]:
    """Those of the lessons whose answers were not handed in, or were changed since."""
    found, _ = files.read_or_keep_aside(_path(learner), _is_note)
    handed = found["lessons"] if found else {}
    return tuple(
        name for name, one in lessons.items() if one["answers"] and handed.get(name) != _mark(one)
    )


def _path(learner: Learner | Demo) -> Path:
    return home() / "handed-in" / learner.folder() / "last.json"


def _mark(found: Mapping) -> str:
    """A short text that is another as soon as an answer is."""
    said = json.dumps([found["answers"], sorted(found.get("unsafe", []))], sort_keys=True)
    return hashlib.sha256(said.encode("ascii")).hexdigest()[:16]


def _is_note(found: dict) -> bool:
    lessons = found.get("lessons")
    return isinstance(lessons, dict) and all(isinstance(one, str) for one in lessons.values())
