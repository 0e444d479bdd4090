"""Where each member is, and who is stuck: three tries and not right, or nothing new for a while."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import NamedTuple

from repairlib.learn.question import RIGHT, UNANSWERED
from repairlib.teach.entries import Entry

TRIES = 3  # and still not right
QUIET = 10  # minutes without a try, within a lesson begun
LEFT = 180  # minutes after which they have left the room
STUCK, SILENT, BUSY, DONE, NOTHING = "stuck", "quiet", "busy", "done", "not begun"
SIGNS = {STUCK: "‼", SILENT: "…", BUSY: "→", DONE: "✓", NOTHING: "○"}


class Where(NamedTuple):
    """How a member is getting on: one of the five words, and where in short."""

    how: str
    words: str

    @property
    def needs_help(self) -> bool:
        """True for those to walk over to."""
        return self.how in (STUCK, SILENT)


def where_is(entries: Sequence[Entry], at: int) -> Where:
    """How one member, with all their entries, is getting on at that time (ms since 1970)."""
    begun = [one for one in entries if one.begun]
    if not begun:
        return Where(NOTHING, "not begun")
    held_up = sorted(filter(is_held_up, begun), key=lambda one: -one.last)
    if held_up:
        first, more = held_up[0], len(held_up) - 1
        others = f", +{more}" if more else ""
        return Where(STUCK, f"stuck {first.number} {first.id}, {first.tries} tries{others}")
    if all(one.state == RIGHT for one in entries):
        return Where(DONE, "all right")
    latest = max(begun, key=lambda one: one.last)
    lesson = latest.number
    if not latest.last:
        return Where(BUSY, f"in {lesson}")
    quiet = (at - latest.last) // 60_000
    is_open = any(one.state != RIGHT for one in entries if one.lesson == latest.lesson)
    if is_open and QUIET <= quiet <= LEFT:
        return Where(SILENT, f"quiet {quiet} min in {lesson}")
    return Where(BUSY, f"{lesson}, {ago(latest.last, at)}")


def is_held_up(one: Entry) -> bool:
    """True for an answer that took three tries or more and is not right."""
    return one.tries >= TRIES and one.state not in (RIGHT, UNANSWERED)


def ago(then: int, at: int) -> str:
    """How long ago in words; hours and days as the clock says them.

    >>> ago(0, 59_000), ago(0, 61_000), ago(0, 7_100_000)
    ('just now', '1 min ago', '118 min ago')
    """
    minutes = (at - then) // 60_000
    if minutes > LEFT:
        return "last " + moment(then, at)
    return f"{minutes} min ago" if minutes > 0 else "just now"


def moment(then: int, at: int) -> str:
    """A time by the clock of this computer, with its date where that is another day than now."""
    said, today = datetime.fromtimestamp(then / 1000), datetime.fromtimestamp(at / 1000)
    return said.strftime("%H:%M" if said.date() == today.date() else "%d %b %H:%M")
