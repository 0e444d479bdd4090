"""Two users of this system on a real hub, in two browsers: neither reads the other's answers.

CLASS=all python -m pytest -n 0 tests/hub
"""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from repairlib.core.tables import LESSON_FOLDER
from repairlib.learn.hand_in import read_hand_in
from tests.browser.lab import WAIT_MS
from tests.hub.running import INSTRUCTOR, RUN, Hub, missing, running_hub

pytestmark = [
    pytest.mark.skipif(bool(missing()), reason=missing() or "a hub can run"),
    pytest.mark.slow,
]
STARTS_MS = 120_000
MOST_THREADS = 250
ADA, BEN = f"hubada{RUN}", f"hubben{RUN}"
TYPED = {ADA: "60 s", BEN: "90 s"}


@pytest.fixture(scope="module")
def hub():
    with running_hub([ADA, BEN]) as hub:
        yield hub


@pytest.fixture(scope="module")
def pages(hub, browser):
    """The page of each learner, who has logged in and answered one question."""
    pages = {}
    for word in (ADA, BEN):
        page = browser.new_context(viewport={"width": 1280, "height": 1000}).new_page()
        page.set_default_timeout(WAIT_MS)
        page.goto(f"{hub.address}/hub/login")
        page.fill("#username_input", word)
        page.fill("#password_input", hub.passwords[word])
        page.click("#login_submit")
        pages[word] = page
    for word, page in pages.items():
        answer(page, TYPED[word])
    return pages


def answer(page: Page, text: str) -> None:
    """Answer question 2 of lesson 00, which has run by itself; the answer is judged."""
    expect(page.locator(".rl-card").last).to_be_attached(timeout=STARTS_MS)
    card = page.locator(".rl-card").filter(has_text="(q2)")
    card.get_by_role("textbox").fill(text)
    expect(card).to_contain_text("Saved")


def kept_answers(hub: Hub, word: str) -> list[Path]:
    """The files with the answers of a learner, as root finds them."""
    found = (hub.place / "learners" / word / "workbook" / "answers").rglob("00-start-here.json")
    return list(found)


def handed_in(hub: Hub, word: str) -> list[Path]:
    return list((hub.place / "handed-in" / word).iterdir())


def test_each_is_who_the_group_says_and_answers_in_a_file_of_their_own(hub, pages):
    for word in (ADA, BEN):
        (path,) = kept_answers(hub, word)
        saved = json.loads(path.read_text())
        assert saved["name"] == f"Learner {word.title()}"
        assert saved["answers"]["q2"] == TYPED[word]
        assert path.owner() == word
        expect(pages[word].get_by_text(f"Learner {word.title()}").first).to_be_attached()


def test_neither_reads_the_files_of_the_other(hub, pages):
    theirs, home = kept_answers(hub, ADA)[0], hub.place / "learners" / ADA
    for command in (["cat", theirs], ["ls", home], ["ls", home / "workbook" / "run"]):
        done = hub.as_user(BEN, list(map(str, command)))
        assert done.returncode and "Permission denied" in done.stderr, done.stdout
        assert hub.as_user(ADA, list(map(str, command))).returncode == 0


def test_neither_opens_the_server_of_the_other(hub, pages):
    own, other = (f"{hub.address}/user/{word}" for word in (BEN, ADA))
    for path in ("/lab", "/api/contents/00-start-here.ipynb", "/files/00-start-here.ipynb"):
        assert pages[BEN].context.request.get(own + path).status == 200
        assert pages[BEN].context.request.get(other + path).status in (403, 404)


def test_what_kernels_show_goes_through_no_port(hub, pages):
    """On a port of this computer, everybody who is logged in could listen."""
    for word in (ADA, BEN):
        run = hub.place / "learners" / word / "workbook" / "run"
        (connection,) = run.glob("kernel-*.json")
        assert json.loads(connection.read_text())["transport"] == "ipc"
        assert any(path.is_socket() for path in run.iterdir())


def test_the_instructor_reads_what_both_handed_in_and_neither_that_of_the_other(hub, pages):
    for word in (ADA, BEN):
        pages[word].get_by_role("button", name="Hand in", exact=True).click()
        expect(pages[word].get_by_text("receipt").first).to_be_attached()
        (path,) = handed_in(hub, word)
        found = hub.as_user(INSTRUCTOR, ["cat", str(path)])
        content = read_hand_in(found.stdout.encode())
        assert content["lessons"]["00-start-here"]["answers"]["q2"] == TYPED[word]
        assert not content["changed"]
    (theirs,) = handed_in(hub, ADA)
    for command in (["cat", theirs], ["ls", theirs.parent], ["rm", "-f", theirs]):
        done = hub.as_user(BEN, list(map(str, command)))
        assert done.returncode and "Permission denied" in done.stderr
    put = hub.as_user(BEN, ["cp", "/etc/hostname", str(theirs.parent)])
    assert put.returncode


def test_the_instructor_collects_both_with_the_command(hub, pages):
    command = [str(hub.python), "-m", "repairlib", "class", "collect", str(hub.folder)]
    done = hub.as_user(INSTRUCTOR, [*command, str(hub.place / "handed-in")])
    assert done.returncode == 0, done.stderr
    marks = (hub.folder / "marks" / "marks.csv").read_text()
    for word in (ADA, BEN):
        assert f"Learner {word.title()}" in marks


def test_lessons_and_settings_of_the_install_are_read_only(hub, pages):
    lessons = LESSON_FOLDER / "00-start-here.ipynb"
    for path in (lessons, hub.place / "group.json", hub.place / "jupyterhub_config.py"):
        done = hub.as_user(ADA, [str(hub.python), "-c", f"open({str(path)!r}, 'a')"])
        assert "Permission" in done.stderr
    for secret in (hub.place / "passwords.txt", hub.place / "hub" / "cookie_secret"):
        assert hub.as_user(ADA, ["cat", str(secret)]).returncode


def test_a_process_of_a_learner_has_its_limits(hub, pages):
    """600 MB for each process, and no more threads than the spawner says."""
    listed = subprocess.run(["ps", "-u", ADA, "-o", "pid="], capture_output=True, text=True)
    numbers = listed.stdout.split()
    assert len(numbers) >= 2  # the server and a kernel
    for number in numbers:
        limits = Path(f"/proc/{number}/limits").read_text()
        assert re.search(r"Max data size +629145600 +629145600", limits)
        assert re.search(rf"Max processes +{MOST_THREADS} +{MOST_THREADS}", limits)
