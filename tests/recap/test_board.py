"""Where the board says something else than the list, or has no room, the part waits."""

import pytest

from repairlib import demo_path
from repairlib.core.errors import RepairlibError
from repairlib.recap import Board, Position, places_of, plan, read_board


def planned(line, **place):
    return plan(line, Board("panel", [Position("C1", "voices", **place)])).all_items[0]


def test_room_on_the_board():
    room = {"spacing_mm": 2.5, "max_diameter_mm": 7, "max_height_mm": 12}
    item = planned("C1,10/16,el", **room)
    assert item.verdict == "replace"
    assert item.looks == (
        "usual size fits (5 × 11 mm, leads 2 mm spread to 2.5 mm): check the data sheet",
    )
    for limit in ({"max_height_mm": 10}, {"max_diameter_mm": 4}, {"spacing_mm": 1.5}):
        item = planned("C1,10/16,el", **room | limit)
        assert item.verdict == "hold"
        assert "find a smaller part" in item.why


@pytest.mark.common_practice
def test_polar_part_in_a_place_without_polarity_waits():
    assert "without polarity" in planned("C1,10/16,el", plus="none").why


@pytest.mark.common_practice
def test_bipolar_part_in_a_place_with_plus_is_looked_at():
    item = planned("C1,10/16,NP", plus="left")
    assert not item.new.polar
    assert "board marks a plus" in item.looks[0]


def test_axial_part_in_a_radial_place_waits():
    assert "made for radial" in planned("C1,10/16,el axial", form="radial").why


def test_what_nobody_measured_is_said():
    assert "nobody measured" in planned("C1,10/16,el").looks[0]


def test_place_that_the_board_does_not_have():
    made = plan("C2,10/16,el", Board("panel", [Position("C1")]))
    assert "not among the board's places" in made.items[0].looks[0]
    assert made.not_listed == ["C1"]


def test_power_supply_first_then_low_before_high_then_top_down():
    board = Board(
        "panel",
        [
            Position("C1", "voices", 10, 10),
            Position("C2", "main power supply", 10, 30),
            Position("C3", "main power supply", 10, 20),
            Position("C4", "main power supply", 5, 20),
        ],
    )
    made = plan("C1-C2,10/16,el\nC3,10/16,el\nC4,2200/25,el\n", board)
    assert [item.reference for item in made.checklist] == ["C3", "C2", "C4", "C1"]


HEAD = "reference,area,x_mm\n"
DAMAGED = {
    "one quotation mark": ('C1,"supply,22\nC2,supply,30\nC3,output,38\n', "line 2"),
    "one in the middle": ('C1,supply,22\nC2,"out,30\nC3,output,38\n', "line 3"),
    "a huge cell": (f"C1,supply,22\nC2,{'x' * 140_000},30\n", "line 3"),
}


@pytest.mark.parametrize("name", DAMAGED)
def test_a_damaged_board_is_one_line_that_names_the_place(tmp_path, name):
    """A board of which a line is lost would show a plus side that nobody drew."""
    text, where = DAMAGED[name]
    (tmp_path / "board.csv").write_text(HEAD + text)
    with pytest.raises(RepairlibError, match=where) as refused:
        read_board(tmp_path / "board.csv")
    assert "\n" not in str(refused.value)


def test_other_parts_stay_on_the_board_when_a_line_has_changed():
    board = read_board(demo_path("keyboard-board.csv"), demo_path("keyboard-other-parts.csv"))
    left = places_of(board, frozenset(), "C1,10/16,elect")
    assert len(left) < len(board)
    assert left.others == board.others != ()
