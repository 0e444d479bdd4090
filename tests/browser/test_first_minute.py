"""The first minute, as the command `lessons` gives it: nothing to run, nothing to scroll."""

from __future__ import annotations

import re

from playwright.sync_api import expect

from tests.browser.lab import WAIT_MS, lessons_opened


def test_lesson_00_runs_by_itself_and_stays_at_its_beginning(browser, tmp_path):
    with lessons_opened(tmp_path) as address:
        page = browser.new_page(viewport={"width": 1366, "height": 768})
        expect.set_options(timeout=WAIT_MS)
        page.goto(address)
        field = page.get_by_label("Marking").first
        expect(field).to_be_in_viewport()
        expect(page.locator(".rl-card").last).to_be_attached()  # all cells have run
        expect(page.get_by_role("heading", name=re.compile("Start here"))).to_be_in_viewport()
        field.fill("47/25")
        expect(page.locator(".rl-quick").first).to_contain_text(re.compile(r"47\s+µF, 25\s+V"))
        page.close()
