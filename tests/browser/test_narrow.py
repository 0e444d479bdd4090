"""A lesson on a phone and at twice the size: nothing runs out of the page, and all can be read.

LESSONS=all python -m pytest -n 0 tests/browser/test_narrow.py     every lesson, light and dark
"""

from __future__ import annotations

import os
import re
from itertools import product

import pytest
from playwright.sync_api import expect

from tests.browser.lab import WAIT_MS, lessons_opened
from tests.refresh import lesson_names

THEMES = "jupyter/settings/@jupyterlab/apputils-extension/themes.jupyterlab-settings"
A_PHONE = {"width": 390, "height": 844}
TWICE_THE_SIZE = {"width": 683, "height": 384}
A_LAPTOP = {"width": 1366, "height": 768}
EVERY = [name for name in lesson_names() if name[0].isdigit()]
# In each run one lesson in each theme.
SAMPLE = [("address", "00-start-here"), ("dark", "04-polarity")]
ASKED = product(("address", "dark"), EVERY) if os.environ.get("LESSONS") == "all" else SAMPLE

OPEN_FOLDS = "document.querySelectorAll('.jp-Notebook details').forEach(one => one.open = true)"

# What reaches beyond the notebook's right edge, or can be scrolled sideways.
OUT = """() => {
  const edge = document.querySelector('.jp-Notebook').getBoundingClientRect().right + 1;
  const typed = ['INPUT', 'SELECT', 'TEXTAREA', 'BUTTON', 'OPTION'];
  return [...document.querySelectorAll('.jp-OutputArea-output *, .jp-RenderedMarkdown, ' +
      '.jp-RenderedMarkdown *')].filter(one => {
    const look = getComputedStyle(one);
    if (!one.offsetParent || one.closest('svg, .jp-InputArea-editor')) return false;
    if (look.position === 'absolute' && look.clipPath !== 'none') return false;  // read aloud only
    const scrolls = look.overflowX !== 'visible' && one.scrollWidth > one.clientWidth + 2;
    return one.getBoundingClientRect().right > edge
      || one.clientWidth && scrolls && !typed.includes(one.tagName);
  }).map(one => one.outerHTML.slice(0, 200));
}"""

# Text whose contrast to what lies under it is below 4.5:1 (WCAG 2.1, 1.4.3).
PALE = """() => {
  const numbers = colour => {
    const found = colour.match(/[\\d.]+/g).map(Number);
    return found.length < 4 ? [...found, 1] : found;
  };
  const over = (upper, lower) =>
    [0, 1, 2].map(at => upper[at] * upper[3] + lower[at] * (1 - upper[3])).concat(1);
  const linear = value => value <= .03928 ? value / 12.92 : ((value + .055) / 1.055) ** 2.4;
  const light = colour => [.2126, .7152, .0722].reduce(
    (sum, part, at) => sum + part * linear(colour[at] / 255), 0);
  const faded = (one, colour) => {
    const opacity = +getComputedStyle(one).opacity;
    return [...colour.slice(0, 3), colour[3] * opacity];
  };
  return [...document.querySelectorAll('.jp-OutputArea-output *, .jp-RenderedMarkdown *')].filter(
    one => {
      if (!one.offsetParent || one.closest('svg, :disabled')) return false;
      const own = [...one.childNodes].some(node => node.nodeType === 3 && node.textContent.trim());
      if (!own) return false;
      const grounds = [];
      for (let at = one; at; at = at.parentElement) grounds.unshift(
        numbers(getComputedStyle(at).backgroundColor));
      const ground = grounds.reduce((lower, upper) => over(upper, lower), [255, 255, 255, 1]);
      const text = over(faded(one, numbers(getComputedStyle(one).color)), ground);
      const [a, b] = [light(text), light(ground)];
      return (Math.max(a, b) + .05) / (Math.min(a, b) + .05) < 4.5;
    }).map(one => one.outerHTML.slice(0, 200));
}"""


@pytest.fixture(scope="module")
def dark(tmp_path_factory):
    """The same, for a learner who has chosen the dark theme."""
    home = tmp_path_factory.mktemp("dark")
    chosen = home / THEMES
    chosen.parent.mkdir(parents=True)
    chosen.write_text('{"theme": "JupyterLab Dark"}', encoding="utf-8")
    with lessons_opened(home) as opened:
        yield opened


def opened(browser, address: str, lesson: str):
    page = browser.new_page(viewport=A_PHONE)
    expect.set_options(timeout=WAIT_MS)
    page.goto(re.sub(r"[\w-]+\.ipynb", f"{lesson}.ipynb", address) + "&reset")
    expect(page.locator(".rl-card").last).to_be_attached()
    page.wait_for_timeout(1000)  # drawings and tables below the last form
    page.evaluate(OPEN_FOLDS)
    return page


@pytest.mark.parametrize(("theme", "lesson"), ASKED)
def test_nothing_runs_out_of_the_page_and_all_text_can_be_read(browser, request, theme, lesson):
    page = opened(browser, request.getfixturevalue(theme), lesson)
    light = "true" if theme == "address" else "false"
    expect(page.locator("body")).to_have_attribute("data-jp-theme-light", light)
    assert page.evaluate(OUT) == []
    for size in TWICE_THE_SIZE, A_LAPTOP:
        page.set_viewport_size(size)
        page.wait_for_timeout(1000)  # until the page has found its new order
        assert page.evaluate(OUT) == [], size
    assert page.evaluate(PALE) == []
    page.close()
