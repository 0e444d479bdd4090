"""A lesson on the projector, 1280 × 720: every screen is whole, and its letters are large.

LESSONS=all python -m pytest -n 0 tests/browser/test_screens.py     every lesson
"""

from __future__ import annotations

import os

import pytest

from repairlib.learn import LESSONS
from repairlib.teach.screens import screens_page

SAMPLE = LESSONS if os.environ.get("LESSONS") == "all" else ("06-how-capacitors-age",)
ROOM = {"width": 1280, "height": 720}
LETTERS_PX = 24

# Of each screen: how much would have to be scrolled, and its smallest letters outside drawings.
MEASURED = """() => [...document.querySelector('main').children].map((one, number) => {
  show(number);
  const letters = [...one.querySelectorAll('*')].filter(it =>
    [...it.childNodes].some(node => node.nodeType === 3 && node.textContent.trim())
    && it.checkVisibility({visibilityProperty: true}))
    .map(it => parseFloat(getComputedStyle(it).fontSize) * (one.style.zoom || 1));
  return [one.scrollHeight - one.clientHeight, one.scrollWidth - one.clientWidth,
    Math.min(...letters), one.innerText];
})"""


@pytest.fixture
def opened(browser, tmp_path):
    def open_lesson(lesson):
        path = tmp_path / f"{lesson}.html"
        path.write_text(screens_page(lesson), encoding="utf-8")
        page = browser.new_page(viewport=ROOM)
        page.on("pageerror", lambda error: pytest.fail(str(error)))
        page.goto(path.as_uri())
        page.wait_for_function("document.getElementById('place').textContent")
        return page

    return open_lesson


@pytest.mark.parametrize("lesson", SAMPLE)
def test_nothing_is_scrolled_and_all_is_read_from_the_back(opened, lesson):
    page = opened(lesson)
    screens = page.evaluate(MEASURED)
    assert len(screens) > 20
    assert all(down <= 1 and across <= 1 for down, across, _, _ in screens)
    assert min(letters for _, _, letters, _ in screens) >= LETTERS_PX
    page.close()


def test_one_key_goes_on_and_the_choices_come_when_they_are_asked_for(opened):
    page = opened("04-polarity")
    place, choices = page.locator("#place"), page.locator("section.on .choices")
    assert place.inner_text().startswith("1 of ")
    for key, at in (("ArrowRight", 2), ("PageDown", 3), ("ArrowLeft", 2), ("Home", 1)):
        page.keyboard.press(key)
        assert place.inner_text().startswith(f"{at} of "), key
    while not choices.count():
        page.keyboard.press("PageDown")
    assert not choices.is_visible()
    page.keyboard.press("o")
    assert choices.is_visible()
    assert "left" in choices.inner_text().lower()
    page.close()
