"""On a phone the titles of rows stay whole words; only one too long for the page breaks."""

import pytest

from repairlib.core.html import named
from repairlib.faces.panels import calculator_panel
from repairlib.faces.panels.look import STYLE

# The words of row titles that stand on more than one line.
BROKEN = """() => [...document.querySelectorAll("th")].flatMap(title => {
  const node = title.firstChild, broken = [];
  for (const found of node.textContent.matchAll(/\\S+/g)) {
    const range = document.createRange();
    range.setStart(node, found.index);
    range.setEnd(node, found.index + found[0].length);
    if (new Set([...range.getClientRects()].map(one => one.top)).size > 1) broken.push(found[0]);
  }
  return broken;
})"""
TOO_WIDE = "() => document.documentElement.scrollWidth > innerWidth"


@pytest.fixture
def shown(browser):
    """A page as wide as a phone leaves to a panel, with this HTML in the panels' look."""
    page = browser.new_page(viewport={"width": 355, "height": 900})

    def show(html):
        inside = f'<div class="rl-panel"><div class="widget-html-content">{html}</div></div>'
        page.set_content(f"{STYLE}{inside}")
        return page

    yield show
    page.close()


def test_no_title_of_a_row_breaks_in_a_word(shown):
    page = shown(calculator_panel("missing_part", place="C? 3528, 3.3 V to ground").answer.value)
    assert page.evaluate("() => document.querySelectorAll('th').length") > 3
    assert page.evaluate(BROKEN) == [] and not page.evaluate(TOO_WIDE)


def test_a_title_too_long_for_the_page_breaks_all_the_same(shown):
    page = shown(named([("x" * 90, "y" * 90), ("short", "words " * 30)]))
    assert page.evaluate(BROKEN) == ["x" * 90] and not page.evaluate(TOO_WIDE)
