"""`class collect FOLDER [PLACE ...]`: take in what was handed in, and mark it.

It writes into the folder of the group alone: the mark book, marks/room.html, marks.csv and
marks.json, and in marks/files.json what became of each file.
"""

from __future__ import annotations

import json
import time
from collections.abc import Mapping, Sequence
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.learn import files
from repairlib.learn.group import GROUP_FILE, Group, read_group
from repairlib.teach.anew import anew_of
from repairlib.teach.collecting import COUNTED, HANDED_IN, RULE, Account, collect, counts
from repairlib.teach.mark_book import marked_anew, write_mark_book
from repairlib.teach.room_view import EVERY

FOLDERS = "class collect FOLDER [PLACE ...], the folder of the group first"
MOST_LISTED = 200  # files that did not count, on the screen; all of them stand in files.json


def collect_marks(words: list[str], options: dict[str, str], as_json: bool) -> str:
    """What was taken in, in text or JSON. With --every it is looked for again until Ctrl-C."""
    if not words:
        raise RepairlibError("class collect", "no folder is named", FOLDERS)
    folder = Path(words[0]).expanduser()
    places = [Path(word) for word in words[1:]]
    every = _seconds(options.get("--every"))
    told = _told(folder, places, options, as_json)
    try:
        while every:
            print(told, flush=True)
            time.sleep(every)
            told = _told_again(folder, places, options, as_json)
    except KeyboardInterrupt:
        return "No longer looking."
    return told


def _told_again(folder: Path, places: Sequence[Path], options: Mapping, as_json: bool) -> str:
    """What is told at a later look: a stick that was pulled out ends nothing."""
    try:
        return _told(folder, places, options, as_json)
    except RepairlibError as error:
        return f"{error}\nLooking again."


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


def _told(folder: Path, places: Sequence[Path], options: Mapping, as_json: bool) -> str:
    group = read_group(folder / GROUP_FILE)
    places = places or [_own_place(folder)]
    anew = frozenset(marked_anew(folder)) | anew_of(options.get("--anew", ""), group)
    collected = collect(group, places, anew=anew)
    every = int(_seconds(options.get("--every"))) or EVERY
    written = write_mark_book(folder, group, collected.marked, anew, every)
    write_accounts(folder / "marks" / "files.json", group, collected.accounts)
    absent = [one.name for one in group.members if one.word not in written.there]
    if as_json:
        found = {"counts": counts(collected.accounts), "rule": RULE, "nothing_from": absent}
        found |= {"moved": [one._asdict() for one in written.moved]}
        return json.dumps(found | {"files": [one._asdict() for one in collected.accounts]})
    return f"{account_in_words(group, collected.accounts, absent)}\n{written}"


def account_in_words(group: Group, accounts: Sequence[Account], absent: Sequence[str]) -> str:
    """How many files came to what, each that did not count and why, who is missing, the rule."""
    by_outcome = ", ".join(f"{many} {outcome}" for outcome, many in counts(accounts).items())
    said = [f"{group.name}: {len(accounts)} files. {by_outcome or 'Nothing lies there'}."]
    left_out = [one for one in accounts if one.outcome != COUNTED]
    said += [f"  {one.file}: {one.outcome} ({one.why})" for one in left_out[:MOST_LISTED]]
    if len(left_out) > MOST_LISTED:
        said.append(f"  and {len(left_out) - MOST_LISTED} more, in marks/files.json")
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


def _own_place(folder: Path) -> Path:
    """Where the group hands in when no place is named: made for whoever looks before the first.

    Where there are marks it was there: one that is gone, as with a drive, is told and empties none.
    """
    place = folder / HANDED_IN
    if not (folder / "marks" / "marks.json").exists():
        with files.saying_why(place):
            place.mkdir(mode=0o700, exist_ok=True)
    return place


def write_accounts(path: Path, group: Group, accounts: Sequence[Account]) -> None:
    """Write what became of each file, all of it or none. Raises RepairlibError when barred."""
    content = {"format": files.FORMAT, "group": group.name, "rule": RULE}
    content |= {"files": [one._asdict() for one in accounts]}
    files.put_in_place(path, json.dumps(content).encode("ascii"), 0o600)
