"""The plan of a recap: what to replace by what, what stays, what waits, in the order of fitting.

Every reference of the list is in exactly one of the plan's lists, with its source line.
"""

from __future__ import annotations

from functools import cached_property

from repairlib.quantity import engineering
from repairlib.recap import rules
from repairlib.recap.board import Board, Position
from repairlib.recap.parts import UNREADABLE, Part, PartsList, SetAside, read_parts
from repairlib.recap.ratings import Capacitor
from repairlib.recap.references import in_natural_order
from repairlib.recap.rules import HOLD, JUDGE, KEEP, REPLACE, Decision, Proposal
from repairlib.recap.sizes import fit
from repairlib.recap.textfile import read_text
from repairlib.recap.words import BIPOLAR

LOW_PROFILE_MM = 13.0
ORDER_RULE = (
    "Power supply first, so that its rails can be tested before the rest; then the other areas as "
    "the board lists them. In each area low parts before high ones; in each step from the top "
    "of the board down and from left to right (without a board: by number)."
)


class Item:
    """One reference of the plan: its line in the list, the verdict, why, and the new part.

    `verdict` is "replace", "keep", "judge" or "hold"; `new` is the Proposal or None; `place` is the
    Position on the board, None where not known.
    """

    __slots__ = ("decision", "notes", "part", "place")

    def __init__(self, part: Part, decision: Decision):
        self.part = part
        self.decision = decision
        self.notes: tuple[str, ...] = ()
        self.place: Position | None = None

    @property
    def reference(self) -> str:
        return self.part.reference

    @property
    def line(self) -> int:
        return self.part.line

    @property
    def old(self) -> Capacitor:
        """What the list says about the old part."""
        return self.part.capacitor

    @property
    def verdict(self) -> str:
        return self.decision.verdict

    @property
    def why(self) -> str:
        return self.decision.why

    @property
    def new(self) -> Proposal | None:
        return self.decision.proposal

    @property
    def looks(self) -> tuple[str, ...]:
        """What to look at before ordering or fitting."""
        return self.decision.looks + self.notes

    @property
    def cautions(self) -> tuple[str, ...]:
        """Hazards of this part, as keys of safety.HAZARDS."""
        return self.decision.cautions

    @property
    def polarity(self) -> str:
        """Where the plus goes, in words that a person at the bench can follow."""
        if self.new is None:
            return ""
        if not self.new.polar:
            return "bipolar: no plus"
        if self.place is not None and self.place.plus not in ("", "none"):
            return f"plus {self.place.plus}"
        return "plus as the old part: note it before you remove it"

    def hold(self, why: str) -> None:
        """Make the item wait, because of `why`."""
        self.decision = rules.hold(self.old, why)

    def __repr__(self) -> str:
        return f"{self.reference} (line {self.line}): {self.verdict}" + (
            f" by {self.new}" if self.new else f", {self.why}"
        )


class Duplicate:
    """A reference that the list names more than once: the lines, and whether they agree."""

    __slots__ = ("lines", "reference", "same")

    def __init__(self, reference: str, lines: tuple[int, ...], same: bool):
        self.reference = reference
        self.lines = lines
        self.same = same

    def __str__(self) -> str:
        where = " and ".join(str(line) for line in self.lines)
        told = "the same, planned once" if self.same else "they differ, both held"
        return f"{self.reference} stands on lines {where}: {told}"


class Step:
    """A step of the fitting order: its title and its items in board order."""

    __slots__ = ("items", "title")

    def __init__(self, title: str, items: list[Item]):
        self.title = title
        self.items = items


class Plan:
    """A recap plan. `items` are to be replaced; `judged`, `kept` and `held` are not (yet).

    `unreadable` are the lines without parts that could not be read; `duplicates` the references
    named twice; `not_listed` the places of the board that the list does not name.
    """

    def __init__(self, parts_list: PartsList, board: Board | None = None):
        self.list = parts_list
        self.board = board
        self.duplicates: list[Duplicate] = []
        everything = self._all_items(parts_list.parts)
        if board is not None:
            for item in everything:
                _look_at_board(item, board.get(item.reference))
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
        named = {part.reference for part in self.list.parts}
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
        areas = _areas_in_order(self.board)
        steps: dict[tuple[int, bool], list[Item]] = {}
        for item in self.items:
            area = item.place.area if item.place is not None else ""
            steps.setdefault((areas.get(area, len(areas)), _is_high(item)), []).append(item)
        names = {rank: area for area, rank in areas.items()}
        return [
            Step(_title(names.get(rank, ""), high), sorted(steps[rank, high], key=_board_order))
            for rank, high in sorted(steps)
        ]

    @cached_property
    def checklist(self) -> list[Item]:
        """The items to replace, one after the other as they are fitted."""
        return [item for step in self.steps for item in step.items]

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
        rest = self.held + self.judged + self.kept
        return [_row(self, item) for item in self.checklist + rest]

    def table(self):
        """The plan as a pandas table, one row for each reference."""
        import pandas

        return pandas.DataFrame(self.rows(), columns=COLUMNS)

    def to_csv(self, path, overwrite: bool = False):
        """Write the plan as CSV; see export.write_csv."""
        from repairlib.recap.export import write_csv

        return write_csv(self, path, overwrite)

    def _all_items(self, parts: list[Part]) -> list[Item]:
        decide = rules.decide
        items = [Item(part, decide(part.capacitor)) for part in parts]
        for item in items:
            if item.part.doubt:
                item.hold(item.part.doubt)
        if len({part.reference for part in parts}) == len(parts):
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


def _row(plan: Plan, item: Item) -> dict[str, str | int]:
    step = next((step.title for step in plan.steps if item in step.items), "") if item.new else ""
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
    parts_list = read_parts(file.text, getattr(path, "name", None) or str(path), from_file=True)
    if file.note:
        parts_list.notes.insert(0, f"The file was {file.note}.")
    return Plan(parts_list, board)


def _look_at_board(item: Item, place: Position | None) -> None:
    """Hold the item where the board contradicts the list or has no room for the new part."""
    if place is None:
        if item.new is not None:
            item.notes = (*item.notes, "not among the board's places: look where it sits")
        return
    item.place = place
    if item.new is None:
        return
    if item.old.form and place.form and item.old.form != place.form:
        item.hold(f"the list says {item.old.form}, the board is made for {place.form}")
    elif item.new.polar and place.plus == "none":
        item.hold("the list says polar, the board shows a part without polarity: look at it")
    elif item.old.kind == BIPOLAR and place.plus not in ("", "none"):
        item.notes = (*item.notes, f"the board marks a plus ({place.plus}): check the old part")
    if item.new is None:
        return
    form = item.old.form or place.form
    can = item.new.can if form != "axial" else None
    fits, sentence = fit(can, place)
    if fits is False:
        size = f"{engineering(item.new.farad, 'F')} {engineering(item.new.volts, 'V')}"
        item.hold(f"{size} is {sentence}: find a smaller part in a data sheet")
    else:
        item.notes = (*item.notes, sentence)


def _areas_in_order(board: Board | None) -> dict[str, int]:
    areas = board.areas if board is not None else ()
    supply_first = sorted(areas, key=lambda area: not _is_supply(area))
    return {area: rank for rank, area in enumerate(supply_first)}


def _is_supply(area: str) -> bool:
    return "supply" in area.lower() or "psu" in area.lower().split()


def _is_high(item: Item) -> bool:
    """Whether the new part stands high, by its usual can or else by the room on the board."""
    can = item.new.can if item.old.form != "axial" else None
    room = item.place.max_height_mm if item.place is not None else None
    height = can.length if can is not None else room
    return height is not None and height > LOW_PROFILE_MM


def _title(area: str, high: bool) -> str:
    height = f"{'over' if high else 'up to'} {LOW_PROFILE_MM:g} mm high"
    return f"{area}, {height}" if area else height


def _board_order(item: Item) -> tuple:
    if item.place is None:
        return (1, 0.0, 0.0, in_natural_order(item.reference))
    return (0, item.place.y_mm, item.place.x_mm, in_natural_order(item.reference))
