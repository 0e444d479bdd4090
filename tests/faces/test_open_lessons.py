"""The command `lessons`: the working copy, the settings, and JupyterLab as a learner starts it."""

from __future__ import annotations

import json
import os
import shutil
import signal
import socket
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from contextlib import contextmanager
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import LESSON_FOLDER
from repairlib.faces.cli import main
from repairlib.faces.lessons.laying import FIRST, RECORD, lay_lessons
from repairlib.faces.lessons.server import free_port
from repairlib.faces.lessons.settings import bare_keys, write_settings

ROOT = Path(__file__).parents[2]
PATIENCE_S = 120  # for a machine that is busy; a start takes some seconds
OUTSIDE = ("DISPLAY", "WAYLAND_DISPLAY", "BROWSER", "JUPYTERHUB_SERVICE_PREFIX")


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    return tmp_path / "home"


# The working copy


@pytest.fixture
def source(tmp_path):
    """A shipped lesson, to be changed by a test as an update would."""
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / FIRST).write_text(notebook("first"))
    return folder


@pytest.fixture
def copy(tmp_path, source):
    """The working copy of `source`, laid once."""
    lay_lessons(tmp_path / "copy", source)
    return tmp_path / "copy"


def notebook(text: str, outputs=()) -> str:
    cells = [{"cell_type": "code", "source": [text], "outputs": list(outputs)}]
    return json.dumps({"cells": cells, "nbformat": 4})


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir() if path.name[0] != "."}


def test_all_lessons_and_their_map_are_laid_byte_for_byte(tmp_path):
    assert lay_lessons(tmp_path / "copy") == []
    expected = {path.name for path in LESSON_FOLDER.iterdir() if path.is_file()}
    expected -= {"template.ipynb"}
    assert {FIRST, "README.md", "path.svg", "words.md"} <= expected
    assert names(tmp_path / "copy") == expected
    for name in expected:
        assert (tmp_path / "copy" / name).read_bytes() == (LESSON_FOLDER / name).read_bytes()


def test_an_update_replaces_an_untouched_lesson(copy, source):
    (source / FIRST).write_text(notebook("second"))
    assert lay_lessons(copy, source) == []
    assert (copy / FIRST).read_text() == notebook("second")
    assert names(copy) == {FIRST}


def test_a_lesson_that_was_only_run_is_left_and_then_replaced_by_an_update(copy, source):
    run = notebook("first", outputs=["a live panel"])
    (copy / FIRST).write_text(run)
    assert lay_lessons(copy, source) == []
    assert (copy / FIRST).read_text() == run
    (source / FIRST).write_text(notebook("second"))
    assert lay_lessons(copy, source) == []
    assert (copy / FIRST).read_text() == notebook("second")
    assert names(copy) == {FIRST}


def test_a_changed_lesson_is_left_alone_while_no_new_one_is_shipped(copy, source):
    (copy / FIRST).write_text(notebook("mine"))
    assert lay_lessons(copy, source) == []
    assert (copy / FIRST).read_text() == notebook("mine")
    assert names(copy) == {FIRST}


def test_a_changed_lesson_is_kept_and_the_new_one_put_beside_it_once(copy, source):
    (copy / FIRST).write_text(notebook("mine"))
    (source / FIRST).write_text(notebook("second"))
    (line,) = lay_lessons(copy, source)
    assert line == f"Your changed {FIRST} is kept; the new version is 00-start-here.new.ipynb."
    assert (copy / FIRST).read_text() == notebook("mine")
    beside = copy / "00-start-here.new.ipynb"
    assert beside.read_text() == notebook("second")
    beside.unlink()  # seen, and not wanted
    assert lay_lessons(copy, source) == []
    assert names(copy) == {FIRST}


def test_no_change_is_lost_over_two_updates(copy, source):
    beside = copy / "00-start-here.new.ipynb"
    (copy / FIRST).write_text(notebook("mine"))
    (source / FIRST).write_text(notebook("second"))
    lay_lessons(copy, source)
    beside.write_text(notebook("mine too"))
    (source / FIRST).write_text(notebook("third"))
    lay_lessons(copy, source)
    kept = [(copy / FIRST).read_text(), beside.read_text()]
    assert kept == [notebook("mine"), notebook("mine too")]
    assert (copy / "00-start-here.new.new.ipynb").read_text() == notebook("third")


def test_a_lesson_thrown_away_comes_back(copy, source):
    (copy / FIRST).unlink()
    lay_lessons(copy, source)
    assert (copy / FIRST).read_text() == notebook("first")


@pytest.mark.parametrize("content", ["", "{", '{"format": 1, "laid": {"a": 3}}', "[]"])
def test_without_a_usable_record_every_other_text_counts_as_changed(copy, source, content):
    (copy / RECORD).write_text(content)
    (copy / FIRST).write_text("not even a notebook")
    (line,) = lay_lessons(copy, source)
    assert "is kept" in line
    assert (copy / FIRST).read_text() == "not even a notebook"
    assert (copy / "00-start-here.new.ipynb").read_text() == notebook("first")


@pytest.mark.parametrize("place", [LESSON_FOLDER, ROOT, ROOT / "lessons" / ".." / "mine"], ids=str)
def test_nothing_is_laid_where_the_lessons_come_from(place):
    with pytest.raises(RepairlibError, match="no working copy is laid"):
        lay_lessons(place)
    assert not (place / RECORD).exists()


def test_a_folder_that_cannot_be_made_is_one_clear_line(tmp_path):
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(RepairlibError, match="cannot be read or saved"):
        lay_lessons(tmp_path / "file" / "copy")


# Settings


def test_no_bare_letter_changes_a_notebook():
    keys = [tuple(one["keys"]) for one in bare_keys()]
    for wanted in ("DD", "X", "A", "B", "C", "V", "M", "Y", "R", "Z", "00", "II"):
        assert tuple(wanted) in keys
    assert ("Shift M",) in keys
    assert not [key for key in keys if "Enter" in str(key) or "Ctrl" in str(key)]


def test_a_learners_choice_of_settings_and_tabs_is_kept(tmp_path):
    write_settings(tmp_path, large=True)
    (workspace,) = (tmp_path / "workspaces").iterdir()
    (themes,) = (tmp_path / "settings-large").rglob("themes*")
    for path in (workspace, themes):
        path.write_text("{}")
    write_settings(tmp_path, large=True)
    assert workspace.read_text() == themes.read_text() == "{}"


# Bad input


@pytest.mark.parametrize(
    "options",
    [
        ["05"],
        ["--nope"],
        ["--json"],
        ["--to"],
        ["--to", str(ROOT / "mine")],
        ["--port", "0"],
        ["--port", "65536"],
        ["--port", "eight"],
        ["--base-url", "http://host/bench"],
        ["--base-url", "a b"],
        ["--ip=a", "--ip=b"],
    ],
    ids=" ".join,
)
def test_bad_options_are_one_clear_line(options, capsys):
    assert main(["lessons", *options]) == 2
    said = "".join(capsys.readouterr())
    assert "Accepted:" in said
    assert len(said.splitlines()) == (3 if "--json" in options else 1)


@pytest.mark.parametrize("ip", ["999.1.1.1", "203.0.113.7", "no such host", "a..b"])
def test_an_address_of_another_computer_is_one_clear_line(ip):
    with pytest.raises(RepairlibError, match="nothing can be opened there"):
        free_port(ip, 8888)


def test_without_jupyterlab_one_line_says_what_to_install():
    done = subprocess.run(
        [sys.executable, "-S", "-m", "repairlib", "lessons"],  # -S: nothing that was installed
        cwd=ROOT,
        env={"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 2
    (line,) = done.stderr.splitlines()
    assert "not installed" in line
    assert line.endswith('pip install "repairlib[lessons]"')


# The browser


@pytest.mark.parametrize(
    ("programs", "variables", "found"),
    [
        ([], {}, False),
        (["w3m", "lynx"], {"TERM": "xterm"}, False),
        (["xdg-open"], {}, False),
        (["xdg-open"], {"DISPLAY": ":7"}, True),
        (["xdg-open"], {"WAYLAND_DISPLAY": "wayland-7"}, True),
        (["of-their-own"], {"BROWSER": "of-their-own"}, True),
        (["w3m"], {"BROWSER": "w3m"}, False),
    ],
)
@pytest.mark.skipif(sys.platform in ("win32", "darwin"), reason="a screen is always there")
def test_a_browser_is_opened_where_there_is_a_screen(tmp_path, programs, variables, found):
    for name in programs:
        program(tmp_path / name, "exit 0")
    code = "from repairlib.faces.lessons.browser import find_browser; print(find_browser())"
    done = subprocess.run(
        [sys.executable, "-c", code],
        env={"PATH": str(tmp_path), "PYTHONPATH": str(ROOT)} | variables,
        capture_output=True,
        text=True,
        check=True,
    )
    assert (done.stdout.strip() != "None") == found


def program(path: Path, script: str) -> Path:
    path.write_text(f"#!/bin/sh\n{script}\n")
    path.chmod(0o755)
    return path


# The command itself


@pytest.fixture
def house(tmp_path):
    """A clone of its own with all that is in this one, without the right to write in it."""
    folder = tmp_path / "house"
    listing = git(ROOT, "ls-files", "--cached", "--others", "--exclude-standard")
    for name in filter(None, listing.splitlines()):
        if (ROOT / name).is_file() and not name.startswith("tests/"):
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, folder / name)
    git(folder, "init", "-q")
    git(folder, "add", "-A")
    git(folder, "-c", "user.name=x", "-c", "user.email=x", "commit", "-q", "-m", "all")
    modes = {path: path.stat().st_mode for path in [folder, *folder.rglob("*")]}
    for path, mode in modes.items():
        path.chmod(mode & ~0o222)
    yield folder
    for path, mode in modes.items():
        path.chmod(mode)


def git(folder: Path, *arguments: str) -> str:
    done = subprocess.run(
        ["git", *arguments], cwd=folder, capture_output=True, text=True, check=True
    )
    return done.stdout


def environment(house: Path, **variables: str) -> dict[str, str]:
    """This one without a screen, for the repairlib of `house`."""
    inherited = {name: value for name, value in os.environ.items() if name not in OUTSIDE}
    search = os.pathsep.join([str(house), os.environ["PYTHONPATH"]])
    ours = {"PYTHONPATH": search, "PYTHONDONTWRITEBYTECODE": "1", "TERM": "dumb"}
    return inherited | ours | variables


@contextmanager
def lessons(house: Path, *options: str, **variables: str):
    """Run the command; gives the process and what it said up to the line under the address."""
    process = subprocess.Popen(
        [sys.executable, "-m", "repairlib", "lessons", *options],
        cwd=house,
        env=environment(house, **variables),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        encoding="utf-8",
    )
    patience = threading.Timer(PATIENCE_S, process.kill)
    patience.start()
    try:
        said = []
        while not (len(said) > 1 and said[-2].startswith("http")):
            said.append(process.stdout.readline())
            assert said[-1], f"It ended, or had {PATIENCE_S} s, and said: {''.join(said)}"
        yield process, [line.strip() for line in said]
        process.wait()
    finally:
        patience.cancel()
        process.kill()
        process.wait()
        process.stdout.close()


def get(address: str) -> tuple[int, str]:
    """The status and the body of the answer; one connection error is no answer."""
    try:
        with urllib.request.urlopen(address, timeout=PATIENCE_S) as answer:
            return answer.status, answer.read().decode()
    except urllib.error.HTTPError as error:
        return error.code, ""


@pytest.mark.slow
def test_opened_without_a_screen_from_a_clone_that_cannot_be_written(house, home):
    with socket.create_server(("127.0.0.1", 0)) as other:
        taken = other.getsockname()[1]
        with lessons(house, "--port", str(taken)) as (process, said):
            where, address, help_line = said
            assert str(home / "lessons") in where
            base, token = address.split(f"/lab/tree/{FIRST}?token=")
            assert base.startswith("http://127.0.0.1:")
            assert base != f"http://127.0.0.1:{taken}"
            assert help_line.startswith("Copy the address into a browser.")
            assert get(address)[0] == 200
            status, lesson = get(f"{base}/api/contents/{FIRST}?token={token}")
            assert status == 200
            assert json.loads(lesson)["content"]["cells"]
            assert get(f"{base}/api/contents/{FIRST}")[0] == 403
            settings = "lab/api/settings/@jupyterlab/shortcuts-extension:shortcuts"
            keys = json.loads(get(f"{base}/{settings}?token={token}")[1])
            keys = keys["schema"]["properties"]["shortcuts"]["default"]
            assert ["D", "D"] in [key["keys"] for key in keys if key["disabled"]]
            process.send_signal(signal.SIGINT)
            rest = process.stdout.read()
    assert process.returncode == 0
    assert rest == "The lessons are closed. To open them again: python -m repairlib lessons\n"

    save = "from repairlib.learn import *; set_learner('Ada Example', 'bench-7');"
    save += "open_exercise('00-start-here').answer(q2='1 s')"
    run = [sys.executable, "-c", save]
    subprocess.run(run, cwd=home / "lessons", env=environment(house), check=True)
    assert list((home / "answers").rglob("00-start-here.json"))
    assert git(house, "status", "--porcelain", "--ignored") == ""


@pytest.mark.slow
def test_opened_in_a_browser_and_under_the_prefix_of_a_proxy(house, tmp_path):
    seen = tmp_path / "seen"
    browser = program(tmp_path / "their-browser", f'echo "$1" > {seen}.part; mv {seen}.part {seen}')
    options = ("--base-url", "bench/7", "--to", str(tmp_path / "mine"), "--large")
    with lessons(house, *options, BROWSER=str(browser)) as (process, said):
        where, address, help_line = said
        assert str(tmp_path / "mine") in where
        base, token = address.split(f"/lab/tree/{FIRST}?token=")
        assert base.endswith("/bench/7")
        assert help_line.startswith("Your browser opens.")
        assert get(address)[0] == 200
        assert get(f"{base}/api/contents/{FIRST}?token={token}")[0] == 200
        give_up = time.monotonic() + PATIENCE_S
        while not seen.exists() and time.monotonic() < give_up:
            time.sleep(0.1)  # between two looks
        assert seen.read_text().strip() == address
        process.send_signal(signal.SIGTERM)
    assert process.returncode == 0


def test_a_start_does_not_work_out_a_grammar_that_nothing_needs(home):
    """It took half of JupyterLab's start: two seconds of processor time, each time."""
    lines = (
        "from pathlib import Path; import sys",
        "from repairlib.faces.lessons.opening import furnish",
        f"furnish(Path({str(home)!r}))",
        "import jupyterlab.labapp",
        "print('jsonschema' in sys.modules, 'lark' in sys.modules)",
    )
    done = subprocess.run(
        [sys.executable, "-c", "\n".join(lines)], cwd=ROOT, capture_output=True, text=True
    )
    assert done.stdout.split() == ["True", "False"], done.stderr
