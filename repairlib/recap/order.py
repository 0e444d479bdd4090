"""What to buy for one board, for many alike, and for several different ones, in one order.

Which part is taken for how many places is decided in basket.py and choice.py.
"""

from __future__ import annotations

from bisect import bisect
from collections.abc import Iterable
from decimal import Decimal
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.core.wording import counted
from repairlib.health import LOW_IMPEDANCE
from repairlib.recap.basket import Group, Wanted, groups_of
from repairlib.recap.catalogue import Catalogue
from repairlib.recap.choice import SPARES_RULE, spares_for
from repairlib.recap.export import Saved, write_csv
from repairlib.recap.item import Item
from repairlib.recap.offers import money
from repairlib.recap.order_line import OrderLine, Use, named

MOST_BOARDS = 1000
LOWER_ESR = (
    "low-impedance parts where the list does not ask for them. Most places take them; where a "
    "regulator is near, read in its data sheet whether it needs ESR"
)
ORDER_COLUMNS = (
    "part",
    "what",
    "places",
    "needed",
    "spares",
    "spares left out",
    "bought",
    "bought as",
    "cost",
    "currency",
    "left over",
    "expected life",
    "why",
)


class Lot(NamedTuple):
    """Boards of an order that have one plan in common: its `items` as they are fitted, how many.

    `name` says which boards they are; "" where the order has no others.
    """

    name: str
    items: tuple[Item, ...]
    boards: int


class Order:
    """The lines of an order for `boards` boards, what they come to, and in which `currency`.

    `priced` says whether there was a catalogue with a part for any line. `names` are the boards of
    the order where it has different ones.
    """

    def __init__(
        self, lines: list[OrderLine], lots: tuple[Lot, ...], currency: str, notes: tuple[str, ...]
    ):
        self.lines = tuple(lines)
        self.boards = sum(lot.boards for lot in lots)
        self.names = tuple(lot.name for lot in lots if lot.name)
        self.currency = currency
        self.notes = notes

    @property
    def priced(self) -> bool:
        return any(line.part for line in self.lines)

    @property
    def fitted_cost(self) -> Decimal:
        """What the parts that are fitted on all boards cost, without spares and what is left."""
        return sum((line.fitted_cost or Decimal(0) for line in self.lines), Decimal(0))

    @property
    def for_one_board(self) -> Decimal:
        """What the parts that are fitted on one board cost, on an average of the boards."""
        return self.fitted_cost / self.boards

    @property
    def for_all(self) -> Decimal:
        """What everything that is bought costs: all boards, spares, what packs leave over."""
        return sum((line.cost or Decimal(0) for line in self.lines), Decimal(0))

    @property
    def not_found(self) -> tuple[str, ...]:
        """Places for which the catalogue has no part; no price is in the sums for them."""
        return tuple(line.goes_to for line in self.lines if line.part is None)

    def money(self, amount: Decimal | None) -> str:
        """An amount with its currency; "" for None."""
        return "" if amount is None else money(amount, self.currency)

    def __str__(self) -> str:
        pieces = sum(line.pieces for line in self.lines)
        boards, kinds = counted(self.boards, "board"), counted(len(self.lines), "kind")
        said = f"{pieces} pieces of {kinds} for {boards}, spares among them"
        if not self.priced:
            return said
        said = f"{said}: {self.money(self.for_all)} in all"
        if self.boards > 1:
            said += f", {self.money(self.for_all / self.boards)} a board"
        said += f"; the parts fitted alone {self.money(self.fitted_cost)}"
        if self.not_found:
            said += f"; without what is not in the catalogue: {'; '.join(self.not_found)}"
        return said if self.currency else f"{said}; no currency stated in the catalogue"

    def rows(self) -> list[dict[str, str | int]]:
        """One dict of texts and numbers for each line, by ORDER_COLUMNS."""
        return [self._row(line) for line in self.lines]

    def to_csv(self, path, overwrite: bool = False) -> Saved:
        """Write the lines of the order as CSV; see export.write_csv."""
        return write_csv(self.rows(), path, overwrite, ORDER_COLUMNS)

    def to_dict(self) -> dict:
        """The order as JSON-able dicts, lists, texts and numbers; prices as text, exactly."""
        return {
            "boards": self.boards,
            "board names": list(self.names),
            "spares rule": SPARES_RULE,
            "currency": (self.currency or None) if self.priced else None,
            "for one board": str(self.for_one_board) if self.priced else None,
            "for all": str(self.for_all) if self.priced else None,
            "not found": list(self.not_found),
            "notes": list(self.notes),
            "lines": [self._told(line) for line in self.lines],
        }

    def _row(self, line: OrderLine) -> dict[str, str | int]:
        values = (
            line.part.part if line.part else "",
            line.what,
            line.goes_to,
            line.needed,
            line.spares,
            line.left_out,
            line.pieces,
            str(line.purchase or ""),
            "" if line.cost is None else str(line.cost),
            "" if line.cost is None else self.currency or "not stated",
            line.left_over,
            line.expected.life,
            "; ".join(line.reasons),
        )
        return dict(zip(ORDER_COLUMNS, values, strict=True))

    def _told(self, line: OrderLine) -> dict:
        return {
            "what": line.what,
            "part": line.part.part if line.part else None,
            "places": list(line.places),
            "boards": [
                {"name": use.name, "boards": use.boards, "places": list(use.places)}
                for use in line.uses
            ],
            "needed": line.needed,
            "spares": line.spares,
            "spares left out": line.left_out,
            "pieces": line.pieces,
            "bought as": None if line.purchase is None else str(line.purchase),
            "cost": None if line.cost is None else str(line.cost),
            "left over": line.left_over,
            "why": list(line.reasons),
        }


def choose_parts(lots: Iterable[Lot], catalogue: Catalogue | None) -> list[Group]:
    """Choose the part of each item for all boards together; the items then name it."""
    wanted = [Wanted(item, lot.boards) for lot in lots for item in lot.items]
    return groups_of(wanted, catalogue)


def order_of(
    groups: Iterable[Group],
    lots: tuple[Lot, ...],
    catalogue: Catalogue | None,
    notes: tuple[str, ...] = (),
) -> Order:
    """The order for these groups of places, its lines as their first places come in the lots.

    `lots` are in the order of fitting, which may hang on the parts chosen.
    """
    place_of: dict[int, int] = {}
    for lot in lots:
        for item in lot.items:
            place_of[id(item)] = len(place_of)
    ranked = sorted(groups, key=lambda group: min(place_of[id(one.item)] for one in group.wanted))
    lines = [_line(group, lots, place_of) for group in ranked]
    lower = {lot.name: [one.reference for one in lot.items if _lowers_esr(one)] for lot in lots}
    said = "; ".join(named(name, places) for name, places in lower.items() if places)
    if said:
        notes = (*notes, f"{said}: {LOWER_ESR}.")
    return Order(lines, lots, catalogue.currency if catalogue else "", notes)


def one_measured(others: int) -> str:
    """What to know before an order for one measured board and `others` that nobody measured."""
    rest, them = ("The other was", "it") if others == 1 else (f"The other {others} were", "them")
    return (
        f"One board was measured. {rest} not: what may stay on the measured one is ordered for "
        f"{them}. Measure each board to order less."
    )


def check_boards(boards: int) -> int:
    """`boards`, or RepairlibError when it is not a number from 1 to 1000."""
    if not isinstance(boards, int) or not 1 <= boards <= MOST_BOARDS:
        accepted = f"a whole number from 1 to {MOST_BOARDS}"
        raise RepairlibError(boards, "not a number of boards", accepted)
    return boards


def _line(group: Group, lots: tuple[Lot, ...], place_of: dict[int, int]) -> OrderLine:
    ordered = sorted((place_of[id(one.item)], one.item.reference) for one in group.wanted)
    uses, first_of_next = [], 0
    for lot in lots:
        first, first_of_next = first_of_next, first_of_next + len(lot.items)
        low, high = bisect(ordered, (first,)), bisect(ordered, (first_of_next,))
        if low < high:
            places = tuple(reference for _, reference in ordered[low:high])
            uses.append(Use(lot.name, lot.boards, places))
    first = group.wanted[0].item
    spares, taken = spares_for(group.needed), group.taken
    return OrderLine(
        str(first.new),
        taken.part if taken else None,
        tuple(uses),
        group.needed,
        taken.spares if taken else spares,
        spares - taken.spares if taken else 0,
        taken.purchase if taken else None,
        first.expected,
        group.selection.dearer if group.selection else "",
    )


def _lowers_esr(item: Item) -> bool:
    part = item.selection.part if item.selection else None
    return part is not None and part.family == LOW_IMPEDANCE and not item.low_impedance
