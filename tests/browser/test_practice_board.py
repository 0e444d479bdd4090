"""The practice board in a browser: a repair by mouse, one by keys alone, found after a restart."""

from __future__ import annotations

import nbformat
import pytest
from playwright.sync_api import Page, expect

from tests.browser.lab import running_lab
from tests.browser.test_browser import (
    UNNAMED,
    expect_no_failure,
    open_lesson,
    run_all,
    wait_until_ready,
)

KERNEL = {"name": "python3", "display_name": "Python 3", "language": "python"}
CELL = """from repairlib.faces.panels import practice_board
practice_board(faults=["C1 dried out to 20 %, ESR x 10"], kept="{kept}")"""


@pytest.fixture(scope="module")
def board_lab(tmp_path_factory):
    """Where notebooks with a practice board of their own are served."""
    folder = tmp_path_factory.mktemp("lab")
    with running_lab(folder) as address:

        def notebook(kept: str) -> str:
            cells = [nbformat.v4.new_code_cell(CELL.format(kept=kept))]
            made = nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": KERNEL})
            nbformat.write(made, folder / f"lessons/{kept}.ipynb")
            return address(kept)

        yield notebook


def opened(page: Page, address: str) -> None:
    open_lesson(page, address)
    run_all(page)
    expect(log(page)).to_be_attached()


def bench(page: Page):
    return page.locator(".rl-bench")


def log(page: Page):
    return bench(page).locator(".rl-bench-log")


def told(page: Page, words: str) -> None:
    """The last line of the log says so."""
    expect(log(page).locator("li").last).to_contain_text(words)


def part(page: Page, name: str):
    return bench(page).locator(f'[data-key="{name}"]')


def press(page: Page, label: str, there: str = "") -> None:
    """Press a button of what is chosen, or of the part or point named."""
    if there:
        part(page, there).click()
    menu = bench(page).get_by_label("What can be done there")
    menu.get_by_role("button", name=label, exact=True).click()


def whole(page: Page, label: str):
    return bench(page).get_by_label("The whole set").get_by_role("button", name=label, exact=True)


def at_once(page: Page, *labels: str) -> None:
    """Press buttons of the whole set before Python has answered the first."""
    buttons = [whole(page, label).element_handle() for label in labels]
    page.evaluate("all => all.forEach(one => { one.focus(); one.click(); })", buttons)


def test_a_repair_by_mouse_is_there_after_a_restart(page, board_lab):
    opened(page, board_lab("by-mouse"))
    whole(page, "Plug in, lamp in series").click()
    told(page, "lamp")
    press(page, "Oscilloscope", "point rail")
    told(page, "peak to peak")
    expect(bench(page).get_by_role("img", name="Oscilloscope")).to_be_visible()
    whole(page, "Unplug").click()
    whole(page, "2 min").click()
    press(page, "Volts", "C1")
    told(page, "mV")
    press(page, "ESR")
    told(page, "Ω")
    press(page, "Take it out")
    told(page, "C1 is out")
    press(page, "Clean its pads")
    press(page, "Fit a new one…")
    expect(bench(page).get_by_label("Type a move")).to_have_value("fit C1 2200 µF 25 V")
    bench(page).get_by_role("button", name="Do it").click()
    told(page, "A new C1 is in")
    press(page, "Look", "C1")
    told(page, "printed 2200 µF 25 V")

    page.reload()
    wait_until_ready(page)
    run_all(page, "Restart Kernel and Run All Cells…")
    expect_no_failure(page)
    expect(log(page).locator("li")).to_have_count(10)
    whole(page, "Plug in").click()
    press(page, "Volts", "point out")
    told(page, "8.9")
    at_once(page, "Unplug", "Hand it back")
    told(page, "The plug is out.")
    whole(page, "Sure? The attempt ends").click()
    expect(page.locator(".rl-told").first).to_contain_text("assed")
    expect(bench(page).get_by_label("Type a move")).to_be_hidden()


def test_a_repair_by_keys_alone(page, board_lab):
    opened(page, board_lab("by-keys"))
    cells = page.locator(".jp-Cell").count()
    assert page.locator(".rl-panel").evaluate_all(UNNAMED) == []
    part(page, "C1").focus()
    seen = set()
    for key in ("ArrowLeft", "ArrowLeft", "ArrowUp", "ArrowRight", "ArrowDown", "ArrowRight"):
        page.keyboard.press(key)
        seen.add(bench(page).locator('[aria-pressed="true"]').get_attribute("data-key"))
    assert len(seen) > 3
    part(page, "C1").focus()
    page.keyboard.press("Enter")  # the first thing that can be done there
    expect(page.locator(":focus")).to_have_text("Look")
    page.keyboard.press("Enter")
    told(page, "C1, reservoir capacitor")
    page.keyboard.press("Escape")
    expect(part(page, "C1")).to_be_focused()
    for typed, words in (
        ("sing", ""),
        ("esr C1", "Ω"),
        ("volts C1", "V"),
        ("take out C1", "C1 is out"),
        ("clean C1", "sound"),
        ("replace c1 2200uF 25V", "A new C1 is in"),
        ("plug in with lamp", "lamp"),
        ("volts out gnd", "V"),
    ):
        page.keyboard.type(typed[0])  # a letter on the board goes to the box
        expect(bench(page).get_by_label("Type a move")).to_be_focused()
        page.keyboard.type(typed[1:])
        page.keyboard.press("Enter")
        if words:
            told(page, words)
            continue
        expect(bench(page).get_by_role("alert")).to_contain_text("sing")
        expect(bench(page).get_by_label("Type a move")).to_have_value("sing")
        page.keyboard.press("Control+a")
        page.keyboard.press("Delete")
    page.keyboard.press("ArrowUp")
    expect(bench(page).get_by_label("Type a move")).to_have_value("volts out gnd")
    expect(log(page).locator("li")).to_have_count(8)
    expect(page.locator(".jp-Cell")).to_have_count(cells)
