"""The page without a network, after an update, and where the browser refuses what it is asked for.

Each test has a browser profile of its own, as a device has.
"""

from __future__ import annotations

import shutil
import time

import pytest
from playwright.sync_api import expect

from repairlib.faces.page import building
from tests.browser.lab import WAIT_MS
from tests.browser.page_server import PageServer

pytestmark = pytest.mark.behaviour

KEPT = "navigator.serviceWorker.ready.then(one => one.active.state)"
WITHIN_S = 60


@pytest.fixture
def server(built_page, tmp_path):
    """A server of its own with a copy of the page, so that a test may change and stop it."""
    folder = shutil.copytree(built_page, tmp_path / "page")
    server = PageServer(folder)
    yield server
    server.stop()


@pytest.fixture
def device(browser):
    """A browser profile; everything that is asked for by any of its pages is in `asked`."""
    device = browser.new_context()
    device.set_default_timeout(WAIT_MS)
    expect.set_options(timeout=WAIT_MS)
    device.asked = []
    device.on("request", lambda request: device.asked.append(request.url))
    yield device
    device.close()


def opened(device, server, mark="#104K"):
    page = device.new_page()
    page.goto(server.address + mark, wait_until="commit")
    return page


def reads(page, said="100 nF"):
    expect(page.locator("#answer")).to_contain_text(said)


def wait_until(page, found, what):
    """Wait, while the browser's events go on coming in, until `found` says something."""
    end = time.monotonic() + WITHIN_S
    while not (value := found()):
        assert time.monotonic() < end, what
        page.wait_for_timeout(100)  # between two questions, not instead of an answer
    return value


def wait_until_kept(page):
    wait_until(page, lambda: page.evaluate(KEPT) == "activated", "the page is not kept")


def kept_caches(page):
    return page.evaluate("caches.keys()")


def update(server, monkeypatch):
    """The page is built anew in the folder of the server, with one rule more in its style."""
    old = building._static
    monkeypatch.setattr(
        building, "_static", lambda: {**old(), "page.css": old()["page.css"] + b"\nbody {--new: 1}"}
    )
    python = server.folder / building.PYTHON
    monkeypatch.setattr(building.runtime, "find_runtime", lambda _: python)
    monkeypatch.setattr(building, "_build_js", lambda *_: (server.folder / "old.js").read_bytes())
    shutil.copy(next(server.folder.glob("v-*")) / "build.js", server.folder / "old.js")
    return building.build_page(server.folder).version


def version_in_use(page):
    return page.evaluate("document.querySelector('script[type=module]').src.split('/').at(-2)")


def test_a_start_without_a_network_and_an_update_that_comes_whole(device, server, monkeypatch):
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    before = version_in_use(page)

    server.stop()
    page.goto("about:blank")
    page.goto(server.address + "#4n7", wait_until="commit")
    reads(page, "4.7 nF")
    page.get_by_role("button", name="Square code").click()
    expect(page.get_by_role("img", name="It holds: ")).to_be_visible()

    server.start()
    after = update(server, monkeypatch)
    assert after != before
    page.reload()
    reads(page, "4.7 nF")
    assert version_in_use(page) == before  # whole, from what was kept
    expect(page.locator("#newer")).to_be_visible()
    device.asked.clear()
    page.locator("#use-newer").click()
    wait_until(page, lambda: any(after in address for address in device.asked), "no new version")
    reads(page, "4.7 nF")
    assert version_in_use(page) == after
    assert not [address for address in device.asked if before in address]
    assert page.evaluate("getComputedStyle(document.body).getPropertyValue('--new')") == "1"
    assert kept_caches(page) == [f"page-{after}"]


def test_an_update_that_is_not_whole_changes_nothing(device, server, monkeypatch):
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    before = version_in_use(page)
    new = server.folder / update(server, monkeypatch)
    (new / "answer.js").write_text("alert(1)")
    (new / "page.css").unlink()
    server.asked.clear()
    page.reload()
    reads(page)
    wait_until(page, lambda: any("answer.js" in one for one in server.asked), "no update was tried")
    failed = (
        "navigator.serviceWorker.getRegistration().then(one => !one.installing && !one.waiting)"
    )
    wait_until(page, lambda: page.evaluate(failed), "it is still being installed")
    assert kept_caches(page) == [f"page-{before}"]
    server.stop()
    page.reload()
    reads(page)
    assert version_in_use(page) == before


REFUSED = """
if (globalThis.ServiceWorkerContainer) ServiceWorkerContainer.prototype.register =
  () => Promise.reject(new DOMException('refused', 'SecurityError'));
Object.defineProperty(window, 'localStorage',
  {get() { throw new DOMException('refused', 'SecurityError'); }});
Object.defineProperty(window, 'caches', {get() { throw new DOMException('no', 'SecurityError'); }});
"""


def test_the_page_reads_in_a_window_that_keeps_nothing(device, server):
    wrong = []
    device.on("weberror", lambda error: wrong.append(str(error.error)))
    device.add_init_script(REFUSED)
    page = opened(device, server)
    reads(page)
    page.get_by_role("button", name="Last readings").click()
    expect(page.locator("#last")).to_contain_text("100 nF")
    assert wrong == []


MISSING = {
    "no-wasm": "delete globalThis.WebAssembly",
    "no-worker": "globalThis.Worker = class { constructor() { throw new Error('refused'); } }",
}


@pytest.mark.parametrize("kind", MISSING)
def test_what_the_browser_lacks_is_said_plainly_and_nothing_is_lost(device, server, kind):
    device.add_init_script(MISSING[kind])
    page = opened(device, server)
    expect(page.locator("#trouble")).to_contain_text("browser")
    expect(page.get_by_role("textbox", name="Marking")).to_have_value("104K")
    assert page.evaluate("document.documentElement.dataset.trouble") == kind


def test_files_that_do_not_come_are_said_plainly(device, server):
    (next(server.folder.glob("v-*")) / building.READER).unlink()
    page = opened(device, server)
    expect(page.locator("#trouble")).to_be_visible()
    expect(page.get_by_role("textbox", name="Marking")).to_have_value("104K")


def test_without_scripts_a_sentence_says_what_is_needed(browser, server):
    device = browser.new_context(java_script_enabled=False)
    page = device.new_page()
    page.goto(server.address)
    assert "python -m repairlib 104K" in page.locator("body").inner_text()
    device.close()


def test_nothing_leaves_the_origin_and_the_policy_holds_in_page_and_worker(device, server):
    page = opened(device, server, "#%3Cimg%20src%3Dhttps%3A%2F%2Felsewhere.example%2Fx%3E")
    expect(page.locator("#answer")).to_contain_text("no marking has this form")
    wait_until_kept(page)
    assert device.asked
    assert all(one.startswith((server.address, "blob:", "data:")) for one in device.asked)
    tried = "fetch('https://elsewhere.example/').then(() => 'went out', error => error.name)"
    assert page.evaluate(tried) == "TypeError"
    in_worker = """async () => {
      const text = `fetch('https://elsewhere.example/')
        .then(() => postMessage('went out'), error => postMessage(error.name));
        onsecuritypolicyviolation = event => postMessage(event.effectiveDirective);`;
      const address = URL.createObjectURL(new Blob([text], {type: 'text/javascript'}));
      return new Promise(told => { new Worker(address).onmessage = ({data}) => told(data); });
    }"""
    assert page.evaluate(in_worker) in ("connect-src", "TypeError")
    elsewhere = [one for one in device.asked if "elsewhere" in one and "#" not in one]
    assert not elsewhere
    scripts = page.evaluate("""() => new Promise(told => {
      document.addEventListener('securitypolicyviolation', event => told(event.effectiveDirective));
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(script);
    })""")
    assert scripts == "script-src-elem" and page.evaluate("window.ran") is None
