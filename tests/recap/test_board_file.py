"""A board is written to a file and read from it, and nothing of it changes on the way."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import demo_path
from repairlib.recap import (
    Board,
    Position,
    board_csv,
    board_of_map,
    map_of_board,
    plus_not_known,
    read_board,
    read_board_text,
    write_board,
)

LENGTHS = st.none() | st.floats(0, 900).map(lambda length: round(length, 2))
PLACES = st.builds(
    Position,
    reference=st.integers(1, 9999).map(lambda number: f"C{number}"),
    area=st.sampled_from(["", "power supply", 'left, "hot" side', "output; stereo"]),
    x_mm=st.floats(0, 900).map(lambda length: round(length, 2)),
    y_mm=st.floats(0, 900).map(lambda length: round(length, 2)),
    form=st.sampled_from(["radial", "axial", ""]),
    spacing_mm=LENGTHS,
    max_diameter_mm=LENGTHS,
    max_height_mm=LENGTHS,
    plus=st.sampled_from(["up", "down", "left", "right", "none", ""]),
    seen_from=st.just("solder side, fuse edge left"),
)
BOARDS = st.lists(PLACES, min_size=1, max_size=20, unique_by=lambda place: place.reference)
FIELDS = Position.__slots__


def values(board):
    return [[getattr(place, field) for field in FIELDS] for place in board.positions]


@given(BOARDS)
def test_a_written_board_is_read_as_it_was(places):
    board = Board("amp", places)
    assert values(read_board_text(board_csv(board), "amp.csv")) == values(board)


@given(BOARDS)
def test_a_board_is_a_map_and_a_board_again(places):
    board = Board("amp", places)
    again = board_of_map(map_of_board(board, 1000))
    assert (values(again), again.name) == (values(board), "amp")


def test_the_demo_board_is_written_and_read(tmp_path):
    board = read_board(demo_path("keyboard-board.csv"))
    saved = write_board(board, tmp_path / "keyboard-board.csv")
    assert values(read_board(saved.path)) == values(board)
    with pytest.raises(RepairlibError, match="nothing was overwritten"):
        write_board(board, saved.path)


def test_a_cell_that_a_spreadsheet_would_run_is_made_harmless():
    assert ",'=1+1," in board_csv(Board("amp", [Position("C1", "=1+1")]))


FIXED = {"side": "component side", "edge": "fuse edge", "edge_lies": "down"}
C1 = {"reference": "C1", "x_mm": "10", "y_mm": "5", "plus": "left"}


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ({"places": [C1]}, "Side you look at"),
        ({**FIXED, "side": "top", "places": [C1]}, "Side you look at"),
        ({**FIXED, "edge": " ", "places": [C1]}, "A fixed edge"),
        ({**FIXED, "edge_lies": "", "places": [C1]}, "A fixed edge"),
        ({**FIXED, "places": []}, "no capacitor is on it yet"),
        ({**FIXED, "places": [C1, {**C1, "reference": "c1"}]}, "stands twice"),
        ({**FIXED, "places": [C1, {"reference": ""}]}, "row 2 of the map"),
        ({**FIXED, "places": [{**C1, "reference": "big one"}]}, "no name of a part"),
        ({**FIXED, "places": [{**C1, "x_mm": "left"}]}, "not a length in mm"),
        ({**FIXED, "places": [{**C1, "plus": "north"}]}, "not a word known"),
    ],
)
def test_a_map_that_is_no_board_yet_says_what_is_missing(typed, told):
    with pytest.raises(RepairlibError, match=told) as refused:
        board_of_map(typed)
    assert "\n" not in str(refused.value)


def test_a_plus_that_nobody_looked_at_stays_unknown():
    board = board_of_map({**FIXED, "places": [{**C1, "plus": ""}, {**C1, "reference": "C2"}]})
    assert plus_not_known(board) == ["C1"]
    assert "not to scale" in board.name
    assert Path(board.name).name == board.name
