"""Writing on a job card: only ever at its end, one entry at a time, on the disk before it returns.

A process that is killed loses at most the entry it was writing. What is left of that one stays as a
line of its own, and the next entry begins below it.
"""

from __future__ import annotations

import json
import os
import re
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from repairlib.core.errors import RepairlibError
from repairlib.core.saving import add_line, locked, saying_why, sync_folder, write_at_end
from repairlib.core.typed.textfile import bytes_of
from repairlib.record.card import A_CARD, ENDING, card_of
from repairlib.record.entries import (
    VERSION,
    Entry,
    check_correction,
    entry_of,
    name,
    read_fields,
)

_LONGEST_STEM = 40  # characters, each of at most four bytes in the name of a file
_NOT_IN_A_NAME = re.compile(r"[^\w]+")


def open_job(folder: str | Path, by: str, set: str, job: str, date: object) -> Path:
    """Begin the card of a job in `folder`; the path of its file, whose name is not taken yet.

    `set` says in general words what it is, `job` what the job is called, `date` is year-month-day.
    Raises RepairlibError for what cannot be read, and where nothing can be written.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     path = open_job(folder, "Ana", set="desk radio", job="Hum, 2nd try", date="2026-11-29")
    ...     path.name
    '2026-11-29-hum-2nd-try.jsonl'
    """
    first: dict[str, Any] = {"set": set, "job": job, "date": date}
    said = read_fields("job", first)
    name(by)
    path = _new_file(folder, "-".join(filter(None, (said["date"], _stem(said["job"])))))
    add_entry(path, "job", by, **first)
    return path


def take_in(folder: str | Path, called: str, data: bytes) -> Path:
    """Keep a card that was saved elsewhere in `folder`, byte for byte; the path of its file.

    `called` is the name of the file that was opened. A card of that folder is never replaced: where
    the name is taken by another, this one gets a number behind it. Raises RepairlibError for what
    is no card, and where nothing can be written.

    >>> take_in("cards", "list.csv", b"C1,10/16")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: 'list.csv': nothing in it is an entry of a job card.
    Accepted: the file of a job card that can be read
    """
    card = card_of(data, called)
    if not card.last_number:
        raise RepairlibError(called, "nothing in it is an entry of a job card", A_CARD)
    folder, stem = Path(folder), _stem(called.removesuffix(ENDING)) or "card"
    with saying_why(folder):
        same = [one for one in folder.glob(f"{stem}*{ENDING}") if bytes_of(one) == data]
    if same:
        return same[0]
    path = _new_file(folder, stem)
    with locked(path), saying_why(path, A_CARD):
        write_at_end(path, data)
    return path


def add_entry(
    path: str | Path, kind: str, by: str, corrects: int | None = None, **said: object
) -> Entry:
    """Write one entry at the end of the card at `path`, and give it back with its number.

    `kind` and what is `said` stand in FIELDS of entries.py. `corrects` is the number of the entry
    in whose place it stands; nothing that was written before is changed. Raises RepairlibError for
    what cannot be read, for a file that is not there, and when it cannot be written.

    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     path = open_job(folder, "Ana", set="desk radio", job="hum", date="2026-11-29")
    ...     wrong = add_entry(path, "hours", "Ana", spent="15 min")
    ...     add_entry(path, "hours", "Ben", spent="1 h 15 min", corrects=wrong.number).number
    3
    """
    path = Path(path)
    name(by)
    given = read_fields(kind, said) | {"kind": kind, "by": by, "corrects": corrects}
    with saying_why(path, A_CARD):
        bytes_of(path)  # a card that is not there gets no lock beside it
    with locked(path), saying_why(path, A_CARD):
        data = bytes_of(path)
        card = card_of(data, path.name)
        now = datetime.now(UTC).isoformat(timespec="seconds")
        head = {"version": VERSION, "number": card.last_number + 1, "time": now}
        entry = entry_of(head | given)
        check_correction(entry, card.entries)
        add_line(path, json.dumps(entry.to_dict()).encode("ascii"), before=data)
    return entry


def _stem(text: str) -> str:
    """A text as part of the name of a file."""
    return _NOT_IN_A_NAME.sub("-", text.lower())[:_LONGEST_STEM].strip("-")


def _new_file(folder: str | Path, stem: str) -> Path:
    """An empty file of a name that nothing had before, not even for a moment."""
    folder, number = Path(folder), 1
    with saying_why(folder):
        folder.mkdir(parents=True, exist_ok=True)
        while True:
            path = folder / f"{stem}{'' if number == 1 else f'-{number}'}{ENDING}"
            try:
                os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o644))
            except FileExistsError:
                number += 1
            else:
                sync_folder(folder)
                return path
