"""The plan view: what stands in it after typing, ticking, and pasting nonsense."""

from base64 import b64decode

import pytest

from repairlib.core.tables import demo_path
from repairlib.faces.panels.recap_plan import SHOWN_ITEMS, plan_view
from repairlib.recap import read_board, read_catalogue


@pytest.fixture(scope="module")
def demo():
    text = demo_path("keyboard-parts.csv").read_text("utf-8")
    return plan_view(text, read_board(demo_path("keyboard-board.csv")))


def test_demo_list_is_planned(demo):
    assert "45 lines read, 1 need you" in demo.summary.value
    assert "23 to replace" in demo.summary.value
    assert "Mains voltage can kill" in demo.summary.value
    assert "no voltage rating stated" in demo.waiting.value
    assert len(demo.ticks) == 23
    assert demo.ticks[0].description.replace("\xa0", " ").startswith("C4: 470 µF 16 V")


def test_ticking_moves_on_to_the_next_part(demo):
    before = demo.picture.value
    demo.ticks[0].value = True
    assert demo.picture.value != before
    assert "C4: 78 mm from the left, 18 mm from the top, positive end to the top, done" in (
        demo.picture.value
    )
    demo.ticks[0].value = False
    assert demo.picture.value == before


def test_ticks_stay_when_the_list_is_mended():
    view = plan_view("C1,10/16,elect\nC2,47/25,elect")
    view.ticks[1].value = True
    view.parts_list.value = ""
    view.parts_list.value = "C1,10/16,elect\nC2,47/25,elect\nC3,47/25,elect"
    assert [tick.value for tick in view.ticks] == [False, True, False]


def test_typing_plans_anew():
    view = plan_view("C1,10/16,elect")
    view.parts_list.value = "C1,10/16,elect\nC2,47/25,elect\nC9-C2,.1\n"
    assert len(view.ticks) == 2
    assert "does not go up" in view.waiting.value
    assert view.picture.value == ""


@pytest.mark.parametrize("text", ["", "   ", "\n\n"])
def test_no_list_is_told_and_clears_the_answer(text):
    view = plan_view("C1,10/16,elect")
    view.parts_list.value = text
    assert "there is no line in it" in view.summary.value
    assert (view.plan, view.ticks, view.table.value, view.files.value) == (None, [], "", "")
    view.parts_list.value = "C1,10/16,elect"
    assert len(view.ticks) == 1


def test_text_of_the_list_stays_text():
    view = plan_view("C1,10/16,<script>alert(1)</script> elect\nC2 <b>,?\n")
    shown = view.summary.value + view.table.value + view.waiting.value
    assert "<script" not in shown
    assert "<b>" not in shown


def test_links_hold_the_files(demo):
    link = demo.files.value.partition("data:text/html;base64,")[2].partition('"')[0]
    assert "<!DOCTYPE html>" in b64decode(link).decode("utf-8")
    link = demo.files.value.partition("data:text/csv;base64,")[2].partition('"')[0]
    assert b64decode(link).decode("utf-8-sig").startswith('"reference"')
    link = demo.files.value.rpartition("data:text/csv;base64,")[2].partition('"')[0]
    assert b64decode(link).decode("utf-8-sig").startswith('"part","what","places","needed"')


def test_long_lists_are_shown_in_part():
    view = plan_view("\n".join(f"C{number},10/16,elect" for number in range(1, 500)))
    assert len(view.ticks) == SHOWN_ITEMS
    assert "The first 120 of 499" in view.table.value


MEASURED = "Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,9.9,5\nC2,20,80\nC7,1,1\n"


def test_measured_values_are_joined_as_they_are_typed():
    view = plan_view("C1,10/16,elect\nC2,47/25,elect")
    assert view.measured.value == ""
    view.readings.value = MEASURED
    assert [tick.description[:3] for tick in view.ticks] == ["C2:"]
    assert "1 may stay as measured" in view.summary.value
    assert "Must go: C2" in view.measured.value
    assert "Measured, but not in the list: C7" in view.measured.value
    view.readings.value = ""
    assert (len(view.ticks), view.measured.value) == (2, "")


def test_readings_that_are_no_table_leave_the_plan():
    view = plan_view("C1,10/16,elect", readings="Ref,C (µF)\nC1,<b>x</b>\nwhat?\n")
    assert len(view.ticks) == 1
    assert "<b>" not in view.measured.value
    view.readings.value = "x" * 10 + "\n" * 200_001 + "y"
    assert "Not done" in view.measured.value
    assert len(view.ticks) == 1


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
    assert view.plan.may_stay and view.picture.value
    view.parts_list.value = own
    assert not view.plan.may_stay and view.plan.measured is None
    assert view.picture.value == ""
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


def test_what_is_above_60_volts_is_no_box_to_tick():
    view = plan_view(HIGH)
    assert [tick.description.partition(":")[0] for tick in view.ticks] == ["C1"]
    assert "rl-unsafe" in view.table.value and "qualified person" in view.table.value
    assert "3 of those to replace are not yours to touch" in view.summary.value
    assert "rl-right" not in view.summary.value
