"""The plan of a recap: what to replace by what, what stays, what waits, in the order of fitting.

Every reference of the list is in exactly one of the plan's lists, with its source line.
"""

from __future__ import annotations

from functools import cached_property
from pathlib import Path
from textwrap import fill

from repairlib.core.errors import RepairlibError
from repairlib.core.typed.textfile import read_text
from repairlib.health import MeasuredTable
from repairlib.recap import rules
from repairlib.recap.board import Board
from repairlib.recap.catalogue import Catalogue
from repairlib.recap.export import write_csv
from repairlib.recap.fitting_order import Step, in_steps
from repairlib.recap.item import (
    Duplicate,
    Item,
    look_at_board,
    look_at_measurement,
    tell_boards,
)
from repairlib.recap.measurements import judge_measured
from repairlib.recap.order import Lot, Order, check_boards, choose_parts, one_measured, order_of
from repairlib.recap.parts import UNREADABLE, PartsList, SetAside, read_parts
from repairlib.recap.places import hazards_there
from repairlib.recap.plan_table import COLUMNS, Row, rows_of
from repairlib.recap.rules import HOLD, JUDGE, KEEP, REPLACE, STAY
from repairlib.recap.selection import selector_of


class Plan:
    """A recap plan. `items` are to be replaced; `judged`, `kept` and `held` are not (yet).

    `may_stay` are parts that age, but were measured and are as new. `unreadable` are the lines
    without parts that could not be read; `duplicates` the references named twice; `not_listed`
    the places of the board that the list does not name. `order` is what to buy, for this board
    and all that are ordered for with it.
    """

    def __init__(
        self,
        parts_list: PartsList,
        board: Board | None = None,
        measured: MeasuredTable | None = None,
        catalogue: Catalogue | None = None,
        boards: int = 1,
        alone: bool = True,
    ):
        """`alone`: its parts are chosen and ordered without those of other plans (see together)."""
        self.list = parts_list
        self.board = board
        self.measured = measured
        self.catalogue = catalogue
        self.boards = check_boards(boards)
        self.duplicates: list[Duplicate] = []
        everything = self._all_items()
        self._look_around(everything)
        by_verdict: dict[str, list[Item]] = {REPLACE: [], KEEP: [], JUDGE: [], HOLD: [], STAY: []}
        for item in everything:
            by_verdict[item.decision.verdict].append(item)
        self.items = by_verdict[REPLACE]
        self.kept = by_verdict[KEEP]
        self.judged = by_verdict[JUDGE]
        self.held = by_verdict[HOLD]
        self.may_stay = by_verdict[STAY]
        if alone and catalogue is not None:
            self._order_parts()  # which part is bought stands in the items from now on

    @property
    def name(self) -> str:
        return self.list.name

    @cached_property
    def order(self) -> Order:
        """What to buy, for this board and all that are ordered for with it."""
        return self._order_parts()

    @property
    def unreadable(self) -> list[SetAside]:
        return [line for line in self.list.set_aside if line.what == UNREADABLE]

    @property
    def all_items(self) -> list[Item]:
        """Every reference of the list, by its line."""
        together = self.items + self.judged + self.kept + self.held + self.may_stay
        return sorted(together, key=lambda item: item.line)

    @property
    def not_listed(self) -> list[str]:
        """The places of the board that no line of the list names."""
        if self.board is None:
            return []
        named = set(self.list.references)
        return [p.reference for p in self.board.positions if p.reference not in named]

    @property
    def not_in_list(self) -> list[str]:
        """The references that were measured, but that the list does not name."""
        if self.measured is None:
            return []
        named = set(self.list.references)
        return [p.reference for p in self.measured.parts if p.reference not in named]

    @property
    def not_measured(self) -> list[str]:
        """The references of the list that the table of measured parts does not name."""
        if self.measured is None:
            return []
        return [item.reference for item in self.all_items if item.measured is None]

    @property
    def cautions(self) -> tuple[str, ...]:
        """The hazards of this plan, as keys of safety.HAZARDS."""
        found = dict.fromkeys(("stored charge", "mains"))
        for item in self.all_items:
            found.update(dict.fromkeys(item.cautions))
        for item in self.all_items:
            found.update(dict.fromkeys(hazards_there(item.old.places)))
        found.update(dict.fromkeys(("heat and fire", "fumes and flux", "lead")))
        return tuple(found)

    @cached_property
    def steps(self) -> list[Step]:
        """The items to replace, in steps of the fitting order (see ORDER_RULE)."""
        return in_steps(self.items, self.board)

    @cached_property
    def checklist(self) -> list[Item]:
        """The items to replace, one after the other as they are fitted."""
        return [item for step in self.steps for item in step.items]

    def explain(self, reference: str) -> str:
        """What happens to one reference, with the rules behind it, as lines of text.

        Raises RepairlibError when the list does not name it.

        >>> print(plan("C1,50/15,elect").explain("C1"))
        C1 (line 1): replace by 47 µF 16 V 105 °C polar aluminium
           made value: 50 µF is no longer made: 47 µF is 6.0 % less, within ±20 %
           voltage not below: 15 V is no standard rating today: 16 V
           105 °C: a 105 °C part, whatever the old one was
           polarity kept: polar, plus where the old plus was
        """
        items = [item for item in self.all_items if item.reference == reference]
        if not items:
            raise RepairlibError(reference, "not in this list", "a reference of the list")
        lines = []
        for item in items:
            lines.append(repr(item))
            lines += [f"   {name}: {did}" for name, did in item.new.rules] if item.new else []
            if item.selection is not None:
                lines += [f"   catalogue: {said}" for said in item.selection.explained()]
            if item.measured is not None:
                lines.append(f"   measured: {item.measured.readings}")
                if item.measured.why not in item.why:
                    lines.append(f"   {item.measured}")
            lines += [f"   look: {look}" for look in item.looks]
        return "\n".join(fill(line, 88, subsequent_indent="      ") for line in lines)

    def source(self, item: Item) -> str:
        """The text of the line that names the item."""
        return self.list.text_of(item.line)

    def counts(self) -> dict[str, int]:
        """How many references have each verdict, and how many lines were read as what.

        The lines add up to the lines of the list.
        """
        lines = {"lines": len(self.list.lines), **self.list.lines_as()}
        stay = {"may stay": len(self.may_stay)} if self.measured is not None else {}
        return {
            "replace": len(self.items),
            "judge": len(self.judged),
            "keep": len(self.kept),
            "hold": len(self.held),
            **stay,
            **lines,
        }

    def __str__(self) -> str:
        measured = f"{len(self.may_stay)} may stay as measured, " if self.may_stay else ""
        return (
            f"{self.name}: {len(self.items)} to replace, {measured}{len(self.judged)} to judge, "
            f"{len(self.kept)} stay, {len(self.held)} on hold, "
            f"{len(self.unreadable)} of {len(self.list.lines)} lines unreadable"
        )

    __repr__ = __str__

    def rows(self) -> list[Row]:
        """One dict of texts for each reference: first those to replace, in fitting order."""
        others = self.may_stay + self.held + self.judged + self.kept
        currency = self.catalogue.currency if self.catalogue is not None else ""
        return rows_of(self.steps, others, self.source, currency)

    def table(self):
        """The plan as a pandas table, one row for each reference."""
        import pandas

        return pandas.DataFrame(self.rows(), columns=COLUMNS)

    def to_csv(self, path, overwrite: bool = False):
        """Write the plan as CSV; see export.write_csv."""
        return write_csv(self.rows(), path, overwrite)

    def _look_around(self, everything: list[Item]) -> None:
        """Set each item beside the board and the measured values."""
        selector = selector_of(self.catalogue) if self.catalogue is not None else None
        if self.board is not None:
            for item in everything:
                place = None if item.unit else self.board.get(item.reference)
                look_at_board(item, place, selector)
        if self.measured is not None:
            parts = self.measured.by_reference()
            for item in everything:
                if item.unit and item.reference in parts:
                    item.notes = (*item.notes, "measured: on which board?")
                elif item.reference in parts:
                    judgement = judge_measured(item.old, parts[item.reference])
                    look_at_measurement(item, judgement)

    def _order_parts(self) -> Order:
        """Choose the parts for all boards, and order them.

        What may stay on one measured board is bought for the others, which nobody measured.
        """
        others = self.boards - 1
        if self.measured is None or not others:
            return together([self], [self.boards], [""], self.catalogue)
        unmeasured = Plan(self.list, self.board, catalogue=self.catalogue, alone=False)
        names = ["the measured board", "the other board" if others == 1 else f"the other {others}"]
        notes = (one_measured(others),)
        return together([self, unmeasured], [1, others], names, self.catalogue, notes)

    def _all_items(self) -> list[Item]:
        read = self.list
        decisions = rules.decide_all(read.capacitors)
        items = list(map(Item, read.references, read.part_lines, read.capacitors, decisions))
        for index, doubt in read.doubts.items():
            items[index].hold(doubt)
        if len(set(read.references)) == len(items):
            return items
        if len(set(read.boards)) > 1:
            tell_boards(items, read.boards)
        return self._without_duplicates(items)

    def _without_duplicates(self, items: list[Item]) -> list[Item]:
        """The items with agreeing duplicates merged and others held."""
        by_reference: dict[tuple[str, str], list[Item]] = {}
        for item in items:
            by_reference.setdefault((item.unit, item.reference), []).append(item)
        for (_, reference), group in list(by_reference.items()):
            if len(group) == 1:
                continue
            first = group[0]
            same = all(
                item.old.says_the_same(first.old) and item.why == first.why for item in group
            )
            duplicate = Duplicate(reference, tuple(item.line for item in group), same)
            self.duplicates.append(duplicate)
            told = str(duplicate)
            if same:
                first.notes = (*first.notes, told)
                by_reference[first.unit, reference] = [first]
            else:
                for item in group:
                    item.hold(told)
        return [item for group in by_reference.values() for item in group]


def together(
    plans: list[Plan],
    boards: list[int],
    names: list[str],
    catalogue: Catalogue | None,
    notes: tuple[str, ...] = (),
) -> Order:
    """One order for several plans: the parts are chosen for all of them, and each gets the order.

    `boards` is how many there are of each, `names` what each is called in the order.
    """
    named = list(zip(names, plans, boards, strict=True))
    wanted = [Lot(name, tuple(one.items), many) for name, one, many in named]
    groups = choose_parts(wanted, catalogue)
    # The order of fitting follows the heights of the parts that were chosen just now.
    lots = tuple(Lot(name, tuple(one.checklist), many) for name, one, many in named)
    order = order_of(groups, lots, catalogue, notes)
    for one in plans:
        one.order = order
    return order


def plan(
    text: str,
    board: Board | None = None,
    name: str = "the list",
    measured: MeasuredTable | None = None,
    catalogue: Catalogue | None = None,
    boards: int = 1,
) -> Plan:
    """The recap plan of a parts list given as text.

    `board` adds where each part sits, what fits there and which way round; `measured` what was
    measured on the old parts; `catalogue` what can be bought; `boards` how many there are, 1 to
    1000. Raises RepairlibError when the text is no list at all (see parts.read_parts).

    >>> made = plan("Ref,Value,Type\\nC1-C2,10/16,elect\\nC3,.1,film\\n")
    >>> print(made)
    the list: 2 to replace, 0 to judge, 1 stay, 0 on hold, 0 of 3 lines unreadable
    >>> made.items[0]
    C1 (line 2): replace by 10 µF 16 V 105 °C polar aluminium
    """
    return Plan(read_parts(text, name), board, measured, catalogue, boards)


def plan_file(
    path,
    board: Board | None = None,
    measured: MeasuredTable | None = None,
    catalogue: Catalogue | None = None,
    boards: int = 1,
    alone: bool = True,
) -> Plan:
    """The recap plan of a parts list in a file: CSV, TSV or plain text (see textfile.read_text).

    `alone` is False where its parts are ordered with those of other plans (see several.py).
    """
    file = read_text(path)
    parts_list = read_parts(file.text, Path(path).name, from_file=True)
    if file.note:
        parts_list.notes.insert(0, f"The file was {file.note}.")
    return Plan(parts_list, board, measured, catalogue, boards, alone)
