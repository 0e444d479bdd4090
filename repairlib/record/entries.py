"""What one entry of a job card may hold: its kind, its fields, and how each of them is read.

What was typed is kept as it was typed; readings and hours are checked by reading them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any, TypeGuard

from repairlib.core.errors import RepairlibError, one_line
from repairlib.core.quantity import UNITS, read_quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.typed.readings import Measurement, read_measurement

VERSION = 1
LONGEST = 4000  # characters of one text; a page
LONGEST_NAME = 200
MOST_HOURS = 24.0  # of one entry: one sitting
STAGES = ("before", "after")
OUTCOMES = ("verify", "handed on", "not repaired")
OPEN = "open"  # no outcome is written yet
NOTE = "note"
_HEAD = ("version", "number", "time", "by", "kind", "corrects")


@dataclass(frozen=True)
class Entry:
    """One entry: its running `number` from 1, its `time`, who wrote it (`by`), its `kind`.

    `said` is what it holds, by the fields of its kind in FIELDS, as it was typed. `corrects` is the
    number of the entry in whose place it stands, or None.
    """

    number: int
    time: str
    by: str
    kind: str
    said: Mapping[str, str] = field(hash=False)
    corrects: int | None = None

    def __getitem__(self, name: str) -> str:
        return self.said[name]

    def to_dict(self) -> dict[str, Any]:
        """The entry as it is saved."""
        head = {"version": VERSION, "number": self.number, "time": self.time, "by": self.by}
        head |= {"kind": self.kind}
        if self.corrects is not None:
            head["corrects"] = self.corrects
        return {**head, **self.said}

    def __str__(self) -> str:
        return "; ".join(one_line(text) for text in self.said.values())

    @property
    def measured(self) -> Measurement:
        """The reading of an entry of the kind "reading"."""
        return read_measurement(self["reading"], self["unit"])

    @property
    def hours(self) -> float:
        """The hours of an entry of the kind "hours"."""
        return _hours(self["spent"])


def words(value: object) -> str:
    """A text of one line or more. Raises RepairlibError when it is none, blank or too long."""
    accepted = f"words, at most {LONGEST} characters"
    if not isinstance(value, str):
        raise RepairlibError(value, "not a text", accepted)
    if not value.strip():
        raise RepairlibError(value, "nothing was typed", accepted)
    if len(value) > LONGEST:
        raise RepairlibError(value, f"longer than {LONGEST} characters", accepted)
    return value


def name(value: object) -> str:
    """A text of one line, short enough for a cell."""
    line = words(value).strip()
    accepted = f"one line of at most {LONGEST_NAME} characters"
    if len(line) > LONGEST_NAME or len(line.splitlines()) > 1:
        raise RepairlibError(line, "longer than one line", accepted)
    return line


def day(value: object) -> str:
    """A date as year-month-day, that a calendar has.

    >>> day("2026-11-29")
    '2026-11-29'
    """
    accepted = "year, month and day, such as 2026-11-29"
    text = value.isoformat() if type(value) is date else name(value)
    try:
        known = date.fromisoformat(text).isoformat()
    except ValueError:
        known = ""
    if known != text:
        raise RepairlibError(text, "no date, or not written in this order", accepted)
    return text


def file_name(value: object) -> str:
    r"""The name of a file alone, so that a card never leads out of the folder it stands beside.

    >>> file_name("board before.jpg")
    'board before.jpg'
    >>> file_name("../other/board.jpg")
    Traceback (most recent call last):
    repairlib.core.errors.RepairlibError: '../other/board.jpg': a path with folders in it.
    Accepted: the name of a file alone, such as board-before.jpg
    """
    accepted = "the name of a file alone, such as board-before.jpg"
    only = name(value)
    if any(sign in only for sign in "/\\:"):
        raise RepairlibError(only, "a path with folders in it", accepted)
    if not only.isprintable() or not only.strip(". "):
        raise RepairlibError(only, "no name of a file", accepted)
    return only


def time_spent(value: object) -> str:
    """Working time as typed; a bare number is hours. At most MOST_HOURS.

    >>> time_spent("1 h 30 min"), time_spent(0.75)
    ('1 h 30 min', '0.75')
    """
    text = str(value) if type(value) in (int, float) else name(value)
    accepted = f"0.75, 45 min or 1 h 30 min, at most {MOST_HOURS:g} h in one entry"
    if not 0 < _hours(text) <= MOST_HOURS:
        wrong = f"not between nothing and {MOST_HOURS:g} hours"
        raise RepairlibError(value, wrong, accepted)
    return text


def _hours(text: str) -> float:
    spent = read_quantity(text)
    if spent.unit == "":
        return spent.value
    return read_quantity(text, "s").value / 3600


def one_of(allowed: Iterable[str]) -> Callable[[object], str]:
    """A reader of one of a few words."""
    known = tuple(allowed)

    def read(value: object) -> str:
        if not isinstance(value, str) or value not in known:
            raise RepairlibError(value, "not one of these words", ", ".join(known))
        return value

    return read


# What each kind holds, and how each field is read. All of them are due.
FIELDS: dict[str, dict[str, Callable[[object], str]]] = {
    "job": {"set": name, "job": name, "date": day},
    "finding": {"text": words},
    "reading": {"stage": one_of(STAGES), "what": name, "reading": name, "unit": one_of(UNITS)},
    "part": {"reference": name, "old": name, "new": name, "plus": name},
    "photo": {"file": file_name},
    "caution": {"hazard": one_of(HAZARDS)},
    "hours": {"spent": time_spent},
    NOTE: {"text": words},
    "outcome": {"outcome": one_of(OUTCOMES), "told": words},
}


def read_fields(kind: str, given: Mapping[str, object]) -> dict[str, str]:
    """What an entry of this kind holds, each field read.

    Raises RepairlibError for a kind or a field that is not known, for one that is not there, and
    for what cannot be read.

    >>> read_fields("reading", dict(stage="before", what="C3 ESR", reading="1,2", unit="Ω"))
    {'stage': 'before', 'what': 'C3 ESR', 'reading': '1,2', 'unit': 'Ω'}
    """
    readers = FIELDS[one_of(FIELDS)(kind)]
    due = f"{kind} with {', '.join(readers)}"
    for other in given:
        if other not in readers:
            raise RepairlibError(other, f"no field of the kind {kind}", due)
    for missing in readers:
        if missing not in given:
            raise RepairlibError(missing, f"this field of the kind {kind} is not there", due)
    said = {one: _read(one, read, given[one]) for one, read in readers.items()}
    if kind == "reading":
        read_measurement(said["reading"], said["unit"])
    return said


def _read(name: str, read: Callable[[object], str], value: object) -> str:
    """One field; what is wrong with it says which field it is."""
    try:
        return read(value)
    except RepairlibError as problem:
        raise RepairlibError(problem.read, f"{name}: {problem.wrong}", problem.accepted) from None


def entry_of(found: Mapping[str, object]) -> Entry:
    """The entry saved as `found`. Raises RepairlibError when it is none of this version."""
    version = found.get("version")
    if type(version) is int and version > VERSION:
        wrong = f"of a later version ({version}; this one reads {VERSION})"
        raise RepairlibError(found, wrong, "a later version of this program")
    if version != VERSION or type(version) is not int:
        raise RepairlibError(version, "no version of an entry", str(VERSION))
    kind = one_of(FIELDS)(found.get("kind"))
    said = read_fields(kind, {key: it for key, it in found.items() if key not in _HEAD})
    corrects = found.get("corrects")
    number = _number(found.get("number"))
    return Entry(
        number,
        _moment(found.get("time")),
        name(found.get("by")),
        kind,
        said,
        None if corrects is None else _number(corrects),
    )


def check_correction(entry: Entry, earlier: Iterable[Entry]) -> None:
    """Raise RepairlibError where `entry` corrects what it cannot.

    It names an earlier entry that stands, and is of its kind, or a note, which strikes it out.
    """
    if entry.corrects is None:
        return
    before = {one.number: one for one in earlier}
    said = f"{entry.kind} that corrects {entry.corrects}"
    wrong_one = before.get(entry.corrects)
    if wrong_one is None:
        raise RepairlibError(said, "there is no earlier entry of that number", _numbers(before))
    by = [one.number for one in before.values() if one.corrects == entry.corrects]
    if by:
        wrong = f"entry {by[0]} stands in its place already"
        raise RepairlibError(said, wrong, f"a correction of {by[0]}")
    if entry.kind not in (NOTE, wrong_one.kind):
        wrong = f"entry {entry.corrects} is of the kind {wrong_one.kind}"
        raise RepairlibError(said, wrong, f"{wrong_one.kind}, or a note that strikes it out")


def _numbers(known: Iterable[int]) -> str:
    listed = sorted(known)
    return f"a number from {listed[0]} to {listed[-1]}" if listed else "no correction yet"


def is_number(value: object) -> TypeGuard[int]:
    """Whether `value` can be the running number of an entry."""
    return type(value) is int and 0 < value < 10**9


def _number(value: object) -> int:
    if not is_number(value):
        raise RepairlibError(value, "no number of an entry", "a whole number from 1")
    return value


def _moment(value: object) -> str:
    try:
        if isinstance(value, str) and datetime.fromisoformat(value).tzinfo is not None:
            return value
    except ValueError:
        pass
    wrong = "no time with its zone"
    raise RepairlibError(value, wrong, "such as 2026-11-29T09:30:00+00:00")
