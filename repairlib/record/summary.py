"""What the cards of a bench come to, job by job and month by month, as plain rows."""

from __future__ import annotations

from collections.abc import Iterable

from repairlib.record.card import Card, Row
from repairlib.record.entries import OPEN, OUTCOMES


def per_job(cards: Iterable[Card]) -> list[Row]:
    """One dict for each card: what was corrected is left out, and lines not read are counted."""
    return [
        {
            "job": card.title,
            "set": card.said("job", "set"),
            "date": card.said("job", "date"),
            "who": ", ".join(card.writers),
            "hours": round(card.hours, 2),
            "parts": len(card.standing("part")),
            "outcome": card.outcome,
            "lines not read": len(card.unread),
        }
        for card in cards
    ]


def per_month(cards: Iterable[Card]) -> list[Row]:
    """One dict for each month in which a job has its date: jobs, hours, parts, and outcomes.

    All hours of a job count in the month of its date. A card without any entry that can be read
    has the month "not known".

    >>> per_month([])
    []
    """
    by_month: dict[str, list[Card]] = {}
    for card in cards:
        by_month.setdefault(card.month or "not known", []).append(card)
    return [_month_row(month, by_month[month]) for month in sorted(by_month)]


def _month_row(month: str, cards: list[Card]) -> Row:
    ended = [card.outcome for card in cards]
    row: Row = {
        "month": month,
        "jobs": len(cards),
        "hours": round(sum(card.hours for card in cards), 2),
        "parts": sum(len(card.standing("part")) for card in cards),
    }
    return row | {outcome: ended.count(outcome) for outcome in (*OUTCOMES, OPEN)}
