"""A plan, or those of several boards, and their order: as text for a terminal and as JSON."""

from __future__ import annotations

from repairlib.core.safety import HAZARDS
from repairlib.core.typed.set_aside import NOT_FITTED, UNREADABLE, SetAside
from repairlib.recap import (
    CANNOT_TELL,
    CHOICE_RULE,
    LIFE_RULE,
    LIMITS_RULE,
    MAY_STAY,
    MUST_GO,
    NOT_YOURS,
    SPARES_RULE,
    Catalogue,
    Item,
    Order,
    OrderLine,
    Plan,
    Saved,
    SeveralPlans,
)

SHOWN_PROBLEMS = 20  # lines of a catalogue; the JSON holds them all


class PlanReport:
    """A plan and the files that were written of it; str() for a terminal, to_dict() for JSON.

    `with_order` is False where the order is that of several plans and is told once for all.
    """

    def __init__(self, plan: Plan, saved: tuple[Saved, ...] = (), with_order: bool = True):
        self.plan = plan
        self.saved = saved
        self.with_order = with_order

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
        if self.with_order and has_order(plan):
            lines += _order_lines(plan.order, plan.catalogue)
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
            **({"order": plan.order.to_dict()} if self.with_order else {}),
            "files": [str(saved.path) for saved in self.saved],
        }
        if plan.measured is not None:
            told["measured"] = {
                "lines": len(plan.measured.lines),
                "set_aside": [_aside(line) for line in plan.measured.set_aside],
                "not_in_list": plan.not_in_list,
                "not_measured": plan.not_measured,
            }
        if plan.catalogue is not None and self.with_order:
            told["catalogue"] = _catalogue_told(plan.catalogue)
        return told


class SeveralReport:
    """The plans of several boards, their one order, and the files; like PlanReport."""

    def __init__(
        self,
        plans: SeveralPlans,
        catalogue: Catalogue | None,
        files: list[tuple[Saved, ...]],
        order_file: tuple[Saved, ...],
    ):
        self.plans = plans
        self.catalogue = catalogue
        self.files = files
        self.order_file = order_file

    @property
    def reports(self) -> list[PlanReport]:
        return [
            PlanReport(plan, saved, with_order=False)
            for plan, saved in zip(self.plans.plans, self.files, strict=True)
        ]

    def __str__(self) -> str:
        named = zip(self.plans.names, self.reports, strict=True)
        boards = [f"Board {at}, {name}\n{one}\n" for at, (name, one) in enumerate(named, 1)]
        order = _order_lines(self.plans.order, self.catalogue)
        return "\n".join([*boards, *order, *map(str, self.order_file)])

    def to_dict(self) -> dict:
        """The plans and their order as JSON-able dicts, lists, texts and numbers."""
        told: dict = {
            "boards": [
                {"board": name, **report.to_dict()}
                for name, report in zip(self.plans.names, self.reports, strict=True)
            ],
            "order": self.plans.order.to_dict(),
            "files": [str(saved.path) for saved in self.order_file],
        }
        if self.catalogue is not None:
            told["catalogue"] = _catalogue_told(self.catalogue)
        return told


def has_order(plan: Plan) -> bool:
    """Whether a catalogue or a number of boards asks for an order."""
    return plan.catalogue is not None or plan.boards > 1


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


def _order_lines(order: Order, catalogue: Catalogue | None) -> list[str]:
    """The order: what to know before it, its lines, what of the catalogue could not be read."""
    lines = [f"Order: {order}.", *(f"  NOTE: {note}" for note in order.notes), f"  {SPARES_RULE}"]
    lines += [f"  {CHOICE_RULE}", f"  {LIFE_RULE}"] if order.priced else []
    lines += [f"  {_order_line(order, line)}" for line in order.lines]
    if catalogue is not None:
        problems = list(catalogue.problems)
        unread = _unread(problems[:SHOWN_PROBLEMS])
        left = len(problems) - SHOWN_PROBLEMS
        unread += [f"and {left} more lines: --json lists them all"] if left > 0 else []
        lines += _titled(f"Lines of {catalogue.name} that could not be read", unread)
    return lines


def _order_line(order: Order, line: OrderLine) -> str:
    what = f"{line.pieces:4} x {line.part.part if line.part else line.what}"
    counted = f"{line.needed} for {line.goes_to}, {line.spares} spare"
    why = "".join(f"; {reason}" for reason in line.reasons)
    if line.part is None:
        return f"{what}: {counted}{why}"
    bought = f"{line.purchase}: {order.money(line.cost)}, {line.left_over} left over"
    return f"{what}: {counted}; {bought}; {line.what}; {line.expected.life}{why}"


def _catalogue_told(catalogue: Catalogue) -> dict:
    return {
        "lines": catalogue.lines,
        "parts": len(catalogue),
        "currency": catalogue.currency or None,
        "unreadable": [_aside(line) for line in catalogue.problems],
    }


def _aside(line) -> dict:
    return {"line": line.line, "text": line.text, "why": line.why}


def _unread(lines) -> list[str]:
    return [f"line {line.line}: {line.why}: {line.text[:60]}" for line in lines]


def _titled(title: str, lines: list[str]) -> list[str]:
    return [f"{title}:", *(f"  {line}" for line in lines)] if lines else []


def _wrapped(names: list[str], per_line: int = 15) -> list[str]:
    return [" ".join(names[at : at + per_line]) for at in range(0, len(names), per_line)]
