"""The map of an own board and the route, by mouse and by keys, and found again after a restart."""

from __future__ import annotations

import re

from playwright.sync_api import Page, expect

from tests.browser.test_browser import (
    expect_no_failure,
    open_lesson,
    run_all,
    wait_until_ready,
)

LESSON = "07-plan-a-recap"
PLUS = {"ArrowUp": "plus up", "ArrowRight": "plus right"}


def again(page: Page) -> None:
    """The page is reloaded, and the kernel is killed: nothing is left but what was kept."""
    page.wait_for_timeout(1000)  # what is older than a second must be kept
    page.reload()
    wait_until_ready(page)
    run_all(page, "Restart Kernel and Run All Cells…")
    expect_no_failure(page)


def board(page: Page):
    return page.locator(".rl-map").filter(has=page.get_by_role("group", name="Map of the board"))


def marks(page: Page):
    return board(page).locator(".rl-map-mark")


def about_the_board(page: Page) -> None:
    board(page).get_by_label("Name of the board").fill("Supply board")
    board(page).get_by_label("Side you look at").select_option("component side")
    board(page).get_by_label("A fixed edge").fill("connector edge")
    board(page).get_by_label("lies where").select_option("down")
    board(page).get_by_label("Board width in mm").fill("120")
    board(page).get_by_label("Board width in mm").press("Tab")


def route(page: Page):
    """Where one is on the route, and its two buttons."""
    stop = page.locator(".rl-stop").first
    done, back = (stop.get_by_role("button", name=name) for name in ("Done: fitted", "Back"))
    return stop.locator("h4"), done, back


def test_map_and_route_by_mouse_are_there_after_a_restart(page, lab):
    open_lesson(page, lab(LESSON))
    run_all(page)
    about_the_board(page)
    stage = board(page).get_by_role("group", name="Map of the board")
    box = stage.bounding_box()
    for part, plus in (((0.25, 0.5), "plus left"), ((0.75, 0.25), "plus down")):
        stage.click(position={"x": box["width"] * part[0], "y": box["height"] * part[1]})
        board(page).get_by_role("radio", name=plus, exact=True).click()
    expected = [
        re.compile(r"C1, plus left, (29|30|31)[\d.]* mm from the left, 4[123][\d.]* mm"),
        re.compile(r"C2, plus down, (89|90|91)[\d.]* mm from the left, 2[012][\d.]* mm"),
    ]
    panel = page.locator(".rl-panel").filter(has=stage)
    expect(panel).to_contain_text("2 capacitors on the map of Supply board, each plus looked at")
    head, done, back = route(page)
    expect(head).to_contain_text("Stop 1 of")
    done.click()
    expect(head).to_contain_text("Stop 2 of")
    done.click()
    expect(head).to_contain_text("Stop 3 of")
    back.click()
    expect(head).to_contain_text("Stop 2 of")

    again(page)
    expect(head).to_contain_text("Stop 2 of")
    expect(marks(page)).to_have_count(2)
    for mark, name in zip(marks(page).all(), expected, strict=True):
        expect(mark).to_have_attribute("aria-label", name)
    expect(board(page).get_by_label("Name of the board")).to_have_value("Supply board")


def test_map_and_route_by_keys_alone(page, lab):
    open_lesson(page, lab(LESSON))
    run_all(page)
    cells = page.locator(".jp-Cell").count()
    taken = marks(page).count()  # by the test before
    add = board(page).get_by_role("button", name="Add a capacitor")
    for key, said in PLUS.items():
        add.focus()
        page.keyboard.press("Enter")  # now the choice of its plus has the keys
        page.keyboard.press(key)
        expect(marks(page).last).to_have_attribute("aria-label", re.compile(said))
        marks(page).last.focus()
        page.keyboard.press("Shift+ArrowRight")
        expect(marks(page).last).to_be_focused()
    expect(marks(page)).to_have_count(taken + 2)
    page.keyboard.press("Delete")
    expect(marks(page)).to_have_count(taken + 1)
    page.keyboard.press("Control+z")
    expect(marks(page)).to_have_count(taken + 2)
    head, done, back = route(page)
    before = head.inner_text()
    done.focus()
    page.keyboard.press("Space")
    expect(head).not_to_have_text(before)
    back.focus()
    expect(back).to_be_focused()
    page.keyboard.press("Enter")
    expect(head).to_have_text(before)
    expect(page.locator(".jp-Cell")).to_have_count(cells)
