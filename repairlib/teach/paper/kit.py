"""The kit list of a group: what lies on the bench, how many pieces, and spares by a rule."""

from __future__ import annotations

import csv
from math import ceil
from typing import NamedTuple

from repairlib.core.html import row, table, text
from repairlib.core.tables import demo_path
from repairlib.learn.group import Group
from repairlib.recap import SPARES_RULE, spares_for
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import AGENDA_STYLE

LEARNER, PAIR, GROUP = "learner", "pair", "group"
KINDS = {"part": "Parts", "consumable": "Consumables", "tool": "Tools", "paper": "Paper"}
WITH_SPARES = ("part", "consumable")
RULE = (
    "What the list holds is our choice for this workbook. Each learner, each two learners or the "
    "whole group gets what the column says. Parts and consumables have spares: "
)
NO_PRICE = "No price is known here: write down what your shop asks."


class Needed(NamedTuple):
    """One thing of the kit: what, of which kind, whose, how many are due, and how many spares."""

    item: str
    kind: str
    whose: str
    due: int
    spares: int
    note: str


def kit_of(group: Group) -> list[Needed]:
    """What the lessons of a group need, in the order of the table."""
    numbers = {lesson.partition("-")[0] for lesson in group.lessons}
    with open(demo_path("class-kit.csv"), encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    return [
        _needed(one, len(group.members))
        for one in rows
        if not one["lessons"] or numbers & set(one["lessons"].split())
    ]


def _needed(found: dict[str, str], members: int) -> Needed:
    times = {LEARNER: members, PAIR: ceil(members / 2), GROUP: 1}[found["for"]]
    count = int(found["count"]) * times
    spares = spares_for(count) if found["kind"] in WITH_SPARES else 0
    return Needed(found["item"], found["kind"], found["for"], count, spares, found["note"])


def kit_list(group: Group) -> Sheet:
    """The kit list, with boxes for what is there and a column for the price."""
    parts = [
        f"<h1>Kit: {text(group.name)}, {len(group.members)} learners</h1>",
        f"<p>{text(RULE)}{text(SPARES_RULE.partition('. ')[0])}. {NO_PRICE}</p>",
    ]
    head = row(("what", "for each", "due", "spare", "price", "there"), tag="th")
    for kind, title in KINDS.items():
        rows = [
            row((_what(one), one.whose, one.due, one.spares or "–", "", ""))
            for one in kit_of(group)
            if one.kind == kind
        ]
        if rows:
            parts.append(f"<h2>{title}</h2>{table(rows, head)}")
    return Sheet("Kit list", f"Kit list · {group.name}", tuple(parts), AGENDA_STYLE)


def _what(one: Needed) -> str:
    return f"{one.item} ({one.note})" if one.note else one.item
