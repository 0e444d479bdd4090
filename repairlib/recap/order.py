"""What to buy: parts for one board and for a class of boards, with spares and whole packs."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from typing import NamedTuple

from repairlib.core.errors import RepairlibError
from repairlib.health import LOW_IMPEDANCE
from repairlib.recap.catalogue import CataloguePart
from repairlib.recap.expectation import Expectation
from repairlib.recap.item import Item

MOST_BOARDS = 1000
SPARES_RULE = "One spare for each ten of a kind, rounded up, at least one (common practice)."
ONE_MEASURED = (
    "One board was measured. Parts that may stay there are not ordered for the other boards: "
    "measure each."
)
LOWER_ESR = (
    "low-impedance parts where the list does not ask for them. Most places take them; where a "
    "regulator is near, read in its data sheet whether it needs ESR"
)


class OrderLine(NamedTuple):
    """One kind of part: what it is, the places of one board, and what to buy for all boards.

    `part` is None, and the prices too, where no catalogue part was chosen. `needed` counts all
    boards, `spares` come on top, `pieces` are whole packs.
    """

    what: str
    part: CataloguePart | None
    places: tuple[str, ...]
    needed: int
    spares: int
    expected: Expectation

    @property
    def packs(self) -> int | None:
        return None if self.part is None else -(-(self.needed + self.spares) // self.part.pack)

    @property
    def pieces(self) -> int:
        """How many come, in whole packs where the pack is known."""
        return self.needed + self.spares if self.packs is None else self.packs * self.part.pack

    @property
    def cost(self) -> Decimal | None:
        """Of all pieces."""
        return None if self.part is None else self.part.price * self.pieces

    @property
    def for_one_board(self) -> Decimal | None:
        """Of the parts that are fitted on one board."""
        return None if self.part is None else self.part.price * len(self.places)


class Order:
    """The lines of an order for `boards` boards, and what they come to."""

    def __init__(self, lines: list[OrderLine], boards: int, notes: tuple[str, ...]):
        self.lines = tuple(lines)
        self.boards = boards
        self.notes = notes

    @property
    def priced(self) -> bool:
        return any(line.part for line in self.lines)

    @property
    def for_one_board(self) -> Decimal:
        """Price of the parts that are fitted on one board, without spares and pack remainders."""
        return sum((line.for_one_board or Decimal(0) for line in self.lines), Decimal(0))

    @property
    def for_all(self) -> Decimal:
        """Price of everything that is bought: all boards, spares, whole packs."""
        return sum((line.cost or Decimal(0) for line in self.lines), Decimal(0))

    @property
    def not_found(self) -> tuple[str, ...]:
        """Places for which the catalogue has no part; no price is in the sums for them."""
        return tuple(place for line in self.lines if line.part is None for place in line.places)

    def __str__(self) -> str:
        pieces = sum(line.pieces for line in self.lines)
        boards = "1 board" if self.boards == 1 else f"{self.boards} boards"
        said = f"{pieces} pieces of {len(self.lines)} kinds for {boards}, spares among them"
        if not self.priced:
            return said
        each = money(self.for_all / self.boards)
        said = (
            f"{said}: {money(self.for_all)}, {each} a board; the parts fitted on one board alone "
            f"{money(self.for_one_board)}"
        )
        missing = len(self.not_found)
        return f"{said}; without the {missing} not in the catalogue" if missing else said

    def to_dict(self) -> dict:
        """The order as JSON-able dicts, lists, texts and numbers; prices as text, exactly."""
        return {
            "boards": self.boards,
            "spares rule": SPARES_RULE,
            "for one board": str(self.for_one_board) if self.priced else None,
            "for all": str(self.for_all) if self.priced else None,
            "not found": list(self.not_found),
            "notes": list(self.notes),
            "lines": [
                {
                    "what": line.what,
                    "part": line.part.part if line.part else None,
                    "places": list(line.places),
                    "needed": line.needed,
                    "spares": line.spares,
                    "packs": line.packs,
                    "pieces": line.pieces,
                    "cost": None if line.cost is None else str(line.cost),
                }
                for line in self.lines
            ],
        }


def order_of(items: list[Item], boards: int = 1, notes: tuple[str, ...] = ()) -> Order:
    """What to buy for these items on each of `boards` boards (see SPARES_RULE).

    Raises RepairlibError when `boards` is not a number from 1 to 1000.
    """
    check_boards(boards)
    kinds: dict[tuple, list[Item]] = {}
    for item in items:
        part = item.selection.part if item.selection else None
        kinds.setdefault((part.part if part else "", str(item.new)), []).append(item)
    lines = [_line(group, boards) for group in kinds.values()]
    lower = [item.reference for item in items if _lowers_esr(item)]
    if lower:
        notes = (*notes, f"{', '.join(lower)}: {LOWER_ESR}.")
    return Order(lines, boards, notes)


def check_boards(boards: int) -> int:
    """`boards`, or RepairlibError when it is not a number from 1 to 1000."""
    if not isinstance(boards, int) or not 1 <= boards <= MOST_BOARDS:
        accepted = f"a whole number from 1 to {MOST_BOARDS}"
        raise RepairlibError(boards, "not a number of boards", accepted)
    return boards


def spares_for(needed: int) -> int:
    """One for each ten, rounded up.

    >>> spares_for(1), spares_for(10), spares_for(11)
    (1, 1, 2)
    """
    return -(-needed // 10)


def money(amount: Decimal) -> Decimal:
    """An amount to two places, half a cent up.

    >>> money(Decimal("0.385"))
    Decimal('0.39')
    """
    return amount.quantize(Decimal("0.01"), ROUND_HALF_UP)


def _line(group: list[Item], boards: int) -> OrderLine:
    first = group[0]
    part = first.selection.part if first.selection else None
    needed = len(group) * boards
    places = tuple(item.reference for item in group)
    return OrderLine(str(first.new), part, places, needed, spares_for(needed), first.expected)


def _lowers_esr(item: Item) -> bool:
    part = item.selection.part if item.selection else None
    return part is not None and part.family == LOW_IMPEDANCE and not item.low_impedance
