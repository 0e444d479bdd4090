"""A working copy of the lessons, which an update renews without touching what was changed.

A lesson counts as changed when the text of its cells is not the text that was laid. To open and
run a lesson changes its file too (outputs, counts, the version of Python), and is no change: the
answers are saved elsewhere, and outputs come back by running. A changed lesson is kept, and a new
version of it is put beside it, once. The record in the folder says what was laid last.

The own lessons of the group that this computer knows are laid in the same way, each as a notebook.
"""

from __future__ import annotations

import hashlib
import json
import os
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import LESSON_FOLDER
from repairlib.learn import files
from repairlib.learn.group import known_group
from repairlib.learn.own import own_files, own_lesson, own_notebook

HOUSE = LESSON_FOLDER.parent  # the clone, or the installed package
FIRST = "00-start-here.ipynb"
LAID = ("[0-9]*.ipynb", "*.md", "*.svg")  # not the template
INSTRUCTORS = "instructor/run-a-class.ipynb"
RECORD = ".laid.json"


def lay_lessons(
    folder: Path, source: Path = LESSON_FOLDER, for_instructor: bool = False
) -> list[str]:
    """Lay the lessons of `source` in `folder`; one sentence for each that was put beside another.

    One sentence too for an own lesson that cannot be read, and is not laid. An instructor gets the
    lesson for instructors too. Raises RepairlibError
    when `folder` cannot be written or lies where the lessons come from.
    """
    if folder.resolve().is_relative_to(HOUSE.resolve()):
        wrong = "no working copy is laid in the folder that the lessons come from"
        raise RepairlibError(folder, wrong, "a folder outside it, such as --to ~/lessons")
    own, told = _own_notebooks()
    kinds = (*LAID, INSTRUCTORS) if for_instructor else LAID
    shipped = {path.name: path.read_bytes() for kind in kinds for path in source.glob(kind)}
    record = folder / RECORD
    with files.locked(record):
        found, _ = files.settle(record, _is_record)
        laid = dict(found["laid"]) if found else {}
        beside = {
            name: _lay(folder, name, content, laid)
            for name, content in sorted((shipped | own).items())
        }
        files.write(record, {"laid": laid})
    kept = [
        f"Your changed {name} is kept; the new version is {new}."
        for name, new in beside.items()
        if new
    ]
    return [*kept, *told]


def _own_notebooks() -> tuple[dict[str, bytes], list[str]]:
    """The notebook of each own lesson by its name; a sentence for each that cannot be read."""
    group, note = known_group()
    notebooks, told = {}, [note] if note else []
    for lesson in own_files(group):
        try:
            notebooks[f"{lesson}.ipynb"] = own_notebook(own_lesson(lesson, group))
        except RepairlibError as error:
            told.append(f"The own lesson {lesson} is not laid: {error}")
    return notebooks, told


def _lay(folder: Path, name: str, new: bytes, laid: dict[str, list[str]]) -> str:
    """Lay one file and note it in `laid`; its name when it went beside a changed one, or ""."""
    path = folder / name
    before, now = laid.get(name), [_hash(new), _hash(text_of(new))]
    with files.saying_why(path):
        old = path.read_bytes() if path.exists() else None
        if old is not None and before == now:
            return ""
        laid[name] = now
        if old is None or _hash(text_of(old)) in (now[1], before and before[1]):
            _replace(path, new)
            return ""
    beside = f"{path.stem}.new{path.suffix}"
    return _lay(folder, beside, new, laid) or beside


def text_of(content: bytes) -> bytes:
    """What a person writes in a file: of a notebook the kind and the text of its cells.

    >>> run = b'{"cells": [{"cell_type": "code", "source": ["1"], "outputs": [1]}]}'
    >>> run != b'{"cells": [{"cell_type": "code", "source": "1"}]}'
    True
    >>> text_of(run) == text_of(b'{"cells": [{"cell_type": "code", "source": "1"}]}')
    True
    """
    try:
        cells = json.loads(content)["cells"]
        texts = [
            [cell["cell_type"], "".join(cell["source"]), cell.get("attachments")] for cell in cells
        ]
    except (ValueError, RecursionError, LookupError, TypeError, AttributeError):
        return content
    return json.dumps(texts).encode()


def _replace(path: Path, content: bytes) -> None:
    """Put `content` in `path`, all of it or none of it."""
    fresh = path.with_name(path.name + ".part")
    fresh.write_bytes(content)
    os.replace(fresh, path)


def _hash(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _is_record(found: dict) -> bool:
    laid = found.get("laid")
    marks = laid.values() if isinstance(laid, dict) else [None]
    return all(isinstance(pair, list) and len(pair) == 2 for pair in marks)
