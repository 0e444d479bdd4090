"""A JupyterLab, a browser and a page for the tests of this folder."""

from __future__ import annotations

import os

import pytest
from playwright.sync_api import expect, sync_playwright

from tests.browser.lab import BROWSER, LAUNCH, WAIT_MS, lessons_opened, running_lab
from tests.browser.page_server import PageServer, build_for_tests


@pytest.fixture(scope="module")
def lab(tmp_path_factory):
    with running_lab(tmp_path_factory.mktemp("lab")) as address:
        yield address


@pytest.fixture(scope="session")
def address(tmp_path_factory):
    """Where the command `lessons` opens lesson 00, for a learner who has done nothing yet."""
    with lessons_opened(tmp_path_factory.mktemp("learner")) as address:
        yield address


@pytest.fixture(scope="session")
def built_page(tmp_path_factory):
    """The folder of the page, built as by the command. Copy it before you change anything in it."""
    shared = tmp_path_factory.getbasetemp().parent
    return build_for_tests(tmp_path_factory.mktemp("page") / "built", shared)


@pytest.fixture(scope="session")
def page_address(built_page):
    """Where the page is served, for those who only look at it."""
    server = PageServer(built_page)
    yield server.address
    server.stop()


@pytest.fixture(scope="module")
def browser():
    """Closed after each file: while it is open, an event loop runs in this process, and a panel
    that finds one writes later than it does without."""
    if BROWSER is None and "CI" not in os.environ:
        pytest.skip("no chromium, chromium-browser or google-chrome is installed")
    assert BROWSER, "CI needs Chromium: apt-get install chromium"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=BROWSER, args=list(LAUNCH))
        yield browser
        browser.close()


@pytest.fixture
def page(browser, tmp_path):
    """A fresh page. When the test fails, a screenshot of it is kept and its path printed."""
    page = browser.new_page(viewport={"width": 1280, "height": 1000})
    page.set_default_timeout(WAIT_MS)
    expect.set_options(timeout=WAIT_MS)
    page.on("dialog", lambda dialog: dialog.accept())  # "leave the page?" on reload
    yield page
    page.screenshot(path=tmp_path / "page.png")
    print(f"screenshot: {tmp_path / 'page.png'}")  # pytest shows it when the test failed
    page.close()
