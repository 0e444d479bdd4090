"""One reference of a plan: the verdict, the new part, where its plus goes, what to look at."""

from __future__ import annotations

from dataclasses import dataclass

from repairlib.core.errors import shown
from repairlib.core.quantity import engineering
from repairlib.recap import rules
from repairlib.recap.board import Position
from repairlib.recap.capacitor import Capacitor
from repairlib.recap.choice import Selection
from repairlib.recap.expectation import Expectation, expected_of_part, expected_of_proposal
from repairlib.recap.measurements import MAY_STAY, MUST_GO, Judgement
from repairlib.recap.old_kinds import dielectric
from repairlib.recap.rules import HOLD, JUDGE, KEEP, REPLACE, STAY, Decision, Proposal
from repairlib.recap.selection import Selector
from repairlib.recap.sizes import fit
from repairlib.recap.words import BIPOLAR, FILM, MAINS, PAPER

LEAVE_IT = "above 60 V dc or on the mains, leave it to a qualified person"


@dataclass(eq=False, slots=True)
class Item:
    """One reference of the plan: its line in the list, the verdict, why, and the new part.

    `line` is its line in the list, `old` what that line says. `verdict` is "replace", "keep",
    "judge", "hold" or "may stay"; `new` is the Proposal or None; `place` is the Position on the
    board, `measured` what was measured on it, `selection` its part of a catalogue; None where not
    known. `unit` is the sub-board, where several have such a reference.
    """

    reference: str
    line: int
    old: Capacitor
    decision: Decision
    notes: tuple[str, ...] = ()
    place: Position | None = None
    measured: Judgement | None = None
    selection: Selection | None = None
    unit: str = ""

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
    def low_impedance(self) -> bool:
        """Whether the list, or the place, asks for a low-impedance type."""
        return self.old.low_impedance

    @property
    def expected(self) -> Expectation | None:
        """What to expect of the new part; None where nothing is to be fitted."""
        if self.new is None:
            return None
        if self.selection is not None and self.selection.part is not None:
            return expected_of_part(self.selection.part)
        return expected_of_proposal(self.new, self.low_impedance)

    @property
    def looks(self) -> tuple[str, ...]:
        """What to look at before ordering or fitting."""
        said = self.decision.looks + self.decision.at_place + self.notes
        return said + self._looks_at_part()

    @property
    def reason(self) -> str:
        """Why it has its verdict; of a part that waits, first that it is not yours to touch."""
        handed_on = "mains" in self.cautions and self.verdict in (JUDGE, HOLD)
        return f"{LEAVE_IT}: {self.why}" if handed_on else self.why

    @property
    def told(self) -> str:
        """The reason and what to look at."""
        return "; ".join((self.reason, *self.looks))

    @property
    def cautions(self) -> tuple[str, ...]:
        """Hazards of this part, as keys of safety.HAZARDS."""
        return self.decision.cautions

    @property
    def handed_on(self) -> bool:
        """Whether it is left to a qualified person, and not worked on at this bench."""
        return bool(self.cautions)

    @property
    def polarity(self) -> str:
        """Where the plus goes, in words that a person at the bench can follow."""
        if self.new is None:
            return ""
        if not self.new.polar:
            return "no plus"
        if self.place is not None and self.place.plus not in ("", "none"):
            return self.place.where_plus
        return "plus as the old part: note it before you remove it"

    def _looks_at_part(self) -> tuple[str, ...]:
        """What to know of the catalogue part; where there is none, why, and what may be done."""
        if self.selection is None:
            return ()
        part = self.selection.part
        if part is None:
            makeshift = "substitute_capacitor" if self.new.polar else "back_to_back"
            other = () if self.new.kind == FILM else (f"for a makeshift see calc {makeshift}",)
            return (self.selection.why, *other)
        looks = []
        if not (self.new.form or (self.place and self.place.form)):
            looks.append(f"no build stated: {part.part} is {part.mounting}, look first")
        if part.diameter and part.length:
            looks.append(f"{part.part} is {part.diameter:g} × {part.length:g} mm")
        return tuple(looks)

    def hold(self, why: str) -> None:
        """Make the item wait, because of `why`."""
        self.decision = rules.hold(self.old, why)

    def __repr__(self) -> str:
        return f"{self.reference} (line {self.line}): {self.verdict}" + (
            f" by {self.new}" if self.new else f". {self.why[:1].upper()}{self.why[1:]}"
        )


SHOWN_LINES = 8  # of those that name one reference


@dataclass(eq=False, slots=True)
class Duplicate:
    """A reference that the list names more than once: the lines, and whether they agree."""

    reference: str
    lines: tuple[int, ...]
    same: bool

    def __str__(self) -> str:
        shown = [str(line) for line in self.lines[:SHOWN_LINES]]
        left = len(self.lines) - len(shown)
        where = " and ".join([*shown, f"{left} more"] if left else shown)
        told = "they differ, so both are held"
        if self.same:
            told = "the same, planned once (two boards? plan each one alone)"
        return f"{self.reference} stands on lines {where}: {told}"


def tell_boards(items: list[Item], boards: list[str]) -> None:
    """Keep equal references apart where titles above them name different sub-boards."""
    on: dict[str, set[str]] = {}
    for item, board in zip(items, boards, strict=True):
        on.setdefault(item.reference, set()).add(board)
    for item, board in zip(items, boards, strict=True):
        if len(on[item.reference]) > 1:
            item.unit = board or "the board without a title"
            item.notes = (*item.notes, f"this is {item.reference} of {item.unit}")


def look_at_board(item: Item, place: Position | None, selector: Selector | None = None) -> None:
    """Hold the item where the board contradicts the list or has no room for the new part.

    A usual can that is too large holds nothing when the catalogue has one that fits.
    """
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
        item.notes = (
            *item.notes,
            f"the board marks a plus ({place.where_plus}): check the old part",
        )
    if item.new is None:
        return
    if selector is not None and selector.fitting(item.new, place, item.low_impedance).able:
        return  # its own size was looked at
    form = item.old.form or place.form
    can = item.new.can if form != "axial" else None
    fits, sentence = fit(can, place)
    if fits is False:
        size = f"{engineering(item.new.farad, 'F')} {engineering(item.new.volts, 'V')}"
        item.hold(f"{size} is {sentence}: find a smaller part in a data sheet")
    else:
        item.notes = (*item.notes, sentence)


def look_at_measurement(item: Item, measured: Judgement) -> None:
    """Let what was measured and seen decide where it can.

    A part as new may stay, a worn or a damaged one must go; any other remark is a look.
    """
    item.measured = measured
    leaks = item.old.kind == PAPER  # which no reading of capacitance and ESR shows
    if item.verdict in (REPLACE, JUDGE) and measured.stand == MAY_STAY and not leaks:
        cautions = item.cautions
        item.decision = Decision(item.old, STAY, "measured as new", measured.why, cautions=cautions)
        item.notes = ()  # they are about the new part
    elif item.verdict in (KEEP, JUDGE) and measured.stand == MUST_GO:
        film = dielectric(item.old.text) if item.old.kind == FILM else ""
        kind = f"{film} again, no other film, of the same" if film else "the same kind,"
        why = f"measured: {measured}. Fit {kind} value and rating"
        if item.old.kind in (PAPER, MAINS):
            why = f"measured: {measured}. {item.decision.why}"
        cautions = item.cautions
        item.decision = Decision(item.old, JUDGE, "measured as worn", why, cautions=cautions)
    elif item.verdict in (REPLACE, JUDGE, HOLD):
        item.notes = (*item.notes, f"measured, {measured.stand}")
    if measured.remark and measured.remark not in measured.why:
        item.notes = (*item.notes, f"remark: {shown(measured.remark)}")
