"""The hand-out of a lesson: at most four pages, made of the lesson itself, without code.

What it holds: what the lesson is about, its goals, every caution, the idea, the drawings, the
worked example and the words. What it leaves out stands in RULE, which is printed at its end.
"""

from __future__ import annotations

from itertools import groupby

from repairlib.core.html import Html, text
from repairlib.learn.group import Group
from repairlib.learn.words import Explained, explain_in
from repairlib.teach.paper.lesson_pieces import CAUTIONS, Piece, pieces_of
from repairlib.teach.paper.printing import Sheet
from repairlib.teach.paper.style import HAND_OUT_STYLE

PAGES = 4
LEFT_OUT = (
    "Try it",
    "Time, parts and tools",
    "Practice",
    "Graded exercise",
    "In depth",
    "Going further",
    "Sources",
)
STOP = "A good place to stop"
RULE = (
    "This hand-out leaves out what needs the computer, practice, questions, In depth and sources. "
    "Where four pages do not hold the rest, the words go first, which the word list has too, then "
    "the last parts of the idea; a part with a caution never goes."
)


def hand_out(lesson: str, called: str, shorter: int = 0, group: Group | None = None) -> Sheet:
    """The hand-out of a lesson that is `called` so.

    `shorter` is by how many steps: 1 leaves out the words, each further one a part of the idea.
    Own lessons are those of the group. Raises RepairlibError where what reads a lesson's text is
    not installed.
    """
    pieces = printed_pieces(lesson, group)
    gone = parts_that_may_go(pieces)[: max(0, shorter - 1)]
    kept = [one for one in pieces if (one.section, one.part) not in gone]
    words = explain_in(" ".join(one.prose for one in kept))
    words = words if not shorter else Explained()
    told = f"Left out for want of room: {', '.join(part for _, part in gone)}. " if gone else ""
    parts = [
        *map(_block, _by_part(kept)),
        f'<section class="words"><h2>Words</h2>{words.listed()}</section>' if words else "",
        f'<p class="rule"><small>{text(told + RULE)}</small></p>',
    ]
    return Sheet(called, called, tuple(parts), HAND_OUT_STYLE)


def printed_pieces(lesson: str, group: Group | None = None) -> list[Piece]:
    """The cells of a lesson that a hand-out may hold."""
    return [
        one
        for one in pieces_of(lesson, group)
        if not one.section.startswith(LEFT_OUT) and one.part != STOP
    ]


def parts_that_may_go(pieces: list[Piece]) -> list[tuple[str, str]]:
    """The parts of a lesson that may be left out, the first to go first: none that warns."""
    warning = {(one.section, one.part) for one in pieces if one.warns}
    parts = dict.fromkeys((one.section, one.part) for one in pieces if one.part)
    return [one for one in reversed(parts) if one not in warning and one[0] != CAUTIONS]


def _by_part(pieces: list[Piece]) -> list[list[Piece]]:
    return [list(found) for _, found in groupby(pieces, lambda one: (one.section, one.part))]


def _block(pieces: list[Piece]) -> Html:
    return Html("".join(one.html for one in pieces))
