"""A newcomer's first minutes in lesson 00, as the command `lessons` opens it: by keys, by mouse.

LESSONS=all python -m pytest -n 0 tests/browser/test_first_minute.py     by mouse too
"""

from __future__ import annotations

import os
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.lab import WAIT_MS, lessons_opened

MOST_TABS = 80  # all of the lesson has fewer places that a key can reach
CHOSEN = {"q1": "Pull the plug", "q3": "Measure across it again"}
NUMBERS = {
    "Pull the plug": "1",
    "Wait some minutes": "2",
    "Discharge the capacitor": "3",
    "source, then measure": "4",
    "once more": "5",
    "Take the board": "6",
}


NAME = "it => it.getAttribute('aria-label') || it.labels[0].textContent"


class Mouse:
    """Points at what is wanted and clicks."""

    def __init__(self, page: Page):
        self.page = page

    def reach(self, control: Locator) -> None:
        control.click()

    press = tick = reach

    def write(self, field: Locator, text: str) -> None:
        self.reach(field)
        self.page.keyboard.press("ControlOrMeta+a")
        self.page.keyboard.type(text)

    def choose(self, field: Locator, option: str) -> None:
        field.select_option(option)


class Keys(Mouse):
    """Never touches a mouse: goes on with Tab from where the last key was typed."""

    def reach(self, control: Locator) -> None:
        here = "it => it === document.activeElement"
        for _ in range(MOST_TABS):
            if control.evaluate(here):
                return
            self.page.keyboard.press("Tab")
        raise AssertionError(f"{control} is not reached by {MOST_TABS} tabs")

    def press(self, control: Locator) -> None:
        self.reach(control)
        self.page.keyboard.press("Enter")

    def tick(self, control: Locator) -> None:
        self.reach(control)
        self.page.keyboard.press("Space")

    def choose(self, field: Locator, option: str) -> None:
        self.reach(field)
        self.page.keyboard.type(option)
        chosen = re.compile("^" + option.replace(" ", r"\s"))
        expect(field.locator("option:checked")).to_have_text(chosen)


@pytest.fixture
def lesson(browser, tmp_path):
    """Lesson 00 as it is opened for one who has never been here."""
    with lessons_opened(tmp_path) as address:
        page = browser.new_page(viewport={"width": 1366, "height": 768})
        expect.set_options(timeout=WAIT_MS)
        page.set_default_timeout(WAIT_MS)
        page.goto(address)
        expect(page.locator(".rl-card").last).to_be_attached()  # all cells have run
        yield page
        page.close()


def card(page: Page, name: str) -> Locator:
    return page.locator(".rl-card").filter(has_text=f"({name})")


@pytest.mark.parametrize("hand", [Keys, Mouse] if os.environ.get("LESSONS") == "all" else [Keys])
def test_a_newcomer_reads_a_part_says_a_name_and_answers(lesson, hand):
    """The lesson has run by itself and stays at its beginning; there the first field waits."""
    does = hand(lesson)
    cells = lesson.locator(".jp-Cell").count()
    quick = lesson.locator(".rl-quick").first
    marking = lesson.get_by_label("Marking").first
    expect(marking).to_be_in_viewport()
    expect(lesson.get_by_role("heading", name=re.compile("Start here"))).to_be_in_viewport()

    does.write(marking, "220")
    expect(quick).to_contain_text(re.compile(r"22\s+pF"))
    does.choose(lesson.get_by_label("Read it as").first, "aluminium SMD can")
    expect(quick).to_contain_text(re.compile(r"220\s+µF"))

    does.write(lesson.get_by_role("textbox", name="Your name"), f"newcomer by {hand.__name__}")
    does.write(lesson.get_by_role("textbox", name="Group", exact=True), "evening")
    does.press(lesson.get_by_role("button", name="Show my questions"))
    expect(lesson.get_by_text("is answering")).to_contain_text(hand.__name__)

    for name, option in CHOSEN.items():
        does.tick(card(lesson, name).get_by_role("radio", name=option))
        expect(card(lesson, name)).to_contain_text("Right, ")
    for box in card(lesson, "q4").get_by_role("combobox").all():
        step = box.evaluate(NAME)
        does.choose(box, next(number for said, number in NUMBERS.items() if said in step))
    expect(card(lesson, "q4")).to_contain_text("Right, 3 of 3")
    expect(lesson.get_by_text("6 of 13 points").first).to_be_attached()
    expect(lesson.locator(".jp-Cell")).to_have_count(cells)
