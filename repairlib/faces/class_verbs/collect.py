"""`class collect FOLDER [PLACE ...]`: take in what was handed in, and mark it.

It writes into the folder of the group alone: marks/marks.json, one line for each member and lesson.
"""

from __future__ import annotations

import json
import os
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import Group, read_group
from repairlib.teach.collect import COUNTED, RULE, Account, Collected, collect, counts
from repairlib.teach.marked import Marked

FOLDERS = "class collect FOLDER [PLACE ...], the folder of the group first"
MOST_LISTED = 200  # files that did not count, on the screen; all of them stand in marks.json


def collect_marks(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """What was taken in, in text or JSON. With --every it is looked for again until Ctrl-C."""
    if not words:
        raise RepairlibError("class collect", "no folder is named", FOLDERS)
    folder = Path(words[0]).expanduser()
    places = [Path(word) for word in words[1:]] or [folder / "handed-in"]
    every = _seconds(options.get("--every"))
    told = _told(folder, places, as_json)
    try:
        while every:
            print(told, flush=True)
            time.sleep(every)
            told = _told(folder, places, as_json)
    except KeyboardInterrupt:
        return "No longer looking."
    return told


def _seconds(typed: str | None) -> float:
    if typed is None:
        return 0
    try:
        seconds = float(typed)
    except ValueError:
        seconds = 0
    if not 1 <= seconds <= 86_400:
        raise RepairlibError(typed, "not a number of seconds", "--every 10, from 1 to 86400")
    return seconds


def _told(folder: Path, places: Sequence[Path], as_json: bool) -> str:
    group = read_group(folder / "group.json")
    collected = collect(group, places)
    handed_in = write_marks(folder / "marks" / "marks.json", group, collected)
    absent = [one.name for one in group.members if one.word not in handed_in]
    if as_json:
        found = {"counts": counts(collected.accounts), "rule": RULE, "nothing_from": absent}
        return json.dumps(found | {"files": [one._asdict() for one in collected.accounts]})
    return account_in_words(group, collected.accounts, absent)


def account_in_words(group: Group, accounts: Sequence[Account], absent: Sequence[str]) -> str:
    """How many files came to what, each that did not count and why, who is missing, the rule."""
    by_outcome = ", ".join(f"{many} {outcome}" for outcome, many in counts(accounts).items())
    said = [f"{group.name}: {len(accounts)} files. {by_outcome or 'Nothing lies there'}."]
    left_out = [one for one in accounts if one.outcome != COUNTED]
    said += [f"  {one.file}: {one.outcome} ({one.why})" for one in left_out[:MOST_LISTED]]
    if len(left_out) > MOST_LISTED:
        said.append(f"  and {len(left_out) - MOST_LISTED} more, in marks/marks.json")
    said += [
        f"  {one.file}: counted, but {one.why}"
        for one in accounts
        if one.outcome == COUNTED and one.why
    ]
    here = len(group.members) - len(absent)
    said.append(f"Something from {here} of {len(group.members)} members.")
    if absent:
        said.append(f"Nothing from: {', '.join(absent)}.")
    return "\n".join((*said, RULE))


def write_marks(path: Path, group: Group, collected: Collected) -> set[str]:
    """Write the marks to a file, all of it or none, one after the other; the words of who is there.

    Raises RepairlibError when it cannot be written.
    """
    there: set[str] = set()
    with files.saying_why(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, fresh = tempfile.mkstemp(dir=path.parent, prefix=path.name, suffix=".new")
        try:
            with open(handle, "w", encoding="ascii") as file:
                file.writelines(_lines(group, collected, there))
            os.replace(fresh, path)
        except BaseException:
            Path(fresh).unlink(missing_ok=True)
            raise
    return there


def _lines(group: Group, collected: Collected, there: set[str]) -> Iterator[str]:
    head: dict[str, Any] = {"format": files.FORMAT, "group": group.name, "rule": RULE}
    yield json.dumps(head)[:-1] + ',\n"marked": ['
    between = "\n"
    for one in collected.marked:
        there.add(one.word)
        yield between + _line(one)
        between = ",\n"
    accounts = [one._asdict() for one in collected.accounts]
    yield f'\n],\n"files": {json.dumps(accounts)}}}\n'


def _line(one: Marked) -> str:
    return json.dumps(one.to_dict(), separators=(",", ":"))
