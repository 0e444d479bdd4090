"""The learner is set once and remembered; a bad file is told and kept."""

import json
import os
import sys
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import (
    DEMO,
    Learner,
    current_learner,
    mark_file,
    open_exercise,
    set_learner,
)
from repairlib.learn.home import home as home_folder
from repairlib.learn.learner import forget, known_learners

LESSON = "00-start-here"


def test_nobody_is_set_at_first():
    assert current_learner() == (DEMO, "")
    assert str(open_exercise(LESSON).sheet()).startswith("00-start-here, demo variant\n")


def test_set_once_and_remembered():
    set_learner("  Ada Example ", "bench-7")
    assert current_learner() == (Learner("Ada Example", "bench-7"), "")
    assert "variant of Ada Example, group bench-7" in str(open_exercise(LESSON).sheet())


def test_answers_of_each_learner_stay_apart_and_come_back():
    set_learner("Ada Example", "bench-7")
    open_exercise(LESSON).answer(q2="1 s")
    set_learner("Ben Example", "bench-7")
    assert open_exercise(LESSON).saved.read() == {}
    set_learner("ada  EXAMPLE", "BENCH-7")
    assert open_exercise(LESSON).saved.read() == {"q2": "1 s"}


@pytest.mark.parametrize(
    ("name", "group", "said"),
    [
        ("", "b", "the name is empty"),
        (" \t", "bench-7", "the name is empty"),
        ("Ada\nBen", "b", "this is no name on one line"),
        ("x" * 81, "b", "this is no name on one line"),
        ("Ada", "\x00", "this is no group on one line"),
        ("Ada", 7, "the group is not a text"),
        (None, "b", "the name is not a text"),
        (b"Ada", "b", "the name is not a text"),
    ],
)
def test_a_name_that_is_none_is_refused(name, group, said):
    with pytest.raises(RepairlibError, match=said):
        set_learner(name, group)
    assert current_learner() == (DEMO, "")


@pytest.mark.parametrize(
    "content", [b"", b"{", b'{"format": 7}', b'{"format": 1, "name": "", "group": 3}']
)
def test_a_bad_file_is_told_and_kept_and_work_goes_on(home, content):
    home.mkdir()
    (home / "learner.json").write_bytes(content)
    learner, note = current_learner()
    assert learner is DEMO
    assert note.endswith("Set your name again in lesson 00.")
    assert (home / "learner.kept-1.json").read_bytes() == content
    set_learner("Ada Example", "bench-7")
    assert current_learner()[0].name == "Ada Example"


def test_a_file_of_before_names_its_group_otherwise_and_is_read(home):
    home.mkdir()
    old = b'{"format": 1, "name": "Ada Example", "class_code": "bench-7"}'
    (home / "learner.json").write_bytes(old)
    assert current_learner() == (Learner("Ada Example", "bench-7"), "")
    assert known_learners() == [Learner("Ada Example", "bench-7")]


def test_answers_of_before_name_their_group_otherwise_and_are_read_and_go_on():
    set_learner("Ada Example", "bench-7")
    saved = open_exercise(LESSON).saved
    old = {"lesson": LESSON, "name": "Ada Example", "class_code": "bench-7", "format": 1}
    saved.path.parent.mkdir(parents=True)
    saved.path.write_text(json.dumps(old | {"answers": {"q2": "1 s"}}))
    assert "group bench-7" in str(mark_file(saved.path))
    open_exercise(LESSON).answer(q8="a")
    assert saved.read() == {"q2": "1 s", "q8": "a"} and saved.note == ""
    assert "class_code" not in json.loads(saved.path.read_bytes())


def test_a_name_alone_is_enough():
    assert set_learner("Ada Example") == Learner("Ada Example", "")
    assert current_learner()[0].who == "Ada Example"
    assert Learner("Ada").folder() != Learner("Ada", "no-group").folder()


def test_both_empty_is_the_way_back_to_the_demo_variant():
    set_learner("Ada Example", "bench-7")
    assert set_learner(" ", "") is DEMO
    assert current_learner() == (DEMO, "")


def test_who_was_set_here_is_known_the_latest_first_until_forgotten():
    for name in ("Ada", "Ben", "Cleo", "ADA"):
        set_learner(name, "bench-7")
    assert [one.name for one in known_learners()] == ["ADA", "Cleo", "Ben"]
    open_exercise(LESSON).answer(q2="1 s")
    forget(current_learner()[0])
    assert [one.name for one in known_learners()] == ["Cleo", "Ben"]
    assert current_learner() == (DEMO, "")
    set_learner("Ada", "bench-7")
    assert open_exercise(LESSON).saved.read() == {"q2": "1 s"}


def test_without_a_chosen_folder_the_users_own_is_taken(monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", "")
    assert home_folder().name == "repairlib"


@pytest.mark.skipif(os.name != "posix", reason="users and pipes of POSIX systems")
def test_the_home_of_a_user_who_is_not_there_is_told(monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", "~nobody-of-that-name/answers")
    with pytest.raises(RepairlibError, match="knows no such home") as error:
        open_exercise(LESSON)
    assert "REPAIRLIB_HOME" in error.value.accepted


def test_a_user_without_any_home_is_told(monkeypatch):
    def none(path):
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.setenv("REPAIRLIB_HOME", "")
    monkeypatch.setattr(Path, "expanduser", none)
    with pytest.raises(RepairlibError, match="your home folder"):
        home_folder()


@pytest.mark.skipif(os.name != "posix", reason="users and pipes of POSIX systems")
def test_a_pipe_in_place_of_the_learner_is_told_and_never_waited_for(home):
    home.mkdir()
    os.mkfifo(home / "learner.json")
    for ask in (current_learner, lambda: set_learner("Ada Example", "bench-7")):
        with pytest.raises(RepairlibError, match="a pipe or a device"):
            ask()


def test_importing_the_exercises_brings_no_notebook_or_table_library():
    import subprocess

    code = "import sys, repairlib.learn; print(*sys.modules)"
    search = {"PYTHONPATH": ":".join(sys.path)}
    loaded = subprocess.run(
        [sys.executable, "-c", code], env=search, capture_output=True, text=True, check=True
    ).stdout.split()
    heavy = {"ipywidgets", "IPython", "pandas", "numpy", "matplotlib", "schemdraw"}
    assert not heavy & set(loaded)
