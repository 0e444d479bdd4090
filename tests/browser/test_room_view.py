"""The room view in Chromium: at arm's length, on a telephone, in the dark, on paper, refreshed.

CLASS=all python -m pytest -n 0 tests/browser/test_room_view.py     30 members in all lessons too
"""

from __future__ import annotations

import os
import re

import pytest
from playwright.sync_api import expect

from repairlib.learn.exercise import LESSONS, ONE_EVENING
from repairlib.teach.mark_book import write_mark_book
from tests.browser.pdf_text import pages_of
from tests.browser.test_narrow import PALE
from tests.teach.rooms import MINUTE, NOON, evening, group_of

ALL = os.environ.get("CLASS") == "all"
SIZES = (12, 30) if ALL else (12,)
PROJECTOR, PHONE = {"width": 1280, "height": 720}, {"width": 390, "height": 844}
NOW = NOON + 31 * MINUTE
THIRD = "#l-03-capacitor-markings"
TOO_PALE = PALE.replace(".jp-OutputArea-output *, .jp-RenderedMarkdown *", "body *")
SMALLEST = """() => Math.min(...[...document.querySelectorAll('body *')].filter(one =>
  one.getClientRects().length && one.innerText?.trim()
  ).map(one => parseFloat(getComputedStyle(one).fontSize)))"""
# How far the window can be scrolled down and sideways.
BEYOND = """() => { const all = document.documentElement;
  return [all.scrollHeight - innerHeight, all.scrollWidth - innerWidth]; }"""


@pytest.fixture(scope="module")
def rooms(tmp_path_factory):
    """The folder of a group of 12 with one evening, and that of 30 with all lessons."""
    made = {}
    for size in SIZES:
        lessons, begun = (ONE_EVENING, 0.75) if size == 12 else (LESSONS, 0.6)
        made[size] = tmp_path_factory.mktemp("room")
        group = group_of(size, lessons)
        write_mark_book(made[size], group, evening(group, begun), every=600, at=NOW)
    return made


def opened(browser, folder, window=PROJECTOR, place="", **looks):
    page = browser.new_page(viewport=window, **looks)
    page.goto((folder / "marks" / "room.html").as_uri() + place)
    return page


def test_twelve_in_one_evening_need_no_scrolling_and_the_worst_question_is_seen(browser, rooms):
    page = opened(browser, rooms[12])
    down, sideways = page.evaluate(BEYOND)
    assert down <= 0 and sideways <= 0
    worst = page.locator(".panel ol li").first
    assert re.match(r"\d\d% wrong \(\d+ of 12\): 0\d q\d", worst.inner_text())
    place = worst.locator("a").get_attribute("href")
    expect(page.locator(place)).to_be_hidden()
    worst.locator("a").click()
    expect(page.locator(place)).to_be_visible()
    assert page.locator(f"{place} thead .hard").count() >= 1
    page.close()


@pytest.mark.parametrize("colours", ["light", "dark"])
def test_all_can_be_read(browser, rooms, colours):
    page = opened(browser, rooms[12], place=THIRD, color_scheme=colours)
    assert page.evaluate(SMALLEST) >= 12
    assert page.evaluate(TOO_PALE) == []
    page.close()


@pytest.mark.parametrize("size", SIZES)
def test_on_a_telephone_nothing_is_beside_the_page(browser, rooms, size):
    page = opened(browser, rooms[size], PHONE)
    for place in ("", THIRD, "#unsafe", "#practise", "#moved"):
        page.evaluate("place => { location.hash = place; }", place)
        assert page.evaluate(BEYOND)[1] <= 0, place
    assert page.evaluate(SMALLEST) >= 12
    page.close()


def test_it_comes_anew_by_itself_also_while_a_lesson_is_open(browser, tmp_path):
    group = group_of(3, ONE_EVENING[:3])
    write_mark_book(tmp_path, group, evening(group), every=2, at=NOW)
    pages = [opened(browser, tmp_path), opened(browser, tmp_path, place=THIRD)]
    pages.append(opened(browser, tmp_path, java_script_enabled=False))
    times = [page.locator("time").inner_text() for page in pages]
    write_mark_book(tmp_path, group, evening(group), every=2, at=NOW + MINUTE)
    for page, before in zip(pages, times, strict=True):
        expect(page.locator("time")).not_to_have_text(before, timeout=20_000)
    expect(pages[1].locator(THIRD)).to_be_visible()
    for page in pages:
        page.close()


def test_on_paper_each_page_is_numbered_and_each_row_whole(browser, rooms):
    for size in SIZES:
        page = opened(browser, rooms[size])
        printed = pages_of(page.pdf(prefer_css_page_size=True))
        assert len(printed) <= size
        for number, words in enumerate(printed, 1):
            assert f"page {number} of {len(printed)}" in words
            assert "For the instructor alone" in words
        assert "Unsafe answers" in printed[0] and "Explain to all" in printed[0]
        page.emulate_media(media="print")
        assert (
            page.evaluate("getComputedStyle(document.querySelector('tr')).breakInside") == "avoid"
        )
        page.close()
        if size == 12:  # the whole grid is on the first page, with shares and signs under it
            told = ("Alba Example", "Bruno Sample", "Wrong at first try, %", "unsafe before")
            at = [printed[0].rindex(words) for words in told]
            assert at == sorted(at)
