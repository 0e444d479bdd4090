"""One reference of a plan: the verdict, the new part, where its plus goes, what to look at."""

from __future__ import annotations

from repairlib.quantity import engineering
from repairlib.recap import rules
from repairlib.recap.board import Position
from repairlib.recap.ratings import Capacitor
from repairlib.recap.rules import Decision, Proposal
from repairlib.recap.sizes import fit
from repairlib.recap.words import BIPOLAR


class Item:
    """One reference of the plan: its line in the list, the verdict, why, and the new part.

    `line` is its line in the list, `old` what that line says. `verdict` is "replace", "keep",
    "judge" or "hold"; `new` is the Proposal or None; `place` is the Position on the board, None
    where not known.
    """

    __slots__ = ("decision", "line", "notes", "old", "place", "reference")

    def __init__(self, reference: str, line: int, old: Capacitor, decision: Decision):
        self.reference = reference
        self.line = line
        self.old = old
        self.decision = decision
        self.notes: tuple[str, ...] = ()
        self.place: Position | None = None

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
            return "no plus"
        if self.place is not None and self.place.plus not in ("", "none"):
            return f"plus {self.place.plus}"
        return "plus as the old part: note it before you remove it"

    def hold(self, why: str) -> None:
        """Make the item wait, because of `why`."""
        self.decision = rules.hold(self.old, why)

    def __repr__(self) -> str:
        return f"{self.reference} (line {self.line}): {self.verdict}" + (
            f" by {self.new}" if self.new else f". {self.why[:1].upper()}{self.why[1:]}"
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
        told = "they differ, so both are held"
        if self.same:
            told = "the same, planned once (two boards? plan each one alone)"
        return f"{self.reference} stands on lines {where}: {told}"


def look_at_board(item: Item, place: Position | None) -> None:
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
