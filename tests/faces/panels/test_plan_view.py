"""The plan view: what stands in it after typing, walking the route, and pasting nonsense."""

from base64 import b64decode

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels.own_board import board_map
from repairlib.faces.panels.recap_plan import plan_view
from repairlib.faces.panels.route import SHOWN_STOPS
from repairlib.recap import read_board, read_catalogue


@pytest.fixture
def demo():
    text = demo_path("keyboard-parts.csv").read_text("utf-8")
    return plan_view(text, read_board(demo_path("keyboard-board.csv")))


def stops_of(view):
    return [stop.reference for stop in view.route.stops]


def test_demo_list_is_planned(demo):
    assert "23 to change, 1 need you" in demo.summary.value
    assert "45 lines read: 23 to replace" in demo.summary.value
    assert "Mains voltage can kill" in demo.summary.value
    assert "no voltage rating stated" in demo.waiting.value
    assert len(demo.route.stops) == 23
    assert "Stop 1 of 23: C4" in demo.route.head.value
    card = demo.route.card.value.replace("\xa0", " ")
    assert "470 µF 16 V" in card
    assert "plus up, seen from the component side with the connector edge down" in card


def test_done_goes_on_and_back_returns(demo):
    before = demo.route.map.value
    demo.route.done.click()
    assert "Stop 2 of 23: C10" in demo.route.head.value
    assert "stop 1, behind." in demo.route.map.value and "stop 2, here." in demo.route.map.value
    demo.route.back.click()
    assert demo.route.map.value == before
    assert demo.route.back.disabled


def test_the_supply_is_tested_before_the_next_area_and_the_end_is_told(demo):
    while not demo.route.head.value.endswith("</p>") or "C20" not in demo.route.head.value:
        assert "test its voltages" not in demo.route.head.value
        demo.route.done.click()
    assert "test its voltages now" in demo.route.head.value
    for _ in demo.route.stops:
        demo.route.done.click()
    assert "All stops are done: 23 of 23" in demo.route.card.value
    assert demo.route.done.disabled


def test_what_is_done_stays_when_the_list_is_mended_and_after_a_restart():
    view = plan_view("C1,10/16,elect\nC2,47/25,elect")
    view.route.done.click()
    view.parts_list.value = ""
    view.parts_list.value = "C1,10/16,elect\nC2,47/25,elect\nC3,47/25,elect"
    view.boards.value = 3
    assert "Stop 2 of 3: C2" in view.route.head.value
    again = plan_view("C1,10/16,elect\nC2,47/25,elect")
    assert "Stop 2 of 3: C2" in again.route.head.value
    assert (again.boards.value, again.parts_list.value) == (3, view.parts_list.value)


def test_typing_plans_anew():
    view = plan_view("C1,10/16,elect")
    view.parts_list.value = "C1,10/16,elect\nC2,47/25,elect\nC9-C2,.1\n"
    assert stops_of(view) == ["C1", "C2"]
    assert "does not go up" in view.waiting.value
    assert view.route.map.value == ""


def test_a_list_without_references_is_a_route():
    view = plan_view("")
    view.parts_list.value = "4x 10uF 16V\n2x 100uF 25V"
    assert "Stop 1 of 6" in view.route.head.value
    assert "plus not known" in view.route.card.value


@pytest.mark.parametrize("text", ["", "   ", "\n\n"])
def test_no_list_is_told_and_clears_the_answer(text):
    view = plan_view("C1,10/16,elect")
    view.parts_list.value = text
    assert "there is no line in it" in view.summary.value
    assert (view.plan, view.route.stops, view.route.card.value, view.files.value) == (
        None,
        [],
        "",
        "",
    )
    view.parts_list.value = "C1,10/16,elect"
    assert stops_of(view) == ["C1"]


def test_text_of_the_list_stays_text():
    view = plan_view("C1,10/16,<script>alert(1)</script> elect\nC2 <b>x</b>,?\n")
    shown = view.summary.value + view.route.card.value + view.route.table.value
    assert "<script" not in shown
    assert "<b>x" not in shown + view.waiting.value


def test_links_hold_the_files(demo):
    link = demo.files.value.partition("data:text/html;base64,")[2].partition('"')[0]
    assert "<!DOCTYPE html>" in b64decode(link).decode("utf-8")
    link = demo.files.value.partition("data:text/csv;base64,")[2].partition('"')[0]
    assert b64decode(link).decode("utf-8-sig").startswith('"reference"')
    link = demo.files.value.rpartition("data:text/csv;base64,")[2].partition('"')[0]
    assert b64decode(link).decode("utf-8-sig").startswith('"part","what","places","needed"')


def test_long_lists_are_shown_in_part():
    view = plan_view("\n".join(f"C{number},10/16,elect" for number in range(1, 500)))
    assert len(view.route.stops) == 499
    assert view.route.table.value.count("<tr>") == SHOWN_STOPS + 1
    assert "And 379 more" in view.route.table.value


def test_files_are_opened_into_their_fields_and_folded():
    view = plan_view("C1,10/16,elect")
    listed, readings = view.tabs[0], view.tabs[1]
    listed.button.value = True
    readings.button.value = True
    assert (listed.button.value, listed.inside.layout.display) == (False, "none")
    listed.button.value = True
    listed._opened("list.csv", "C7,47µF/25,elect\n".encode("cp1252"))
    assert stops_of(view) == ["C7"] and not listed.button.value
    readings._opened("photo.jpg", b"\xff\xd8\xff\xe0 no text")
    assert "Not done" in readings.told.value
    assert view.readings.value == ""
    assert "1 lines" in listed.button.description


def test_an_own_catalogue_and_what_is_none():
    view = plan_view("C1,10/16,elect", catalogue=read_catalogue(demo_path("parts-catalogue.csv")))
    view.catalogue.value = (
        "part,family,capacitance_uf,rated_v,rated_c,mounting,price\n"
        "MINE-1,aluminium general 105,10,16,105,radial,0.05\n"
    )
    assert "MINE-1" in view.order.value and "MINE-1" in view.route.card.value
    view.catalogue.value = "hello"
    assert "Not done" in view.measured.value
    assert len(view.route.stops) == 1


OWN_MAP = {
    "board": "amp",
    "side": "solder side",
    "edge": "fuse edge",
    "edge_lies": "left",
    "width_mm": "90",
    "height_mm": "",
    "places": [
        {"reference": "C1", "x_mm": "10", "y_mm": "10", "plus": "up"},
        {"reference": "C2", "x_mm": "40", "y_mm": "10", "plus": ""},
    ],
}


def test_the_learners_own_board_is_chosen_and_followed():
    own = board_map()
    view = plan_view("C1,10/16,elect\nC2,47/25,elect", own=own)
    view.which_board.value = "own"
    assert "Your own map is not a board yet" in view.summary.value
    own.drawing.typed = OWN_MAP
    assert "plus up, seen from the solder side with the fuse edge left" in view.route.card.value
    assert "Amp, 54 mm wide" in view.route.map.value
    view.route.done.click()
    assert "plus not known" in view.route.card.value
    view.which_board.value = "none"
    assert view.route.map.value == ""


MEASURED = "Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,9.9,5\nC2,20,80\nC7,1,1\n"


def test_measured_values_are_joined_as_they_are_typed():
    view = plan_view("C1,10/16,elect\nC2,47/25,elect")
    assert view.measured.value == ""
    view.readings.value = MEASURED
    assert stops_of(view) == ["C2"]
    assert "1 may stay as measured" in view.summary.value
    assert "Must go: C2" in view.measured.value
    assert "Measured, but not in the list: C7" in view.measured.value
    view.readings.value = ""
    assert (len(view.route.stops), view.measured.value) == (2, "")


def test_readings_that_are_no_table_leave_the_plan():
    view = plan_view("C1,10/16,elect", readings="Ref,C (µF)\nC1,<b>x</b>\nwhat?\n")
    assert len(view.route.stops) == 1
    assert "<b>" not in view.measured.value
    view.readings.value = "x" * 10 + "\n" * 200_001 + "y"
    assert "Not done" in view.measured.value
    assert len(view.route.stops) == 1


def test_order_follows_the_number_of_boards():
    catalogue = read_catalogue(demo_path("parts-catalogue.csv"))
    view = plan_view("C1-C4,10/16,elect", catalogue=catalogue)
    assert "for 1 board, spares among them" in view.order.value
    view.boards.value = 12
    assert "48 + " in view.order.value and "tokens in all" in view.order.value
    assert "14 years" in view.order.value
    view.parts_list.value = ""
    assert view.order.value == ""


OWN_LISTS = {
    "same references": "C3 470uF 16V elect\nC10 100uF 25V elect\nC21 33uF 16V elect\n",
    "some lines alike": "C1-C2,2200µF 25V,elect axial\nC21,47uF 10V,elect\nC23,4.7uF 63V,elect\n",
    "other board": "C401 220/10 elect radial\nC402 220/10 elect radial\nC403 1/50 elect\n",
}


def demo_view():
    texts = [demo_path(f"keyboard-{name}.csv") for name in ("parts", "measured")]
    listed, readings = (path.read_text(encoding="utf-8") for path in texts)
    return plan_view(listed, read_board(demo_path("keyboard-board.csv")), readings)


@pytest.mark.parametrize("own", OWN_LISTS.values(), ids=OWN_LISTS)
def test_nothing_of_the_demo_board_reaches_an_own_list(own):
    view = demo_view()
    assert view.plan.may_stay and view.route.map.value
    view.parts_list.value = own
    assert not view.plan.may_stay and view.plan.measured is None
    assert view.route.map.value == ""
    for item in view.plan.all_items:
        assert item.place is None and item.measured is None
        assert "as the old part" in item.polarity or item.new is None or not item.new.polar
    assert "nobody looked at your board" in view.summary.value
    view.readings.value = "Ref,C (µF),ESR @ 120 Hz (Ω)\nC10,98,0.4\nC402,215,0.1\n"
    measured = [item.reference for item in view.plan.all_items if item.measured]
    assert set(measured) <= {"C10", "C402"}


def test_a_mended_line_of_the_demo_loses_its_own_place_only():
    view = demo_view()
    first = view.plan.checklist[0]
    line = view.plan.source(first)
    before = {item.reference for item in view.plan.all_items if item.place}
    view.parts_list.value = view.parts_list.value.replace(line, line + " ")
    assert {item.reference for item in view.plan.all_items if item.place} == before
    other = next(one for one in view.plan.all_items if one.measured and one.place)
    line = view.plan.source(other)
    view.parts_list.value = view.parts_list.value.replace(line, line.replace(",", ",9", 1))
    now = {item.reference for item in view.plan.all_items if item.place}
    assert now < before and other.reference not in now
    assert "Changed by you" in view.summary.value


HIGH = "C1 47uF 16V elect\nC2 33uF 400V elect\nC3 10uF 160V elect axial\nC4 100uF 63V elect\n"


def test_what_is_above_60_volts_is_no_stop():
    view = plan_view(HIGH)
    assert stops_of(view) == ["C1"]
    assert "rl-unsafe" in view.waiting.value and "qualified person" in view.waiting.value
    assert "1 to change, 3 not yours to touch" in view.summary.value
    assert "rl-right" not in view.summary.value
