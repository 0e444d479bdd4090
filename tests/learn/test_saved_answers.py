"""Saved answers: as typed, whole, shared by kernels, kept aside when they cannot be read."""

import errno
import json
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from repairlib.core import saving
from repairlib.core.errors import RepairlibError
from repairlib.learn import DEMO, Learner, files, mark_file, open_exercise, set_learner
from repairlib.learn.saved_answers import SavedAnswers

LESSON = "00-start-here"


def kept(saved):
    return sorted(saved.path.parent.glob("*.kept-*"))


def dangerous_and_right(name):
    """Two answers to a question of lesson 00: one that could hurt, and the right one."""
    ask = open_exercise(LESSON).by_id[name]
    states = {ask.judge(option).state: option for option in ask.options}
    return states["unsafe"], states["right"]


@pytest.mark.parametrize("name", ["q1", "q3", "q5"])
def test_a_dangerous_answer_stays_noted_after_it_was_changed(name):
    bad, good = dangerous_and_right(name)
    open_exercise(LESSON).answer(**{name: bad})
    open_exercise(LESSON).answer(**{name: good})
    open_exercise(LESSON).answer(q8="a")
    sheet = open_exercise(LESSON).sheet()
    assert str(sheet).count("answered unsafely first") == 1
    (line,) = (line for line in sheet.lines if line.id == name)
    assert (line.state, line.points, line.unsafe_first) == ("right", line.out_of, True)
    assert str(mark_file(SavedAnswers(LESSON, DEMO).path)) == str(sheet)


def test_a_wrong_answer_that_hurts_nobody_is_not_noted():
    open_exercise(LESSON).answer(q7="1 nF")
    open_exercise(LESSON).answer(q7="10 pF")
    assert "unsafely" not in str(open_exercise(LESSON).sheet())
    assert "unsafe" not in json.loads(SavedAnswers(LESSON).path.read_bytes())


def test_a_file_without_notes_on_danger_is_read_and_noted_from_now_on():
    bad, good = dangerous_and_right("q1")
    saved = SavedAnswers(LESSON)
    saved.save({"q1": bad})  # as an earlier version did
    assert saved.read_all().unsafe == () and not kept(saved)
    open_exercise(LESSON).answer(q1=good)
    assert saved.read_all().unsafe == ("q1",)


def test_nothing_is_saved_at_first():
    assert SavedAnswers(LESSON).read() == {}


def test_an_answer_is_there_after_a_restart():
    SavedAnswers(LESSON).save({"q1": "0,1 uF "})
    assert SavedAnswers(LESSON).read() == {"q1": "0,1 uF "}


@settings(max_examples=50, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text())
def test_any_text_is_saved_as_typed(text):
    SavedAnswers(LESSON).save({"q1": text})
    assert SavedAnswers(LESSON).read()["q1"] == text


def test_two_kernels_that_opened_the_same_exercise_lose_nothing():
    first, second = SavedAnswers(LESSON), SavedAnswers(LESSON)
    first.read(), second.read()
    first.save({"q1": "one", "q7": {"C3": {"voltage": "25"}}})
    second.save({"q2": "two", "q7": {"C3": {"fit": "radial"}}})
    assert first.read() == {
        "q1": "one",
        "q2": "two",
        "q7": {"C3": {"voltage": "25", "fit": "radial"}},
    }


SAVE_MANY = """
import sys
from repairlib.learn.saved_answers import SavedAnswers
print("ready", flush=True)
sys.stdin.readline()
for number in range(150):
    SavedAnswers("00-start-here").save({f"{sys.argv[1]}{number}": "x"})
"""


def test_two_processes_that_save_at_the_same_time_lose_nothing():
    search = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}
    both = [
        subprocess.Popen(
            [sys.executable, "-c", SAVE_MANY, name],
            env=search,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
        )
        for name in "ab"
    ]
    assert [process.stdout.readline() for process in both] == [b"ready\n"] * 2
    for process in both:
        process.stdin.write(b"go\n")
        process.stdin.flush()
    for process in both:
        process.communicate(timeout=60)
    assert [process.returncode for process in both] == [0, 0]
    expected = {f"{name}{number}" for name in "ab" for number in range(150)}
    assert set(SavedAnswers(LESSON).read()) == expected


def test_threads_of_one_process_lose_nothing():
    with ThreadPoolExecutor(8) as pool:
        list(pool.map(lambda n: SavedAnswers(LESSON).save({f"q{n}": "x"}), range(40)))
    assert len(SavedAnswers(LESSON).read()) == 40


BAD_FILES = [
    (b"", "it is empty"),
    (b"  \n", "it is empty"),
    (b'{"format": 1, "lesson": "00-st', "it is cut short or is not JSON"),
    (b"\x00\xff\xfe", "it is cut short or is not JSON"),
    (b"[" * 100_000, "it is cut short or is not JSON"),
    (b"[]", "it does not hold what it should"),
    (b'{"format": 1}', "it does not hold what it should"),
    (b'{"format": true, "answers": {}}', "it does not hold what it should"),
    (
        b'{"format": 1, "lesson": "x", "group": "", "name": "", "answers": {"q1": 5}}',
        "it does not hold what it should",
    ),
    (
        b'{"format": 1, "lesson": "x", "group": "", "name": "", "answers": {}, "unsafe": 1}',
        "it does not hold what it should",
    ),
    (b'{"format": 2, "replies": {}}', "it is of a later version (2; this one reads 1)"),
]


@pytest.mark.parametrize(("content", "reason"), BAD_FILES)
def test_a_bad_file_is_kept_aside_and_work_goes_on(content, reason):
    saved = SavedAnswers(LESSON)
    saved.path.parent.mkdir(parents=True)
    saved.path.write_bytes(content)
    assert saved.read() == {}
    assert reason in saved.note and saved.note.count("\n") == 0
    assert [path.read_bytes() for path in kept(saved)] == [content]
    saved.save({"q1": "9 V"})
    assert saved.read() == {"q1": "9 V"}


def test_a_bad_file_found_while_saving_is_kept_too():
    saved = SavedAnswers(LESSON)
    saved.save({"q1": "9 V"})
    saved.path.write_bytes(b"{")
    assert saved.save({"q2": "a"}) == {"q2": "a"}
    assert "cut short" in saved.note
    assert [path.read_bytes() for path in kept(saved)] == [b"{"]


def test_a_second_bad_file_never_overwrites_the_first():
    saved = SavedAnswers(LESSON)
    saved.path.parent.mkdir(parents=True)
    for content in (b"one", b"two", b"three"):
        saved.path.write_bytes(content)
        saved.read()
    assert [path.read_bytes() for path in kept(saved)] == [b"one", b"two", b"three"]


def test_the_sheet_says_what_happened_to_the_file():
    exercise = open_exercise(LESSON)
    exercise.saved.path.parent.mkdir(parents=True)
    exercise.saved.path.write_bytes(b"")
    assert "Note: The saved file could not be used: it is empty. It is kept as " in str(
        exercise.sheet()
    )


@pytest.mark.parametrize(
    "name",
    [
        "../../etc/passwd",
        "CON",
        "a/b\\c:d*e?",
        "Zoë",
        "李小龙",
        "." * 60,
        "x" * 80,
        "🙂",
        "~",
        "-rf",
    ],
)
def test_file_names_are_plain_for_any_learner(name, home):
    saved = SavedAnswers(LESSON, Learner(name, "klasse 7/ö"))
    saved.save({"q1": "x"})
    parts = saved.path.relative_to(home).parts
    assert len(parts) == 4
    allowed = "abcdefghijklmnopqrstuvwxyz0123456789-."
    assert set("".join(parts)) <= set(allowed) and not any(p.startswith(".") for p in parts)
    assert saved.path.resolve().is_relative_to(home.resolve())


def test_learners_with_similar_names_have_separate_files():
    names = ["Ada", "Ada!", "Äda", "Ada.", "A d a"]
    assert len({SavedAnswers(LESSON, Learner(n, "c")).path for n in names}) == len(names)


def test_a_folder_that_cannot_be_made_is_said_in_one_line(home):
    home.write_text("a file stands where the folder should be")
    with pytest.raises(RepairlibError, match="cannot be read or saved") as error:
        SavedAnswers(LESSON).save({"q1": "x"})
    assert "REPAIRLIB_HOME" in str(error.value)


def test_a_full_disk_is_said_and_the_old_file_stays_and_the_room_is_given_back(monkeypatch):
    saved = SavedAnswers(LESSON)
    saved.save({"q1": "old"})
    files_then = sorted(saved.path.parent.iterdir())

    def full(handle):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        with pytest.raises(RepairlibError, match="no space left on device"):
            saved.save({"q1": "new"})
    assert saved.read() == {"q1": "old"}
    assert sorted(saved.path.parent.iterdir()) == files_then


posix = pytest.mark.skipif(os.name != "posix", reason="links and pipes of POSIX systems")


@posix
def test_a_link_laid_in_the_way_leads_nowhere(tmp_path):
    victim = tmp_path / "victim"
    victim.write_text("mine")
    saved = SavedAnswers(LESSON)
    saved.path.parent.mkdir(parents=True)
    saved.path.with_name(saved.path.name + ".new").symlink_to(victim)
    saved.save({"q1": "9 V"})
    assert victim.read_text() == "mine"
    assert saved.read() == {"q1": "9 V"}


@posix
def test_an_answer_file_that_is_a_link_stays_one(tmp_path):
    """The folder of a class may be synced: what the link leads to is what must be new."""
    synced = tmp_path / "synced.json"
    saved = SavedAnswers(LESSON)
    saved.save({"q1": "9 V"})
    saved.path.rename(synced)
    saved.path.symlink_to(synced)
    saved.save({"q2": "b"})
    assert saved.path.is_symlink()
    assert json.loads(synced.read_bytes())["answers"] == {"q1": "9 V", "q2": "b"}


def test_what_another_program_added_to_the_file_stays():
    saved = SavedAnswers(LESSON)
    saved.save({"q1": "9 V"})
    added = json.loads(saved.path.read_bytes()) | {"bench": "third from the door"}
    saved.path.write_text(json.dumps(added))
    saved.save({"q1": "8 V"})
    assert json.loads(saved.path.read_bytes())["bench"] == "third from the door"
    assert saved.read() == {"q1": "8 V"}


@posix
def test_a_pipe_in_place_of_the_answers_is_told_and_never_waited_for(tmp_path):
    saved = SavedAnswers(LESSON)
    saved.path.parent.mkdir(parents=True)
    os.mkfifo(saved.path)
    for ask in (saved.read, lambda: saved.save({"q1": "x"}), lambda: mark_file(saved.path)):
        with pytest.raises(RepairlibError, match="a pipe or a device") as error:
            ask()
        assert "\n" not in str(error.value)


def test_a_lock_held_by_another_kernel_is_said(monkeypatch):
    saved = SavedAnswers(LESSON)
    monkeypatch.setattr(saving, "PATIENCE", 0.05)
    with (
        files.locked(saved.path),
        pytest.raises(RepairlibError, match="another program has held this file"),
    ):
        SavedAnswers(LESSON).save({"q1": "x"})


def test_a_copy_of_the_file_is_marked_anew_by_the_instructor(tmp_path):
    set_learner("Ada Example", "bench-7")
    exercise = open_exercise(LESSON)
    exercise.answer(q2="9 V", q3="a")
    copy = tmp_path / "handed-in.json"
    copy.write_bytes(exercise.saved.path.read_bytes())
    assert str(mark_file(copy)) == str(exercise.sheet())
    assert "variant of Ada Example, group bench-7" in str(mark_file(copy))


def test_a_mark_written_into_the_file_changes_nothing(tmp_path):
    open_exercise(LESSON).answer(q2="9 s")
    saved = SavedAnswers(LESSON, DEMO)
    content = json.loads(saved.path.read_bytes()) | {"points": 13, "marks": {"q2": 2}}
    saved.path.write_text(json.dumps(content))
    assert mark_file(saved.path).points == open_exercise(LESSON).sheet().points == 0


@pytest.mark.parametrize("content", [b"", b"{", b'{"format": 2}'])
def test_a_bad_file_of_a_learner_is_named_and_left_to_the_instructor(tmp_path, content):
    path = tmp_path / "handed-in.json"
    path.write_bytes(content)
    with pytest.raises(RepairlibError):
        mark_file(path)
    assert path.read_bytes() == content
    with pytest.raises(RepairlibError, match="there is no such file"):
        mark_file(tmp_path / "nothing.json")
