"""The polarity rules as read from their tables: families of parts, marks on parts, marks on boards.

A mark shows an end: "positive", "negative", "cathode", "anode", "pin 1"; or "either" (no polarity),
"unknown" (it has no fixed meaning), "non-polar" (a place for a non-polar part), "other part" (a
board mark that belongs to another kind of part).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import read_table

UNKNOWN = "unknown"
EITHER = "either"
NON_POLAR_PLACE = "non-polar"
OTHER_PART = "other part"

OPPOSITE = {
    "positive": "negative",
    "negative": "positive",
    "cathode": "anode",
    "anode": "cathode",
    "pin 1": "the end without pin 1",
    "the end without pin 1": "pin 1",
}

# Marks that a learner may report on any part.
NOTHING_SEEN = "nothing seen"
SOMETHING_ELSE = "something else"


@dataclass(frozen=True)
class Family:
    """A family of parts whose ends are marked alike, and what happens when one is reversed."""

    name: str
    group: str
    ends: str
    if_wrong: str
    cautions: tuple[str, ...]
    source: str

    @property
    def is_capacitor(self) -> bool:
        return self.group in ("capacitor", "can")

    @property
    def either_way(self) -> bool:
        return self.ends == EITHER


@dataclass(frozen=True)
class PartMark:
    """One mark on a family of parts and the end that it shows."""

    id: str
    family: str
    mark: str
    shows: str
    body: str
    drawn: str
    usual_board_mark: str
    why_not_sure: str
    look_instead: str
    source: str


@dataclass(frozen=True)
class BoardMark:
    """One mark on a board. What it shows depends on the group of the part that goes there."""

    id: str
    mark: str
    on: dict[str, str]
    why_not_sure: str
    look_instead: str
    source: str

    def shows(self, group: str) -> str:
        """The end shown for a part of this group."""
        return self.on.get(group, UNKNOWN)


@cache
def families() -> dict[str, Family]:
    """Every family by name, in the order of the table.

    >>> families()["diode"].ends
    'cathode and anode'
    """
    rows = read_table("polarity_families")
    return {
        row["family"]: Family(
            name=row["family"],
            group=row["group"],
            ends=row["ends"],
            if_wrong=row["if_wrong"],
            cautions=tuple(row["cautions"].split(";")),
            source=row["source"],
        )
        for row in rows
    }


@cache
def part_marks() -> dict[str, PartMark]:
    """Every mark on a part by its id, in the order of the table."""
    names = PartMark.__dataclass_fields__
    rows = read_table("polarity_part_marks")
    return {row["id"]: PartMark(**{name: row[name] for name in names}) for row in rows}


@cache
def board_marks() -> dict[str, BoardMark]:
    """Every mark on a board by its name, in the order of the table.

    >>> board_marks()["square pad"].shows("pins"), board_marks()["square pad"].shows("capacitor")
    ('pin 1', 'unknown')
    """
    groups = ("capacitor", "can", "diode", "LED", "bridge", "pins")
    return {
        row["mark"]: BoardMark(
            id=row["id"],
            mark=row["mark"],
            on={group: row[f"on_{group}"] for group in groups},
            why_not_sure=row["why_not_sure"],
            look_instead=row["look_instead"],
            source=row["source"],
        )
        for row in read_table("polarity_board_marks")
    }


def marks_of(family: str) -> dict[str, PartMark]:
    """The marks that a family carries, by name.

    >>> list(marks_of("moulded tantalum chip"))
    ['bar at one end', 'bevelled edge']
    """
    return {rule.mark: rule for rule in part_marks().values() if rule.family == family}


def part_mark(rule_id: str) -> PartMark:
    """The rule of that id.

    Raises RepairlibError for an id that is not in the table.
    """
    if rule_id not in part_marks():
        raise RepairlibError(rule_id, "no polarity rule has this id", ", ".join(part_marks()))
    return part_marks()[rule_id]


def part_mark_names() -> tuple[str, ...]:
    """Every mark that the checker takes for a part, each once."""
    names = dict.fromkeys(rule.mark for rule in part_marks().values())
    return (*names, NOTHING_SEEN, SOMETHING_ELSE)
