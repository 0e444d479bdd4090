"""A job card read from its file: the entries that can be read, and the lines that cannot.

A file is one line of JSON for each entry, in the order in which they were written. Nothing here
changes it.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from repairlib.core.errors import RepairlibError, shown
from repairlib.core.saving import saying_why
from repairlib.core.typed.textfile import bytes_of
from repairlib.record.entries import LONGEST, OPEN, Entry, check_correction, entry_of, is_number

ENDING = ".jsonl"
A_CARD = "the file of a job card that can be read"
Row = dict[str, str | int | float]


@dataclass(frozen=True)
class Unread:
    """A line of a card that could not be read: its number, its text, and why.

    `entry` is the running number that stands on it, 0 where none can be seen.
    """

    line: int
    text: str
    why: str
    entry: int = 0

    def __str__(self) -> str:
        return f"line {self.line}: {self.why}: {shown(self.text, limit=LONGEST)}"


@dataclass
class Card:
    """A job card: its `entries` in the order of writing, and the lines that are `unread`.

    `name` is that of its file.
    """

    name: str
    entries: list[Entry] = field(default_factory=list)
    unread: list[Unread] = field(default_factory=list)

    @property
    def trouble(self) -> str:
        """One line on what could not be read; "" where all could."""
        if not self.entries and not self.unread:
            return f"{self.name}: nothing is written on this card yet"
        if not self.unread:
            return ""
        several = len(self.unread) > 1
        lines = "lines" if several else "line"
        why = "; ".join(dict.fromkeys(one.why for one in self.unread))
        return (
            f"{self.name}: {len(self.unread)} {lines} could not be read and "
            f"{'are' if several else 'is'} quoted ({why})"
        )

    @property
    def corrected_by(self) -> dict[int, int]:
        """The number of each entry that is corrected, and of the one in its place."""
        return {one.corrects: one.number for one in self.entries if one.corrects is not None}

    def standing(self, kind: str) -> list[Entry]:
        """The entries of a kind that no later one corrects."""
        gone = self.corrected_by
        return [one for one in self.entries if one.kind == kind and one.number not in gone]

    def last(self, kind: str) -> Entry | None:
        """The last of the entries of a kind that stand, or None."""
        return next(reversed(self.standing(kind)), None)

    def said(self, kind: str, name: str) -> str:
        """What the last entry of a kind says in one field; "" where there is none."""
        entry = self.last(kind)
        return entry[name] if entry else ""

    @property
    def title(self) -> str:
        """What the job is called; the name of its file where that cannot be read."""
        return self.said("job", "job") or self.name

    @property
    def outcome(self) -> str:
        """The last of OUTCOMES that stands, or OPEN."""
        return self.said("outcome", "outcome") or OPEN

    @property
    def last_number(self) -> int:
        """The highest running number on it, also on lines that could not be read."""
        read = [one.number for one in self.entries]
        return max([*read, *(one.entry for one in self.unread)], default=0)

    @property
    def month(self) -> str:
        """Year and month of the job's date, or of its first entry where the date is not known."""
        first = self.entries[0].time if self.entries else ""
        return (self.said("job", "date") or first)[:7]

    @property
    def hours(self) -> float:
        """The hours worked, all together."""
        return sum(one.hours for one in self.standing("hours"))

    @property
    def writers(self) -> list[str]:
        """Who wrote on it, in the order of their first entry."""
        return list(dict.fromkeys(one.by for one in self.entries))

    def rows(self) -> list[Row]:
        """One dict for each entry, corrected ones too, in the order of writing."""
        gone = self.corrected_by
        return [
            {
                "number": one.number,
                "time": one.time,
                "by": one.by,
                "kind": one.kind,
                "said": str(one),
                "corrects": one.corrects or "",
                "corrected by": gone.get(one.number, ""),
            }
            for one in self.entries
        ]

    def __str__(self) -> str:
        return f"{self.title}: {len(self.entries)} entries, {self.outcome}"

    __repr__ = __str__


def read_card(path: str | Path) -> Card:
    """The card in the file at `path`.

    A line that is cut short, of a later version or no entry is `unread` and blocks no other.
    Raises RepairlibError when the file cannot be read at all.
    """
    path = Path(path)
    with saying_why(path, A_CARD):
        return card_of(bytes_of(path), path.name)


def read_cards(folder: str | Path) -> list[Card]:
    """The cards of a folder, by the names of their files. Raises RepairlibError as `read_card`."""
    folder = Path(folder)
    with saying_why(folder, "a folder with job cards"):
        paths = sorted(one for one in folder.iterdir() if one.suffix == ENDING)
    return [read_card(path) for path in paths]


def card_of(data: bytes, called: str = "the card") -> Card:
    r"""The card whose file holds `data`.

    >>> card = card_of(b'{"version": 1, "num')
    >>> card.trouble
    'the card: 1 line could not be read and is quoted (cut short, or not an entry)'
    >>> print(card.unread[0])
    line 1: cut short, or not an entry: '{"version": 1, "num'
    """
    card, earlier = Card(called), dict[int, Entry]()
    plain = data.removeprefix(b"\xef\xbb\xbf").replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    for number, line in enumerate(plain.split(b"\n"), 1):
        text = line.decode("utf-8", "backslashreplace")
        if not text.strip():
            continue
        found = _json_of(text)
        try:
            entry = _entry_in(found, earlier)
        except RepairlibError as problem:
            card.unread.append(Unread(number, text, problem.wrong, _number_in(found)))
        else:
            earlier[entry.number] = entry
    card.entries += earlier.values()
    return card


def _json_of(line: str) -> object:
    """What a line of JSON holds; None where it is none, or cut short."""
    try:
        return json.loads(line)
    except (ValueError, RecursionError):
        return None


def _entry_in(found: object, earlier: Mapping[int, Entry]) -> Entry:
    """The entry on a line. Raises RepairlibError when there is none that fits those before it."""
    accepted = "one entry as JSON"
    if found is None:
        raise RepairlibError(found, "cut short, or not an entry", accepted)
    if not isinstance(found, dict):
        raise RepairlibError(found, "no entry", accepted)
    entry = entry_of(found)
    if entry.number in earlier:
        raise RepairlibError(entry.number, f"the number {entry.number} stands twice", accepted)
    check_correction(entry, earlier.values())
    return entry


def _number_in(found: object) -> int:
    number = found.get("number") if isinstance(found, dict) else None
    return number if is_number(number) else 0
