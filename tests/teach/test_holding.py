"""A lesson held and released for a group: one file changes, the word stays with the instructor."""

import json
import stat

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.class_commands import run_class
from repairlib.learn import files, open_exercise
from repairlib.learn.group import Group, Member, read_group
from repairlib.learn.holding import hash_of, release_here
from repairlib.teach.holding import hold, release

LESSON = "03-capacitor-markings"
SIGNED = {"word": "kite", "by": "Cleo Example", "on": "2026-11-29"}


@pytest.fixture
def folder(tmp_path):
    (there := tmp_path / "bench").mkdir()
    group = Group("Tuesday bench", (Member("Ada Example", "kite"),), ("00-start-here", LESSON))
    files.write(there / "group.json", group.to_dict())
    files.write(there / "instructor.json", {"signed": [SIGNED]})
    return there


@pytest.mark.behaviour
def test_held_it_has_the_hash_and_the_instructor_the_word(folder):
    held = hold(folder, "3")
    assert (held.lesson, held.new) == (LESSON, True)
    assert read_group(folder / "group.json").held == {LESSON: hash_of(held.word)}
    kept = json.loads((folder / "instructor.json").read_bytes())
    assert kept["release_words"] == {LESSON: held.word} and kept["signed"] == [SIGNED]
    assert held.word not in (folder / "group.json").read_text()
    assert hold(folder, LESSON) == held._replace(new=False)


@pytest.mark.behaviour
def test_released_in_one_step_on_a_server_and_by_word_on_a_laptop(folder, tmp_path, monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path / "home"))
    word = hold(folder, "03").word
    (laptop := tmp_path / "laptop.json").write_bytes((folder / "group.json").read_bytes())
    monkeypatch.setenv("REPAIRLIB_GROUP", str(folder / "group.json"))
    exercise = open_exercise(LESSON)
    assert exercise.is_held()
    assert release(folder, "03").word == word
    assert not exercise.is_held()
    monkeypatch.setenv("REPAIRLIB_GROUP", str(laptop))
    assert exercise.is_held()
    release_here(LESSON, word)
    assert not exercise.is_held()


@pytest.mark.behaviour
def test_everybody_can_still_read_the_file_of_the_group(folder):
    path = folder / "group.json"
    path.chmod(0o644)
    hold(folder, "03")
    assert stat.S_IMODE(path.stat().st_mode) == 0o644


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "act, typed, wrong",
    [
        (hold, "07", "no such lesson here"),
        (release, "03", "no lesson is held"),
        (hold, "", "no such lesson here"),
    ],
)
def test_what_cannot_be_done_is_one_line_and_changes_nothing(folder, act, typed, wrong):
    before = (folder / "group.json").read_bytes()
    with pytest.raises(RepairlibError, match=wrong):
        act(folder, typed)
    assert (folder / "group.json").read_bytes() == before


@pytest.mark.behaviour
def test_a_folder_without_a_group_is_one_line(tmp_path):
    with pytest.raises(RepairlibError, match="there is no such file"):
        hold(tmp_path, "03")


@pytest.mark.behaviour
def test_the_verbs_say_the_word_what_to_do_and_that_it_is_no_examination(folder):
    told = run_class(["hold", str(folder), "3"], False)
    word = json.loads((folder / "instructor.json").read_bytes())["release_words"][LESSON]
    assert f"Release word: {word}." in told and "practice and no examination" in told
    assert "held already" in run_class(["hold", str(folder), "3"], False)
    assert word in run_class(["release", str(folder), "3"], False)
    for verb in ("hold", "release"):
        assert "practice and no examination" in run_class([verb, "--help"], False)
        with pytest.raises(RepairlibError, match="a folder and one lesson"):
            run_class([verb, str(folder)], False)


@pytest.mark.behaviour
@pytest.mark.parametrize("change", [hold, release])
def test_a_folder_that_is_not_there_is_not_made(tmp_path, change):
    with pytest.raises(RepairlibError, match="there is no such file"):
        change(tmp_path / "mistyped", "03")
    assert not (tmp_path / "mistyped").exists()
