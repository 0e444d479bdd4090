"""Which of the parts that may go in is taken, for how many places, and why.

What counts is the whole cost of the pieces bought, not the price of one of them. The rule stands
in CHOICE_RULE.
"""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from heapq import merge
from typing import NamedTuple

from repairlib.core.once import Once
from repairlib.core.quantity import brief
from repairlib.health import CAP_YEARS
from repairlib.recap.catalogue import CataloguePart
from repairlib.recap.expectation import INSIDE_C, years_in_words
from repairlib.recap.offers import Offer, Purchase, cheapest, money
from repairlib.recap.selection import Alike, Fitting, life_of, lowest_price, rank

WORTH = Decimal("1.25")  # what a longer life may cost against the cheapest; a choice of ours
CHOICE_RULE = (
    "A part may go in when kind, build and capacitance are those of the plan, its rated voltage is "
    "not below, it is rated for 105 °C, and nothing known about its size speaks against the place. "
    "Of those the one whose pieces cost least in all, packs and single pieces counted; a part that "
    f"lives longer at {INSIDE_C:g} °C, counted up to {CAP_YEARS} years, is taken when all its "
    "pieces cost at most a quarter more. At equal cost: the higher ripple current, the lower rated "
    "voltage, the part number. Where low impedance is asked for, life, ripple current and "
    "impedance come before the cost."
)
SPARES_RULE = (
    "One spare for each ten of a kind, rounded up, at least one (common practice). Spares come out "
    "of what a pack leaves over, or as single pieces; one that would open another pack is left out."
)


class Taken(NamedTuple):
    """A part, how it is bought, and how many of the pieces are spares."""

    part: CataloguePart
    purchase: Purchase
    spares: int

    @property
    def cost(self) -> Decimal:
        return self.purchase.cost


class Selection(NamedTuple):
    """The `part` taken, or None, and `why`; `each` is the price paid for one piece.

    `cheapest` is the cheapest part that may go in where that is another one, and `dearer` says why
    it was not taken; `passed_over` says what a longer-lived part failed on.
    """

    part: CataloguePart | None
    why: str
    each: Decimal | None = None
    cheapest: CataloguePart | None = None
    dearer: str = ""
    passed_over: str = ""

    def explained(self) -> tuple[str, ...]:
        """The whole choice in sentences."""
        return tuple(said for said in (self.why, self.dearer, self.passed_over) if said)


def spares_for(needed: int) -> int:
    """One for each ten, rounded up.

    >>> spares_for(1), spares_for(10), spares_for(11)
    (1, 1, 2)
    """
    return -(-needed // 10)


def _bought(offers: tuple[Offer, ...], needed: int) -> tuple[Purchase, int]:
    """The cheapest way to `needed` pieces and their spares, and how many (see SPARES_RULE)."""
    spares = spares_for(needed)
    alone = cheapest(offers, needed)
    way = cheapest(offers, needed + spares)
    if way.cost > alone.cost and way.opens_a_pack_beyond(needed):
        return alone, min(spares, alone.pieces - needed)
    return way, spares


def take(able: Iterable[Alike], needed: int) -> tuple[Taken, tuple[Taken, ...]]:
    """The one to take of these parts for `needed` places (see CHOICE_RULE), and its equals."""
    ways = _worth_comparing(able, needed)
    most = min(way.cost for way in ways) * WORTH
    within = sorted((way for way in ways if way.cost <= most), key=_longest_life_first)
    best = _longest_life_first(within[0])[:2]
    return within[0], tuple(way for way in within[1:] if _longest_life_first(way)[:2] == best)


def least_cost(able: Iterable[Alike], needed: int) -> Taken:
    """The cheapest of these parts for `needed` places."""
    return min(_worth_comparing(able, needed), key=lambda way: (way.cost, rank(way.part)))


def selection_of(fitting: Fitting, needed: int, currency: str) -> tuple[Selection, Taken]:
    """What is chosen for `needed` places in which the same parts fit, and how it is bought."""
    taken, tied = take(fitting.able, needed)
    least = least_cost(fitting.all_able, needed)
    able = sum(len(alike.parts) for alike in fitting.all_able)
    each = taken.cost / taken.purchase.pieces
    dearer = _why_dearer(taken, least, currency) if least.cost < taken.cost else ""
    said = _why(taken, tied, least, able, currency)
    cheaper = least.part if dearer else None
    passed_over = _passed_over(taken.part, fitting.barred)
    return Selection(taken.part, said, each, cheaper, dearer, passed_over), taken


def _worth_comparing(able: Iterable[Alike], needed: int) -> list[Taken]:
    """Each part as it is bought, without those that are too dear at their lowest price."""
    bought = Once(_bought)  # many parts are sold alike
    ways: list[Taken] = []
    least: Decimal | None = None
    for part in merge(*(alike.parts for alike in able), key=lowest_price):
        if least is not None and part.price * needed > least * WORTH:
            break
        ways.append(Taken(part, *bought[part.offers, needed]))
        least = ways[-1].cost if least is None else min(least, ways[-1].cost)
    return ways


def _longest_life_first(way: Taken) -> tuple:
    part = way.part
    return -life_of(part), way.cost, -(part.ripple or 0.0), part.volts, part.part


def _why(taken: Taken, tied: tuple[Taken, ...], least: Taken, able: int, currency: str) -> str:
    part = taken.part
    price = f"{money(taken.cost, currency)} for {taken.purchase.pieces}, {_life(part)}"
    if able == 1:
        return f"{part.part} is the only part that may go in: {price}"
    if least.cost < taken.cost:
        return f"{part.part}, of {able} that may go in: {price}"
    said = f"{part.part} costs least of {able} that may go in: {price}"
    if not tied:
        return said
    names = ", ".join(way.part.part for way in tied[:3])
    more = f" and {len(tied) - 3} more" if len(tied) > 3 else ""
    return f"{said}; as good: {names}{more}: {_tie(part, tied[0].part)}"


def _why_dearer(taken: Taken, least: Taken, currency: str) -> str:
    """Why a dearer part is taken, and what the cheapest would have cost."""
    part, other = taken.part, least.part
    if life_of(part) > life_of(other):
        more = f"it lives longer, {_life(part)}"
    else:
        more = f"it stands more ripple or has the lower impedance, {_ripple(part)}"
    cost = f"would have cost {money(least.cost, currency)} for {least.purchase.pieces}"
    return f"{more}: the cheapest, {other.part} ({_life(other)}, {_ripple(other)}), {cost}"


def _tie(taken: CataloguePart, following: CataloguePart) -> str:
    """What parts the taken one from the next of those that are equal in life and cost."""
    if (taken.ripple or 0.0) != (following.ripple or 0.0):
        return "the higher ripple current decided"
    if taken.volts != following.volts:
        return "the lower rated voltage decided"
    return "all else is equal, so the part number decided"


def _passed_over(taken: CataloguePart, barred: Iterable[tuple[CataloguePart, str]]) -> str:
    """The best of the longer-lived parts, of the same family, that do not fit."""
    better = [
        (part, why)
        for part, why in barred
        if life_of(part) > life_of(taken)
        and part.family == taken.family
        and part.volts >= taken.volts
    ]
    if not better:
        return ""
    part, why = min(better, key=lambda pair: rank(pair[0]))
    return f"passed over: {part.part} ({_life(part)}) is {why}"


def _life(part: CataloguePart) -> str:
    return years_in_words(life_of(part) or None) or "life not stated"


def _ripple(part: CataloguePart) -> str:
    ripple = f"{brief(part.ripple, 'A')} of ripple" if part.ripple else "ripple not stated"
    return f"{ripple}, {brief(part.ohm, 'Ω')} at 100 kHz" if part.ohm else ripple
