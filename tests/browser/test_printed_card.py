"""The bench card as Chromium prints it, on both papers."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pytest
import zxingcpp
from PIL import Image

from repairlib.faces.page.card import bench_card, marking_address
from tests.browser.pdf_text import pages_of

ADDRESS = "https://bench.example.org/repair/page/"
MARKINGS = ["104K", "220 16V", "T3.15A", "275V X2 0.1", "yellow violet red gold", "2R2", "4n7 1kV"]
WIDTHS = """() => [...document.querySelectorAll('.code')].map(one =>
  one.getBoundingClientRect().width)"""
MODULES = """() => [...document.querySelectorAll('.code img')].map(one =>
  +atob(one.src.split(',')[1]).match(/viewBox="0 0 (\\d+)/)[1])"""
CARDS = "() => [...document.querySelectorAll('.card > div:last-child')].map(one => one.innerText)"


@pytest.fixture(scope="module")
def card(browser):
    page = browser.new_page(viewport={"width": 800, "height": 1100}, device_scale_factor=3)
    page.set_content(bench_card(ADDRESS, MARKINGS * 3))
    page.emulate_media(media="print")
    return page


@pytest.mark.published("zxing-cpp, a reader of codes by other hands")
def test_every_code_of_the_sheet_is_read(card):
    seen = np.asarray(Image.open(BytesIO(card.screenshot(full_page=True))).convert("L"))
    held = [one.text for one in zxingcpp.read_barcodes(seen)]
    wanted = [marking_address(ADDRESS, marking) for marking in MARKINGS]
    assert sorted(held) == sorted([ADDRESS, *wanted * 3])


@pytest.mark.behaviour
def test_a_module_is_half_a_millimetre_or_more(card):
    for width, across in zip(card.evaluate(WIDTHS), card.evaluate(MODULES), strict=True):
        assert width * 25.4 / 96 / across >= 0.5


@pytest.mark.behaviour
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_no_card_is_torn_over_two_pages(card, paper):
    printed = pages_of(card.pdf(format=paper, prefer_css_page_size=True))
    assert len(printed) > 1
    for said in card.evaluate(CARDS):
        words = " ".join(said.split())
        assert any(words in page for page in printed), words
