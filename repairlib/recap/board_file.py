"""The file of a board: a table with one place of the board on each line, read and written."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.table import with_point
from repairlib.core.typed.textfile import TextFile, read_text
from repairlib.recap.board import DIRECTIONS, FORMS, Board, Position
from repairlib.recap.board_side import check_seen_from
from repairlib.recap.export import Saved, not_live, write_whole
from repairlib.recap.other_parts import read_others

COLUMNS = (
    "reference",
    "area",
    "x_mm",
    "y_mm",
    "form",
    "lead_spacing_mm",
    "max_diameter_mm",
    "max_height_mm",
    "plus",
    "seen_from",
)


def read_board(path, others=None) -> Board:
    """The board of a table with the headings of `COLUMNS`; only `reference` must be there.

    `others` is a table of what else is on the board (see other_parts), to find one's way on its
    picture. Lengths are in mm; a `seen_from` that stands in any line holds for all.
    Raises RepairlibError for a file that is not such a table, for a place
    listed twice, for a length that is not a number above 0, for an unknown direction, and for
    lines that are seen from different sides.
    """
    path = Path(path)
    board = read_board_text(read_text(path), path.name)
    return Board(board.name, board.positions, read_others(others) if others else ())


def read_board_text(given: TextFile | str | bytes, name: str) -> Board:
    """The board of a table as `read_board` takes it, given as text; `name` is that of its file.

    >>> board = read_board_text("reference;plus\\nC1;left\\n", "desk-radio.csv")
    >>> board.name, board["C1"].plus
    ('desk radio', 'left')
    """
    table = read_headed(given, name, COLUMNS, ("reference",))
    positions: dict[str, Position] = {}
    for row in table.rows_below():
        where = f"{name} line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, "one place of the board on each line")
        position = read_position(table.by_heading(row, COLUMNS), where)
        if position.reference in positions:
            raise RepairlibError(position.reference, "listed twice on the board", "each place once")
        positions[position.reference] = position
    seen_from = _one_side([place.seen_from for place in positions.values()], name)
    places = [replace(one, seen_from=seen_from) for one in positions.values()]
    return Board(Path(name).stem.replace("-", " "), places)


def board_csv(board: Board) -> str:
    """The board as the text of a table that `read_board` reads.

    >>> print(board_csv(Board("panel", [Position("C1", "supply", 10, 5.5, plus="left")])), end="")
    reference,area,x_mm,y_mm,form,lead_spacing_mm,max_diameter_mm,max_height_mm,plus,seen_from
    C1,supply,10,5.5,,,,,left,
    """
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows([_cell(value) for value in _values(place)] for place in board.positions)
    return buffer.getvalue()


def write_board(board: Board, path, overwrite: bool = False) -> Saved:
    """Write the board to a CSV file; an existing file is left alone unless `overwrite`.

    Raises RepairlibError when it exists or cannot be written; then nothing has changed.
    """
    return Saved(write_whole(path, board_csv(board).encode("utf-8-sig"), overwrite))


def _values(place: Position) -> tuple[str | float | None, ...]:
    """What a place has for each of `COLUMNS`."""
    where = (place.reference, place.area, place.x_mm, place.y_mm, place.form)
    room = (place.spacing_mm, place.max_diameter_mm, place.max_height_mm)
    return (*where, *room, place.plus, place.seen_from)


def _cell(value: str | float | None) -> str:
    if value is None:
        return ""
    return not_live(value) if isinstance(value, str) else f"{value:.10g}"


def _one_side(stated: list[str], name: str) -> str:
    """The side from which all lines are seen; "" where none states one."""
    sides = [side for side in dict.fromkeys(stated) if side]
    if len(sides) > 1:
        wrong = f"two sides on one board, beside '{sides[0]}' ({name})"
        raise RepairlibError(sides[1], wrong, "one side and one edge for all its places")
    return sides[0] if sides else ""


def read_position(cells: dict[str, str], where: str) -> Position:
    """The place that the cells of one line say, by the headings of `COLUMNS`."""
    if not cells["reference"]:
        raise RepairlibError(where, "no reference", "a reference such as C5 in each line")
    _one_of(cells["plus"], DIRECTIONS, where)
    _one_of(cells["form"], FORMS, where)
    return Position(
        cells["reference"].upper(),
        cells["area"],
        _length(cells["x_mm"], where) or 0.0,
        _length(cells["y_mm"], where) or 0.0,
        cells["form"],
        _length(cells["lead_spacing_mm"], where),
        _length(cells["max_diameter_mm"], where),
        _length(cells["max_height_mm"], where),
        cells["plus"],
        check_seen_from(" ".join(cells["seen_from"].split()), where),
    )


def _one_of(text: str, accepted: tuple[str, ...], where: str) -> None:
    if text not in accepted:
        wrong = f"not a word known here ({where})"
        raise RepairlibError(text, wrong, ", ".join(accepted[:-1]) + " or nothing")


def _length(text: str, where: str) -> float | None:
    if not text:
        return None
    wrong = "not a length in mm"
    try:
        length = float(with_point(text))
    except RepairlibError as problem:
        length, wrong = -1.0, problem.wrong
    except ValueError:
        length = -1.0
    if not 0 <= length < 10_000:
        raise RepairlibError(text, f"{wrong} ({where})", "a number from 0, or nothing")
    return length
