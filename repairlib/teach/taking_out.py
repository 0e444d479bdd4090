"""A person is taken out of the instructor's folder: no file in it names them afterwards.

Members' file and instructor's file lose their entry, what they handed in is removed, also out of
zip archives, and so are their lines in the mark book. Pages and paper that show them are removed
whole: `class collect` and `class paper` make them anew.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.group import GROUP_FILE, Member, read_group
from repairlib.teach.collecting import HANDED_IN
from repairlib.teach.handed_in_files import HandedInFiles, json_bytes, json_in
from repairlib.teach.instructor import instructor_file
from repairlib.teach.person import Person


class TakenOut(NamedTuple):
    """What was done in a folder for whom: how many handed-in files went, and which pages.

    `shared` are files of others in which the name of a partner stood. `left` are files that could
    not be looked into or changed: for a person.
    """

    member: Member
    handed_in: int
    removed: tuple[str, ...]
    shared: tuple[str, ...]
    left: tuple[str, ...]

    def __str__(self) -> str:
        lines = [f"{self.member.name} ({self.member.word}) is taken out of the group."]
        lines.append(f"Removed: {counted(self.handed_in, 'file')} that were handed in.")
        if self.removed:
            what = ", ".join(self.removed)
            lines.append(f"Removed, to be made anew by class collect and class paper: {what}")
        lines += [f"Their name as a partner is taken out of {one}" for one in self.shared]
        lines += [f"Look into this yourself: {one}" for one in self.left]
        lines.append("Give the new group.json to the learners' computers.")
        return "\n".join(lines)

    def to_dict(self) -> dict[str, Any]:
        """The same as plain values."""
        return self._asdict() | {"member": {"name": self.member.name, "word": self.member.word}}


def take_out(folder: str | Path, who: str) -> TakenOut:
    """Take a member out of the folder of a group.

    They leave the group last, so that what was interrupted or refused can be done again. Raises
    RepairlibError when the folder has no group or the group no such member, and when a file is
    barred.
    """
    folder = Path(folder).expanduser()
    group = read_group(folder / GROUP_FILE)
    member = group.member(who)
    person = Person(group, member)
    handed_in = HandedInFiles(person)
    handed_in.take_out(folder / HANDED_IN)
    left = handed_in.left
    marks = folder / "marks"
    for path in (instructor_file(folder), marks / "marks.json"):
        left += _rewrite_json(path, person)
    pages = [*marks.glob("*.html"), *marks.glob("files.json"), *_paper_of(folder / "paper", person)]
    pages += _rewrite_csv(marks / "marks.csv", person)
    pages += [one for place in (folder, marks) for one in _kept_aside(place, person)]
    removed = [_removed(page, folder) for page in pages]
    _leave(folder / GROUP_FILE, member)
    return TakenOut(member, handed_in.count, tuple(removed), tuple(handed_in.shared), tuple(left))


def _leave(path: Path, member: Member) -> None:
    with files.locked(path):
        group = read_group(path)
        stay = tuple(one for one in group.members if normal(one.name) != normal(member.name))
        files.write(path, group._replace(members=stay).to_dict())


def _rewrite_json(path: Path, person: Person) -> list[str]:
    """Take them out of a file of the instructor; what has to be looked into afterwards."""
    if not path.exists():
        return []
    with files.locked(path):
        data = _read(path)
        content = json_in(data)
        if content is None:
            return [f"{path} (damaged)"]
        less = json_bytes(person.without(content))
        files.put_in_place(path, less, mode=0o600)
    return [f"{path} (a text that names them)"] if person.is_shown(less) else []


def _rewrite_csv(path: Path, person: Person) -> list[Path]:
    """Take them out of the list of marks; the list where it was changed so that it has to go."""
    if not path.exists():
        return []
    try:
        rows = [
            ["" if normal(cell) == person.name else cell for cell in row]
            for row in csv.reader(io.StringIO(_read(path).decode("utf-8-sig")))
            if not any(normal(cell) == person.word for cell in row)
        ]
    except (UnicodeDecodeError, csv.Error):
        return [path]
    made = io.StringIO()
    csv.writer(made).writerows(rows)
    less = made.getvalue().encode("utf-8-sig")
    if person.is_shown(less):  # other signs between the cells
        return [path]
    files.put_in_place(path, less, mode=0o600)
    return []


def _kept_aside(folder: Path, person: Person) -> list[Path]:
    """The files that could not be used and were kept, where they may name them."""
    return [one for one in folder.glob("*.kept-*.json") if person.may_be_meant(_read(one))]


def _paper_of(folder: Path, person: Person) -> Iterable[Path]:
    """The printed files that show them: pages by their words, and what is printed beside them."""
    shown = [page for page in folder.rglob("*.html") if person.is_shown(_read(page))]
    stems = {page.with_suffix("") for page in shown}
    others = (one for one in folder.rglob("*") if one.is_file() and one not in shown)
    beside = [one for one in others if one.with_suffix("") in stems or _is_theirs(one, person)]
    return [*shown, *beside]


def _is_theirs(path: Path, person: Person) -> bool:
    return person.word in re.split(r"[\W_]+", path.stem.casefold())


def _removed(path: Path, folder: Path) -> str:
    with files.saying_why(path):
        path.unlink()
    return path.relative_to(folder).as_posix()


def _read(path: Path) -> bytes:
    with files.saying_why(path):
        return path.read_bytes()
