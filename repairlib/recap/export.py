"""Writing a plan to files: CSV that no spreadsheet runs, and nothing overwritten by surprise.

A file appears whole or not at all. The bench sheet is made in repairlib.show.sheets.
"""

from __future__ import annotations

import csv
import errno
import io
import os
import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from repairlib.core import saving
from repairlib.core.errors import RepairlibError, escaped
from repairlib.core.once import Once
from repairlib.recap.plan_table import COLUMNS, Row

# A cell that begins so is a formula to a spreadsheet; so is one behind a separator, when the file
# is opened with another separator than the comma. The wide signs count in some languages. Tabs
# and line ends, which begin formulas too, become spaces before.
_LIVE = re.compile(r'((?:^|[;,|])[\s\ufeff"]*)([=+\-@＝＋－＠])')
_BREAKS = re.compile(r"[\t\r\n\v\f]+")
MARK = "'"


class AlreadyThere(RepairlibError):
    """A file of this name exists, and was not overwritten."""


@dataclass(eq=False, slots=True)
class Saved:
    """A file that was written: its `path`, and how many `marked` cells looked like formulas."""

    path: Path
    marked: int = 0

    def __str__(self) -> str:
        if not self.marked:
            return f"Saved {self.path}"
        cells = "cell" if self.marked == 1 else "cells"
        return (
            f"Saved {self.path}. {self.marked} {cells} began like a spreadsheet formula: "
            f"an apostrophe was put in front, so that none runs."
        )

    __repr__ = __str__


def not_live(cell: str) -> str:
    """`cell` on one line, with an apostrophe before whatever a spreadsheet would run.

    Characters that cannot be seen are written out.

    >>> not_live("=1+1"), not_live("10 µF"), not_live("C1;@SUM(A1)")
    ("'=1+1", '10 µF', "C1;'@SUM(A1)")
    """
    dead = _LIVE.sub(lambda found: found[1] + MARK + found[2], _BREAKS.sub(" ", cell))
    return escaped(dead)


def csv_text(rows: Iterable[Row], columns: tuple[str, ...] = COLUMNS) -> tuple[str, int]:
    """The rows of a plan as CSV text, every cell quoted, and how many cells had to be marked.

    `columns` are the headings, where they are not those of a plan.
    """
    buffer = io.StringIO()
    writer = csv.writer(buffer, quoting=csv.QUOTE_ALL)
    writer.writerow(columns)
    marked, harmless = 0, Once(_harmless)
    for row in rows:
        cells = [harmless[str(cell)] for cell in row.values()]
        marked += sum(was_live for _, was_live in cells)
        writer.writerow([safe for safe, _ in cells])
    return buffer.getvalue(), marked


def _harmless(cell: str) -> tuple[str, bool]:
    """The cell as `not_live` writes it, and whether that took an apostrophe."""
    safe = not_live(cell)
    return safe, safe.count(MARK) > cell.count(MARK)


def write_csv(
    rows: Iterable[Row], path, overwrite: bool = False, columns: tuple[str, ...] = COLUMNS
) -> Saved:
    """Write the rows of a plan to a CSV file in UTF-8, with a byte order mark for spreadsheets.

    An existing file is left alone unless `overwrite`. Raises RepairlibError when the file exists
    or cannot be written; then nothing has changed.
    """
    text, marked = csv_text(rows, columns)
    return Saved(write_whole(path, text.encode("utf-8-sig"), overwrite), marked)


def write_whole(path, data: bytes, overwrite: bool = False) -> Path:
    """Write `data` to `path` in one step: a reader sees the whole file or none.

    Raises AlreadyThere when the file exists (unless `overwrite`), and RepairlibError when it cannot
    be written.
    """
    path = Path(path)
    try:
        saving.put_new(path, data, overwrite)
    except FileExistsError:
        wrong = "this file exists, and nothing was overwritten"
        raise AlreadyThere(path.name, wrong, "a new name, or overwrite=True") from None
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        wrong = f"cannot be written ({reason}); nothing was changed"
        too_long = getattr(problem, "errno", None) == errno.ENAMETOOLONG
        accepted = "a list with a shorter name" if too_long else "a folder in which you may write"
        raise RepairlibError(path, wrong, accepted) from None
    return path


def free_stem(folder: Path, stem: str, endings: tuple[str, ...]) -> str:
    """`stem`, or `stem-2`, `stem-3`, ... so that nothing of these endings exists in `folder`."""
    number, candidate = 1, stem
    while any(os.path.lexists(folder / (candidate + ending)) for ending in endings):
        number += 1
        candidate = f"{stem}-{number}"
    return candidate
