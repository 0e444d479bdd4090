"""What one works from: the order of the sheet, its boxes, both sides of the board, its pages."""

import re

import pytest

from repairlib.core.tables import demo_path
from repairlib.health import read_measured_file
from repairlib.recap import Board, Position, plan, plan_file, read_board
from repairlib.recap.catalogue import parse_catalogue
from repairlib.show.sheets import bench_sheet
from repairlib.show.sheets.before_work import STEPS
from tests.show.sheets.test_bench_sheet import read_page

LISTED = "C1 10uF 16V elect radial\nC2 10uF 450V elect radial\n"
SEEN = "component side, fuse edge left"


@pytest.fixture(scope="module")
def sheet():
    board = read_board(demo_path("keyboard-board.csv"))
    return bench_sheet(plan_file(demo_path("keyboard-parts.csv"), board))


def board(seen_from=SEEN):
    places = [
        Position(f"C{at}", "", 20 * at, 15, plus="left", seen_from=seen_from) for at in (1, 2)
    ]
    return Board("amp", places)


def in_order(page, *pieces):
    """Each piece once or more, the first of each behind that of the one before."""
    at = [page.index(piece) for piece in pieces]
    return at == sorted(at)


def rows_of(page, reference):
    return [row for row in page.split("<tr>") if f"<b>{reference}</b>" in row]


def test_what_one_works_from_comes_first_and_what_one_looks_up_last(sheet):
    assert in_order(
        sheet,
        "<h1>Recap: keyboard</h1>",
        "Your name",
        "List: <b>keyboard-parts.csv</b>",
        '<ol class="steps"',
        'class="maps"',
        "Take out and fit, in this order",
        "Step 1: power supply",
        "On hold",
        "<h2>To order",
        "<h2>The rules behind this plan",
        "<h2>Cautions in full",
    )


def test_the_order_has_a_page_of_its_own(sheet):
    order, looked_up = sheet.split('<section class="new-page">')[1:]
    assert order.startswith("<h2>To order") and order.count("<h2>") == 1
    assert "One spare for each ten" not in order and "One spare for each ten" in looked_up
    assert ".new-page { break-before: page; }" in sheet


def test_nothing_to_order_leaves_no_empty_page():
    assert bench_sheet(plan("C1 100n 50V film\n")).count('<section class="new-page">') == 1


@pytest.mark.behaviour
def test_the_boxes_stand_in_the_order_of_work(sheet):
    steps = sheet.partition('<ol class="steps"')[2].partition("</ol>")[0]
    assert steps.count('class="box"') == 5
    assert [title for title, _ in STEPS] == [
        "Plug out",
        "Discharged",
        "Measured",
        "Before full power",
        "First power-up",
    ]
    assert in_order(steps, *[title for title, _ in STEPS])
    assert "Above 60 V dc: stop, hand it on" in steps  # ES1 of IEC 62368-1
    assert "Supply voltages tested in steps" in steps


@pytest.mark.behaviour
def test_after_the_supply_the_set_is_made_dead_again(sheet):
    row = next(row for row in sheet.split("<tr>") if "The power supply is done" in row)
    assert in_order(row, "test its voltages now", "plug out", "discharged", "measured")


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "listed",
    [
        "C2 10uF 450V elect radial",  # to fit, above 60 V dc
        "C2 10uF 450V elect radial ???",  # on hold
        "C2 0.1uF 250VAC X2",  # to judge, on the mains
        "C2 250uF 450V 1% elect radial",  # no such value is made
    ],
)
def test_what_is_handed_on_has_no_box_anywhere(listed):
    shop = parse_catalogue(
        "part,family,capacitance_uf,rated_v,rated_c,life_h,mounting,price\n"
        "HIGH,aluminium general 105,10,450,105,2000,radial,1\n"
    )
    page = bench_sheet(plan(f"C1 10uF 16V elect radial\n{listed}\n", catalogue=shop))
    rows = rows_of(page, "C2")
    assert rows and not any('class="box"' in row or "tick" in row for row in rows)
    assert all('class="box"' in row for row in rows_of(page, "C1"))
    ordered = [row for row in page.split("<tr>") if re.search(r"what.*>C2<", row)]
    assert not any('class="box"' in row for row in ordered)
    assert in_order(page, "Not yours: C2.", "A qualified person makes these dead", '<ol class="st')


@pytest.mark.behaviour
def test_both_sides_stand_there_with_their_names(sheet):
    first, second = re.findall("<figcaption>(.*?)</figcaption>", sheet)
    assert "seen from the component side with the connector edge down" in first
    assert "seen from the solder side with the connector edge down: mirrored" in second
    assert sheet.count('class="drawn"') == 2


@pytest.mark.behaviour
def test_a_board_mapped_from_the_solder_side_names_its_sides_too():
    page = bench_sheet(plan(LISTED, board("solder side, fuse edge left")))
    first, second = re.findall("<figcaption>(.*?)</figcaption>", page)
    assert "component side with the fuse edge right" in first and "mirrored" not in first
    assert "solder side with the fuse edge left: mirrored" in second


def test_a_board_of_which_no_side_is_stated_has_a_place_to_write_it():
    (only,) = re.findall("<figcaption>(.*?)</figcaption>", bench_sheet(plan(LISTED, board(""))))
    assert "side not stated" in only and 'class="write"' in only


def test_without_a_board_there_are_two_squared_fields():
    page = bench_sheet(plan(LISTED))
    assert page.count('aria-label="squared field for the') == 2
    captions = re.findall("<figcaption>(.*?)</figcaption>", page)
    assert [caption.partition(",")[0] for caption in captions] == ["Component side", "Solder side"]
    read_page(page)


@pytest.mark.behaviour
def test_the_short_cautions_stand_where_they_can_hurt(sheet):
    assert in_order(
        sheet,
        "A capacitor keeps its charge",
        "Above 60 V dc, or with banks of large capacitors, leave it to a qualified person",
        '<ol class="steps"',
        "Hot tools and hot parts start fires",
        "Flux smoke harms lungs",
        "Step 1: power supply",
    )


def test_a_special_hazard_is_told_on_the_first_page():
    head = bench_sheet(plan("C1 4uF 400VAC motor run, oil\n")).partition('<ol class="steps"')[0]
    assert "Old motor-run, ballast and oil-paper capacitors can hold PCB oil" in head


def test_every_page_carries_title_and_number(sheet):
    assert '@top-left { content: "Recap\\3a  keyboard"' in sheet
    assert 'content: "page " counter(page) " of " counter(pages)' in sheet


def test_rows_stay_whole_and_titles_stay_with_what_follows(sheet):
    assert "tr { break-inside: avoid; }" in sheet
    assert "tr:has(.across) { break-after: avoid; }" in sheet
    for heading in ("h2", "h3"):
        assert re.search(rf"^{heading} {{[^}}]*break-after: avoid", sheet, re.M)


def test_each_cell_carries_its_heading_for_a_narrow_screen(sheet):
    (row,) = rows_of(sheet, "C23")
    labels = re.findall('data-label="(.*?)"', row)
    assert labels == ["Place", "Take out", "Fit", "Plus", "Tick"]


@pytest.mark.parametrize(
    ("name", "called"),
    [
        ("keyboard-parts.csv", "keyboard"),
        ("valve_radio.txt", "valve radio"),
        ("parts-list.csv", "amp"),  # the board says it
        ("the list", "amp"),
    ],
)
def test_the_title_names_the_set(name, called):
    assert f"<h1>Recap: {called}</h1>" in bench_sheet(plan(LISTED, board(), name=name))


def test_a_set_without_a_name_gets_it_by_hand():
    page = bench_sheet(plan(LISTED))
    assert '<h1>Recap: <span class="write"></span></h1>' in page
    assert "<title>Recap, bench sheet</title>" in page


@pytest.mark.behaviour
def test_a_part_above_60_volts_that_measures_as_new_stays_handed_on(tmp_path):
    readings = tmp_path / "readings.csv"
    readings.write_text("Ref,C (µF),ESR @ 120 Hz (Ω)\nC1,10,0.5\n", encoding="utf-8")
    made = plan("C1 10uF 100V elect\n", measured=read_measured_file(readings))
    assert [item.reference for item in made.may_stay] == ["C1"]
    page = bench_sheet(made)
    assert "Not yours: C1." in page
    measured = page.partition("These may stay")[2].partition("</table>")[0]
    assert "C1" in measured and 'class="box"' not in measured
