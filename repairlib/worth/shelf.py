"""The shelf: a table of sets that wait, one on each line, with what their repair takes."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from repairlib.core.calculator import Given
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import spoken
from repairlib.core.typed.headed import read_headed
from repairlib.core.typed.textfile import TextFile, read_text
from repairlib.worth import job as asked
from repairlib.worth.hazards import read_hazards
from repairlib.worth.job import Job, read_currency

# Column: (the figure of a Job, what it means and its range).
FIGURES = {
    "value": ("value", asked.VALUE),
    "parts": ("parts", asked.PARTS),
    "hours": ("hours", asked.HOURS),
    "success_low_percent": ("success_low", asked.SUCCESS_LOW),
    "success_high_percent": ("success_high", asked.SUCCESS_HIGH),
    "hour_worth": ("hour_worth", asked.HOUR_WORTH),
    "tools": ("tools", asked.TOOLS),
    "jobs": ("jobs", asked.JOBS),
    "replacement": ("replacement", asked.REPLACEMENT),
    "failed": ("failed", asked.FAILED),
    "mass_kg": ("mass", asked.MASS),
}
NEEDED = (
    "set",
    "value",
    "parts",
    "hours",
    "success_low_percent",
    "success_high_percent",
    "hazards",
)
COLUMNS = ("set", "fault", "needs", *FIGURES, "hazards", "currency")


def read_shelf(path: str | Path) -> list[Job]:
    """The sets of a table with the headings of `COLUMNS`, in its order.

    Columns that are not in NEEDED may be left out, and their cells left blank. Every line names
    its hazards, or says "none". Raises RepairlibError, with the line, for a file that is not such
    a table, a figure out of range, a set without a name or listed twice, or two currencies.

    >>> from repairlib.core.tables import demo_path
    >>> [job.name for job in read_shelf(demo_path("shelf.csv"))]
    ['label maker', 'document scanner', 'desk radio', 'printer controller']
    """
    path = Path(path)
    return [job_of(cells) for cells in read_cells(read_text(path), path.name)]


def read_cells(given: TextFile | str | bytes, name: str) -> list[dict[str, str]]:
    """The cells of such a table as typed, set by set, once all of them can be read.

    Each is a dict with all of COLUMNS. Raises RepairlibError as `read_shelf`; `name` is that of
    the file.
    """
    table = read_headed(given, name, COLUMNS, NEEDED)
    found: list[dict[str, str]] = []
    jobs: list[Job] = []
    for row in table.rows_below():
        where = f"{name} line {row.line}"
        if row.what:
            raise RepairlibError(where, row.why, "one set on each line")
        cells = table.by_heading(row, COLUMNS)
        try:
            job = job_of(cells)
        except RepairlibError as problem:
            raise RepairlibError(
                problem.read, f"{problem.wrong} ({where})", problem.accepted
            ) from None
        if job.name in [one.name for one in jobs]:
            raise RepairlibError(job.name, f"listed twice ({where})", "each set once")
        if jobs and job.currency != jobs[0].currency:
            wrong = f"another currency than {jobs[0].currency} ({where})"
            raise RepairlibError(job.currency, wrong, "one currency for the whole shelf")
        jobs.append(job)
        found.append(cells)
    return found


def job_of(cells: Mapping[str, str]) -> Job:
    """The set in one row of the table. Raises RepairlibError for what cannot be read."""
    if not cells["set"].strip():
        raise RepairlibError("", "the set has no name", "a name such as label maker")
    figures = {}
    for column, (name, given) in FIGURES.items():
        if cells[column].strip():
            figures[name] = _read(given, column, cells[column])
        elif column in NEEDED:
            raise RepairlibError("", f"{column} is blank", given.range())
    return Job(
        **figures,
        hazards=read_hazards(cells["hazards"]),
        currency=read_currency(cells["currency"]),
        name=cells["set"],
        fault=cells["fault"],
        needs=cells["needs"],
    )


def _read(given: Given, column: str, cell: str) -> float:
    try:
        return given.read(column, cell)
    except RepairlibError as problem:
        called = spoken(column)
        wrong = problem.wrong if called in problem.wrong else f"{called}: {problem.wrong}"
        raise RepairlibError(problem.read, wrong, given.range()) from None
