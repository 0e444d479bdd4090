"""What a plan proposes for the card: what was fitted, and its cautions; it writes nothing."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.recap import plan, plan_file, read_board, read_catalogue, route_of
from repairlib.record import add_entry, open_job, prefill, read_card
from tests.record.cards import JOB


@pytest.fixture(scope="module")
def demo():
    board = read_board(demo_path("keyboard-board.csv"))
    catalogue = read_catalogue(demo_path("parts-catalogue.csv"))
    return plan_file(demo_path("keyboard-parts.csv"), board, catalogue=catalogue)


def test_every_stop_and_caution_can_be_added_as_proposed(demo, tmp_path):
    every = [stop.reference for stop in route_of(demo)]
    path = open_job(tmp_path, "Ana", **JOB)
    for one in prefill(demo, every):
        add_entry(path, one.kind, "Ana", **one.said)
    card = read_card(path)
    assert card.trouble == ""
    assert [one["reference"] for one in card.standing("part")] == every
    assert tuple(one["hazard"] for one in card.standing("caution")) == demo.cautions


def test_only_what_was_fitted_is_proposed_in_the_order_of_the_route(demo):
    every = [stop.reference for stop in route_of(demo)]
    said = [
        one.said["reference"] for one in prefill(demo, {every[4], every[1]}) if len(one.said) > 1
    ]
    assert said == [every[1], every[4]]
    assert [one.kind for one in prefill(demo)] == ["caution"] * len(demo.cautions)


def test_a_part_says_old_new_and_plus():
    one = prefill(plan("C1,50/15,elect"), ["C1"])[0]
    assert one.kind == "part"
    assert "50/15" in one.said["old"]
    assert "47\xa0µF 16\xa0V" in one.said["new"]
    assert one.said["plus"].startswith("plus not known")


@pytest.mark.parametrize("reference", ["C9", "C2", "c1", ""])
def test_what_is_no_stop_is_refused(reference):
    made = plan("C1,47/25,elect\nC2,33uF 400V elect\n")
    with pytest.raises(RepairlibError, match="no part of this plan that is fitted at this bench"):
        prefill(made, [reference])


def test_a_very_long_line_of_a_list_fits_a_cell(tmp_path):
    made = plan(f"C1,10/16,elect {'x' * 900}\n")
    path = open_job(tmp_path, "Ana", **JOB)
    for item in route_of(made):
        one = prefill(made, [item.reference])[0]
        assert add_entry(path, one.kind, "Ana", **one.said)["reference"] == "C1"
