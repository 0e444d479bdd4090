"""The first minute, as the command `lessons` gives it: nothing to run, nothing to scroll."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from contextlib import contextmanager

import pytest
from playwright.sync_api import expect, sync_playwright

from tests.browser.lab import BROWSER, LAUNCH, WAIT_MS, free_port, stop
from tests.refresh import ROOT

pytestmark = pytest.mark.skipif(
    BROWSER is None and "CI" not in os.environ,
    reason="no chromium, chromium-browser or google-chrome is installed",
)


@contextmanager
def lessons_opened(home):
    """The command as a learner types it; gives the address that it prints."""
    command = [sys.executable, "-m", "repairlib", "lessons", "--port", str(free_port())]
    quiet = {
        name: value for name, value in os.environ.items() if name not in ("DISPLAY", "BROWSER")
    }
    server = subprocess.Popen(
        command,
        cwd=ROOT,
        env=quiet | {"REPAIRLIB_HOME": str(home), "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    )
    try:
        lines = iter(server.stdout.readline, "")
        yield next(found[0] for line in lines if (found := re.search(r"http\S+", line)))
    finally:
        stop(server)


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
