"""One line of an order: a kind of part, where it goes, how it is bought, and why so."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from typing import NamedTuple

from repairlib.recap.catalogue import CataloguePart
from repairlib.recap.expectation import Expectation
from repairlib.recap.offers import Purchase

TELL_ABOVE = Decimal("1.2")  # times what is fitted: a line that buys more says why


class Use(NamedTuple):
    """Where one part goes: the boards by name, how many they are, the places on each of them."""

    name: str
    boards: int
    places: tuple[str, ...]


class OrderLine(NamedTuple):
    """One kind of part: what it is, where it goes, and what is bought for all boards.

    `part`, `purchase` and what it costs are None where no catalogue part was chosen. `needed`
    counts the places of all boards, `spares` come on top, `left_out` are the spares that would
    have opened another pack. `dearer` says why it is not the cheapest part.
    """

    what: str
    part: CataloguePart | None
    uses: tuple[Use, ...]
    needed: int
    spares: int
    left_out: int
    purchase: Purchase | None
    expected: Expectation
    dearer: str

    @property
    def places(self) -> tuple[str, ...]:
        """The places of a board, each once, whatever board it is on."""
        return tuple(dict.fromkeys(place for use in self.uses for place in use.places))

    @property
    def goes_to(self) -> str:
        """The places in words; boards with the same places are named together."""
        names: dict[tuple[str, ...], list[str]] = {}
        for use in self.uses:
            names.setdefault(use.places, []).append(use.name)
        return "; ".join(named(", ".join(which), places) for places, which in names.items())

    @property
    def pieces(self) -> int:
        """How many are bought."""
        return self.needed + self.spares if self.purchase is None else self.purchase.pieces

    @property
    def left_over(self) -> int:
        """How many are neither needed nor spares."""
        return self.pieces - self.needed - self.spares

    @property
    def cost(self) -> Decimal | None:
        """Of all pieces."""
        return None if self.purchase is None else self.purchase.cost

    @property
    def fitted_cost(self) -> Decimal | None:
        """Of the parts that are fitted, at the price paid for each piece."""
        return None if self.purchase is None else self.purchase.cost * self.needed / self.pieces

    @property
    def reasons(self) -> tuple[str, ...]:
        """Why it is not the cheapest part, and why more is paid than for the parts fitted."""
        said = [self.dearer] if self.dearer else []
        if self.left_out:
            one = self.left_out == 1
            would = "it" if one else "they"
            said.append(
                f"{self.left_out} spare{'' if one else 's'} left out: {would} would open "
                "another pack"
            )
        if self.purchase is not None and self.pieces > self.needed * TELL_ABOVE:
            said.append(f"{self.pieces} for {self.needed}: {self._surplus()}")
        return tuple(said)

    def _surplus(self) -> str:
        spares = f"{self.spares} spare{'s' if self.spares > 1 else ''}" if self.spares else ""
        if not self.left_over:
            return spares
        enough = self.needed + self.spares
        sold = [max(offer.whole(enough), offer.least) for offer in self.part.offers]
        fewer = min(sold) < self.pieces
        why = "cheaper so than fewer pieces" if fewer else "not sold in smaller numbers"
        over = f"{self.left_over} left over, {why}"
        return f"{spares}, {over}" if spares else over


def named(name: str, places: Iterable[str]) -> str:
    """Places in words, behind the name of their board where it has one.

    >>> named("hall", ["C1", "C2"]), named("", ["C1"])
    ('hall: C1, C2', 'C1')
    """
    said = ", ".join(places)
    return f"{name}: {said}" if name else said
