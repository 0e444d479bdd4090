"""The page without a network, after an update, and where something does not come.

Each test has a browser profile of its own, as a device has. What is kept, and when, does not depend
on the Python in it, so most tests build the page with a stand-in that starts at once.
"""

from __future__ import annotations

import time

import pytest
from playwright.sync_api import expect

from repairlib.faces.page import building, runtime
from tests.browser.lab import WAIT_MS
from tests.browser.page_server import PageServer

pytestmark = pytest.mark.behaviour

KEPT = "navigator.serviceWorker.ready.then(one => one.active.state)"
WITHIN_S = 60


STAND_IN = """
const found = (marking) => ({
  html: `<p>read: ${marking}</p>`, spoken: marking, beware: '', read: true,
});
export const loadPyodide = async () => ({
  FS: {mkdirTree() {}, writeFile() {}},
  runPython: () => (question) => {
    const { tool, marking } = JSON.parse(question);
    if (marking === `no ${tool}`) throw new Error('broken');
    return JSON.stringify(found(marking));
  },
});
"""


@pytest.fixture
def server(tmp_path, monkeypatch):
    """A server of its own with the page on a stand-in, so that a test may change and stop it."""
    python = tmp_path / "python"
    python.mkdir()
    for name in runtime.FILES:
        (python / name).write_text(STAND_IN)
    (python / runtime.LOCK).write_text('{"info": {}, "packages": {}}')
    (python / "package.json").write_text(f'{{"version": "{runtime.VERSION}"}}')
    monkeypatch.setattr(building, "files_of_the_page", dict)
    monkeypatch.setattr(building, "segno_files", dict)
    server = PageServer(building.build_page(tmp_path / "page", python).folder)
    server.python = python
    yield server
    server.stop()


@pytest.fixture
def elsewhere(tmp_path):
    """Another server, of which no page may ask anything."""
    server = PageServer(tmp_path)
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


def reads(page, said="read: 104K"):
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
    old = building._static()
    new = old | {"page.css": old["page.css"] + b"\nbody {--new: 1}"}
    monkeypatch.setattr(building, "_static", lambda: new)
    return building.build_page(server.folder, server.python).version


def version_in_use(page):
    return page.evaluate("document.querySelector('script[type=module]').src.split('/').at(-2)")


def shows_version(page, version):
    """Wait until the page is loaded anew, as this version."""
    expect(page.locator(f"script[type=module][src^='{version}/']")).to_have_count(1)


def test_the_second_visit_needs_no_network(device, built_page):
    """With the Python itself, from a host that does not know its type."""
    server = PageServer(built_page, {".wasm": "application/octet-stream"})
    page = opened(device, server)
    reads(page, "100 nF")
    wait_until_kept(page)
    server.stop()
    page.goto("about:blank")
    page.goto(server.address + "#4n7", wait_until="commit")
    reads(page, "4.7 nF")
    page.get_by_role("button", name="Square code").click()
    expect(page.get_by_role("img", name="It holds: ")).to_be_visible()


def test_an_update_comes_whole_and_when_it_is_asked_for(device, server, monkeypatch):
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    before = version_in_use(page)
    after = update(server, monkeypatch)
    assert after != before
    page.reload()
    reads(page)
    assert version_in_use(page) == before  # whole, from what was kept
    expect(page.locator("#newer")).to_be_visible()
    device.asked.clear()
    page.locator("#use-newer").click()
    shows_version(page, after)
    reads(page)
    assert not [address for address in device.asked if before in address]
    assert page.evaluate("getComputedStyle(document.body).getPropertyValue('--new')") == "1"
    assert kept_caches(page) == [f"page / {after}"]
    server.stop()
    page.reload()
    reads(page)
    assert version_in_use(page) == after


def test_an_update_loads_in_the_page_of_the_first_visit_too(device, server, monkeypatch):
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    after = update(server, monkeypatch)
    page.evaluate("navigator.serviceWorker.getRegistration().then(one => { one.update(); })")
    page.locator("#use-newer").click()
    shows_version(page, after)
    reads(page)


def test_a_host_may_send_index_html_on_to_its_folder(device, server):
    server.sent_on["/index.html"] = "/"
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    server.stop()
    page.reload()
    reads(page)


def test_an_answer_that_does_not_come_is_said_and_nothing_older_stays(device, server):
    page = opened(device, server)
    field, drawn = page.get_by_role("textbox", name="Marking"), page.locator("#picture")
    expect(drawn).to_contain_text("read: 104K")
    field.fill("no drawing")
    reads(page, "read: no drawing")
    expect(drawn).to_be_empty()
    field.fill("104K")
    expect(drawn).to_contain_text("read: 104K")
    field.fill("no marking")
    reads(page, "The reader could not answer this")
    expect(drawn).to_be_empty()
    expect(field).to_have_value("no marking")
    expect(page.locator("#speaks")).to_contain_text("could not answer")
    assert page.locator("[data-waits]").count() == 0


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
    assert kept_caches(page) == [f"page / {before}"]
    server.stop()
    page.reload()
    reads(page)
    assert version_in_use(page) == before


def test_a_browser_without_workers_is_told_plainly_and_nothing_is_lost(device, server):
    device.add_init_script("globalThis.Worker = class { constructor() { throw new Error('no'); } }")
    page = opened(device, server)
    expect(page.locator("#trouble")).to_contain_text("This browser does not let the page work")
    expect(page.get_by_role("textbox", name="Marking")).to_have_value("104K")


def test_files_that_do_not_come_are_said_plainly(device, server):
    (next(server.folder.glob("v-*")) / building.READER).unlink()
    page = opened(device, server)
    expect(page.locator("#trouble")).to_contain_text("did not arrive")
    expect(page.get_by_role("textbox", name="Marking")).to_have_value("104K")


def test_nothing_leaves_the_origin_and_the_policy_holds_in_page_and_worker(
    device, server, elsewhere
):
    page = opened(device, server)
    reads(page)
    wait_until_kept(page)
    assert device.asked
    assert all(one.startswith((server.address, "blob:", "data:")) for one in device.asked)
    tried = f"fetch('{elsewhere.address}', {{mode: 'no-cors'}})"  # it would be answered
    tried += ".then(() => 'went out', error => error.name)"
    assert page.evaluate(tried) == "TypeError"
    in_worker = """async (tried) => {
      const text = `${tried}.then(postMessage)`;
      const address = URL.createObjectURL(new Blob([text], {type: 'text/javascript'}));
      return new Promise(told => { new Worker(address).onmessage = ({data}) => told(data); });
    }"""
    assert page.evaluate(in_worker, tried) == "TypeError"
    assert elsewhere.asked == []
    scripts = page.evaluate("""() => new Promise(told => {
      document.addEventListener('securitypolicyviolation', event => told(event.effectiveDirective));
      const script = document.createElement('script');
      script.textContent = 'window.ran = true';
      document.body.append(script);
    })""")
    assert scripts == "script-src-elem" and page.evaluate("window.ran") is None
