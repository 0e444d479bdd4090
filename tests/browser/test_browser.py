"""The lessons in a real browser: run them, use the quick check, answer, reload, find the answer.

Needs Chromium or Chrome on the machine. Without one the tests are skipped, except in CI.
"""

from __future__ import annotations

import json
import os
import re

import pytest
from playwright.sync_api import Page, expect

from tests.refresh import ANSWERED, lesson_names

NUMBERED = re.compile(r"^\[\d+\]:$")
FAILURES = ", ".join(
    f'[data-mime-type="application/vnd.jupyter.{kind}"]' for kind in ("error", "stderr")
)

ALL = os.environ.get("LESSONS") == "all"  # then every key on every control of every lesson
NUMBERED_LESSONS = [name for name in lesson_names() if name[0].isdigit()]
KEYED = NUMBERED_LESSONS if ALL else ["00-start-here"]
# Of one more only the names; that each lesson runs, nbval says.
READ_ALOUD = NUMBERED_LESSONS if ALL else ["04-polarity"]

UNNAMED = """panels => panels.flatMap(panel => [...panel.querySelectorAll(
  'input, select, textarea, [role=slider], [contenteditable=true]')].filter(control => {
    const labels = [...(control.labels || [])].map(label => label.textContent).join('');
    return !(control.getAttribute('aria-label') || labels || control.title).trim();
  }).map(control => control.outerHTML))"""


def open_lesson(page: Page, address: str) -> None:
    page.goto(address)
    wait_until_ready(page)


def wait_until_ready(page: Page) -> None:
    """The notebook is on the page and its kernel waits for work.

    The status bar says so; the sign beside the kernel's name looks idle before it is connected.
    """
    expect(page.locator(".jp-Notebook .jp-CodeCell").first).to_be_visible()
    expect(page.locator("#jp-main-statusbar")).to_contain_text("| Idle")


def run_all(page: Page, item: str = "Run All Cells") -> None:
    """Clear the stored outputs, run every cell by the menu, and wait for the last one.

    The code is folded; only what is open shows whether it has run.
    """
    choose(page, "View", "Expand All Code")
    choose(page, "Edit", "Clear Outputs of All Cells")
    prompts = page.locator(".jp-CodeCell .jp-InputPrompt")
    expect(prompts.first).to_have_text("[ ]:")
    choose(page, "Run", item)
    if item.endswith("…"):
        page.get_by_role("dialog").get_by_role("button", name="Confirm Kernel Restart").click()
    expect(prompts).to_have_text([NUMBERED] * prompts.count())


def choose(page: Page, menu: str, item: str) -> None:
    page.get_by_role("menuitem", name=menu, exact=True).click()
    page.get_by_role("menuitem", name=item, exact=True).click()


def expect_no_failure(page: Page) -> None:
    expect(page.locator(FAILURES)).to_have_count(0)
    expect(page.get_by_text(re.compile("Error (displaying|creating) widget"))).to_have_count(0)


def expect_names(page: Page) -> None:
    """Every control has a name, and every question is a heading."""
    assert page.locator(".rl-panel").evaluate_all(UNNAMED) == []
    cards = page.locator(".rl-card")
    assert cards.count() == cards.get_by_role("heading").count() > 5


def question(page: Page, name: str):
    return page.locator(".rl-card").filter(has_text=f"({name})")


@pytest.mark.parametrize("lesson", READ_ALOUD)
def test_lesson_runs_and_can_be_read_aloud(page, lab, lesson):
    """Every control has a name, and every question is a heading that one can jump to."""
    open_lesson(page, lab(lesson))
    run_all(page)
    expect_no_failure(page)
    expect(page.locator(".rl-panel").first).to_be_visible()
    expect_names(page)


def test_marking_is_read_while_it_is_typed_and_arrows_choose_options(page, lab):
    open_lesson(page, lab("00-start-here"))
    run_all(page)
    panel = page.locator(".rl-panel").filter(has=page.get_by_label("Read it as"))
    field = panel.get_by_label("Marking")
    field.fill("")
    expect(panel).to_contain_text("Type what is printed on the part")
    field.press_sequentially("47")
    expect(panel).not_to_contain_text("Type what is printed on the part")
    field.press_sequentially("3J")
    expect(panel).to_contain_text(re.compile(r"47\s+nF ±5\s+%"))
    expect(panel.get_by_role("img")).to_have_attribute("alt", re.compile("473J"))

    options = question(page, "q1").get_by_role("radio")
    options.first.check()
    page.keyboard.press("ArrowDown")
    expect(options.nth(1)).to_be_checked()


def test_answer_typed_into_the_form_outlives_page_and_kernel(page, lab):
    answered = (ANSWERED / "00-start-here-right.json").read_text(encoding="utf-8")
    answer = json.loads(answered)["q7"]["answer"]
    open_lesson(page, lab("00-start-here"))
    run_all(page)
    question(page, "q7").get_by_role("textbox").fill(answer)
    expect(question(page, "q7")).to_contain_text("Saved")
    expect(question(page, "q7")).to_contain_text("Right, 2 of 2")

    page.reload()
    wait_until_ready(page)
    run_all(page, "Restart Kernel and Run All Cells…")
    expect_no_failure(page)
    expect(question(page, "q7").get_by_role("textbox")).to_have_value(answer)
    expect(question(page, "q7")).to_contain_text("Right, 2 of 2")
    expect(page.locator(".rl-panel").filter(has=question(page, "q7"))).to_contain_text(
        "2 of 13 points"
    )


CONTROLS = "input, select, textarea, button, [role=slider]"  # of a panel, and not of the notebook
KEYS = (*"ddxabcvmyrz00jk", "Delete", "Escape", "ArrowDown", "ArrowUp", "ArrowLeft", "ArrowRight")


@pytest.mark.parametrize("lesson", KEYED)
def test_no_key_typed_in_a_panel_reaches_the_notebook(page, lab, lesson):
    open_lesson(page, lab(lesson))
    run_all(page)
    cells = page.locator(".jp-Cell").count()
    controls = page.locator(".rl-panel").locator(CONTROLS)
    kinds = {}
    for place in range(controls.count()):
        control = controls.nth(place)
        kind = control.evaluate("it => [it.tagName, it.type, it.className].join(' ')")
        kinds[kind] = kinds.get(kind, 0) + 1
        if ALL or kinds[kind] <= 2:  # two of each kind are all of them
            control.focus()
            for key in KEYS:
                page.keyboard.press(key)
    assert len(kinds) > 3
    expect_names(page)
    expect(page.locator(".jp-Cell")).to_have_count(cells)
    expect(page.locator(".rl-card").first).to_be_visible()
    expect_no_failure(page)
