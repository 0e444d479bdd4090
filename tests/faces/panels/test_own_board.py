"""A learner's own board: what the map says of it, what is kept, what is printed and saved."""

from base64 import b64decode

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels.own_board import board_map
from repairlib.recap import plan, read_board_text
from repairlib.show.sheets import bench_sheet, map_sheet

MAP = {
    "board": "amplifier",
    "side": "component side",
    "edge": "fuse edge",
    "edge_lies": "down",
    "width_mm": "150",
    "height_mm": "90",
    "places": [
        {"reference": "C1", "x_mm": "20", "y_mm": "30", "plus": "left"},
        {"reference": "C2", "x_mm": "60,5", "y_mm": "30", "plus": ""},
        {"reference": "C3", "x_mm": "90", "y_mm": "30", "plus": "none"},
    ],
}
PHOTO = "data:image/jpeg;base64,/9j/4AAQ"


def linked(panel, kind):
    data = panel.files.value.partition(f"data:{kind};base64,")[2].partition('"')[0]
    return b64decode(data).decode("utf-8-sig")


def test_an_empty_map_asks_and_offers_no_file():
    panel = board_map()
    assert "Your map is empty" in panel.answer.value
    assert (panel.board, panel.files.value) == (None, "")


@pytest.mark.parametrize("missing", ["side", "edge", "edge_lies"])
def test_without_a_side_and_an_edge_it_is_no_board(missing):
    panel = board_map()
    panel.drawing.typed = {**MAP, missing: ""}
    assert "not a board yet" in panel.answer.value
    assert (panel.board, panel.files.value) == (None, "")


def test_a_plus_that_nobody_looked_at_is_said_on_screen_and_paper():
    panel = board_map()
    panel.drawing.typed = MAP
    assert "plus not known: C2" in panel.answer.value
    sheet = linked(panel, "text/html")
    assert "Plus not known: C2." in sheet and "not known: look first" in sheet
    told = plan("C1 10uF 16V elect\nC2 10uF 16V elect\nC3 10uF 16V NP\n", panel.board).items
    assert told[0].polarity == "plus left, seen from the component side with the fuse edge down"
    assert told[1].polarity == "plus as the old part: note it before you remove it"
    assert bench_sheet(plan("C1 10uF 16V elect", panel.board)).count('class="drawn"') == 2


def test_the_map_is_a_board_file_and_a_board_file_is_a_map():
    panel = board_map()
    panel.drawing.typed = MAP
    text = linked(panel, "text/csv")
    assert read_board_text(text, "my-board.csv")["C2"].x_mm == 60.5
    other = board_map()
    other._open("amplifier.csv", text.encode())
    assert [place.plus for place in other.board.positions] == ["left", "", "none"]
    assert (other.drawing.typed["side"], other.drawing.typed["edge"]) == (
        "component side",
        "fuse edge",
    )
    before = other.drawing.typed
    other._open("list.csv", b"Ref,Value\nC1,10/16\n")
    assert "Not done" in other.answer.value
    assert other.drawing.typed == before


def test_the_demo_board_can_be_opened_and_printed():
    panel = board_map()
    panel._open("keyboard-board.csv", demo_path("keyboard-board.csv").read_bytes())
    assert "40 capacitors" in panel.answer.value
    assert linked(panel, "text/html").count("<img") == 2


def test_what_is_typed_is_kept_and_comes_back():
    panel = board_map()
    panel.drawing.typed = {**MAP, "side": ""}
    panel.drawing.photo = PHOTO
    again = board_map()
    assert again.drawing.typed == {**MAP, "side": ""}
    assert again.drawing.photo == PHOTO
    assert board_map(kept="").drawing.photo == ""


def test_only_a_photo_goes_on_the_sheet():
    panel = board_map()
    panel.drawing.typed = {**MAP, "board": "</title><script>x"}
    page = map_sheet(panel.board, PHOTO, panel.drawing.typed)
    assert f'href="{PHOTO}"' in page and "<script" not in page
    wrong = map_sheet(panel.board, 'data:image/svg+xml,"/><script>', panel.drawing.typed)
    assert "<script" not in wrong and "<svg" not in wrong
