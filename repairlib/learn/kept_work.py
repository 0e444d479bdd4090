"""What a learner has typed into one panel, kept as typed: lists, readings, ticks and choices.

As with answers, every save reads the file again, adds what is new and puts the whole in place, all
under a lock. So a killed kernel loses nothing that was saved, and two kernels do not lose each
other's. Beside each thing stands when it was saved, for those who carry their work to another
computer.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from repairlib.learn import files
from repairlib.learn.home import home
from repairlib.learn.learner import Demo, Learner, current_learner, named_in, names_somebody
from repairlib.learn.times import are_times, now

NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,79}")
DEEPEST = 4  # a dict of lists of dicts of texts is deep enough for a board


class KeptWork:
    """The file with what `learner` (else who is set now) has typed into the panel called `name`.

    `name` is of small letters, digits and hyphens, such as "07-plan". What is kept are plain
    values by their names: texts, numbers, True and False, None, and lists or dicts of these. A
    panel reads them when it is made and saves what changes, at each change:

        work = KeptWork("07-plan")
        kept = work.read()                         # {} at first, and in a fresh home
        field.value = kept.get("list", field.value)
        work.save({"list": "C1, 10/16, elect"})    # as soon as it is typed
        work.save({"ticked": ["C3", "C9"]})        # "list" stays as it is

    Both raise RepairlibError when the folder cannot be read or written: tell it at its place and
    go on. `note` is one sentence about a damaged file that was kept aside, or "". What no longer
    fits (an option that is gone) is for the panel to leave out. `path` is where the file is.

    >>> KeptWork("../plan")
    Traceback (most recent call last):
        ...
    ValueError: no name for kept work: '../plan'
    """

    def __init__(
        self, name: str, learner: Learner | Demo | None = None, folder: Path | None = None
    ):
        if not NAME.fullmatch(name):
            raise ValueError(f"no name for kept work: {name!r}")
        self.name = name
        self.learner = current_learner()[0] if learner is None else learner
        self.path = (folder or home()) / "work" / self.learner.folder() / f"{name}.json"
        self.note = ""

    def read(self) -> dict[str, Any]:
        """All that is kept, by name. Raises RepairlibError when barred."""
        found, note = files.read_or_keep_aside(self.path, is_work)
        self.note = note or self.note
        return found["kept"] if found else {}

    def save(self, changes: Mapping[str, Any]) -> dict[str, Any]:
        """Add or replace these things; give back all that are kept now.

        When this returns they are on the disk. Raises RepairlibError when they cannot be, and
        TypeError for what is no plain value.
        """
        if not _are_plain(dict(changes), DEEPEST):
            raise TypeError(f"only texts, numbers, lists and dicts of these are kept: {changes!r}")
        with files.locked(self.path):
            found, note = files.settle(self.path, is_work)
            self.note = note or self.note
            content: dict[str, Any] = (found or {}) | named_in(self.learner)
            content |= {"work": self.name, "kept": {**content.get("kept", {}), **changes}}
            content["at"] = now(content.get("at", {}), changes)
            files.write(self.path, content)
        return content["kept"]


def is_work(found: dict) -> bool:
    """True when a file's content is kept work."""
    kept, name = found.get("kept"), found.get("work")
    if not isinstance(name, str) or not NAME.fullmatch(name) or not names_somebody(found):
        return False
    times = found.get("at", {})
    return isinstance(kept, dict) and _are_plain(kept, DEEPEST) and are_times(times)


def _are_plain(value: object, depth: int) -> bool:
    if isinstance(value, dict):
        texts = all(isinstance(key, str) for key in value)
        return texts and depth > 0 and all(_are_plain(one, depth - 1) for one in value.values())
    if isinstance(value, list):
        return depth > 0 and all(_are_plain(one, depth - 1) for one in value)
    return value is None or isinstance(value, str | int | float | bool)
