"""The map and the words as a learner sees them: as a page, not as raw text; the words on paper."""

from __future__ import annotations

import re

from playwright.sync_api import expect

from repairlib.faces.panels.word_list import words_page
from tests.browser.lab import WAIT_MS

SHEET = re.compile(rb"/Type /Page\b")


def test_the_map_opens_as_a_page_whose_links_open_lessons_and_words(browser, address):
    page = browser.new_page(viewport={"width": 1366, "height": 768})
    expect.set_options(timeout=WAIT_MS)
    page.goto(address.replace("00-start-here.ipynb", "README.md"))
    expect(page.get_by_role("heading", name="Your way through the lessons")).to_be_visible()
    picture = page.get_by_role("img", name="The path through the lessons")
    expect(picture).to_have_js_property("naturalWidth", 352)
    page.get_by_role("link", name="list of words").click()
    expect(page.get_by_role("heading", name="The words of this workbook")).to_be_visible()
    page.get_by_role("tab", name="README.md").click()
    page.get_by_role("link", name="04 Polarity").first.click()
    expect(page.locator(".jp-Notebook h1")).to_contain_text("Polarity")
    page.close()


def test_the_words_fill_at_most_two_sheets_of_paper(browser):
    page = browser.new_page()
    page.set_content(words_page())
    printed = page.pdf(format="A4", prefer_css_page_size=True)
    page.close()
    assert 1 <= len(SHEET.findall(printed)) <= 2
