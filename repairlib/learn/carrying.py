"""One file with all that a learner has answered and typed, to go on at another computer.

The file says whose it is, and ends in a check of its content: one that was damaged on the way is
refused whole. What is brought joins what is there: of each answer and each thing typed the later
one wins, and what it replaces is kept in a file of the same kind. The
records of tries go along and are joined: a line that is not here yet is added, and none goes.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.home import home
from repairlib.learn.kept_work import KeptWork, is_work
from repairlib.learn.learner import (
    DEMO,
    Demo,
    Learner,
    current_learner,
    learner_in,
    named_in,
    names_somebody,
    set_learner,
)
from repairlib.learn.saved_answers import SavedAnswers, is_answers, merged
from repairlib.learn.tries import as_list, from_list, join_tries, path_of, read_tries

FORMAT = 2  # of a file of carried work; the first had no tries
LARGEST = 20_000_000  # bytes
OURS = "a file that was saved here or elsewhere by Take my work with me"
NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,79}")
NEW, LATER, STAYED, SAME = "new", "later", "stayed", "same"  # what became of a thing


class Kind(NamedTuple):
    """One of the two kinds of file that are carried."""

    things: str  # under this key a file has what was answered or typed, by name
    called: str  # under this key the lesson or panel
    fits: Callable[[dict], bool]
    path: Callable[[str, Learner | Demo], Path]


ANSWERS = Kind("answers", "lesson", is_answers, lambda name, who: SavedAnswers(name, who).path)
WORK = Kind("kept", "work", is_work, lambda name, who: KeptWork(name, who).path)
KINDS = {"answers": ANSWERS, "work": WORK}


class Brought(NamedTuple):
    """What came of a file that was brought: whose it was, and how many things.

    `new` were not here, or are later than what was; `stayed` differ, and what is here is as late or
    later; `same` are equal. What was replaced stands in the file `replaced`. `notes` are sentences
    on damaged files here that were kept aside.
    """

    learner: Learner | Demo
    new: int
    stayed: int
    same: int
    replaced: Path | None
    notes: tuple[str, ...]


def take_along(learner: Learner | Demo) -> dict[str, Any]:
    """What the file holds with all the work of a learner. Raises RepairlibError when barred."""
    carried = {name: files_of(kind, learner) for name, kind in KINDS.items()}
    tries = {
        lesson: [as_list(one) for one in read_tries(lesson, learner)]
        for lesson in carried["answers"]
    }
    content = {"format": FORMAT, **named_in(learner), "carried": carried, "tries": tries}
    return content | {"check": check_of(content)}


def how_many(content: Mapping) -> tuple[int, int]:
    """How many answers, and how many things typed into panels, stand in a file to carry."""
    answers, work = (
        sum(len(found[kind.things]) for found in content["carried"][name].values())
        for name, kind in KINDS.items()
    )
    return answers, work


def bring(data: bytes, name: str = "the file") -> Brought:
    """Take in the content of a file that was carried here; its learner is set.

    Raises RepairlibError for what is no such file or is damaged, and for the work of somebody else
    than who is set here; then nothing is changed.
    """
    content = _read(data, name)
    learner = learner_in(content)
    _refuse_somebody_else(learner, name)
    ends = [
        end
        for kind, path, found in _each_file(content, learner)
        for end in join(kind, files.read(path, kind.fits)[0], found)[1]
    ]
    replaced = _keep_aside(learner) if LATER in ends else None
    notes = []
    for kind, path, found in _each_file(content, learner):
        with files.locked(path):
            here, note = files.settle(path, kind.fits)
            notes += [note] if note else []
            files.write(path, join(kind, here, found)[0])
    for lesson, lines in content.get("tries", {}).items():
        join_tries(path_of(lesson, learner), filter(None, map(from_list, lines)))
    set_learner(learner.name, learner.group)
    new = ends.count(NEW) + ends.count(LATER)
    return Brought(learner, new, ends.count(STAYED), ends.count(SAME), replaced, tuple(notes))


def join(kind: Kind, here: Mapping | None, brought: Mapping) -> tuple[dict, list[str]]:
    """The content of one file from what is here and what is brought, and what became of each thing.

    Of a table each cell that only one of the two has is kept, as long as it was the same question.
    """
    things = _things(kind, here) if here else {}
    ends = []
    for name, thing in _things(kind, brought).items():
        things[name], end = _later(things.get(name), thing, by_cell=kind is ANSWERS)
        ends.append(end)
    content = {**brought, **(here or {}), **named_in(learner_in(brought))}
    content.pop("class_code", None)
    content[kind.things] = {name: one.value for name, one in things.items()}
    content["at"] = {name: one.at for name, one in things.items() if one.at}
    if kind is ANSWERS:
        content["asked"] = {name: one.asked for name, one in things.items() if one.asked}
        content["unsafe"] = sorted({*(here or {}).get("unsafe", []), *brought.get("unsafe", [])})
    return content, ends


class Thing(NamedTuple):
    """One answer, or one thing typed into a panel: when it was saved, and for which question."""

    value: Any
    at: int
    asked: Mapping[str, str] | None


def _things(kind: Kind, found: Mapping) -> dict[str, Thing]:
    times, asked = found.get("at", {}), found.get("asked", {})
    return {
        name: Thing(value, times.get(name, 0), asked.get(name))
        for name, value in found[kind.things].items()
    }


def _later(mine: Thing | None, thing: Thing, by_cell: bool) -> tuple[Thing, str]:
    """The later of the two, mine when nobody can tell, and what became of the one brought."""
    if mine is None:
        return thing, NEW
    older, newer = (mine, thing) if thing.at > mine.at else (thing, mine)
    if mine.value == thing.value:
        return newer, SAME
    if by_cell and older.asked == newer.asked:
        newer = newer._replace(value=merged({"": older.value}, {"": newer.value})[""])
    return newer, STAYED if newer.value == mine.value else LATER


def _refuse_somebody_else(learner: Learner | Demo, name: str) -> None:
    here = current_learner()[0]
    if here is DEMO or here.folder() == learner.folder():
        return
    wrong = f"this is the work of {learner.who}, and here it is the turn of {here.who}"
    raise RepairlibError(name, wrong, "this file once it is their turn, or one of your own")


def _keep_aside(learner: Learner | Demo) -> Path:
    """Write what is here now into a file of its own, before some of it is replaced."""
    folder = home() / "replaced" / learner.folder()
    number = 1
    while (path := folder / f"work-before-{number}.json").exists():
        number += 1
    with files.locked(path):
        files.put_in_place(path, json.dumps(take_along(learner), indent=1).encode("ascii"))
    return path


def _each_file(content: Mapping, learner: Learner | Demo) -> Iterator[tuple[Kind, Path, dict]]:
    """Each file that is brought: its kind, where it belongs, and what it holds."""
    for name, kind in KINDS.items():
        for called, found in content["carried"].get(name, {}).items():
            yield kind, kind.path(called, learner), found


def files_of(kind: Kind, learner: Learner | Demo) -> dict[str, dict]:
    """The files of one kind that hold what they should, by lesson or panel."""
    folder = kind.path("any", learner).parent
    found = {}
    with files.saying_why(folder):
        paths = sorted(folder.glob("*.json"))
    for path in paths:
        content, _ = files.read(path, kind.fits)
        if content is not None and content[kind.called] == path.stem:
            found[path.stem] = content
    return found


def _read(data: bytes, name: str) -> dict:
    """The content of a file that was carried. Raises RepairlibError for any other."""
    if len(data) > LARGEST:
        raise RepairlibError(name, f"larger than {LARGEST // 1_000_000} MB", OURS)
    try:
        content = json.loads(data)
    except (ValueError, RecursionError):
        raise RepairlibError(name, "this is no file of carried work, or damaged", OURS) from None
    if not isinstance(content, dict) or not isinstance(content.get("carried"), dict):
        raise RepairlibError(name, "this is no file of carried work", OURS)
    version = content.get("format")
    if type(version) is int and version > FORMAT:
        wrong = f"it is of a later version ({version}; this one reads {FORMAT})"
        raise RepairlibError(name, wrong, "this file at a computer with the later version")
    if content.pop("check", None) != check_of(content) or not _fits(content):
        raise RepairlibError(name, "this was changed or damaged on its way", OURS)
    return content


def _fits(content: Mapping) -> bool:
    carried, tries = content["carried"], content.get("tries", {})
    if not set(carried) <= set(KINDS) or not names_somebody(content):
        return False
    if not isinstance(tries, dict) or not all(map(_are_tries, tries, tries.values())):
        return False
    whose = learner_in(content).folder()
    return all(
        isinstance(by_name, dict)
        and all(_belongs(KINDS[kind], called, found, whose) for called, found in by_name.items())
        for kind, by_name in carried.items()
    )


def _are_tries(lesson: str, lines: object) -> bool:
    return bool(NAME.fullmatch(lesson)) and isinstance(lines, list) and all(map(from_list, lines))


def _belongs(kind: Kind, called: str, found: object, whose: Path) -> bool:
    """True for a file of that lesson or panel and of that learner."""
    if not isinstance(found, dict) or not NAME.fullmatch(called) or not kind.fits(found):
        return False
    return found[kind.called] == called and learner_in(found).folder() == whose


def check_of(content: Mapping) -> str:
    """The check at the end of a file to carry, of all else in it."""
    text = json.dumps(content, sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()[:16]
