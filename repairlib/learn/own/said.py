"""The lines of an own lesson taken apart: which word each begins with, and what it says.

Covers files as they are typed, and tables as a spreadsheet saves them: both give the same things,
each with its line. What they mean is read in `lesson` and `asked`.
"""

from __future__ import annotations

import csv
import io
import re
from difflib import get_close_matches
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.core.errors import SPACES
from repairlib.core.typed.table import with_plain_ends
from repairlib.learn.own.slips import Slip

LESSON_WORDS = (
    *("title", "minutes", "cautions", "goal", "tools", "example", "further", "source", "picture"),
    "not shown",
)
QUESTIONS = ("question", "practice")
ANSWER_WORDS = (
    *("answer", "right", "wrong", "danger", "say", "hint", "first", "then"),
    *("columns", "row", "also", "set", "fault"),
)
QUESTION_WORDS = ("picture", "points", "names", "values", *ANSWER_WORDS, "not shown")
TEXT = ""  # the word of what is plain text
WORDS = {word: word for word in (*LESSON_WORDS, *QUESTIONS, *QUESTION_WORDS)} | {
    "caution": "cautions",
    "goals": "goal",
    "sources": "source",
    "tool": "tools",
    "minute": "minutes",
    "name": "names",
    "value": "values",
}
MEANT = {  # other words that people begin with, and what they mean here
    "correct": "right",
    "true": "right",
    "false": "wrong",
    "incorrect": "wrong",
    "because": "say",
    "explanation": "say",
    "feedback": "say",
    "tip": "hint",
    "warning": "cautions",
    "hazard": "danger",
    "image": "picture",
    "mark": "points",
    "marks": "points",
    "point": "points",
    "time": "minutes",
    "step": "then",
    "next": "then",
    "solution": "answer",
    "comment": "not shown",
}
COLUMNS = WORDS | {"text": TEXT}  # the headings of a table
LONGEST = 500_000  # characters of a file
MOST_LINES = 5_000
LONGEST_LINE = 4_000  # characters of a line, or of a cell
NEAR = 0.8
NOTHING, A_TEXT, A_WORD, A_SLIP = "nothing", "a text", "a word", "a slip"
UNSEEN = "\t\f\u200c\u200d" + SPACES  # not seen, and harmless: some scripts join letters with them

_HEAD = re.compile(r"\s*([^\s:：()][^:：()]{0,30}?)\s*(?:\(([^()]*)\)\s*)?[:：](.*)")
_POINTS = r"(?:\s*[,(]\s*([\d.,]+)\s+points?\s*\)?)?"
_ASKS = re.compile(rf"\s*(question|practice)(?:\s+\d+)?{_POINTS}\s*(?:[:：](.*))?", re.I)
_ASKS_BADLY = re.compile(r"\s*(question|practice)\b.{0,12}(\d|\bpoints?\b).{0,12}", re.I)
_ANSWER = "|".join(word.capitalize() for word in ("points", "names", "values", *ANSWER_WORDS))
_LISTED = re.compile(rf"\s*(?:[-*•–·]|\w{{1,2}}[.)])\s*((?:{_ANSWER})\b)[^:：]{{0,30}}[:：]", re.I)
_SECOND = re.compile(rf"\s({_ANSWER})\s*(?:\([^()]*\)\s*)?[:：]")
_ALONE = re.compile(r"[A-Z][a-z]+\s*[:：]")
_BROKEN_CELLS = ("#REF!", "#NAME?", "#VALUE!", "#DIV/0!", "#N/A", "#NUM!", "#NULL!")


class Said(NamedTuple):
    """One thing that is said: its line, its word (TEXT for plain text), and the text behind it.

    `about` is what stands in brackets behind the word: the hazard of a danger, or the points.
    """

    line: int
    word: str
    about: str
    text: str


def said_in(text: str, slips: list[Slip]) -> list[Said]:
    """What a file says, typed or as a table; what cannot be read is added to `slips`.

    >>> [(one.word, one.text) for one in said_in("Fuses\\n\\nGoal: read\\n one", [])]
    [('title', 'Fuses'), ('goal', 'read one')]
    >>> [(one.word, one.text) for one in said_in("question;right\\nWhich?;this", [])]
    [('question', 'Which?'), ('right', 'this')]
    """
    if len(text) > LONGEST:
        slips.append(Slip(1, text, "too long", f"up to {LONGEST} characters, about 100 pages"))
        return []
    plain = with_plain_ends(text.removeprefix("\ufeff"))
    lines = plain.split("\n")
    if len(lines) > MOST_LINES:
        slips.append(Slip(MOST_LINES, f"{len(lines)} lines", "too many", f"up to {MOST_LINES}"))
        return []
    slips += [slip for number, line in enumerate(lines, 1) if (slip := _odd(number, line))]
    separator = _table_of(lines)
    return _in_table(plain, separator, slips) if separator else _in_prose(lines, slips)


def _odd(number: int, line: str) -> Slip | None:
    """What is wrong with the characters of a line."""
    if len(line) > LONGEST_LINE:
        return Slip(number, line, "too long for one line", f"up to {LONGEST_LINE} characters")
    if line.isprintable():
        return None
    sign = next((c for c in line if not c.isprintable() and c not in UNSEEN), None)
    if sign is None:
        return None
    wrong = f"a character that cannot be seen stands in it, U+{ord(sign):04X}"
    return Slip(number, line, wrong, "the line typed anew")


# Typed


def _in_prose(lines: list[str], slips: list[Slip]) -> list[Said]:
    """What typed lines say. A line without a word goes on with the thing above it."""
    said: list[Said] = []
    above = NOTHING  # what a line without a word goes on with
    for number, line in enumerate(lines, 1):
        if not line.strip():
            above = NOTHING
            continue
        try:
            found = _begins(number, line, above in (A_WORD, A_SLIP))
        except Slip as slip:
            slips.append(slip)
            above = A_SLIP
            continue
        if found is None and above != NOTHING:
            if above != A_SLIP:
                said[-1] = said[-1]._replace(text=f"{said[-1].text} {line.strip()}".lstrip())
            continue
        titled = any(one.word != "not shown" for one in said)
        last = found or Said(number, TEXT if titled else "title", "", line.strip())
        said.append(last)
        alone = last.word == "title" or (last.word in QUESTIONS and not last.text)
        above = NOTHING if alone else A_TEXT if last.word == TEXT else A_WORD
    return said


def _begins(number: int, line: str, below: bool) -> Said | None:
    """What the line begins, None for plain text. `below`: the line above began with a word.

    Raises Slip for what may be a word that was mistyped.
    """
    if asks := _ASKS.fullmatch(line):
        word, points, text = asks.groups(default="")
        return Said(number, word.lower(), points, text.strip())
    if _ASKS_BADLY.fullmatch(line):
        raise Slip(number, line.strip(), "not how a question begins", "Question, 2 points")
    if listed := _LISTED.match(line):
        wrong = "something stands before the word"
        raise Slip(number, line.strip(), wrong, f"{listed[1].capitalize()}: first on its line")
    head = _HEAD.fullmatch(line)
    if not head:
        return None
    word, about, text = head.groups(default="")
    return _named(number, word, about, text, below and bool(_ALONE.match(line)))


def _named(number: int, word: str, about: str, text: str, alone: bool) -> Said | None:
    known = WORDS.get(normal(word))
    if known is None:
        near = _near(normal(word))
        if near or alone:
            better = f"{(near or ['Hint'])[0].capitalize()}:"
            wrong = "no word with a colon that is known here"
            raise Slip(number, word, wrong, f"{better} or, in a text, no colon behind the word")
        return None
    if about and known != "danger":
        raise Slip(number, f"{word} ({about})", "only Danger has brackets", f"{word}:")
    if known != "not shown" and (second := _SECOND.search(text)):
        wrong = "a second word stands on this line"
        raise Slip(number, f"{second[1]}:", wrong, f"{second[1]}: on a line of its own")
    return Said(number, known, about.strip(), text.strip())


def _near(word: str) -> list[str]:
    """The known word that was meant, if it is one of near letters, or of the same."""
    if word in MEANT:
        return [MEANT[word]]
    same = [known for known in WORDS if sorted(known) == sorted(word)]
    return same or get_close_matches(word, WORDS, 1, NEAR)


# As a table


def _table_of(lines: list[str]) -> str:
    """The sign between the cells when the first line is headings of a table, else ""."""
    first = next(filter(str.strip, lines), "")

    def known(sign: str) -> int:
        return sum(_heading(cell) is not None for cell in first.split(sign))

    best = max(",;\t", key=known)
    return best if known(best) > 1 and "question" in first.lower() else ""


def _heading(cell: str) -> tuple[str, str] | None:
    """The word and the brackets of a heading, None when it is none."""
    name, _, about = cell.strip().strip('"').partition("(")
    word = COLUMNS.get(normal(name))
    return None if word is None else (word, about.rstrip(" )"))


def _in_table(text: str, separator: str, slips: list[Slip]) -> list[Said]:
    """What a table says: each row is a question, or goes on with the one above it."""
    rows = _rows(text, separator, slips)
    at, names = next(rows, (1, []))
    heads = [_heading(cell) for cell in names]
    known = ", ".join(dict.fromkeys(("title", "text", *WORDS.values())))
    slips += [
        Slip(at, name, "no heading that is known here", known)
        for name, head in zip(names, heads, strict=True)
        if head is None and name.strip()
    ]
    said: list[Said] = []
    for line, cells in rows:
        if any(cell.strip() for cell in cells[len(heads) :]):
            wrong = f"{len(cells)} cells under {len(heads)} headings"
            slips.append(Slip(line, cells[-1], wrong, "a heading for each cell"))
        for head, cell in zip(heads, cells, strict=False):
            if cell.strip() in _BROKEN_CELLS:
                slips.append(Slip(line, cell, "a formula that failed", "what it should give"))
            elif cell.strip() and head:
                said += _in_cell(line, *head, cell.strip())
    return said


def _in_cell(line: int, word: str, about: str, cell: str) -> list[Said]:
    """What a cell says: its first paragraph under its heading, the others as plain text."""
    first, *more = (" ".join(one.split("\n")) for one in re.split(r"\n\s*\n", cell))
    return [Said(line, word, about, first), *(Said(line, TEXT, "", one) for one in more)]


def _rows(text: str, separator: str, slips: list[Slip]):
    """(line, cells) of each row that is not empty."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    line = 1
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                yield line, cells
            line = reader.line_num + 1
    except csv.Error as problem:
        wrong = f"this row cannot be taken apart: {problem}"
        accepted = 'each cell with a quotation mark in it between two, and ""for one inside'
        slips.append(Slip(line, "quotation marks", wrong, accepted.replace('""for', '"" for')))
