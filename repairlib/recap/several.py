"""Several boards, each with its own list and readings: a plan for each, one order for them all."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from repairlib.core.errors import RepairlibError
from repairlib.health import MeasuredTable
from repairlib.recap.board import Board
from repairlib.recap.catalogue import Catalogue
from repairlib.recap.order import MOST_BOARDS, Order
from repairlib.recap.planner import Plan, plan_file, together


class SeveralPlans:
    """The `plans` of several boards, what each board is called, and the one `order` for all."""

    def __init__(self, plans: list[Plan], names: list[str], order: Order):
        self.plans = plans
        self.names = names
        self.order = order

    def __str__(self) -> str:
        return "\n".join([*map(str, self.plans), f"Order: {self.order}."])

    __repr__ = __str__


def plan_boards(
    lists: Sequence,
    boards: Sequence[Board | None] = (),
    measured: Sequence[MeasuredTable | None] = (),
    catalogue: Catalogue | None = None,
) -> SeveralPlans:
    """A plan for each parts list, and one order for all, with the spares counted over all of them.

    Each of `lists`, paths of parts lists, is one board. `boards` says where its parts sit and
    `measured` what was read on it, one for each list in the order of the lists, None where nobody
    looked; leave them out where nobody looked at any. A board without readings is planned as not
    measured. Raises RepairlibError when a list is named twice, when a number does not match, and
    for a file that is no list.
    """
    paths = [Path(one) for one in lists]
    if not 1 <= len(paths) <= MOST_BOARDS:
        raise RepairlibError(len(paths), "not a number of lists", f"1 to {MOST_BOARDS} of them")
    check_each_once(paths, "parts list")
    boards = one_for_each(paths, boards, "boards")
    measured = one_for_each(paths, measured, "readings")
    plans = [
        plan_file(path, board, readings, catalogue, alone=False)
        for path, board, readings in zip(paths, boards, measured, strict=True)
    ]
    names = _told_apart(paths)
    return SeveralPlans(plans, names, together(plans, [1] * len(plans), names, catalogue))


def check_each_once(paths: Sequence[Path], what: str) -> None:
    """Raise RepairlibError when a file is named twice, by whatever path."""
    seen = set()
    for path in paths:
        if path.resolve() in seen:
            accepted = f"each {what} once; a board of its own has a copy under a name of its own"
            raise RepairlibError(path.name, f"this {what} is named twice", accepted)
        seen.add(path.resolve())


def one_for_each(paths: Sequence[Path], given: Sequence, what: str) -> Sequence:
    """One of `given` for each list, or None for all; RepairlibError when the numbers differ."""
    if given and len(given) != len(paths):
        lists = f"{len(paths)} list{'s' if len(paths) > 1 else ''}"
        wrong = f"as many as lists are due: here {lists} and {len(given)} {what}"
        accepted = "one for each list in the order of the lists, 'none' for a board without"
        raise RepairlibError(what, wrong, accepted)
    return given or [None] * len(paths)


def _told_apart(paths: Sequence[Path]) -> list[str]:
    """The names of the lists, with their folders where two have the same name."""
    names = [path.name for path in paths]
    return [str(path) if names.count(path.name) > 1 else path.name for path in paths]
