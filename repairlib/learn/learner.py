"""Who is learning: a name and a group, set once and remembered outside the workbook."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.draws import DemoDraw, Draw, normal

LONGEST = 80
NO_GROUP = "no-group"  # the folder of those who learn on their own; others end in a hash


@dataclass(frozen=True)
class Learner:
    """A learner, in a group or on their own. Raises RepairlibError when a text is no plain line.

    >>> str(Learner("Ada Example", "bench-7"))
    'variant of Ada Example, group bench-7'
    >>> Learner("Ada Example").who
    'Ada Example'
    """

    name: str
    group: str = ""

    def __post_init__(self):
        for what, text in (("name", self.name), ("group", self.group)):
            if not isinstance(text, str):
                raise RepairlibError(text, f"the {what} is not a text", f"a {what} in quotes")
            if (text and not text.isprintable()) or len(text) > LONGEST:
                wrong = f"this is no {what} on one line"
                raise RepairlibError(text, wrong, f"up to {LONGEST} letters, digits and spaces")
        if not normal(self.name):
            raise RepairlibError(self.name, "the name is empty", "a name of letters or digits")

    def __str__(self) -> str:
        return f"variant of {self.who}"

    @property
    def who(self) -> str:
        """The learner in words."""
        return f"{self.name}, group {self.group}" if normal(self.group) else self.name

    def draw(self, lesson: str) -> Draw:
        """The draw that makes this learner's variant of a lesson."""
        return Draw.for_learner(self.group, self.name, lesson)

    def folder(self) -> Path:
        """Where this learner's files lie, below the folder of all answers or of all work."""
        group = file_name(self.group) if normal(self.group) else NO_GROUP
        return Path(group, file_name(self.name))


class Demo:
    """Nobody in particular: the variant in which the lessons are printed."""

    name = ""
    group = ""
    who = "nobody in particular"

    def __str__(self) -> str:
        return "demo variant"

    def draw(self, lesson: str) -> Draw:
        """The draw of the demo variant of a lesson."""
        return DemoDraw.of(lesson)

    def folder(self) -> Path:
        """Where the files of the demo variant lie, as for a learner."""
        return Path("demo")


DEMO = Demo()


def learner_in(found: Mapping) -> Learner | Demo:
    """Whose file this is, by what stands in it; DEMO where no name does.

    Files of before call the group `class_code`. Raises RepairlibError when it names nobody.

    >>> learner_in({"name": "Ada Example", "class_code": "bench-7"}).who
    'Ada Example, group bench-7'
    """
    name, group = found.get("name"), found.get("group", found.get("class_code"))
    return DEMO if (name, group) == ("", "") else Learner(name, group)  # type: ignore[arg-type]


def named_in(learner: Learner | Demo) -> dict[str, str]:
    """How a file says whose it is: what `learner_in` reads."""
    return {"name": learner.name, "group": learner.group}


def names_somebody(found: Mapping) -> bool:
    """True when `learner_in` can tell whose file this is."""
    try:
        return bool(learner_in(found))
    except RepairlibError:
        return False


def file_name(text: str) -> str:
    """A file name for any text: some plain letters to read, a hash to tell names apart.

    >>> file_name("Ada Example") == file_name("ada  example")
    True
    >>> file_name("../Zoë").startswith("zo-")
    True
    """
    plain = "".join(c for c in normal(text) if c.isascii() and (c.isalnum() or c == " "))
    mark = hashlib.sha256(normal(text).encode("utf-8", "surrogatepass")).hexdigest()[:16]
    return f"{plain.strip().replace(' ', '-')[:24]}-{mark}"


def home() -> Path:
    """The folder of everything remembered: REPAIRLIB_HOME, or the user's own data folder.

    Raises RepairlibError when either begins with the home of a user who has none.
    """
    from platformdirs import user_data_dir

    chosen = os.environ.get("REPAIRLIB_HOME", "").strip()
    try:
        return Path(chosen or user_data_dir("repairlib", appauthor=False)).expanduser()
    except RuntimeError:
        where = chosen or "your home folder"
        raise RepairlibError(where, "this computer knows no such home", files.WRITABLE) from None


def current_learner() -> tuple[Learner | Demo, str]:
    """The learner that was set (or DEMO), and a note when their file had to be kept aside."""
    found, note = files.read_or_keep_aside(home() / "learner.json", _is_learner)
    if found:
        return learner_in(found), ""
    return DEMO, f"{note} Set your name again in lesson 00." if note else ""


def known_learners() -> list[Learner]:
    """Those who were set on this computer and not forgotten, the latest first."""
    found, _ = files.read_or_keep_aside(home() / "learner.json", _is_learner)
    return _known(found)


def set_learner(name: str, group: str = "") -> Learner | Demo:
    """Remember who is learning; both empty is the demo variant.

    Answers of another name stay, apart, and come back with it. Raises RepairlibError for a group
    without a name, and when it cannot be remembered.
    """
    name, group = (text.strip() if isinstance(text, str) else text for text in (name, group))
    learner = learner_in({"name": name, "group": group})
    _remember(learner, moved=learner)
    return learner


def forget(learner: Learner | Demo) -> None:
    """Forget this name and group; the demo variant is set. What was answered stays on the disk."""
    _remember(DEMO, moved=learner)


def _remember(learner: Learner | Demo, moved: Learner | Demo) -> None:
    """Set `learner`; among those known `moved` comes first when it is set, and else goes."""
    path = home() / "learner.json"
    with files.locked(path):
        found, _ = files.settle(path, _is_learner)
        others = [one for one in _known(found) if one.folder() != moved.folder()]
        first = [learner] if isinstance(learner, Learner) else []
        known = [named_in(one) for one in (*first, *others)]
        files.write(path, {**named_in(learner), "known": known})


def _known(found: Mapping | None) -> list[Learner]:
    if not found:
        return []
    known = map(learner_in, found.get("known", [found]))
    return [one for one in known if isinstance(one, Learner)]


def _is_learner(found: dict) -> bool:
    known = found.get("known", [])
    if not isinstance(known, list) or not all(isinstance(one, dict) for one in known):
        return False
    return all(map(names_somebody, (found, *known)))
