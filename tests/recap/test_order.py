"""What to buy: pieces, spares, packs and prices, worked by hand on a small invented catalogue."""

from decimal import Decimal

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.plan_pieces import order_html
from repairlib.health.measured import read_measured
from repairlib.recap import Board, Position, plan
from repairlib.recap.catalogue import parse_catalogue
from repairlib.recap.choice import spares_for
from repairlib.show.sheets import bench_sheet

CATALOGUE = parse_catalogue(
    "part,family,capacitance_uf,rated_v,rated_c,life_h,diameter_mm,length_mm,lead_spacing_mm,"
    "mounting,price,pack\n"
    "TEN,aluminium general 105,10,16,105,2000,5,11,2,radial,0.07,25\n"
    "FORTY,aluminium general 105,47,25,105,2000,5,11,2,radial,0.105,10\n"
    "LOW,aluminium low impedance,100,16,105,2000,6.3,9,2.5,radial,0.20,1\n"
)
LIST = "C1-C4,10/16 elect\nC5,47/25 elect\nC6,2200/25 elect\n"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("needed", "spares"), [(1, 1), (9, 1), (10, 1), (11, 2), (40, 4), (48, 5), (1000, 100)]
)
def test_one_spare_for_each_ten(needed, spares):
    assert spares_for(needed) == spares


# By hand for 12 boards: TEN 48, two packs of 25 = 50 pieces × 0.07 = 3.50; of its 5 spares 2 are
# there, 3 would open a third pack. FORTY 12, two packs of 10 = 20 × 0.105 = 2.10, 2 spares in
# them and 6 left over. One board: 4 × 0.07 + 0.105 = 0.385; all twelve: 4.62.
def test_a_class_of_twelve_boards():
    order = plan(LIST, catalogue=CATALOGUE, boards=12).order
    ten, forty, missing = order.lines
    assert (ten.needed, ten.spares, ten.left_out, ten.pieces, ten.left_over) == (48, 2, 3, 50, 0)
    assert (forty.spares, forty.left_out, forty.pieces, forty.left_over) == (2, 0, 20, 6)
    assert (ten.cost, forty.cost) == (Decimal("3.50"), Decimal("2.100"))
    assert order.for_all == Decimal("5.60")
    assert order.for_one_board == Decimal("0.385")
    assert (missing.part, missing.cost, missing.pieces) == (None, None, 14)
    assert order.not_found == ("C6",)
    assert ten.reasons == ("3 spares left out: they would open another pack",)
    assert forty.reasons == ("20 for 12: 2 spares, 6 left over, not sold in smaller numbers",)
    none = "(no currency stated)"
    assert str(order) == (
        f"84 pieces of 3 kinds for 12 boards, spares among them: 5.60 {none} in all, 0.47 {none} a "
        f"board; the parts fitted alone 4.62 {none}; without what is not in the catalogue: C6; no "
        "currency stated in the catalogue"
    )


def test_without_a_catalogue_there_are_no_prices():
    order = plan(LIST).order
    assert not order.priced
    assert str(order) == "9 pieces of 3 kinds for 1 board, spares among them"
    assert order.to_dict()["for all"] is None


def test_what_the_catalogue_lacks_is_said_where_it_is_fitted():
    made = plan(LIST, catalogue=CATALOGUE)
    looks = {item.reference: item.looks for item in made.items}
    missing = "no line of the catalogue is 2200\xa0µF 25\xa0V radial polar"
    assert looks["C6"] == (missing, "for a makeshift see calc substitute_capacitor")
    assert looks["C5"] == ("no build stated: FORTY is radial, look first", "FORTY is 5 × 11 mm")


def test_missing_bipolar_part_points_to_two_polar_ones():
    (item,) = plan("C1,10/16 elect NP radial\n", catalogue=CATALOGUE).items
    assert item.looks[-1] == "for a makeshift see calc back_to_back"


def test_a_stated_build_is_not_doubted():
    (item,) = plan("C1,10/16 elect radial\n", catalogue=CATALOGUE).items
    assert item.looks == ("TEN is 5 × 11 mm",)


def test_lower_esr_than_asked_for_is_said():
    made = plan("C1,100/16 elect\nC2,100/16 elect low ESR\n", catalogue=CATALOGUE)
    assert made.order.notes[0].startswith("C1: low-impedance parts where the list does not ask")


def test_a_low_can_of_the_catalogue_fits_where_the_usual_one_does_not():
    board = Board("panel", [Position("C1", max_height_mm=10)])
    assert plan("C1,100/16 elect", board).all_items[0].verdict == "hold"
    (item,) = plan("C1,100/16 elect", board, catalogue=CATALOGUE).all_items
    assert (item.verdict, item.selection.part.part) == ("replace", "LOW")


def test_boards_that_nobody_measured_are_not_left_short():
    """C1 may stay on the measured board. By hand for 12: 3 + 11 x 4 = 47 of TEN."""
    table = read_measured("Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,9.9,5\n")
    made = plan(LIST, measured=table, catalogue=CATALOGUE, boards=12)
    assert [item.reference for item in made.may_stay] == ["C1"]
    ten = next(line for line in made.order.lines if line.part.part == "TEN")
    assert (ten.needed, made.order.boards) == (47, 12)
    assert ten.goes_to == "the measured board: C2, C3, C4; the other 11: C1, C2, C3, C4"
    assert made.order.notes[0].startswith("One board was measured. The other 11 were not: what may")
    assert plan(LIST, measured=table).order.notes == ()


def test_the_other_boards_are_ordered_for_where_all_may_stay_on_the_measured_one():
    table = read_measured("Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,9.9,5\n")
    made = plan("C1,10/16 elect\n", measured=table, catalogue=CATALOGUE, boards=2)
    assert not made.items and made.order.lines[0].goes_to == "the other board: C1"
    assert "To order" in bench_sheet(made) and "To order" in order_html(made)


@pytest.mark.parametrize("boards", [0, -1, 1001, 1.5, "12"])
def test_number_of_boards(boards):
    with pytest.raises(RepairlibError, match="not a number of boards"):
        plan(LIST, boards=boards)


def test_rows_carry_part_price_life_and_esr():
    rows = {row["reference"]: row for row in plan(LIST, catalogue=CATALOGUE).rows()}
    assert (rows["C1"]["catalogue part"], rows["C1"]["price each"]) == ("TEN", "0.07")
    assert rows["C1"]["expected life"] == "14 years"
    assert "only part that may go in" in rows["C1"]["choice"]
    assert rows["C6"]["ESR class"].startswith("general, at most")
    assert rows["C6"]["catalogue part"] == ""
