"""The shelf: one set open with its decision, all sets in order, and nothing typed is lost."""

import pytest

from repairlib.core.safety import HAZARDS
from repairlib.faces.panels import shelf_view
from repairlib.faces.panels.following import turn_to
from repairlib.worth import COLUMNS, read_cells

pytestmark = pytest.mark.behaviour

HEAD = "set,value,parts,hours,success_low_percent,success_high_percent,hazards"
NAMES = ["label maker", "document scanner", "desk radio", "printer controller"]


def plain(shown):
    return shown.value.replace("\xa0", " ")


def names(shelf):
    return [row["set"] for row in shelf.sets.value]


def opened(shelf, name):
    shelf.which.value = names(shelf).index(name)
    return shelf


def test_it_opens_with_a_decision_and_all_sets_in_order():
    shelf = shelf_view()
    assert plain(shelf.answer).index("✓ label maker: repair") < plain(shelf.answer).index("Gains")
    assert "What would change it: a chance below 38.3 %" in plain(shelf.answer)
    assert "<img" in shelf.chart.value
    order = plain(shelf.order)
    places = [order.index(f">{name}<") for name in (NAMES[0], NAMES[1], NAMES[3], NAMES[2])]
    assert places == sorted(places)
    assert "no gain outweighs this danger" in order


def test_no_sum_gives_a_place_to_what_is_handed_on():
    shelf = opened(shelf_view(), "desk radio")
    for value in ("500", "1000000"):
        shelf.cells["value"].value = value
        told = plain(shelf.answer)
        assert "rl-unsafe" in told and "leave it to a qualified person" in told
        assert HAZARDS["mains"].strikes in told.replace("&#x27;", "'")


def test_the_chance_turns_the_decision():
    shelf = opened(shelf_view(), "document scanner")
    assert "it depends" in plain(shelf.answer)
    shelf.chance.value = (60, 75)
    assert "document scanner: repair" in plain(shelf.answer)
    assert shelf.row["success_low_percent"] == "60"


@pytest.mark.parametrize(
    ("column", "typed", "said"),
    [
        ("hours", "ten", "hours: no number stands in front"),
        ("value", "-3", "value is out of range"),
        ("jobs", "0", "jobs is out of range"),
        ("hazards", "", "no hazard is named"),
        ("hazards", "<b>fire</b>", "not a hazard known here"),
        ("set", " ", "the set has no name"),
        ("currency", "V", "a unit of the bench"),
    ],
)
def test_what_cannot_be_read_is_one_line_and_stays(column, typed, said):
    shelf = shelf_view()
    shelf.cells[column].value = typed
    assert said in plain(shelf.answer) and plain(shelf.answer).count("<div>") == 1
    assert "<b>fire" not in shelf.answer.value and shelf.chart.value == ""
    assert shelf.cells[column].value == typed == shelf.row[column]
    assert "Not in the order yet" in plain(shelf.order)
    if column != "currency":  # which is that of every set
        assert "document scanner" in plain(shelf.order)
    assert shelf_view().cells[column].value == typed


def test_a_set_is_added_named_and_taken_off():
    shelf = shelf_view()
    shelf.add.click()
    assert "no hazard is named" in plain(shelf.answer)
    shelf.cells["set"].value = "lamp"
    shelf.cells["hazards"].value = "none"
    assert ("lamp", 4) in shelf.which.options
    assert "lamp: repair" in plain(shelf.answer)
    assert names(shelf_view()) == [*NAMES, "lamp"]
    shelf.away.click()
    assert names(shelf) == NAMES
    for _ in range(9):
        shelf.away.click()
    assert len(names(shelf)) == 1
    shelf.keeping.again.click()
    assert names(shelf) == NAMES


def test_a_file_takes_the_place_of_the_lessons_sets_and_stands_behind_ones_own():
    shelf = shelf_view()
    shelf._open("mine.csv", f"{HEAD}\nlamp,60,8,2,50,80,none\n".encode())
    assert names(shelf) == ["lamp"]
    shelf._open("more.csv", f"{HEAD}\nlamp,70,8,2,50,80,none\nclock,9,8,2,50,80,lead".encode())
    assert names(shelf) == ["lamp", "lamp (more.csv)", "clock"]
    shelf._open("mine.csv", f"{HEAD}\nlamp,60,8,2,50,80,none\n".encode())
    assert names(shelf) == ["lamp", "lamp (more.csv)", "clock"]


@pytest.mark.parametrize("content", [b"", b"C1,10/16", b"\x89PNG", f"{HEAD}\nlamp,1,,".encode()])
def test_a_file_that_is_no_shelf_changes_nothing(content):
    shelf = shelf_view()
    shelf._open("list.csv", content)
    assert "Not done" in shelf.note.value
    assert names(shelf) == NAMES


def test_the_saved_table_is_read_again():
    from base64 import b64decode

    shelf = shelf_view()
    data = shelf.saved.value.partition("base64,")[2].partition('"')[0]
    assert read_cells(b64decode(data), "shelf.csv") == shelf.sets.value
    assert set(shelf.row) == set(COLUMNS)


def test_each_learner_has_a_shelf_of_their_own():
    shelf = shelf_view()
    turn_to("Ada Example", "")
    shelf.cells["value"].value = "99"
    turn_to("Ben Example", "")
    assert shelf.cells["value"].value == "30"
    turn_to("Ada Example", "")
    assert shelf.cells["value"].value == "99"


def test_every_field_has_a_name():
    shelf = shelf_view()
    assert all(one.description for one in (shelf.which, shelf.chance, *shelf.cells.values()))
