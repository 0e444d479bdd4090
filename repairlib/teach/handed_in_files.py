"""What a person handed in is taken out of a folder, also out of its zip archives.

The folder is read as `class collect` reads it: within limits, no link followed, nothing unpacked to
a disk. What cannot be read stays as it is and is named, so that a person looks into it.
"""

from __future__ import annotations

import io
import json
import zipfile
import zlib
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.forgetting import without_partner
from repairlib.learn.hand_in import file_of, read_hand_in
from repairlib.teach.archives import Met, walk
from repairlib.teach.person import Person

CANNOT_WRITE = (
    OSError,
    ValueError,
    EOFError,
    RuntimeError,
    NotImplementedError,
    zlib.error,
    zipfile.BadZipFile,
)


class HandedInFiles:
    """The files of a folder without a person: `count` went, in the `shared` their name stood.

    `left` are those that could not be read or changed, with the reason.
    """

    def __init__(self, person: Person):
        self.person = person
        self.count = 0
        self.shared: list[str] = []
        self.left: list[str] = []

    def take_out(self, folder: Path) -> None:
        """Take them out of all files below a folder. Raises RepairlibError when one is barred."""
        if not folder.exists():
            return
        for path, found in groupby(walk([folder]), key=lambda one: one[0].path):
            self._of_one(Path(path), found)

    def _of_one(self, path: Path, found: Iterable[tuple[Met, bytes]]) -> None:
        """A file, or an archive with its members."""
        changed: list[tuple[Met, bytes | None]] = []
        whole = True
        for met, data in found:
            if met.outcome:
                self.left.append(f"{met.shown} ({met.why})")
                whole = False
                continue
            less = _without(data, self.person)
            if less is not None and self.person.is_shown(less):
                self.left.append(f"{met.shown} (a text that names them)")
            if less != data and len(met.inside) > 1:
                self.left.append(f"{met.shown} (an archive in an archive)")
            elif less != data:
                changed.append((met, less))
        if not changed:
            return
        if not _written(path, changed, whole):
            self.left.append(f"{path} (theirs is in it; written anew is only what can all be read)")
            return
        self.count += sum(less is None for _, less in changed)
        self.shared += [met.shown for met, less in changed if less is not None]


def _without(data: bytes, person: Person) -> bytes | None:
    """A file without their name as a partner; None when it is theirs."""
    content = json_in(data)
    if person.owns(content):
        return None
    less = without_partner(content, {person.name})
    return data if less == content else _checked(data, person) or json_bytes(less)


def _written(path: Path, changed: Sequence[tuple[Met, bytes | None]], whole: bool) -> bool:
    """Write what has changed; False for an archive that has members which cannot be read."""
    met, less = changed[0]
    if met.inside:
        instead = {met.inside[0]: less for met, less in changed}
        return whole and _written_anew(path, instead)
    with files.saying_why(path):
        if less is None:
            path.unlink()
        else:
            files.put_in_place(path, less)
    return True


def _written_anew(path: Path, instead: Mapping[int, bytes | None]) -> bool:
    """Write an archive with these members `instead`, None for none; False where that fails."""
    made = io.BytesIO()
    try:
        with zipfile.ZipFile(path) as old, zipfile.ZipFile(made, "w") as new:
            for number, info in enumerate(old.infolist()):
                data = instead[number] if number in instead else old.read(info)
                if data is not None:
                    new.writestr(info, data)
    except CANNOT_WRITE:
        return False
    files.put_in_place(path, made.getvalue())
    return True


def _checked(data: bytes, person: Person) -> bytes:
    """What another has handed in, with a check that fits again; b"" where none did."""
    try:
        content = read_hand_in(data)
    except RepairlibError:
        return b""  # saved answers, which have no check
    changed = content.pop("changed")
    del content["check"]
    return b"" if changed else file_of(without_partner(content, {person.name}))


def json_in(data: bytes) -> object:
    """What a JSON file holds, or None."""
    try:
        return json.loads(data)
    except (ValueError, RecursionError):
        return None


def json_bytes(content: object) -> bytes:
    """A JSON file as bytes."""
    return f"{json.dumps(content, indent=1)}\n".encode("ascii")
