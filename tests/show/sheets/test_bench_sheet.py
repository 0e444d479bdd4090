"""The bench sheet: everything that a person at the bench needs, and nothing that runs."""

import re
from html.parser import HTMLParser

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.core.tables import demo_path
from repairlib.health.measured import read_measured_file
from repairlib.recap import plan, plan_file, read_board, read_catalogue
from repairlib.show.sheets import bench_sheet, write_bench_sheet

# Five steps before power, and three of them again once the power supply is done.
ON_THE_WAY = 5 + 3


@pytest.fixture(scope="module")
def demo():
    board = read_board(demo_path("keyboard-board.csv"))
    return plan_file(demo_path("keyboard-parts.csv"), board)


class Tags(HTMLParser):
    """Checks that every tag is closed, and keeps the text."""

    def __init__(self):
        super().__init__()
        self.open, self.text, self.boxes = [], "", 0

    def handle_starttag(self, tag, attributes):
        self.boxes += ("class", "box") in attributes
        if tag not in ("meta", "br", "img"):
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text += f" {data} "


def read_page(page):
    tags = Tags()
    tags.feed(page)
    assert tags.open == []
    return tags


def test_every_reference_and_caution_is_on_the_sheet(demo):
    tags = read_page(bench_sheet(demo))
    for item in demo.all_items:
        assert re.search(rf"\b{item.reference}\b", tags.text)
    for key in demo.cautions:
        assert HAZARDS[key].title in tags.text
        assert HAZARDS[key].defer in tags.text
    # By hand: of the three judged and the one held, C9 is on the mains and has no box.
    settled = len(demo.held) + len(demo.judged) - 1 + len(demo.order.lines)
    assert tags.boxes == ON_THE_WAY + 2 * len(demo.items) + settled


def test_polarity_and_source_line_stand_in_the_row(demo):
    page = bench_sheet(demo)
    row = next(row for row in page.split("<tr>") if "<b>C23</b>" in row)
    assert "plus down" in row
    assert "<small>line 18</small>" in row  # of the list, counted by hand


def test_reasons_for_another_value_are_printed(demo):
    assert "250\xa0µF is no longer made: 220\xa0µF is 12.0 % less, within ±20 %" in bench_sheet(
        demo
    )


def test_text_of_the_list_cannot_become_a_page():
    made = plan("C1,10/16,<script>alert(1)</script> el\nC2,'\"><b>,el\nC3 & <i>\n", name="<u>")
    page = bench_sheet(made)
    assert "<script" not in page
    assert "><b>,el" not in page
    assert "<i>" not in page
    assert "<u>" not in page
    read_page(page)


def test_sheet_needs_nothing_from_elsewhere(demo):
    page = bench_sheet(demo)
    page = page.replace('href="#', "")  # a strip of the map shows a piece of the whole one
    assert not re.search(r"(src|href)=|url\(|@import|https?:", page)
    assert "size: A4" in page


def test_unreadable_lines_are_printed():
    tags = read_page(bench_sheet(plan("C1,10/16,el\nC9-C2,10/16,el\n")))
    assert "C9-C2,10/16,el" in tags.text
    assert "does not go up" in tags.text


def test_a_lone_surrogate_is_written_out(tmp_path):
    saved = write_bench_sheet(plan("C1,10/16,el \ud800\n"), tmp_path / "sheet.html")
    assert r"el \ud800" in saved.path.read_text("utf-8")


def test_existing_sheet_is_left_alone(tmp_path):
    (tmp_path / "sheet.html").write_text("mine")
    with pytest.raises(RepairlibError, match="nothing was overwritten"):
        write_bench_sheet(plan("C1,10/16,el\n"), tmp_path / "sheet.html")
    assert (tmp_path / "sheet.html").read_text() == "mine"


def test_measured_parts_and_order_are_on_the_sheet():
    board = read_board(demo_path("keyboard-board.csv"))
    made = plan_file(
        demo_path("keyboard-parts.csv"),
        board,
        read_measured_file(demo_path("keyboard-measured.csv")),
        read_catalogue(demo_path("parts-catalogue.csv")),
        12,
    )
    tags = read_page(bench_sheet(made))
    for title in ("These may stay", "These must go", "The readings do not tell", "To order"):
        assert title in tags.text
    for line in made.order.lines:
        assert line.part.part in tags.text
        assert line.expected.life in tags.text
    settled = len(made.held) + len(made.judged) - 1 + len(made.may_stay) + len(made.order.lines)
    assert tags.boxes == ON_THE_WAY + 2 * len(made.items) + settled
