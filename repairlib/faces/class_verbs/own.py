"""`class check` and `class add`: own questions read, shown as understood, and put into a group."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import read_text
from repairlib.core.wording import counted
from repairlib.faces.documents import json_text
from repairlib.learn import files
from repairlib.learn.group import GROUP_FILE, read_group
from repairlib.learn.own import OwnLesson, lesson_name, read_own_file
from repairlib.learn.own import __file__ as own_folder
from repairlib.teach.understood import understood

STARTER, TABLE = "example.txt", "example.csv"


def check(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """What was understood of files of own questions. Raises Slips with all that was not."""
    starter = next((file for name, file in _STARTERS.items() if name in options), "")
    if starter:
        return read_text(Path(own_folder).with_name(starter)).text.rstrip("\n")
    if not words:
        raise RepairlibError("", "no file is named", "class check fuses.txt, or --example")
    lessons = [read_own_file(word)[0] for word in words]
    if as_json:
        return json_text([_summary(lesson) for lesson in lessons])
    return "\n\n\n".join(map(understood, lessons))


_STARTERS = {"--example": STARTER, "--example-table": TABLE}


def add(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """Put own questions into the group of a folder; a file of the same name replaces its old text.

    Raises Slips for what cannot be read: then the group stays as it is.
    """
    if len(words) < 2:
        accepted = "class add FOLDER OWN.txt"
        raise RepairlibError(" ".join(words), "a folder and a file are due", accepted)
    path = Path(words[0]) / GROUP_FILE
    read = [(Path(word).name, *read_own_file(word)) for word in words[1:]]
    read_group(path)  # before anything is made beside it
    with files.locked(path):
        group = read_group(path)
        own = dict(group.own)
        for name, lesson, text in read:
            twin = next((one for one in own if one != name and lesson_name(one) == lesson.name), "")
            if twin:
                wrong = f"its lesson would be called {lesson.name} as that of {twin}"
                raise RepairlibError(name, wrong, "another name for the file")
            own[name] = text.text
        added = (lesson.name for _, lesson, _ in read)
        lessons = dict.fromkeys((*group.lessons, *added)) if group.lessons else ()  # these are all
        files.write(path, group._replace(own=own, lessons=tuple(lessons)).to_dict())
    if as_json:
        return json_text([_summary(lesson) for _, lesson, _ in read])
    return "\n".join([*(_added(lesson, name in group.own) for name, lesson, _ in read), _THEN])


_THEN = "Hand group.json out again: python -m repairlib lessons --group FILE on each computer."


def _added(lesson: OwnLesson, replaced: bool) -> str:
    count = counted(sum(one.graded for one in lesson.asked), "question")
    verb = "replaced" if replaced else "added"
    return f"{lesson.name} ({lesson.title}, {count}) was {verb}."


def _summary(lesson: OwnLesson) -> dict[str, Any]:
    graded = [one for one in lesson.asked if one.graded]
    return {
        "lesson": lesson.name,
        "title": lesson.title,
        "minutes": lesson.minutes,
        "questions": len(graded),
        "practice": len(lesson.asked) - len(graded),
        "points": sum(one.points for one in graded),
        "hazards": list(lesson.hazards()),
    }
