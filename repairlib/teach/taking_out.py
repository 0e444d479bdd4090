"""A person is taken out of the instructor's folder: no file in it names them afterwards.

Members' file and instructor's file lose their entry, what they handed in is removed, also out of
zip archives, and so are their lines in the mark book. Pages and paper that show them are removed
whole: `class collect` and `class paper` make them anew.
"""

from __future__ import annotations

import csv
import io
import json
import re
import zipfile
from collections.abc import Iterable
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.html import escape
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.draws import normal
from repairlib.learn.group import GROUP_FILE, Group, Member, read_group
from repairlib.learn.hand_in import file_of, read_hand_in
from repairlib.learn.learner import learner_in, member_of, names_somebody
from repairlib.teach.archives import ZIP
from repairlib.teach.instructor import instructor_file

WHO = ("name", "word", "member", "who")  # under these keys a record says whose it is
LARGEST = 20_000_000  # bytes of a file that is looked into


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

    Raises RepairlibError when the folder has no group or the group no such member.
    """
    folder = Path(folder).expanduser()
    path = folder / GROUP_FILE
    with files.locked(path):
        group = read_group(path)
        member = group.member(who)
        left = tuple(one for one in group.members if one is not member)
        files.write(path, group._replace(members=left).to_dict())
    person = _Person(group, member)
    _rewrite_json(instructor_file(folder), person)
    handed_in, shared, unclear = _out_of_handed_in(folder / "handed-in", person)
    _rewrite_json(folder / "marks" / "marks.json", person)
    _rewrite_csv(folder / "marks" / "marks.csv", person)
    pages = [*(folder / "marks").glob("*.html"), *_paper_of(folder / "paper", person)]
    removed = [_removed(page, folder) for page in pages]
    return TakenOut(member, handed_in, tuple(removed), tuple(shared), tuple(unclear))


class _Person:
    """Who is taken out, and how what is theirs is known."""

    def __init__(self, group: Group, member: Member):
        self.name, self.word = normal(member.name), normal(member.word)
        self.folder = member_of(group, member).folder()
        written = "|".join(map(re.escape, {self.name, normal(escape(member.name, quote=False))}))
        self.shown = re.compile(rf"(?<!\w)(?:{written})(?!\w)")

    def is_meant(self, value: Any) -> bool:
        return isinstance(value, str) and normal(value) in (self.name, self.word)

    def owns(self, content: Any) -> bool:
        """True for a file of answers, in whatever form, that is theirs."""
        if not isinstance(content, dict) or not names_somebody(content):
            return False
        return learner_in(content).folder() == self.folder

    def without(self, value: Any) -> Any:
        """`value` without their records, and without their name where it stands beside others."""
        if isinstance(value, dict):
            kept = {key: one for key, one in value.items() if not self.is_meant(key)}
            return {key: self._inside(one) for key, one in kept.items() if not self._is_record(one)}
        if isinstance(value, list):
            return [self._inside(one) for one in value if not self._is_record(one)]
        return value

    def _inside(self, value: Any) -> Any:
        if isinstance(value, str):
            return "" if normal(value) == self.name else value
        if isinstance(value, list):
            value = [one for one in value if not self.is_meant(one)]
        return self.without(value)

    def _is_record(self, value: Any) -> bool:
        if isinstance(value, dict):
            return any(self.is_meant(value.get(key)) for key in WHO)
        if isinstance(value, list):
            return any(isinstance(one, str) and normal(one) == self.word for one in value)
        return False


def _rewrite_json(path: Path, person: _Person) -> None:
    if not path.exists():
        return
    with files.locked(path):
        content = _json_in(path.read_bytes())
        if content is not None:
            files.put_in_place(path, _json(person.without(content)), mode=0o600)


def _rewrite_csv(path: Path, person: _Person) -> None:
    if not path.exists():
        return
    text = path.read_bytes().decode("utf-8-sig")
    rows = [
        ["" if normal(cell) == person.name else cell for cell in row]
        for row in csv.reader(io.StringIO(text))
        if not any(normal(cell) == person.word for cell in row)
    ]
    made = io.StringIO()
    csv.writer(made).writerows(rows)
    files.put_in_place(path, made.getvalue().encode("utf-8-sig"), mode=0o600)


def _out_of_handed_in(folder: Path, person: _Person) -> tuple[int, list[str], list[str]]:
    """Remove what they handed in: how many files, whose files named them, what is unclear."""
    count = 0
    shared: list[str] = []
    unclear: list[str] = []
    for path in sorted(one for one in folder.rglob("*") if one.is_file()):
        if path.is_symlink() or path.stat().st_size > LARGEST:
            unclear.append(f"{path} (a link, or too large)")
        elif zipfile.is_zipfile(path):
            count += _out_of_zip(path, person, shared, unclear)
        else:
            data = path.read_bytes()
            less = _without(data, person, str(path), shared, unclear)
            if less is None:
                path.unlink()
                count += 1
            elif less != data:
                files.put_in_place(path, less)
    return count, shared, unclear


def _out_of_zip(path: Path, person: _Person, shared: list[str], unclear: list[str]) -> int:
    """Write an archive anew without the members that are theirs; how many those were."""
    try:
        with zipfile.ZipFile(path) as archive:
            if sum(one.file_size for one in archive.infolist()) > LARGEST:
                raise ValueError("too large")
            members = [(one, archive.read(one)) for one in archive.infolist()]
    except (ValueError, OSError, RuntimeError, NotImplementedError, zipfile.BadZipFile):
        unclear.append(f"{path} (an archive that cannot be looked into)")
        return 0
    left = [
        (one, _without(data, person, f"{path}/{one.filename}", shared, unclear))
        for one, data in members
    ]
    if left == members:
        return 0
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for one, data in left:
            if data is not None:
                archive.writestr(one, data)
    files.put_in_place(path, made.getvalue())
    return sum(data is None for _, data in left)


def _without(
    data: bytes, person: _Person, where: str, shared: list[str], unclear: list[str]
) -> bytes | None:
    """A file without their name; None when it is theirs."""
    content = _json_in(data)
    if person.owns(content):
        return None
    if not isinstance(content, dict):
        if data.startswith(ZIP) or person.shown.search(normal(data.decode("utf-8", "replace"))):
            unclear.append(f"{where} (an archive in an archive, or a text that names them)")
        return data
    if (less := _without_partner(content, person)) == content:
        return data
    shared.append(where)
    return _checked(data, person) or _json(less)


def _without_partner(value: Any, person: _Person) -> Any:
    if not isinstance(value, dict):
        return value
    return {
        key: "" if key == "partner" and person.is_meant(one) else _without_partner(one, person)
        for key, one in value.items()
    }


def _checked(data: bytes, person: _Person) -> bytes:
    """What another has handed in, with a check that fits again; b"" where none did."""
    try:
        content = read_hand_in(data)
    except RepairlibError:
        return b""  # saved answers, which have no check
    changed = content.pop("changed")
    del content["check"]
    return b"" if changed else file_of(_without_partner(content, person))


def _paper_of(folder: Path, person: _Person) -> Iterable[Path]:
    """The printed files that show them: pages by their words, and what is printed beside them."""
    shown = [page for page in folder.rglob("*.html") if _shows(page, person)]
    stems = {page.with_suffix("") for page in shown}
    others = (one for one in folder.rglob("*") if one.is_file() and one not in shown)
    beside = [one for one in others if one.with_suffix("") in stems or _is_theirs(one, person)]
    return [*shown, *beside]


def _shows(page: Path, person: _Person) -> bool:
    return bool(person.shown.search(normal(page.read_bytes().decode("utf-8", "replace"))))


def _is_theirs(path: Path, person: _Person) -> bool:
    return person.word in re.split(r"[\W_]+", path.stem.casefold())


def _removed(path: Path, folder: Path) -> str:
    with files.saying_why(path):
        path.unlink()
    return path.relative_to(folder).as_posix()


def _json_in(data: bytes) -> Any:
    try:
        return json.loads(data)
    except (ValueError, RecursionError):
        return None


def _json(content: Any) -> bytes:
    return f"{json.dumps(content, indent=1)}\n".encode("ascii")
