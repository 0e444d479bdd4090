"""A learner, or a whole group, is taken off this computer: no file here names them afterwards.

What goes: answers, tries, what was typed into panels, job cards, images of memory chips, copies
that were replaced, the entry among the learners and in the file of the group, and in the working
copy of the lessons the outputs that show the name. In the files of others only the name of a
partner is taken out.
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Collection, Iterable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import RepairlibError
from repairlib.core.html import escape
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.carrying import ANSWERS, WORK, check_of, files_of
from repairlib.learn.group import (
    GROUP_FILE,
    Group,
    group_file,
    group_put_away,
    is_group,
    known_group,
)
from repairlib.learn.handed import never_handed_in
from repairlib.learn.home import file_name, home
from repairlib.learn.learner import Learner, forget, known_learners, learner_in, names_somebody
from repairlib.record import ENDING

# Folders of learners, below home().
KINDS = ("answers", "work", "jobs", "images", "replaced", "handed-in")
HISTORY = ("jupyter", "ipython", "profile_default")  # what was typed into cells, line by line
FOR_GOOD = "hand in first, or --for-good"


class Forgotten(NamedTuple):
    """What there was of a learner: how many answers, things typed into panels and job cards.

    `never_handed_in` are the lessons whose answers nobody else has.
    """

    learner: Learner
    answers: int
    typed: int
    cards: int
    never_handed_in: tuple[str, ...]

    def __str__(self) -> str:
        parts = (
            counted(self.answers, "answer"),
            f"{counted(self.typed, 'thing')} typed into panels",
            counted(self.cards, "job card"),
        )
        numbers = ", ".join(one.partition("-")[0] for one in self.never_handed_in)
        never = f"; never handed in: lesson {numbers}" if numbers else ""
        return f"{self.learner.name}: {', '.join(parts)}{never}"


def learner_meant(who: str) -> Learner:
    """The learner of this computer meant by a word or a name.

    Raises RepairlibError when there is none, or more than one.
    """
    group, _ = known_group()
    known = known_learners()
    if group is not None:
        with suppress(RepairlibError):
            return Learner(group.member(who).name, group.name)
    meant = {
        one.folder(): one for one in known if normal(who) in (normal(one.name), normal(one.who))
    }
    if len(meant) == 1:
        return next(iter(meant.values()))
    names = ", ".join(one.who for one in (meant or {one.folder(): one for one in known}).values())
    wrong = "more than one learner here has this name" if meant else "no learner here has this name"
    raise RepairlibError(who, wrong, names or "a learner of this computer")


def forget_learner(learner: Learner, for_good: bool = False) -> Forgotten:
    """Take a learner off this computer.

    Raises RepairlibError, and changes nothing, where answers were never handed in, unless
    `for_good`.
    """
    found = what_there_is(learner)
    if found.never_handed_in and not for_good:
        raise RepairlibError(learner.name, f"not forgotten: {found}", FOR_GOOD)
    forget(learner)
    _remove_folders([learner])
    _take_out_of_group(learner)
    _clean([learner])
    return found


def forget_group(for_good: bool = False) -> tuple[Group, list[Forgotten]]:
    """Take everybody of the known group off this computer, and the group: ready for the next one.

    Raises RepairlibError, and changes nothing, where no group is known or somebody's answers were
    never handed in, unless `for_good`.
    """
    group, note = known_group()
    if group is None:
        accepted = "a computer that knows a group, or class forget WHO for one person"
        raise RepairlibError("class clear", note or "no group is known here", accepted)
    learners = _of_group(group)
    found = [what_there_is(one) for one in learners]
    never = [str(one) for one in found if one.never_handed_in]
    if never and not for_good:
        raise RepairlibError(group.name, f"not cleared: {'; '.join(never)}", FOR_GOOD)
    for one in learners:
        forget(one)
    _remove_folders(learners)
    for kind in KINDS:
        _remove(home() / kind / file_name(group.name))
    own = {home() / GROUP_FILE} & {group_file()} | {group_put_away(group.name)}
    for path in own:
        _remove(path)
        _remove(path.with_name(f"{path.name}.lock"))
    _clean([*learners, *(Learner(one.name, group.name) for one in group.members)])
    return group, [one for one in found if any(one[1:4])]


def what_there_is(learner: Learner) -> Forgotten:
    """What this computer has of a learner. Raises RepairlibError when barred."""
    lessons = files_of(ANSWERS, learner)
    answers = sum(len(one["answers"]) for one in lessons.values())
    typed = sum(len(one["kept"]) for one in files_of(WORK, learner).values())
    cards = len(list((home() / "jobs" / learner.folder()).glob(f"*{ENDING}")))
    return Forgotten(learner, answers, typed, cards, never_handed_in(learner, lessons))


def still_named(names: Iterable[str]) -> list[Path]:
    """Files here that name any of these all the same, such as another's job card: for a person."""
    wanted = {normal(one) for one in names}
    if not wanted:
        return []
    seen = _any_of(wanted)
    kinds = ("json", "jsonl")
    paths = (path for kind in kinds for path in home().rglob(f"*.{kind}") if path.is_file())
    return [path for path in sorted(paths) if seen.search(normal(readable(path.read_bytes())))]


def without_partner(value: Any, names: Collection[str]) -> Any:
    """`value` with "" for each "partner" that is one of these names, however deep it stands.

    The names are written as `normal` writes them.

    >>> without_partner({"q1": {"partner": "ADA example", "typed": "a"}}, {"ada example"})
    {'q1': {'partner': '', 'typed': 'a'}}
    """
    if not isinstance(value, dict):
        return value
    return {
        key: "" if key == "partner" and _is_one_of(one, names) else without_partner(one, names)
        for key, one in value.items()
    }


def _is_one_of(value: Any, names: Collection[str]) -> bool:
    return isinstance(value, str) and normal(value) in names


def readable(content: bytes) -> str:
    """The text of a JSON file with its escaped letters as letters."""
    text = content.decode("utf-8", "replace")
    letters = re.sub(r"\\u([0-9a-fA-F]{4})", lambda found: chr(int(found[1], 16)), text)
    return letters.encode("utf-16", "surrogatepass").decode("utf-16", "replace")


def _any_of(names: Collection[str]) -> re.Pattern[str]:
    """Finds any of these names where it is not part of a longer one."""
    listed = "|".join(map(re.escape, sorted(names, key=len, reverse=True)))
    return re.compile(rf"(?<!\w)(?:{listed})(?!\w)")


def _of_group(group: Group) -> list[Learner]:
    """Everybody of the group of whom there is something here: set here once, or in a folder."""
    learners = [one for one in known_learners() if normal(one.group) == normal(group.name)]
    learners += [Learner(one.name, group.name) for one in group.members]
    for kind in ("answers", "work"):
        for folder in (home() / kind / file_name(group.name)).glob("*"):
            learners += _named_in_folder(folder)
    by_folder = {one.folder(): one for one in reversed(learners)}
    return [one for place, one in by_folder.items() if _has_folder(place)]


def _has_folder(place: Path) -> bool:
    here = any((home() / kind / place).exists() for kind in KINDS)
    return here or any(one.folder() == place for one in known_learners())


def _named_in_folder(folder: Path) -> list[Learner]:
    """The learner whom the files of a folder name."""
    for path in folder.glob("*.json"):
        found, _ = files.read(path, names_somebody)
        if found:
            learner = learner_in(found)
            return [learner] if isinstance(learner, Learner) else []
    return []


def _remove_folders(learners: Iterable[Learner]) -> None:
    for learner in learners:
        for kind in KINDS:
            folder = home() / kind / learner.folder()
            _remove(folder)
            with suppress(OSError):  # others of the group are in it
                folder.parent.rmdir()


def _remove(path: Path) -> None:
    with files.saying_why(path):
        if path.is_symlink() or path.is_file():
            path.unlink()
        elif path.exists():
            shutil.rmtree(path)


def _take_out_of_group(learner: Learner) -> None:
    """The member goes from the files of the group that are this computer's own."""
    for path in {home() / GROUP_FILE, group_put_away(learner.group)}:
        if not path.exists():
            continue
        with files.locked(path):
            found, _ = files.read(path, is_group)
            if not found or normal(found["group"]) != normal(learner.group):
                continue
            left = [one for one in found["members"] if normal(one["name"]) != normal(learner.name)]
            files.write(path, found | {"members": left})


def _clean(learners: Sequence[Learner]) -> None:
    """What names these learners outside their own folders."""
    names = {normal(one.name) for one in learners}
    if not names:
        return
    written = names | {normal(escape(one, quote=False)) for one in names}
    named = _any_of(written)
    groups = {one.folder().parent for one in learners}
    for folder in (home() / kind / group for kind in KINDS for group in groups):
        for path in folder.glob("*/*.json"):
            _take_out_partner(path, names)
    for folder in (home(), group_put_away("").parent):
        for path in folder.glob("*.kept-*.json"):
            if named.search(normal(readable(path.read_bytes()))):
                _remove(path)
    for path in (home() / "lessons").rglob("*.ipynb"):
        _clear_outputs(path, named)
    for path in home().joinpath(*HISTORY).glob("history.sqlite*"):
        if named.search(normal(path.read_bytes().decode("utf-8", "replace"))):
            _remove(path)


def _take_out_partner(path: Path, names: set[str]) -> None:
    """Take a partner's name out of another's file; all else in it stays."""
    with files.locked(path):
        with files.saying_why(path):
            content = path.read_bytes()
        try:
            found = json.loads(content)
        except (ValueError, RecursionError):
            return
        left = without_partner(found, names)
        if left == found:
            return
        if "carried" in left:
            del left["check"]
            left["check"] = check_of(left)
        files.put_in_place(path, f"{json.dumps(left, indent=1)}\n".encode("ascii"))


def _clear_outputs(path: Path, named: re.Pattern) -> None:
    """Empty the outputs of a notebook's cells that show such a name; running brings them back."""
    with files.saying_why(path):
        content = path.read_bytes()
    try:
        notebook = json.loads(content)
        cells = [cell for cell in notebook["cells"] if cell.get("outputs")]
    except (ValueError, RecursionError, LookupError, TypeError, AttributeError):
        return  # no notebook
    shown = [one for one in cells if _shows(one["outputs"], named)]
    widgets = notebook.get("metadata", {}).get("widgets")
    if widgets and _shows(widgets, named):
        del notebook["metadata"]["widgets"]
    elif not shown:
        return
    for cell in shown:
        cell["outputs"], cell["execution_count"] = [], None
    text = json.dumps(notebook, indent=1, ensure_ascii=False)
    files.put_in_place(path, f"{text}\n".encode("utf-8", "surrogatepass"))


def _shows(value: Any, named: re.Pattern) -> bool:
    return bool(named.search(normal(json.dumps(value, ensure_ascii=False))))
