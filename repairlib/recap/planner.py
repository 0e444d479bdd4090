"""The plan of a recap: what to replace by what, what stays, what waits, in the order of fitting.

Every reference of the list is in exactly one of the plan's lists, with its source line.
"""

from __future__ import annotations

from functools import cached_property
from pathlib import Path
from textwrap import fill

from repairlib.errors import RepairlibError
from repairlib.recap import rules
from repairlib.recap.board import Board
from repairlib.recap.fitting_order import Step, in_steps
from repairlib.recap.item import Duplicate, Item, look_at_board
from repairlib.recap.parts import UNREADABLE, PartsList, SetAside, read_parts
from repairlib.recap.rules import HOLD, JUDGE, KEEP, REPLACE
from repairlib.recap.textfile import read_text


class Plan:
    """A recap plan. `items` are to be replaced; `judged`, `kept` and `held` are not (yet).

    `unreadable` are the lines without parts that could not be read; `duplicates` the references
    named twice; `not_listed` the places of the board that the list does not name.
    """

    def __init__(self, parts_list: PartsList, board: Board | None = None):
        self.list = parts_list
        self.board = board
        self.duplicates: list[Duplicate] = []
        everything = self._all_items()
        if board is not None:
            for item in everything:
                look_at_board(item, board.get(item.reference))
        by_verdict: dict[str, list[Item]] = {REPLACE: [], KEEP: [], JUDGE: [], HOLD: []}
        for item in everything:
            by_verdict[item.decision.verdict].append(item)
        self.items = by_verdict[REPLACE]
        self.kept = by_verdict[KEEP]
        self.judged = by_verdict[JUDGE]
        self.held = by_verdict[HOLD]

    @property
    def name(self) -> str:
        return self.list.name

    @property
    def unreadable(self) -> list[SetAside]:
        return [line for line in self.list.set_aside if line.what == UNREADABLE]

    @property
    def all_items(self) -> list[Item]:
        """Every reference of the list, by its line."""
        together = self.items + self.judged + self.kept + self.held
        return sorted(together, key=lambda item: item.line)

    @property
    def not_listed(self) -> list[str]:
        """The places of the board that no line of the list names."""
        if self.board is None:
            return []
        named = set(self.list.references)
        return [p.reference for p in self.board.positions if p.reference not in named]

    @property
    def cautions(self) -> tuple[str, ...]:
        """The hazards of this plan, as keys of safety.HAZARDS."""
        found = dict.fromkeys(("stored charge", "mains"))
        for item in self.items + self.judged:
            found.update(dict.fromkeys(item.cautions))
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
            lines += [f"   look: {look}" for look in item.looks]
        return "\n".join(fill(line, 88, subsequent_indent="      ") for line in lines)

    def source(self, item: Item) -> str:
        """The text of the line that names the item."""
        return self.list.text_of(item.line)

    def counts(self) -> dict[str, int]:
        """How many references have each verdict, and how many lines were read as what.

        The lines add up to the lines of the list.
        """
        lines = {
            "lines": len(self.list.lines),
            "lines with parts": len(self.list.lines_with_parts()),
        }
        for line in self.list.set_aside:
            lines[line.what] = lines.get(line.what, 0) + 1
        return {
            "replace": len(self.items),
            "judge": len(self.judged),
            "keep": len(self.kept),
            "hold": len(self.held),
        } | lines

    def __str__(self) -> str:
        return (
            f"{self.name}: {len(self.items)} to replace, {len(self.judged)} to judge, "
            f"{len(self.kept)} stay, {len(self.held)} on hold, "
            f"{len(self.unreadable)} of {len(self.list.lines)} lines unreadable"
        )

    __repr__ = __str__

    def rows(self) -> list[dict[str, str | int]]:
        """One dict of texts for each reference: first those to replace, in fitting order."""
        rows = [_row(self, item, step.title) for step in self.steps for item in step.items]
        return rows + [_row(self, item) for item in self.held + self.judged + self.kept]

    def table(self):
        """The plan as a pandas table, one row for each reference."""
        import pandas

        return pandas.DataFrame(self.rows(), columns=COLUMNS)

    def to_csv(self, path, overwrite: bool = False):
        """Write the plan as CSV; see export.write_csv."""
        from repairlib.recap.export import write_csv

        return write_csv(self, path, overwrite)

    def _all_items(self) -> list[Item]:
        read = self.list
        decisions = map(rules.decide, read.capacitors)
        items = list(map(Item, read.references, read.part_lines, read.capacitors, decisions))
        for index, doubt in read.doubts.items():
            items[index].hold(doubt)
        if len(set(read.references)) == len(items):
            return items
        return self._without_duplicates(items)

    def _without_duplicates(self, items: list[Item]) -> list[Item]:
        """The items with agreeing duplicates merged and others held."""
        by_reference: dict[str, list[Item]] = {}
        for item in items:
            by_reference.setdefault(item.reference, []).append(item)
        for reference, group in by_reference.items():
            if len(group) == 1:
                continue
            first = group[0]
            same = all(
                item.old.says_the_same(first.old) and item.why == first.why for item in group
            )
            duplicate = Duplicate(reference, tuple(item.line for item in group), same)
            self.duplicates.append(duplicate)
            if same:
                first.notes = (*first.notes, str(duplicate))
                by_reference[reference] = [first]
            else:
                for item in group:
                    item.hold(str(duplicate))
        return [item for group in by_reference.values() for item in group]


COLUMNS = (
    "reference",
    "verdict",
    "old part",
    "new part",
    "polarity",
    "step",
    "why",
    "rules",
    "notes",
    "line",
    "source text",
)


def _row(plan: Plan, item: Item, step: str = "") -> dict[str, str | int]:
    made_by = "; ".join(f"{name}: {did}" for name, did in item.new.rules) if item.new else ""
    values = (
        item.reference,
        item.verdict,
        item.old.text,
        str(item.new) if item.new else "",
        item.polarity,
        step,
        item.why,
        made_by,
        "; ".join(item.looks),
        item.line,
        plan.source(item),
    )
    return dict(zip(COLUMNS, values, strict=True))


def plan(text: str, board: Board | None = None, name: str = "the list") -> Plan:
    """The recap plan of a parts list given as text.

    `board` adds where each part sits, what fits there and which way round. Raises RepairlibError
    when the text is no list at all (see parts.read_parts).

    >>> made = plan("Ref,Value,Type\\nC1-C2,10/16,elect\\nC3,.1,film\\n")
    >>> print(made)
    the list: 2 to replace, 0 to judge, 1 stay, 0 on hold, 0 of 3 lines unreadable
    >>> made.items[0]
    C1 (line 2): replace by 10 µF 16 V 105 °C polar aluminium
    """
    return Plan(read_parts(text, name), board)


def plan_file(path, board: Board | None = None) -> Plan:
    """The recap plan of a parts list in a file: CSV, TSV or plain text (see textfile.read_text)."""
    file = read_text(path)
    parts_list = read_parts(file.text, Path(path).name, from_file=True)
    if file.note:
        parts_list.notes.insert(0, f"The file was {file.note}.")
    return Plan(parts_list, board)
