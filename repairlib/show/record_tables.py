"""Job cards as tables: the entries of one card, and what the cards of a bench come to."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.core.safety import HAZARDS
from repairlib.record import Card, Entry, Row, per_job, per_month
from repairlib.show.set_out import SetOut

# What an entry is, as one reads it in a table.
KINDS = {
    "job": "the job",
    "finding": "found",
    "reading": "reading",
    "part": "part fitted",
    "photo": "photo",
    "caution": "caution read",
    "hours": "hours",
    "note": "note",
    "outcome": "outcome",
}


TO_VERIFY = {"verify": "to be verified"}  # an outcome as one reads it in a table


def entries_of(card: Card) -> SetOut:
    """Every entry of a card in the order of writing; one that was corrected says by which.

    >>> entries_of(Card("hum.jsonl")).head
    ('no.', 'entry', 'what it says', 'by')
    """
    gone = card.corrected_by
    rows = [(one.number, KINDS[one.kind], _said(one, gone), one.by) for one in card.entries]
    return SetOut(("no.", "entry", "what it says", "by"), rows, (2, 6, 20, 3))


def _said(entry: Entry, gone: dict[int, int]) -> str:
    said = str(entry)
    if entry.kind == "caution":
        said = HAZARDS[entry["hazard"]].title
    elif entry.kind == "reading":
        said = f"{entry['stage']}, {entry['what']}: {entry.measured}"
    elif entry.kind == "part":
        said = f"{entry['reference']}: {entry['old']} out, {entry['new']} in; {entry['plus']}"
    elif entry.kind == "outcome":
        said = f"{TO_VERIFY.get(entry['outcome'], entry['outcome'])}: {entry['told']}"
    if entry.corrects is not None:
        said += f" (in place of {entry.corrects})"
    return said + (f" (corrected by {gone[entry.number]})" if entry.number in gone else "")


def jobs_of(cards: Iterable[Card]) -> SetOut:
    """One row for each job: who, hours, parts, how it ended, lines that could not be read.

    >>> jobs_of([Card("hum.jsonl")]).head[:4]
    ('job', 'set', 'date', 'who')
    """
    return _table(per_job(cards), (12, 8, 6, 5, 3, 3, 6, 4))


def months_of(cards: Iterable[Card]) -> SetOut:
    """One row for each month: jobs, hours, parts, and how the jobs ended.

    >>> months_of([Card("hum.jsonl")]).head[:4]
    ('month', 'jobs', 'hours', 'parts')
    """
    return _table(per_month(cards), (4.3, 2, 2.6, 2.3, 3.8, 3.6, 3.8, 2.3))


def _table(rows: list[Row], widths: tuple[float, ...]) -> SetOut:
    """The rows under their own names."""
    head = [TO_VERIFY.get(name, name) for name in (rows[0] if rows else [""] * len(widths))]
    cells = [[TO_VERIFY.get(str(cell), cell) for cell in row.values()] for row in rows]
    return SetOut(head, cells, widths)
