"""`python -m repairlib plan`: a parts list in, the plan as text, and its files in a folder."""

from __future__ import annotations

from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.typed.set_aside import NOT_FITTED, UNREADABLE, SetAside
from repairlib.health import read_measured_file
from repairlib.recap import (
    CANNOT_TELL,
    CHOICE_RULE,
    LIFE_RULE,
    LIMITS_RULE,
    MAY_STAY,
    MUST_GO,
    NOT_YOURS,
    SPARES_RULE,
    AlreadyThere,
    Item,
    OrderLine,
    Plan,
    Saved,
    free_stem,
    money,
    plan_file,
    read_board,
    read_catalogue,
)
from repairlib.show.sheets.recap_sheet import write_bench_sheet

CSV_ENDING, SHEET_ENDING = "-plan.csv", "-bench-sheet.html"
SHOWN_PROBLEMS = 20  # lines of a catalogue; the JSON holds them all


class PlanReport:
    """A plan and the files that were written of it; str() for a terminal, to_dict() for JSON."""

    def __init__(self, plan: Plan, saved: tuple[Saved, ...] = ()):
        self.plan = plan
        self.saved = saved

    def __str__(self) -> str:
        plan = self.plan
        lines = [str(plan), _accounting(plan), *plan.list.notes]
        lines += [f"CAUTION: {HAZARDS[key].title}." for key in plan.cautions]
        for number, step in enumerate(plan.steps, 1):
            lines.append(f"Step {number}: {step.title}")
            lines += [f"  {NOT_YOURS}"] if step.handed_on else []
            lines += [_fitting_line(item, step.handed_on) for item in step.items]
        lines += _titled("On hold", [_waiting_line(plan, item) for item in plan.held])
        lines += _titled("Judge", [_waiting_line(plan, item) for item in plan.judged])
        lines += _titled("Stay", _kept_lines(plan.kept))
        lines += _titled("Not fitted, as the list says", _unread(_of(plan, NOT_FITTED)))
        lines += _titled("Unreadable", _unread(plan.unreadable))
        lines += _titled("Named twice", [str(duplicate) for duplicate in plan.duplicates])
        lines += _titled("On the board, not in the list", _wrapped(plan.not_listed))
        lines += _measured_lines(plan)
        lines += _order_lines(plan)
        return "\n".join([*lines, *map(str, self.saved)])

    def to_dict(self) -> dict:
        """The plan as JSON-able dicts, lists, texts and numbers."""
        plan = self.plan
        told = {
            "name": plan.name,
            "counts": plan.counts(),
            "notes": plan.list.notes,
            "parts": plan.rows(),
            "unreadable": [_aside(line) for line in plan.unreadable],
            "set_aside": [{**_aside(line), "what": line.what} for line in plan.list.set_aside],
            "duplicates": [str(duplicate) for duplicate in plan.duplicates],
            "not_listed": plan.not_listed,
            "cautions": list(plan.cautions),
            "order": plan.order.to_dict(),
            "files": [str(saved.path) for saved in self.saved],
        }
        if plan.measured is not None:
            told["measured"] = {
                "lines": len(plan.measured.lines),
                "set_aside": [_aside(line) for line in plan.measured.set_aside],
                "not_in_list": plan.not_in_list,
                "not_measured": plan.not_measured,
            }
        if plan.catalogue is not None:
            told["catalogue"] = {
                "lines": plan.catalogue.lines,
                "parts": len(plan.catalogue),
                "unreadable": [_aside(line) for line in plan.catalogue.problems],
            }
        return told


def report_plan(
    path, out=None, board=None, measured=None, catalogue=None, boards: int = 1
) -> PlanReport:
    """Plan the parts list at `path`, and write CSV and bench sheet into the folder `out`.

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
    if not (
        plan.list.references or any(line.what == "not a capacitor" for line in plan.list.set_aside)
    ):
        wrong = f"no line of its {len(plan.list.lines)} begins with a reference"
        raise RepairlibError(path.name, wrong, "a parts list with references such as C5")
    if plan.measured is not None and not plan.measured.parts:
        wrong = f"no line of its {len(plan.measured.lines)} holds a reading of a part"
        accepted = "a table with headings such as Ref, C (µF), ESR @ 120 Hz (Ω)"
        raise RepairlibError(Path(measured).name, wrong, accepted)
    if out is None:
        return PlanReport(plan)
    folder = Path(out)
    if not folder.is_dir():
        raise RepairlibError(folder, "no such folder", "a folder that exists")
    return PlanReport(plan, _written(plan, folder, path.stem.lstrip(".") or "list"))


def _written(plan: Plan, folder: Path, stem: str) -> tuple[Saved, Saved]:
    """CSV and bench sheet in `folder`: both or neither, under the first free number."""
    while True:
        free = free_stem(folder, stem, (CSV_ENDING, SHEET_ENDING))
        try:
            return _both(plan, folder / (free + CSV_ENDING), folder / (free + SHEET_ENDING))
        except AlreadyThere:
            continue  # another plan took the name just now


def _both(plan: Plan, table: Path, sheet: Path) -> tuple[Saved, Saved]:
    saved = plan.to_csv(table)
    try:
        return saved, write_bench_sheet(plan, sheet)
    except BaseException:  # Ctrl-C too
        table.unlink()
        raise


def _accounting(plan: Plan) -> str:
    """Every line of the list, as what it was read: they add up."""
    counted = plan.list.lines_as()
    read = ", ".join(f"{number} {what.removeprefix('lines ')}" for what, number in counted.items())
    return f"Lines: {len(plan.list.lines)} in all: {read}."


def _of(plan: Plan, what: str) -> list[SetAside]:
    return [line for line in plan.list.set_aside if line.what == what]


def _fitting_line(item: Item, handed_on: bool) -> str:
    looks = f"  ({'; '.join(item.looks)})" if item.looks else ""
    box = "not yours:" if handed_on else "[ ]"
    return f"  {box} {item.reference:<5} {item.new}, {item.polarity}; line {item.line}{looks}"


def _waiting_line(plan: Plan, item: Item) -> str:
    source = plan.source(item).strip()[:60]
    return f"{item.reference} (line {item.line}: {source}): {item.told}"


def _kept_lines(kept: list[Item]) -> list[str]:
    """The parts that stay, those with something to look at one by one."""
    names = _wrapped([item.reference for item in kept if not item.looks])
    return [*names, *(f"{item.reference}: {'; '.join(item.looks)}" for item in kept if item.looks)]


def _measured_lines(plan: Plan) -> list[str]:
    """Which parts must go, which may stay and why; and who is missing on either side."""
    if plan.measured is None:
        return []
    lines = [*plan.measured.notes, f"Measured: {LIMITS_RULE}"]
    for stand in (MUST_GO, MAY_STAY, CANNOT_TELL):
        lines += _titled(
            f"Measured, {stand}",
            [
                f"{item.reference}: {item.measured.readings}; {item.measured.why}"
                for item in plan.all_items
                if item.measured is not None and item.measured.stand == stand
            ],
        )
    asides = [line for line in plan.measured.set_aside if line.what == UNREADABLE]
    return [
        *lines,
        *_titled("Measured, not in the list", _wrapped(plan.not_in_list)),
        *_titled("In the list, not measured", _wrapped(plan.not_measured)),
        *_titled("Measurements that could not be read", _unread(asides)),
    ]


def _order_lines(plan: Plan) -> list[str]:
    """The order, where a catalogue or a number of boards asks for one."""
    if plan.catalogue is None and plan.boards == 1:
        return []
    order = plan.order
    lines = [f"Order: {order}.", f"  {SPARES_RULE}"]
    lines += [f"  {CHOICE_RULE}", f"  {LIFE_RULE}"] if order.priced else []
    lines += [f"  {_order_line(line)}" for line in order.lines]
    lines += [f"  {note}" for note in order.notes]
    if plan.catalogue is not None:
        problems = list(plan.catalogue.problems)
        unread = _unread(problems[:SHOWN_PROBLEMS])
        left = len(problems) - SHOWN_PROBLEMS
        unread += [f"and {left} more lines: --json lists them all"] if left > 0 else []
        lines += _titled(f"Lines of {plan.catalogue.name} that could not be read", unread)
    return lines


def _order_line(line: OrderLine) -> str:
    what = f"{line.pieces:4} x {line.part.part if line.part else line.what}"
    counted = f"{line.needed} for {', '.join(line.places)} and {line.spares} spare"
    if line.part is None:
        return f"{what}: {counted}"
    packs = f"{line.packs} pack{'s' if line.packs > 1 else ''} of {line.part.pack}"
    return f"{what}: {counted}, {packs}: {money(line.cost)}; {line.what}; {line.expected.life}"


def _aside(line) -> dict:
    return {"line": line.line, "text": line.text, "why": line.why}


def _unread(lines) -> list[str]:
    return [f"line {line.line}: {line.why}: {line.text[:60]}" for line in lines]


def _titled(title: str, lines: list[str]) -> list[str]:
    return [f"{title}:", *(f"  {line}" for line in lines)] if lines else []


def _wrapped(names: list[str], per_line: int = 15) -> list[str]:
    return [" ".join(names[at : at + per_line]) for at in range(0, len(names), per_line)]
