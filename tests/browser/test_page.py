"""The page in a real browser: typed, tapped, kept, spoken, printed. Python runs in the browser.

It is started twice only: most tests look at one page, each from a cleared field.
"""

from __future__ import annotations

import re
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from tests.browser.lab import WAIT_MS
from tests.browser.test_browser import UNNAMED

pytestmark = pytest.mark.behaviour

PHONE = {"width": 390, "height": 844}
HOSTILE = "<img src=x onerror=alert(1)>"
REFUSE = """for (const name of ['getItem', 'setItem', 'removeItem']) {
  Storage.prototype[name] = () => { throw new DOMException('refused', 'SecurityError'); };
}
Object.defineProperty(window, 'caches', {get() { throw new DOMException('no', 'SecurityError'); }});
if (globalThis.ServiceWorkerContainer) ServiceWorkerContainer.prototype.register =
  () => Promise.reject(new DOMException('refused', 'SecurityError'));"""
SMALL = """() => [...document.querySelectorAll(
    'button, select, textarea, summary, label:has(input)')]
  .filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 44)
  .map(one => one.outerHTML.slice(0, 80))"""
TOO_WIDE = "document.documentElement.scrollWidth - innerWidth"
WATCH = """() => { window.heard = []; const region = document.getElementById('speaks');
  new MutationObserver(() => heard.push(region.textContent))
    .observe(region, {childList: true, characterData: true, subtree: true}); }"""


@pytest.fixture(scope="module")
def opened(browser, page_address):
    """The page on a phone, with its reader up. No dialog may open, and nothing may go wrong."""
    page = browser.new_page(viewport=PHONE)
    page.set_default_timeout(WAIT_MS)
    expect.set_options(timeout=WAIT_MS)
    wrong = []
    page.on("dialog", lambda dialog: (wrong.append(dialog.message), dialog.dismiss()))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.goto(page_address, wait_until="commit")
    field(page).fill("103")  # before the reader is up
    expect(page.get_by_role("progressbar")).to_be_visible()
    expect(answer(page)).to_contain_text("10 nF")
    yield page
    assert wrong == []
    page.close()


@pytest.fixture
def page(opened):
    """The one page, back at the marking, with nothing in the field."""
    opened.set_viewport_size(PHONE)
    tool(opened, "Marking")
    opened.locator("input[name=as][value='']").evaluate("one => one.click()")
    field(opened).fill("")
    expect(answer(opened)).to_contain_text("Type what is printed")
    return opened


def field(page):
    return page.get_by_role("textbox", name="Marking")


def answer(page):
    return page.locator("#answer")


def tool(page, name):
    page.get_by_role("navigation", name="Tools").get_by_role("button", name=name).click()


def test_what_was_typed_before_the_reader_was_up_is_answered(opened):
    expect(field(opened)).to_be_focused()
    expect(opened.get_by_role("progressbar")).to_be_hidden()


def test_every_plausible_reading_is_there_likeliest_first(page):
    field(page).press_sequentially("220")
    expect(page.locator(".rl-answer")).to_have_text("22\xa0pF")
    expect(answer(page)).to_contain_text("220\xa0µF")
    expect(page.locator("#picture").get_by_role("img")).to_have_attribute("alt", re.compile("220"))


def test_the_address_carries_the_marking_and_the_part(page, page_address):
    field(page).fill("47 16V & 5%")
    expect(page).to_have_url(f"{page_address}#{quote('47 16V & 5%', safe='')}")
    page.evaluate("location.hash = '#107C&as=tantalum'")
    expect(field(page)).to_have_value("107C")
    expect(page.locator("#part")).to_have_text("tantalum capacitor")
    expect(page.locator(".rl-answer")).to_contain_text("100\xa0µF")
    page.evaluate("location.hash = '#5%&as=nonsense'")
    expect(field(page)).to_have_value("5%")
    expect(page.locator("#part")).to_have_text("any part")


def test_hostile_text_shows_as_text(page):
    page.evaluate("text => { location.hash = '#' + encodeURIComponent(text); }", HOSTILE)
    expect(field(page)).to_have_value(HOSTILE)
    expect(answer(page)).to_contain_text("<img")
    assert page.locator("img[src=x]").count() == 0


def test_a_body_is_chosen_by_its_picture(page):
    field(page).fill("107C")
    page.locator("#parts > summary").click()
    page.get_by_role("radio", name="tantalum capacitor").check()
    expect(answer(page)).to_contain_text("tantalum capacitor")
    page.keyboard.press("ArrowDown")
    expect(page.get_by_role("radio", name="aluminium SMD can")).to_be_checked()
    page.locator("#parts > summary").click()


def test_bands_by_tapping_and_by_keyboard(page):
    tool(page, "Colours")
    for colour in ("brown", "black", "red"):
        page.get_by_role("button", name=colour, exact=True).click()
    gold = page.get_by_role("button", name="gold", exact=True)
    gold.focus()
    page.keyboard.press("Enter")
    expect(field(page)).to_have_value("brown black red gold")
    expect(page.get_by_role("list", name="Bands so far")).to_contain_text("4 gold")
    expect(page.locator(".rl-answer")).to_have_text("1\xa0kΩ ±5\xa0%")
    page.get_by_role("button", name="Undo").click()
    expect(field(page)).to_have_value("brown black red")
    page.get_by_role("radio", name="inductor", exact=True).check()
    expect(page.locator(".rl-answer")).to_contain_text("H")
    # Other text is no longer read as the part that the bands were on.
    tool(page, "Marking")
    expect(page.locator("#part")).to_have_text("inductor")
    field(page).fill("104K")
    expect(page.locator("#part")).to_have_text("any part")
    expect(page.locator(".rl-answer")).to_have_text("100\xa0nF ±10\xa0%")


def test_tapping_a_colour_loses_no_marking(page):
    field(page).fill("no such part")
    tool(page, "Colours")
    page.get_by_role("button", name="red", exact=True).click()
    expect(field(page)).to_have_value("red")
    tool(page, "Last readings")
    expect(page.locator("#kept")).to_contain_text("no such part")


def test_reading_an_earlier_marking_again_loses_none(page):
    field(page).fill("473J")
    expect(page.locator(".rl-answer")).to_contain_text("47\xa0nF")
    tool(page, "Last readings")
    kept = page.locator("#kept li").filter(has_text="473J")
    tool(page, "Marking")
    field(page).fill("not to be read")
    expect(answer(page)).to_contain_text("Cannot be read yet")
    tool(page, "Last readings")
    kept.get_by_role("button").click()
    expect(field(page)).to_have_value("473J")
    tool(page, "Colours")
    page.get_by_role("button", name="red", exact=True).click()
    tool(page, "Last readings")
    expect(page.locator("#kept")).to_contain_text("not to be read")
    expect(kept).to_contain_text("47\xa0nF")


def test_an_opened_address_shows_its_reading_whatever_tool_is_open(page):
    tool(page, "Polarity")
    page.evaluate("location.hash = '#104K'")
    expect(page.locator(".rl-answer")).to_have_text("100\xa0nF ±10\xa0%")
    expect(page.locator("#polarity")).to_be_hidden()
    expect(field(page)).to_be_focused()


def test_polarity_is_answered_at_each_choice(page):
    tool(page, "Polarity")
    shown = page.locator("#polarity .answer")
    page.get_by_label("On the board", exact=True).select_option("plus sign")
    page.get_by_label("How I fit it").select_option("part's mark at the board's mark")
    expect(shown).to_contain_text("Reversed: do not fit it like this")
    expect(shown.get_by_role("note")).to_be_visible()
    page.get_by_label("How I fit it").select_option("part's mark at the other end")
    expect(shown).to_contain_text("Right")
    page.get_by_label("The part is").select_option("diode")
    expect(page.get_by_label("On the part", exact=True)).to_have_value("band at one end")
    expect(page.locator("#polarity [role=status], #polarity [role=alert]")).to_have_count(0)


def test_a_value_that_is_not_made(page):
    tool(page, "Values")
    page.get_by_role("textbox", name="Value").fill("50 kΩ")
    shown = page.locator("#values .answer")
    expect(shown).to_contain_text("51\xa0kΩ")
    expect(shown).to_contain_text("Two resistors for one")
    page.get_by_label("Series").select_option("E6")
    expect(shown).to_contain_text("47\xa0kΩ")
    page.get_by_role("textbox", name="Value").fill("nonsense")
    expect(shown).to_contain_text("Cannot be read yet")


def test_last_readings_are_kept_read_again_and_wiped(page):
    field(page).press_sequentially("473J")
    expect(page.locator(".rl-answer")).to_contain_text("47\xa0nF")
    tool(page, "Last readings")
    kept = page.locator("#kept li")
    expect(kept.first).to_contain_text("473J")
    assert kept.filter(has_text=re.compile("^473?$")).count() == 0  # not each key of it
    kept.first.get_by_role("button").click()
    expect(field(page)).to_have_value("473J")
    tool(page, "Last readings")
    page.get_by_role("button", name="Wipe", exact=True).click()
    expect(page.locator("#wipe-asked")).to_contain_text(re.compile(r"Wipe all \d+\?"))
    page.get_by_role("button", name="Keep them").click()
    expect(kept.first).to_contain_text("473J")
    page.get_by_role("button", name="Wipe", exact=True).click()
    page.get_by_role("button", name="Yes, wipe").click()
    expect(kept).to_have_count(0)
    assert page.evaluate("localStorage.getItem('read a marking: last readings')") == "[]"


def test_one_region_speaks_and_only_the_first_reading(page):
    page.wait_for_timeout(800)  # what was asked before is spoken by then
    page.evaluate(WATCH)
    field(page).press_sequentially("220")
    expect(page.locator("#speaks")).to_have_text("22\xa0pF")
    assert page.evaluate("heard") == ["22\xa0pF"]
    field(page).fill("220µF 385V")
    expect(page.locator("#speaks")).to_contain_text("385\xa0V Caution: Mains voltage can kill.")
    assert page.locator("[aria-live]").count() == 1
    assert page.locator("main [role=status], main [role=alert]").count() == 0


def test_json_and_address_of_a_reading(page):
    field(page).fill("104K")
    page.locator("#document > summary").click()
    expect(page.locator("#document pre")).to_contain_text('"kind": "capacitor"')
    page.locator("#document > summary").click()
    page.get_by_role("button", name="Copy address").click()
    expect(page.locator("#address")).to_contain_text(re.compile("copied|#104K"))
    page.get_by_role("button", name="Square code").click()
    expect(page.locator("#code").get_by_role("img")).to_have_attribute("alt", re.compile("#104K"))


def test_every_control_is_named_and_reached_by_tab(page):
    assert page.locator("body").evaluate_all(UNNAMED) == []
    for name in ("Colours", "Polarity", "Values", "Last readings", "Marking"):
        tool(page, name)
        seen = page.locator("button:visible:enabled, textarea:visible, select:visible")
        left = {one.evaluate("one => one.id || one.textContent") for one in seen.all()}
        page.evaluate("document.activeElement.blur()")
        for _ in range(60):
            page.keyboard.press("Tab")
            left.discard(page.evaluate("document.activeElement.id"))
            left.discard(page.evaluate("document.activeElement.textContent"))
        assert left == set(), name
        assert page.evaluate(SMALL) == [], name


@pytest.mark.parametrize("width", [320, 390, 768, 1366])
def test_nothing_scrolls_sideways(page, width):
    page.set_viewport_size({"width": width, "height": 800})
    for size in ("100%", "200%"):
        page.evaluate("size => { document.documentElement.style.fontSize = size; }", size)
        for name in ("Colours", "Polarity", "Values", "Last readings", "Marking"):
            tool(page, name)
            assert page.evaluate(TOO_WIDE) <= 0, (name, size)
    page.evaluate("() => { document.documentElement.style.fontSize = ''; }")


def test_on_paper_are_the_reading_and_its_cautions(page):
    field(page).fill("100n 275V X2")
    expect(answer(page).get_by_role("note")).to_be_visible()
    page.emulate_media(media="print")
    expect(answer(page)).to_be_visible()
    expect(answer(page).get_by_role("note")).to_be_visible()
    expect(page.locator("#printed")).to_contain_text("100n 275V X2")
    for away in ("nav#tools", "#asked", "#more", "footer"):
        expect(page.locator(away)).to_be_hidden()
    page.emulate_media(media="screen")


def test_the_small_buttons_lie_on_the_thumbs_side(page):
    def clear():
        return page.locator("#clear").bounding_box()["x"]

    right = clear()
    page.get_by_role("radio", name="left hand").check()
    assert clear() < right
    page.get_by_role("radio", name="right hand").check()


def test_where_storage_is_refused_readings_live_as_long_as_the_page(browser, page_address):
    page = browser.new_page(viewport=PHONE)
    wrong = []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.add_init_script(REFUSE)
    page.goto(f"{page_address}#104K")
    expect(page.locator(".rl-answer")).to_have_text("100\xa0nF ±10\xa0%")
    tool(page, "Last readings")
    expect(page.locator("#last")).to_contain_text("does not let the page keep anything")
    expect(page.locator("#kept")).to_contain_text("104K")
    assert wrong == []
    page.close()


def test_without_script_the_page_says_what_it_needs(browser, page_address):
    page = browser.new_page(java_script_enabled=False)
    page.goto(page_address)
    expect(page.locator("noscript code")).to_be_visible()
    page.close()


def test_without_webassembly_it_says_so_and_keeps_what_was_typed(browser, page_address):
    page = browser.new_page(viewport=PHONE)
    page.add_init_script("delete globalThis.WebAssembly")
    page.goto(f"{page_address}#104K")
    expect(page.locator("#trouble")).to_contain_text("it has no WebAssembly")
    expect(page.locator("#speaks")).to_contain_text("it has no WebAssembly")
    expect(field(page)).to_have_value("104K")
    page.close()
