"""The cheapest way to a number of pieces: baskets worked by hand, and every way tried."""

from decimal import Decimal
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.recap.offers import Offer, cheapest, money


def offer(price, pack=1, minimum=1):
    return Offer(Decimal(price), pack, minimum)


SHOP = [offer("0.30"), offer("0.20", minimum=10), offer("0.12", pack=25)]
# What is sold, how many are needed, what is bought, what it costs. Worked by hand.
BY_HAND = {
    # 7 x 0.30 = 2.10; ten at the step 2.00; a pack of 25 x 0.12 = 3.00.
    "the price step beats fewer pieces": (SHOP, 7, "10 single", "2.00"),
    # 6 x 0.30 = 1.80, below the ten for 2.00.
    "few single pieces": (SHOP, 6, "6 single", "1.80"),
    # 14 x 0.20 = 2.80 below 3.00; 15 x 0.20 = 3.00 costs as much as the pack: fewer pieces.
    "below the pack": (SHOP, 14, "14 single", "2.80"),
    "as dear as the pack": (SHOP, 15, "15 single", "3.00"),
    # 16 x 0.20 = 3.20, the pack 3.00.
    "the pack is cheaper": (SHOP, 16, "1 pack of 25", "3.00"),
    # A pack and 3 x 0.30 = 3.90; two packs 6.00; 28 x 0.20 = 5.60.
    "a pack and single pieces": (SHOP, 28, "1 pack of 25 + 3 single", "3.90"),
    # Packs alone: 12 needs 2 x 10 x 0.05 = 1.00, or 12 x 0.08 in one pack of twelve = 0.96.
    "two sizes of pack": ([offer("0.05", 10), offer("0.08", 12)], 12, "1 pack of 12", "0.96"),
    # At least 20: 20 x 0.01 = 0.20, below 3 x 0.10.
    "a smallest number": ([offer("0.10"), offer("0.01", 1, 20)], 3, "20 single", "0.20"),
    # A minimum of 15 in packs of 10 is two packs.
    "a minimum in whole packs": ([offer("0.10", 10, 15)], 3, "2 packs of 10", "2.00"),
}


@pytest.mark.behaviour
@pytest.mark.parametrize(("sold", "number", "bought", "cost"), BY_HAND.values(), ids=BY_HAND)
def test_baskets_by_hand(sold, number, bought, cost):
    way = cheapest(sold, number)
    assert (str(way), way.cost) == (bought, Decimal(cost))


def every_way(offers, number):
    """Cost and pieces of the best of all ways, each tried."""
    offers = sorted(set(offers))
    amounts = [
        [0, *range(one.least, max(one.whole(number), one.least) + 1, one.pack)] for one in offers
    ]
    return min(
        (sum((one.price * n for one, n in zip(offers, way, strict=True)), Decimal(0)), sum(way))
        for way in product(*amounts)
        if sum(way) >= number
    )


OFFERS = st.builds(
    lambda cents, pack, minimum: Offer(Decimal(cents) / 100, pack, minimum),
    st.integers(1, 30),
    st.sampled_from([1, 1, 2, 3, 5, 7, 10, 12]),
    st.sampled_from([1, 1, 1, 4, 10, 15]),
)


@settings(max_examples=400, deadline=None)
@given(st.lists(OFFERS, min_size=1, max_size=3), st.integers(1, 26))
def test_no_way_is_cheaper(offers, number):
    way = cheapest(offers, number)
    assert (way.cost, way.pieces) == every_way(offers, number)
    for one, pieces in way.buys:
        assert one in offers and pieces % one.pack == 0 and pieces >= one.minimum


@settings(max_examples=50, deadline=None)
@given(st.lists(OFFERS, min_size=1, max_size=8), st.integers(10_000, 1_000_000))
def test_large_numbers_are_covered(offers, number):
    way = cheapest(offers, number)
    assert way.pieces >= number
    assert way.cost <= min(one.price * max(one.whole(number), one.least) for one in offers)


def test_an_amount_is_never_bare():
    assert money(Decimal("0.385"), "groats") == "0.39 groats"
    assert money(Decimal("0.0015"), "") == "0.0015 (no currency stated)"
