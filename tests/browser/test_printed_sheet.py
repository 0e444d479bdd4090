"""The bench sheet as Chromium prints it, and on a telephone."""

from __future__ import annotations

import re

import pytest

from repairlib.core.tables import demo_path
from repairlib.health import read_measured_file
from repairlib.recap import plan, plan_file, read_board, read_catalogue
from repairlib.show.sheets import bench_sheet
from tests.browser.pdf_text import pages_of

PHONE, DESK = {"width": 390, "height": 844}, {"width": 1366, "height": 768}
SMALLEST_LETTERS = """() => Math.min(...[...document.querySelectorAll('body *')].filter(one =>
  !one.closest('svg') && one.getClientRects().length && one.innerText.trim()
  ).map(one => parseFloat(getComputedStyle(one).fontSize)))"""
SCALES = """() => [...document.querySelectorAll('.maps svg')].filter(one =>
  one.getClientRects().length).map(one => one.clientWidth / one.viewBox.baseVal.width)"""


@pytest.fixture(scope="module")
def open_page(browser):
    """Opens a page of HTML in a window of a size."""

    def opened(content: str, window: dict = DESK, colours: str = "light"):
        page = browser.new_page(viewport=window, color_scheme=colours)
        page.set_content(content)
        return page

    return opened


@pytest.fixture(scope="module")
def demo() -> str:
    made = plan_file(
        demo_path("keyboard-parts.csv"),
        read_board(demo_path("keyboard-board.csv")),
        read_measured_file(demo_path("keyboard-measured.csv")),
        read_catalogue(demo_path("parts-catalogue.csv")),
    )
    return bench_sheet(made)


@pytest.fixture(scope="module")
def printed(open_page, demo) -> list[str]:
    """The words of each page of the demo."""
    return pages_of(open_page(demo).pdf(prefer_css_page_size=True))


def test_the_first_page_holds_map_boxes_and_the_beginning_of_the_work(printed):
    first = printed[0]
    told = ["Recap: keyboard", "Your name", "Date", "keyboard-parts.csv", "Plug out", "Discharged"]
    told += ["Measured", "Before full power", "First power-up", "seen from the component side"]
    told += ["seen from the solder side", "Take out and fit", "Step 1", "plus up", "plus seen"]
    at = [first.index(piece) for piece in told]
    assert at == sorted(at)
    assert len(re.findall(r"\bC46\b", first)) == 2  # on both sides of the board


def test_each_page_carries_its_number(printed):
    assert 5 <= len(printed) <= 8
    for number, words in enumerate(printed, 1):
        assert f"Recap: keyboard page {number} of {len(printed)} " in words


def test_the_order_is_alone_on_its_page(printed):
    (order,) = (words for words in printed if "To order: " in words)
    assert order.partition("To order: ")[0].endswith(f"of {len(printed)} ")
    assert "Step" not in order and "Measured" not in order and "JUN-2200-25" in order


def test_rules_and_cautions_in_full_come_last(printed):
    at = next(at for at, words in enumerate(printed) if "To order: " in words)
    for told in ("Order of fitting", "The rules behind this plan", "Collect the waste"):
        assert all(told not in words for words in printed[: at + 1])
        assert any(told in words for words in printed[at + 1 :])


def test_no_page_ends_with_a_title_of_a_step(open_page):
    for count in range(4, 16, 2):
        lines = [f"C{at} 10uF 16V elect radial" for at in range(count)]
        lines += [f"C{at} 2200uF 25V elect radial" for at in range(20, 28)]
        page = open_page(bench_sheet(plan("\n".join(lines))))
        for words in pages_of(page.pdf(prefer_css_page_size=True)):
            assert not re.search(r"Step \d: [^:]{0,40}$", words.strip())
        page.close()


@pytest.mark.parametrize("listed", ["keyboard", "no board"])
def test_a_telephone_needs_no_pushing_sideways(open_page, demo, listed):
    content = demo if listed == "keyboard" else bench_sheet(plan("C1 10uF 16V elect\n" * 3))
    page = open_page(content, PHONE)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.evaluate(SMALLEST_LETTERS) >= 12
    page.close()


@pytest.mark.parametrize("window", [PHONE, {"width": 820, "height": 1180}, DESK])
def test_drawings_stand_in_their_own_size(open_page, demo, window):
    """The tests of drawings hold letters of 12 units; here a unit is a pixel."""
    page = open_page(demo, window)
    scales = page.evaluate(SCALES)
    assert len(scales) == (2 if window is DESK else 6) and min(scales) > 0.99
    page.close()


def test_rows_are_blocks_with_their_headings_on_a_telephone(open_page, demo):
    page = open_page(demo, PHONE)
    cell = page.locator("td.plus").first
    assert cell.evaluate("one => getComputedStyle(one).display") == "block"
    assert cell.evaluate("one => getComputedStyle(one, '::before').content") == '"Plus"'
    page.close()


def test_it_is_black_on_white_in_a_dark_room_too(open_page, demo):
    page = open_page(demo, PHONE, "dark")
    colours = "one => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor]"
    assert page.locator("body").evaluate(colours) == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    page.close()
