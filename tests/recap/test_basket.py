"""Baskets that a person would buy: worked by hand on invented catalogues, and by brute force."""

from decimal import Decimal
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.tables import demo_path
from repairlib.recap import Board, Position, plan, plan_file, read_board, read_catalogue
from repairlib.recap.catalogue import parse_catalogue

HEAD = (
    "part,family,capacitance_uf,rated_v,rated_c,life_h,ripple_ma,diameter_mm,length_mm,"
    "lead_spacing_mm,mounting,price,pack,minimum,currency"
)


def sold(part, price, pack=1, minimum=1, hours=2000, value=10, size="5,11,2", ripple=20, **other):
    family = other.get("family", "aluminium general 105")
    volts = other.get("volts", 16)
    return (
        f"{part},{family},{value},{volts},105,{hours},{ripple},{size},radial,{price},{pack},"
        f"{minimum},groats"
    )


def shop(*lines):
    return parse_catalogue("\n".join([HEAD, *lines]))


def only_line(listed, *lines, boards=1, board=None):
    (line,) = plan(listed, board, catalogue=shop(*lines), boards=boards).order.lines
    return line


@pytest.mark.behaviour
def test_two_pieces_are_not_fifty():
    """Two places and a spare: 3 x 0.22 = 0.66 single; the pack 50 x 0.15 = 7.50."""
    line = only_line("C1-C2 10/16 elect", sold("A", "0.22"), sold("A", "0.15", 50))
    assert (line.pieces, line.spares, line.left_over) == (3, 1, 0)
    assert line.cost == Decimal("0.66")
    assert line.reasons == ("3 for 2: 1 spare",)


@pytest.mark.behaviour
def test_a_dearer_piece_in_a_smaller_pack_is_the_cheaper_basket():
    """5 and 1 spare: A 10 x 0.10 = 1.00; B 6 x 0.15 = 0.90."""
    line = only_line("C1-C5 10/16 elect", sold("A", "0.10", 10), sold("B", "0.15"))
    assert (line.part.part, line.pieces, line.cost) == ("B", 6, Decimal("0.90"))


@pytest.mark.behaviour
def test_a_spare_opens_no_pack():
    """Ten in one pack; the spare would be a second one of 1.00."""
    line = only_line("C1-C10 10/16 elect", sold("A", "0.10", 10))
    assert (line.pieces, line.spares, line.left_out, line.cost) == (10, 0, 1, Decimal("1.00"))
    assert line.reasons == ("1 spare left out: it would open another pack",)


@pytest.mark.behaviour
def test_what_the_boards_lack_opens_a_pack_and_the_spare_comes_with_it():
    """Eleven: a second pack is due, and the spares of eleven, two, are in it."""
    line = only_line("C1-C11 10/16 elect", sold("A", "0.10", 10))
    assert (line.pieces, line.spares, line.left_over, line.left_out) == (20, 2, 7, 0)
    assert line.reasons == ("20 for 11: 2 spares, 7 left over, not sold in smaller numbers",)


@pytest.mark.behaviour
def test_a_spare_may_be_one_single_piece_beside_a_pack():
    """Ten in a pack 0.50, one single 0.20; two packs would be 1.00."""
    line = only_line("C1-C10 10/16 elect", sold("A", "0.05", 10), sold("A", "0.20"))
    assert (str(line.purchase), line.spares) == ("1 pack of 10 + 1 single", 1)
    assert line.cost == Decimal("0.70")


@pytest.mark.behaviour
def test_a_spare_that_is_dearer_than_a_further_pack_is_left_out():
    """A single piece of 2.00 against a pack of 0.50."""
    line = only_line("C1-C10 10/16 elect", sold("A", "0.05", 10), sold("A", "2.00"))
    assert (line.spares, line.left_out, line.cost) == (0, 1, Decimal("0.50"))


@pytest.mark.behaviour
def test_left_over_because_it_is_cheaper_so_is_said():
    """8 and 1 spare: 9 x 0.12 = 1.08; the pack 12 x 0.08 = 0.96."""
    line = only_line("C1-C8 10/16 elect", sold("A", "0.12"), sold("A", "0.08", 12))
    assert (line.pieces, line.left_over) == (12, 3)
    assert line.reasons == ("12 for 8: 1 spare, 3 left over, cheaper so than fewer pieces",)


@pytest.mark.behaviour
@pytest.mark.parametrize(("price", "part"), [("0.250", "LONG"), ("0.251", "SHORT")])
def test_a_longer_life_may_cost_a_quarter_more(price, part):
    """Four and a spare: 5 x 0.20 = 1.00; a quarter more is 1.25."""
    lines = [sold("SHORT", "0.20", hours=1000), sold("LONG", price, hours=5000)]
    line = only_line("C1-C4 10/16 elect", *lines)
    assert line.part.part == part
    said = "it lives longer, 15 years or more: the cheapest, SHORT (7 years, 20\xa0mA of ripple), "
    expected = (said + "would have cost 1.00 groats for 5",) if part == "LONG" else ()
    assert line.reasons[: len(expected)] == expected
    assert part == "LONG" or "lives longer" not in " ".join(line.reasons)


@pytest.mark.behaviour
def test_ripple_comes_first_where_low_impedance_is_asked_for():
    family = "aluminium low impedance"
    lines = [
        sold("WEAK", "0.10", family=family, ripple=300),
        sold("STRONG", "0.90", family=family, ripple=1500),
    ]
    line = only_line("C1 10/16 elect low ESR", *lines)
    assert line.part.part == "STRONG" and "low-impedance" in line.what
    assert line.reasons[0].endswith("would have cost 0.20 groats for 2")
    assert "1.5\xa0A of ripple" in line.reasons[0]


@pytest.mark.behaviour
def test_rooms_of_one_kind_share_a_pack():
    """C1 has 9 mm, C2 20 mm. WIDE singly 0.02 fits C2 only; LOW comes in a ten of 0.50 for both.

    By hand: LOW for both 0.50; LOW for C1 and two of WIDE for C2 0.50 + 0.04.
    """
    board = Board("b", [Position("C1", max_height_mm=9), Position("C2", max_height_mm=20)])
    lines = [sold("LOW", "0.05", 10, size="5,8,2"), sold("WIDE", "0.02", size="5,15,2")]
    line = only_line("C1-C2 10/16 elect radial", *lines, board=board)
    assert (line.part.part, line.places, line.pieces) == ("LOW", ("C1", "C2"), 10)


@pytest.mark.behaviour
def test_rooms_of_one_kind_are_bought_apart_where_that_is_cheaper():
    """As above, LOW singly at 0.50: 2 + 2 pieces 1.04 apart, three of LOW 1.50."""
    board = Board("b", [Position("C1", max_height_mm=9), Position("C2", max_height_mm=20)])
    lines = [sold("LOW", "0.50", size="5,8,2"), sold("WIDE", "0.02", size="5,15,2")]
    made = plan("C1-C2 10/16 elect radial", board, catalogue=shop(*lines))
    assert {item.reference: item.selection.part.part for item in made.items} == {
        "C1": "LOW",
        "C2": "WIDE",
    }
    assert made.order.for_all == Decimal("1.04")


def brute(parts, needed):
    """Of each part the cheapest way to `needed` and the spares that open no pack: all are tried."""
    spares = -(-needed // 10)
    found = {}
    for name, offers in parts.items():
        tops = [max(-(-(needed + spares) // p) * p, -(-m // p) * p) for _, p, m in offers]
        ways = []
        for way in product(
            *[
                [0, *range(-(-m // p) * p, top + 1, p)]
                for (_, p, m), top in zip(offers, tops, strict=True)
            ]
        ):
            pieces = sum(way)
            cost = sum(Decimal(c) / 100 * n for (c, _, _), n in zip(offers, way, strict=True))
            packs = [p for (_, p, _), n in zip(offers, way, strict=True) if n and p > 1]
            ways.append((cost, pieces, packs))
        alone = min(way for way in ways if way[1] >= needed)
        both = min(way for way in ways if way[1] >= needed + spares)
        for_a_spare = any(both[1] - pack >= needed for pack in both[2]) and both[0] > alone[0]
        found[name] = alone if for_a_spare else both
    return found


SOLD = st.tuples(st.integers(1, 40), st.sampled_from([1, 1, 5, 10, 12]), st.sampled_from([1, 1, 6]))
PARTS = st.dictionaries(
    st.sampled_from(["A", "B", "C"]),
    st.lists(SOLD, min_size=1, max_size=2, unique_by=lambda one: one[1:]),
    min_size=1,
)


@settings(max_examples=200, deadline=None)
@given(PARTS, st.integers(1, 24))
def test_no_basket_of_one_part_is_cheaper(parts, needed):
    """All live equally long, so that nothing but the whole cost decides."""
    lines = [
        sold(name, f"{cents / 100:.2f}", pack, minimum)
        for name, offers in parts.items()
        for cents, pack, minimum in offers
    ]
    listed = "\n".join(f"C{number} 10/16 elect" for number in range(1, needed + 1))
    line = only_line(listed, *lines)
    assert line.cost == min(cost for cost, *_ in brute(parts, needed).values())
    assert line.pieces >= needed
    assert line.pieces == line.needed + line.spares + line.left_over
    assert line.spares + line.left_out == -(-needed // 10)


@pytest.mark.behaviour
def test_the_demo_keyboard_is_a_basket_for_one_person():
    """At most 1.2 times the parts that are fitted, or the line says why."""
    made = plan_file(
        demo_path("keyboard-parts.csv"),
        read_board(demo_path("keyboard-board.csv")),
        catalogue=read_catalogue(demo_path("parts-catalogue.csv")),
    )
    order = made.order
    assert order.currency == "tokens" and "tokens in all" in str(order)
    for line in order.lines:
        assert line.cost <= line.fitted_cost * Decimal("1.2") or line.reasons
        assert line.pieces <= 2 * line.needed
    assert order.for_all < 2 * order.fitted_cost


@pytest.mark.behaviour
@pytest.mark.parametrize("asked", ["10/16 elect", "10/16 elect low ESR"])
def test_without_a_currency_that_is_said(asked):
    head = HEAD.removesuffix(",currency")
    family = "aluminium low impedance"
    line = sold("A", "0.10", family=family).removesuffix(",groats")
    made = plan(f"C1 {asked}", catalogue=parse_catalogue(f"{head}\n{line}"))
    assert str(made.order).endswith("no currency stated in the catalogue")
    assert made.order.to_dict()["currency"] is None
    assert made.order.rows()[0]["currency"] == made.rows()[0]["currency"] == "not stated"
