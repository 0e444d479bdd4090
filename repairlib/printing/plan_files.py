"""`python -m repairlib plan`: a parts list in, the plan as text, and its files in a folder."""

from __future__ import annotations

from pathlib import Path

from repairlib.errors import RepairlibError
from repairlib.printing.bench_sheet import write_bench_sheet
from repairlib.recap.board import read_board
from repairlib.recap.export import Saved, free_stem
from repairlib.recap.item import Item
from repairlib.recap.planner import Plan, plan_file
from repairlib.safety import HAZARDS

CSV_ENDING, SHEET_ENDING = "-plan.csv", "-bench-sheet.html"


class PlanReport:
    """A plan and the files that were written of it; str() for a terminal, to_dict() for JSON."""

    def __init__(self, plan: Plan, saved: tuple[Saved, ...] = ()):
        self.plan = plan
        self.saved = saved

    def __str__(self) -> str:
        plan = self.plan
        lines = [str(plan), *plan.list.notes]
        lines += [f"CAUTION: {HAZARDS[key].title}." for key in plan.cautions]
        for number, step in enumerate(plan.steps, 1):
            lines += [f"Step {number}: {step.title}", *(_fitting_line(item) for item in step.items)]
        lines += _titled("On hold", [_waiting_line(plan, item) for item in plan.held])
        lines += _titled("Judge", [_waiting_line(plan, item) for item in plan.judged])
        lines += _titled("Stay", _wrapped([item.reference for item in plan.kept]))
        unreadable = [f"line {line.line}: {line.why}: {line.text[:60]}" for line in plan.unreadable]
        lines += _titled("Unreadable", unreadable)
        lines += _titled("Named twice", [str(duplicate) for duplicate in plan.duplicates])
        lines += _titled("On the board, not in the list", _wrapped(plan.not_listed))
        return "\n".join([*lines, *map(str, self.saved)])

    def to_dict(self) -> dict:
        """The plan as JSON-able dicts, lists, texts and numbers."""
        plan = self.plan
        return {
            "name": plan.name,
            "counts": plan.counts(),
            "notes": plan.list.notes,
            "parts": plan.rows(),
            "unreadable": [
                {"line": line.line, "text": line.text, "why": line.why} for line in plan.unreadable
            ],
            "duplicates": [str(duplicate) for duplicate in plan.duplicates],
            "not_listed": plan.not_listed,
            "cautions": list(plan.cautions),
            "files": [str(saved.path) for saved in self.saved],
        }


def report_plan(path, out=None, board=None) -> PlanReport:
    """Plan the parts list at `path`, and write CSV and bench sheet into the folder `out`.

    `board` is the path of a board's CSV (see recap.read_board). Existing files are never
    overwritten: the new ones get a number. Raises RepairlibError for a file that is no parts
    list and for a folder in which nothing can be written.
    """
    path = Path(path)
    plan = plan_file(path, read_board(board) if board is not None else None)
    if not (
        plan.list.references or any(line.what == "not a capacitor" for line in plan.list.set_aside)
    ):
        wrong = f"no line of its {len(plan.list.lines)} begins with a reference"
        raise RepairlibError(path.name, wrong, "a parts list with references such as C5")
    if out is None:
        return PlanReport(plan)
    folder = Path(out)
    if not folder.is_dir():
        raise RepairlibError(folder, "no such folder", "a folder that exists")
    stem = str(folder / free_stem(folder, path.stem, (CSV_ENDING, SHEET_ENDING)))
    table = plan.to_csv(stem + CSV_ENDING)
    return PlanReport(plan, (table, write_bench_sheet(plan, stem + SHEET_ENDING)))


def _fitting_line(item: Item) -> str:
    looks = f"  ({'; '.join(item.looks)})" if item.looks else ""
    return f"  [ ] {item.reference:<5} {item.new}, {item.polarity}; line {item.line}{looks}"


def _waiting_line(plan: Plan, item: Item) -> str:
    why = "; ".join((item.why, *item.looks))
    return f"{item.reference} (line {item.line}: {plan.source(item).strip()[:60]}): {why}"


def _titled(title: str, lines: list[str]) -> list[str]:
    return [f"{title}:", *(f"  {line}" for line in lines)] if lines else []


def _wrapped(names: list[str], per_line: int = 15) -> list[str]:
    return [" ".join(names[at : at + per_line]) for at in range(0, len(names), per_line)]
