"""The route: every part that is the learner's to change is one stop, in the order of work."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.recap import Board, Position, here_on, plan, plan_file, read_board, route_of
from repairlib.show.stop import draw_stop


@pytest.fixture(scope="module")
def demo():
    return plan_file(demo_path("keyboard-parts.csv"), read_board(demo_path("keyboard-board.csv")))


def test_each_own_part_is_one_stop_in_the_order_of_the_steps(demo):
    stops = route_of(demo)
    own = [item for step in demo.steps if not step.handed_on for item in step.items]
    assert [stop.item for stop in stops] == own
    assert [stop.number for stop in stops] == list(range(1, len(own) + 1))


@pytest.mark.common_practice
def test_the_supply_is_tested_before_anything_else_is_fitted(demo):
    told = [stop.reference for stop in route_of(demo) if stop.before]
    assert told == ["C20"]  # the first one of the voice board, by hand from the board file


def test_what_is_handed_on_is_no_stop():
    made = plan("C1 47uF 16V elect\nC2 33uF 400V elect\nC3 10uF 160V elect\n")
    assert [stop.reference for stop in route_of(made)] == ["C1"]


def test_here_is_the_first_stop_that_is_not_done():
    stops = route_of(plan("C1-C3,10/16,elect"))
    assert [here_on(stops, done) for done in ([], ["C1"], ["C2"], ["C1", "C2", "C3"])] == [
        0,
        1,
        0,
        3,
    ]


def test_a_list_without_references_has_stops_too():
    stops = route_of(plan("4x 10uF 16V\n2x 100uF 25V\n"))
    assert [stop.number for stop in stops] == [1, 2, 3, 4, 5, 6]


@pytest.mark.parametrize(
    ("place", "said"),
    [
        ({"plus": "left"}, "plus left, seen from the solder side with the fuse edge up"),
        ({"plus": ""}, "plus not known: note where it is on the old part"),
    ],
)
def test_the_plus_of_a_stop_names_side_and_edge_or_says_that_it_is_not_known(place, said):
    position = Position("C1", seen_from="solder side, fuse edge up", **place)
    (stop,) = route_of(plan("C1,10/16,elect", Board("amp", [position])))
    assert stop.plus.startswith(said)
    drawing = draw_stop(stop)
    assert said in drawing.alt
    assert "fuse edge" in drawing.svg
    assert (">?<" in drawing.svg) == (not place["plus"])
