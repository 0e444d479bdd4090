"""The first minute, as the command `lessons` gives it: nothing to run, nothing to scroll."""

from __future__ import annotations

import os
import re

import pytest
from playwright.sync_api import expect, sync_playwright

from tests.browser.lab import BROWSER, LAUNCH, WAIT_MS, lessons_opened

pytestmark = pytest.mark.skipif(
    BROWSER is None and "CI" not in os.environ,
    reason="no chromium, chromium-browser or google-chrome is installed",
)


def test_lesson_00_runs_by_itself_and_stays_at_its_beginning(tmp_path):
    assert BROWSER
    with lessons_opened(tmp_path) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=BROWSER, args=list(LAUNCH))
        page = browser.new_page(viewport={"width": 1366, "height": 768})
        expect.set_options(timeout=WAIT_MS)
        page.goto(address)
        field = page.get_by_label("Marking").first
        expect(field).to_be_in_viewport()
        expect(page.locator(".rl-card").last).to_be_attached()  # all cells have run
        expect(page.get_by_role("heading", name=re.compile("Start here"))).to_be_in_viewport()
        field.fill("47/25")
        expect(page.locator(".rl-quick").first).to_contain_text(re.compile(r"47\s+µF, 25\s+V"))
        browser.close()
