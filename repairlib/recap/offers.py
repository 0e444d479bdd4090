"""What a shop asks for one part, and the cheapest way to get at least so many pieces of it.

An offer is one line of a catalogue: single pieces, a pack, or a lower price from a larger number
on. Offers of one part may be bought together: a pack of ten and two single pieces.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from decimal import ROUND_HALF_UP, Decimal
from math import gcd
from typing import NamedTuple

MOST_TRIES = 20_000


class Offer(NamedTuple):
    """`price` of one piece, sold in packs of `pack` pieces only, and not below `minimum` pieces."""

    price: Decimal
    pack: int = 1
    minimum: int = 1

    @property
    def least(self) -> int:
        """The smallest number of pieces that can be bought."""
        return self.whole(self.minimum)

    def whole(self, number: int) -> int:
        """The pieces of as many whole packs as hold that number."""
        return -(-number // self.pack) * self.pack


class Purchase(NamedTuple):
    """How many pieces are bought of which offers of one part."""

    buys: tuple[tuple[Offer, int], ...]

    @property
    def pieces(self) -> int:
        return sum(pieces for _, pieces in self.buys)

    @property
    def cost(self) -> Decimal:
        return sum((offer.price * pieces for offer, pieces in self.buys), Decimal(0))

    def opens_a_pack_beyond(self, needed: int) -> bool:
        """Whether `needed` pieces would be there without one of the packs."""
        return any(offer.pack > 1 and self.pieces - offer.pack >= needed for offer, _ in self.buys)

    def __str__(self) -> str:
        return " + ".join(_said(offer, pieces) for offer, pieces in self.buys)


def cheapest(offers: Iterable[Offer], number: int) -> Purchase:
    """The cheapest way to get at least `number` pieces; of equal ones that with fewer pieces.

    Exact: every way is tried that could be cheaper than the best one found before. Only where a
    list of packs at nearly one price makes that more than MOST_TRIES does the best one stand that
    was found by then.

    >>> single, ten = Offer(Decimal("0.12")), Offer(Decimal("0.05"), pack=10)
    >>> print(cheapest([single, ten], 4), "|", cheapest([single, ten], 12))
    4 single | 1 pack of 10 + 2 single
    """
    return _Search(offers).best(number)


def money(amount: Decimal, currency: str) -> str:
    """An amount to two places, half a cent up, and what it is in: never a bare number.

    >>> money(Decimal("0.385"), "tokens"), money(Decimal("2"), "")
    ('0.39 tokens', '2.00 (no currency stated)')
    """
    places = Decimal("0.01") if amount >= Decimal("0.01") else Decimal("0.0001")
    return f"{amount.quantize(places, ROUND_HALF_UP)} {currency or '(no currency stated)'}"


class _Search:
    """A search through the offers of one part, the lowest price for one piece first."""

    def __init__(self, offers: Iterable[Offer]):
        self.offers = sorted(_worth_a_look(offers))
        self.common = [gcd(*(one.pack for one in self.offers[at:])) for at in range(len(self))]

    def __len__(self) -> int:
        return len(self.offers)

    def best(self, number: int) -> Purchase:
        self.found: tuple[Decimal, int] | None = None
        self.way: tuple[tuple[Offer, int], ...] = ()
        self.tries = 0
        self.seen: dict[tuple[int, int], tuple] = {}  # what was spent to come to where it stands
        self._go_on(0, number, Decimal(0), ())
        return Purchase(self.way)

    def _go_on(self, at: int, left: int, spent: Decimal, buys: tuple) -> None:
        """Cover what is `left` by the offers from `at` on, after `buys` for `spent`."""
        self.tries += 1
        bought = sum(pieces for _, pieces in buys)
        if left <= 0:
            if not self._no_better(spent, bought):
                self.found, self.way = (spent, bought), buys
            return
        if at == len(self) or self.seen.get((at, left), (Decimal("Infinity"),)) <= (spent, bought):
            return
        self.seen[at, left] = spent, bought
        # The packs that are left give no other numbers than multiples of what is common to them.
        whole = -(-left // self.common[at]) * self.common[at]
        offer = self.offers[at]
        if self._no_better(spent + offer.price * whole, bought + whole):
            return
        for pieces in _amounts(offer, left):
            cost, after = spent + offer.price * pieces, left - pieces
            # The fewer pieces of this offer, the more come from dearer ones: it only gets worse.
            if after > 0 and self._no_better(cost + self._floor(at + 1, after), bought + left):
                break
            self._go_on(at + 1, after, cost, (*buys, (offer, pieces)) if pieces else buys)

    def _no_better(self, cost: Decimal, pieces: int) -> bool:
        if self.found is None:
            return False
        return self.tries > MOST_TRIES or (cost, pieces) >= self.found

    def _floor(self, at: int, left: int) -> Decimal:
        """What `left` pieces cost at least from the offers from `at` on."""
        return self.offers[at].price * left if at < len(self) else Decimal("Infinity")


def _amounts(offer: Offer, left: int) -> Iterator[int]:
    """The numbers of pieces worth trying: from what covers all down to the least, then none."""
    top = max(offer.whole(left), offer.least)
    yield from range(top, offer.least - 1, -offer.pack)
    yield 0


def _worth_a_look(offers: Iterable[Offer]) -> list[Offer]:
    """Without those that another one equals in every number of pieces, at no higher price."""
    alike: dict[tuple[int, int], Offer] = {}
    for one in sorted(offers):
        alike.setdefault((one.pack, one.least), one)
    kept = list(alike.values())
    return [one for one in kept if not any(_beats(other, one) for other in kept)]


def _beats(other: Offer, one: Offer) -> bool:
    as_cheap = other is not one and other.price <= one.price
    return as_cheap and one.pack % other.pack == 0 and other.least <= one.least


def _said(offer: Offer, pieces: int) -> str:
    if offer.pack == 1:
        return f"{pieces} single"
    packs = pieces // offer.pack
    return f"{packs} pack{'s' if packs > 1 else ''} of {offer.pack}"
