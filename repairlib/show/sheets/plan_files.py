"""`python -m repairlib plan`: parts lists in, their plans and their files in a folder."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.health import read_measured_file
from repairlib.recap import (
    AlreadyThere,
    Order,
    Plan,
    Saved,
    check_each_once,
    free_stem,
    one_for_each,
    plan_boards,
    plan_file,
    read_board,
    read_catalogue,
)
from repairlib.show.sheets.plan_report import PlanReport, SeveralReport, has_order
from repairlib.show.sheets.recap_sheet import write_bench_sheet

CSV_ENDING, SHEET_ENDING, ORDER_ENDING = "-plan.csv", "-bench-sheet.html", "-order.csv"
# The name of a plan's files and the function that writes each, by its ending; and what was saved.
Written = tuple[str, dict[str, Callable]]
Files = tuple[list[tuple[Saved, ...]], tuple[Saved, ...]]


def report_plan(
    path, out=None, board=None, measured=None, catalogue=None, boards: int = 1
) -> PlanReport:
    """Plan the parts list at `path`, and write CSV, bench sheet and order into the folder `out`.

    `board`, `measured` and `catalogue` are paths of CSV files (see recap.read_board,
    health.measured and recap.catalogue); `boards` is how many to order for. Existing files are
    never overwritten: the new ones get a number. Raises RepairlibError for a file that is not
    what it should be and for a folder in which nothing can be written.
    """
    path = Path(path)
    plan = plan_file(
        path,
        read_board(board) if board is not None else None,
        read_measured_file(measured) if measured is not None else None,
        read_catalogue(catalogue) if catalogue is not None else None,
        boards,
    )
    _check(plan, path, measured)
    if out is None:
        return PlanReport(plan)
    written = _written([_files_of(plan, path)], plan.order if has_order(plan) else None, out, path)
    (files,), order = written
    return PlanReport(plan, (*files, *order))


def report_boards(paths, out=None, boards=(), measured=(), catalogue=None) -> SeveralReport:
    """Plan each parts list of `paths` as one board, with one order for all; see report_plan.

    `boards` and `measured` are paths of CSV files, one for each list in the order of the lists,
    None for a list without; empty where no list has one.
    """
    paths = [Path(path) for path in paths]
    check_each_once(paths, "parts list")
    named = [Path(one) for one in one_for_each(paths, measured, "readings") if one is not None]
    check_each_once(named, "table of readings")
    shop = read_catalogue(catalogue) if catalogue is not None else None
    made = plan_boards(
        paths,
        [one and read_board(one) for one in one_for_each(paths, boards, "boards")],
        [one and read_measured_file(one) for one in one_for_each(paths, measured, "readings")],
        shop,
    )
    for at, (plan, path) in enumerate(zip(made.plans, paths, strict=True)):
        _check(plan, path, measured[at] if measured else None)
    if out is None:
        return SeveralReport(made, shop, [()] * len(paths), ())
    files = [_files_of(plan, path) for plan, path in zip(made.plans, paths, strict=True)]
    return SeveralReport(made, shop, *_written(files, made.order, out, Path("boards")))


def _check(plan: Plan, path: Path, measured) -> None:
    """Raise RepairlibError for a list without references and a table without readings."""
    if not (
        plan.list.references or any(line.what == "not a capacitor" for line in plan.list.set_aside)
    ):
        wrong = f"no line of its {len(plan.list.lines)} begins with a reference"
        raise RepairlibError(path.name, wrong, "a parts list with references such as C5")
    if plan.measured is not None and not plan.measured.parts:
        wrong = f"no line of its {len(plan.measured.lines)} holds a reading of a part"
        accepted = "a table with headings such as Ref, C (µF), ESR @ 120 Hz (Ω)"
        raise RepairlibError(Path(measured).name, wrong, accepted)


def _files_of(plan: Plan, path: Path) -> Written:
    """How the table and the sheet of a plan are written, each by its ending."""
    stem = path.stem.lstrip(".") or "list"
    return stem, {CSV_ENDING: plan.to_csv, SHEET_ENDING: partial(write_bench_sheet, plan)}


def _written(plans: list[Written], order: Order | None, out, path: Path) -> Files:
    """The files of all plans and of the order in the folder `out`: all of them or none."""
    folder = Path(out)
    if not folder.is_dir():
        raise RepairlibError(folder, "no such folder", "a folder that exists")
    done: list[Saved] = []
    try:
        files = [_with_free_name(folder, stem, writers, done) for stem, writers in plans]
        stem = path.stem.lstrip(".") or "list"
        ordered = _with_free_name(folder, stem, {ORDER_ENDING: order.to_csv}, done) if order else ()
    except BaseException:  # Ctrl-C too
        for saved in done:
            saved.path.unlink()
        raise
    return files, ordered


def _with_free_name(
    folder: Path, stem: str, writers: dict[str, Callable], done: list[Saved]
) -> tuple[Saved, ...]:
    """The files of these endings, under the first free number; noted in `done` as they come."""
    while True:
        free = free_stem(folder, stem, tuple(writers))
        before = len(done)
        try:
            for ending, write in writers.items():
                done.append(write(folder / (free + ending)))
            return tuple(done[before:])
        except AlreadyThere:  # another plan took the name just now
            for saved in done[before:]:
                saved.path.unlink()
            del done[before:]
