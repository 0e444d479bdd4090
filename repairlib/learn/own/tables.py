"""A table to fill in: its columns, its rows, and in each column numbers or words to choose from."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from repairlib.core.draws import normal
from repairlib.learn.arranging import Table
from repairlib.learn.own.choices import look_at_options
from repairlib.learn.own.numbers import is_number, number_fields, number_in, wrong_numbers
from repairlib.learn.own.parts import Asked, Wrong, cells_of, mistake
from repairlib.learn.own.said import Said
from repairlib.learn.own.slips import Slip
from repairlib.learn.question import Choice, Number, Question

MOST_CELLS = 200
NOTHING_ASKED = ("", "-", "–", "—")  # in a cell


class Cell(NamedTuple):
    """One cell of a table as typed."""

    said: Said
    row: str
    column: str
    text: str


def read_table(asked: Asked, slips: list[Slip]) -> Question | None:
    """A table: Columns, then each Row; `Also: column | word` adds words to choose from."""
    common = asked.common(slips)
    columns = cells_of(asked.one("columns").text)
    cells = _cells(asked, columns, slips)
    also = _also(asked, columns, slips)
    wrong = _wrong_cells(asked, cells, slips)
    made: dict[str, dict[str, Question]] = {cell.row: {} for cell in cells}
    for column in columns[1:]:
        below = [cell for cell in cells if cell.column == column]
        for cell, question in zip(below, _column(below, also, wrong, slips), strict=False):
            made[cell.row][column] = question
    return None if slips else Table(cells=made, **common)


def _cells(asked: Asked, columns: list[str], slips: list[Slip]) -> list[Cell]:
    """Each cell that is asked for, with its row and column."""
    head, found, names = asked.one("columns"), [], set()
    if len(columns) < 2 or not all(columns) or len(set(map(normal, columns))) < len(columns):
        wrong = "not two headings or more, each with a name of its own"
        slips.append(Slip(head.line, head.text, wrong, "marking | value"))
        return []
    rows = asked.by_word.get("row", [])
    for one in rows:
        name, *texts = cells_of(one.text)
        if len(texts) != len(columns) - 1 or not name or normal(name) in names:
            wrong = "not one cell for each column, or its first cell is not of its own"
            slips.append(Slip(one.line, one.text, wrong, " | ".join(columns)))
        names.add(normal(name))
        found += [
            Cell(one, name, column, text)
            for column, text in zip(columns[1:], texts, strict=False)
            if text not in NOTHING_ASKED
        ]
    if len(found) > MOST_CELLS:
        wrong = "too many cells for one question"
        slips.append(Slip(head.line, f"{len(found)} cells", wrong, f"up to {MOST_CELLS}"))
        return []
    if not found:
        slips.append(Slip(head.line, head.text, "nothing is asked in it", "Row: 104 | 100 nF"))
    return found


def _also(asked: Asked, columns: list[str], slips: list[Slip]) -> dict[str, list[str]]:
    """Words to choose from beside those that are right somewhere, by their column."""
    found: dict[str, list[str]] = {}
    for one in asked.by_word.get("also", []):
        column, *words = cells_of(one.text)
        known = {normal(name): name for name in columns[1:]}
        if normal(column) not in known or not all(words) or not words:
            accepted = " or ".join(f"{name} | word | word" for name in columns[1:])
            slips.append(Slip(one.line, one.text, "not a column and words for it", accepted))
        else:
            found.setdefault(known[normal(column)], []).extend(words)
    return found


def _wrong_cells(
    asked: Asked, cells: list[Cell], slips: list[Slip]
) -> dict[tuple[str, str], list[Wrong]]:
    """The wrong answers by row and column, each with its own text alone."""
    known = {(normal(cell.row), normal(cell.column)): cell for cell in cells}
    found: dict[tuple[str, str], list[Wrong]] = {}
    for one in asked.wrong:
        place = cells_of(one.said.text)
        cell = known.get((normal(place[0]), normal(place[1]))) if len(place) == 3 else None
        if cell is None:
            accepted = (
                f"{cells[0].row} | {cells[0].column} | the wrong answer" if cells else "cells"
            )
            slips.append(Slip(one.said.line, one.said.text, "no answer in a cell", accepted))
        else:
            bare = one._replace(said=one.said._replace(text=place[2]))
            found.setdefault((cell.row, cell.column), []).append(bare)
    return found


def _column(
    cells: Sequence[Cell],
    also: dict[str, list[str]],
    wrong: dict[tuple[str, str], list[Wrong]],
    slips: list[Slip],
) -> list[Question]:
    """The cells of one column: all numbers, or all chosen from the words that stand in it."""
    if not cells:
        return []
    numeric = [is_number(cell.text) for cell in cells]
    if cells[0].column not in also and any(numeric):
        for cell, fits in zip(cells, numeric, strict=True):
            if not fits:
                wrong_one = "no number, and others in its column are"
                accepted = f"a number with its unit, or a line Also: {cell.column} | and a word"
                slips.append(Slip(cell.said.line, cell.text, wrong_one, accepted))
        return [_number_cell(cell, wrong, slips) for cell in cells if is_number(cell.text)]
    words = [*(cell.text for cell in cells), *also.get(cells[0].column, [])]
    words += [one.said.text for cell in cells for one in wrong.get((cell.row, cell.column), [])]
    options = tuple({normal(word): word for word in reversed(words)}.values())[::-1]
    first = cells[0].said
    look_at_options([first._replace(text=option) for option in options], slips)
    if len(options) < 2:
        accepted = f"Also: {cells[0].column} | another word"
        slips.append(Slip(first.line, cells[0].text, "nothing else to choose from", accepted))
    by_normal = {normal(option): option for option in options}
    return [_choice_cell(cell, options, by_normal, wrong, slips) for cell in cells]


def _number_cell(cell: Cell, wrong, slips: list[Slip]) -> Question:
    right = number_in(cell.said, cell.text, slips) or Number(answer=0, unit="")
    mistakes = wrong_numbers(right, wrong.get((cell.row, cell.column), []), slips)
    return Number(**number_fields(right), mistakes=mistakes)


def _choice_cell(cell: Cell, options, by_normal, wrong, slips: list[Slip]) -> Question:
    answer = by_normal[normal(cell.text)]
    mistakes = []
    for one in wrong.get((cell.row, cell.column), []):
        when = by_normal[normal(one.said.text)]
        if when == answer:
            slips.append(Slip(one.said.line, when, "this is the right answer", "a wrong one"))
        mistakes += mistake(one, when, slips)
    return Choice(options=options, answer=answer, mistakes=mistakes)
