"""Who is learning: a name and a class code, set once and remembered outside the workbook."""

from __future__ import annotations

import hashlib
import os
from dataclasses import dataclass
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.draws import DemoDraw, Draw, normal

LONGEST = 80


@dataclass(frozen=True)
class Learner:
    """A learner in a class. Raises RepairlibError when the name or the code is no plain line.

    >>> str(Learner("Ada Example", "bench-7"))
    'variant of Ada Example, class bench-7'
    """

    name: str
    class_code: str

    def __post_init__(self):
        for what, text in (("name", self.name), ("class code", self.class_code)):
            if not isinstance(text, str):
                raise RepairlibError(text, f"the {what} is not a text", f"a {what} in quotes")
            if not normal(text):
                raise RepairlibError(text, f"the {what} is empty", f"a {what} of letters or digits")
            if not text.isprintable() or len(text) > LONGEST:
                wrong = f"this is no {what} on one line"
                raise RepairlibError(text, wrong, f"up to {LONGEST} letters, digits and spaces")

    def __str__(self) -> str:
        return f"variant of {self.name}, class {self.class_code}"

    def draw(self, lesson: str) -> Draw:
        """The draw that makes this learner's variant of a lesson."""
        return Draw.for_learner(self.class_code, self.name, lesson)

    def folder(self) -> Path:
        """Where this learner's answers lie, below the answers folder."""
        return Path(file_name(self.class_code), file_name(self.name))


class Demo:
    """Nobody in particular: the variant in which the lessons are printed."""

    name = ""
    class_code = ""

    def __str__(self) -> str:
        return "demo variant"

    def draw(self, lesson: str) -> Draw:
        """The draw of the demo variant of a lesson."""
        return DemoDraw.of(lesson)

    def folder(self) -> Path:
        """Where the answers to the demo variant lie, below the answers folder."""
        return Path("demo")


DEMO = Demo()


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
        return Learner(found["name"], found["class_code"]), ""
    return DEMO, f"{note} Set your name again in lesson 00." if note else ""


def set_learner(name: str, class_code: str) -> Learner:
    """Remember who is learning. Answers of another name stay, apart, and come back with it."""
    learner = Learner(
        *(text.strip() if isinstance(text, str) else text for text in (name, class_code))
    )
    path = home() / "learner.json"
    with files.locked(path):
        files.settle(path, _is_learner)
        files.write(path, {"name": learner.name, "class_code": learner.class_code})
    return learner


def _is_learner(found: dict) -> bool:
    try:
        return bool(Learner(found["name"], found["class_code"]))
    except (KeyError, AttributeError, TypeError, RepairlibError):
        return False
