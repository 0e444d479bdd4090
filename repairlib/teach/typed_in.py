"""Answers on paper, typed in by the instructor: one line for each sheet.

    kite 03: b | 100 nF | c a b | 16, 25, a
    kite + moss 04: a |  | b

First the word (or name) of a member, of two who answered together with a +, and the number of the
lesson. Behind the colon the answers in the order of the sheet, with | between them. An empty place
or - is not answered. Options and steps are the letters on that member's own sheet; the cells of a
table stand row by row, with commas between them. A line that was read out ends in = and its two
check signs. Empty lines and those that begin with # are passed over; a later line of the same
member and lesson takes the place of an earlier one.
"""

from __future__ import annotations

import time
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.version import VERSION
from repairlib.core.wording import counted
from repairlib.learn import files
from repairlib.learn.arranging import Table
from repairlib.learn.exercise import questions_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import (
    KIND,
    SIGNS,
    HandedIn,
    check_signs,
    file_of,
    put_into,
    receipt_of,
)
from repairlib.learn.learner import member_of, named_in
from repairlib.learn.progress import number_of
from repairlib.learn.question import UNREADABLE, UNSAFE, Choice, Question
from repairlib.learn.tries import NO_TRY
from repairlib.teach.anew import lesson_of
from repairlib.teach.marked import is_lesson_of

FORM = "WORD LESSON: answer | answer | …"
NOTHING = ("", "-")


class Sheet(NamedTuple):
    """One line taken: who, with whom, which lesson, and the answers by question, as saved ones."""

    line: int
    member: Member
    partner: str
    lesson: str
    answers: dict[str, Any]


class Trouble(NamedTuple):
    """What is wrong with a line, with its number; `id` is the question, "" for the whole line."""

    line: int
    id: str
    wrong: str

    def __str__(self) -> str:
        return f"line {self.line}{f', {self.id}' if self.id else ''}: {self.wrong}"


class TypedIn(NamedTuple):
    """What came of a text: the sheets taken, what is wrong, which lines took another's place."""

    sheets: tuple[Sheet, ...]
    troubles: tuple[Trouble, ...]
    replaced: tuple[str, ...]
    files: tuple[Path, ...] = ()

    def __str__(self) -> str:
        members = len({one.member.word for one in self.sheets})
        told = [
            f"{counted(len(self.sheets), 'sheet')} of {counted(members, 'member')} taken",
            *self.replaced,
            *map(str, self.troubles),
        ]
        if self.files:
            told.append(f"written as handed in from paper: {', '.join(x.name for x in self.files)}")
        return "\n".join(told)


def type_in(folder: Path | str, group: Group, text: str, at: int | None = None) -> TypedIn:
    """Write typed answers as files handed in, one for each member, into `handed-in/` of the folder.

    They say that they come from paper, and are collected like all others. What is wrong with a
    line is told with its number; the other lines, and the other answers of that line, are taken.
    Raises RepairlibError when a file cannot be written.
    """
    at = time.time_ns() // 1_000_000 if at is None else at
    read = read_typed(text, group)
    place = Path(folder) / "handed-in"
    files.make_private(place)
    by_member: dict[str, list[Sheet]] = {}
    for one in read.sheets:
        by_member.setdefault(one.member.word, []).append(one)
    written = (put_into(place, _handed_in(group, theirs, at)) for theirs in by_member.values())
    return read._replace(files=tuple(written))


def read_typed(text: str, group: Group) -> TypedIn:
    """The sheets in a text, the later line for the earlier one, and what is wrong."""
    taken: dict[tuple[str, str], Sheet] = {}
    troubles: list[Trouble] = []
    replaced: list[str] = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        try:
            sheet, wrong = _read_line(number, line, group)
        except RepairlibError as error:
            troubles.append(Trouble(number, "", f"not taken: {error}"))
            continue
        troubles += wrong
        before = taken.pop((sheet.member.word, sheet.lesson), None)
        taken[sheet.member.word, sheet.lesson] = sheet
        if before:
            replaced.append(f"line {number} takes the place of line {before.line}")
            troubles = [one for one in troubles if one.line != before.line]
    return TypedIn(tuple(taken.values()), tuple(troubles), tuple(replaced))


def _read_line(number: int, line: str, group: Group) -> tuple[Sheet, list[Trouble]]:
    head, colon, rest = _without_check(line).partition(":")
    who, _, which = head.strip().rpartition(" ")
    if not colon or not who.strip():
        raise RepairlibError(line.strip(), "it does not say who and which lesson", FORM)
    first, plus, second = who.partition("+")
    member = group.member(first)
    partner = group.member(second).name if plus else ""
    lesson = lesson_of(which, group)
    if not is_lesson_of(group, lesson):
        taken = ", ".join(map(number_of, group.lessons))
        raise RepairlibError(which, f"the group {group.name} does not take this lesson", taken)
    asked = questions_of(lesson, member_of(group, member), group)
    pieces = [piece.strip() for piece in rest.split("|")]
    if len(pieces) == len(asked) + 1 and not pieces[-1]:
        del pieces[-1]
    if len(pieces) != len(asked):
        wrong = f"{len(pieces)} answers for the {len(asked)} questions of lesson {which}"
        places = f"{len(asked) - 1} times | , and nothing between two where none was given"
        raise RepairlibError(rest.strip(), wrong, places)
    answers, troubles = {}, []
    for question, piece in zip(asked, pieces, strict=True):
        if piece in NOTHING:
            continue
        try:
            answers[question.id] = _answer(question, piece)
            judged = question.judge(answers[question.id])
            if judged.state == UNREADABLE:
                told = f"kept as typed, and cannot be read: {' '.join(judged.says)}"
                troubles.append(Trouble(number, question.id, told))
        except RepairlibError as error:
            troubles.append(Trouble(number, question.id, f"left out: {error}"))
    return Sheet(number, member, partner, lesson, answers), troubles


def _without_check(line: str) -> str:
    """The line without its two check signs. Raises RepairlibError when they do not fit it."""
    before, equals, signs = line.rpartition("=")
    signs = signs.strip().upper()
    if not equals or len(signs) != 2 or not set(signs) <= set(SIGNS):
        return line
    if check_signs(before) != signs:
        wrong = f"the check signs {signs} do not fit what stands before them"
        raise RepairlibError(line.strip(), wrong, "the line read out once more")
    return before


def _answer(question: Question, piece: str) -> Any:
    """One answer as a form would save it. Raises RepairlibError for a table of other cells."""
    if isinstance(question, Table):
        return _table(question, piece)
    if isinstance(question, Choice):
        return _option(question, piece)
    return piece


def _option(question: Choice, piece: str) -> str:
    try:
        return question.read(piece)
    except RepairlibError:
        return piece  # told as what cannot be read


def _table(question: Table, piece: str) -> dict[str, dict[str, str]]:
    cells = [(row, name, one) for row, each in question.cells.items() for name, one in each.items()]
    texts = _split(piece, len(cells))
    if len(texts) != len(cells):
        wrong = f"{counted(len(texts), 'text')} for {counted(len(cells), 'cell')}"
        places = ", ".join(f"{row} {name}" for row, name, _ in cells)
        raise RepairlibError(piece, wrong, f"with commas between them: {places}")
    table: dict[str, dict[str, str]] = {}
    for (row, name, one), text in zip(cells, texts, strict=True):
        if text not in NOTHING:
            table.setdefault(row, {})[name] = _answer(one, text)
    return table


def _split(piece: str, count: int) -> list[str]:
    """The cells of a table; a comma inside a figure is none between two where a space follows."""
    for between in (";", ", ", ","):
        texts = [text.strip() for text in piece.split(between)]
        if len(texts) == count:
            return texts
    return [text.strip() for text in piece.split(",")]


def _handed_in(group: Group, sheets: list[Sheet], at: int) -> HandedIn:
    """What one member would have handed in, had the answers been given on a computer."""
    learner = member_of(group, sheets[0].member)
    lessons, tries = {}, {}
    for one in sheets:
        lessons[one.lesson], tries[one.lesson] = _as_saved(one, group, at)
    partner = next((one.partner for one in sheets if one.partner), "")
    content: dict[str, Any] = {"format": files.FORMAT, "kind": KIND, **named_in(learner)}
    content |= {"partner": partner, "at": at, "version": VERSION, "from": "paper"}
    content |= {"lessons": lessons, "tries": tries}
    answers = receipt_of(content | {"tries": {}})  # typed twice it is one file, whatever the time
    name = f"from-paper-{sheets[0].member.word}-{answers.lower()}.json"
    return HandedIn(name, file_of(content), receipt_of(content), at)


def _as_saved(sheet: Sheet, group: Group, at: int) -> tuple[Mapping[str, Any], list[list[Any]]]:
    """The saved answers to one lesson and its record: each answer is the first try and the only."""
    learner = member_of(group, sheet.member)
    asked = {one.id: one for one in questions_of(sheet.lesson, learner, group)}
    judged = {name: asked[name].judge(typed) for name, typed in sheet.answers.items()}
    saved = {
        "answers": sheet.answers,
        "asked": {
            name: {"fingerprint": fingerprint(asked[name]), "version": VERSION}
            for name in sheet.answers
        },
        "at": dict.fromkeys(sheet.answers, at),
        "unsafe": [name for name, one in judged.items() if one.state == UNSAFE],
    }
    if sheet.partner:
        saved["partner"] = sheet.partner
    return saved, list(_tries(sheet, asked, judged, at))


def _tries(sheet: Sheet, asked: Mapping, judged: Mapping, at: int) -> Iterator[list[Any]]:
    for name, typed in sheet.answers.items():
        if judged[name].state not in NO_TRY:
            short = asked[name].in_short(typed)
            yield [at, name, short, judged[name].state, list(judged[name].hazards)]
