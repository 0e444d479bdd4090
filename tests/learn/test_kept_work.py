"""Work on a panel is kept as typed: after a crash, for each learner apart, damaged files aside."""

import json
import os
import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from repairlib.core import saving
from repairlib.core.errors import RepairlibError
from repairlib.learn import Learner, files, set_learner
from repairlib.learn.kept_work import KeptWork
from tests.learn.killing import reported_until_killed

ADA, BEN = Learner("Ada Example", "bench-7"), Learner("Ben Example", "bench-7")
plain = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=3,
)


def test_nothing_is_kept_at_first():
    assert KeptWork("07-plan").read() == {}


def test_what_was_typed_is_back_and_one_thing_leaves_the_others():
    KeptWork("07-plan").save({"list": "C1, 10/16\n", "boards": 2})
    KeptWork("07-plan").save({"ticked": ["C3", "C9"]})
    kept = {"list": "C1, 10/16\n", "boards": 2, "ticked": ["C3", "C9"]}
    assert KeptWork("07-plan").read() == kept
    assert KeptWork("05-board").read() == {}


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.dictionaries(st.text(), plain, max_size=3))
def test_any_plain_value_comes_back_as_it_was(values):
    work = KeptWork("any", ADA)
    work.path.unlink(missing_ok=True)
    assert work.save(values) == work.read() == values
    assert work.note == ""


@pytest.mark.parametrize("value", [object(), {1: "x"}, b"x", [[[[["x"]]]]], {"x": {1, 2}}])
def test_what_is_no_plain_value_is_a_mistake_of_the_panel(value):
    with pytest.raises(TypeError, match="only texts"):
        KeptWork("07-plan").save({"list": value})


@pytest.mark.parametrize("name", ["", "../x", "a/b", "Plan", "-x", "x" * 81, "07 plan", "x\n"])
def test_a_name_that_is_no_file_name_is_a_mistake_of_the_panel(name):
    with pytest.raises(ValueError, match="no name"):
        KeptWork(name)


def test_two_learners_on_one_computer_do_not_mix():
    for learner, text in ((ADA, "hers"), (BEN, "his")):
        KeptWork("07-plan", learner).save({"list": text})
    set_learner("ada  EXAMPLE", "Bench-7")
    assert KeptWork("07-plan").read() == {"list": "hers"}
    set_learner("Ben Example", "bench-7")
    assert KeptWork("07-plan").read() == {"list": "his"}
    set_learner("", "")
    assert KeptWork("07-plan").read() == {}
    assert KeptWork("07-plan", Learner("Ada Example")).read() == {}


def test_what_replaces_something_is_later_than_it_also_when_the_clock_is_behind():
    work = KeptWork("07-plan", ADA)
    work.save({"list": "one", "boards": 1})
    ahead = json.loads(work.path.read_bytes())
    ahead["at"]["list"] = 4_102_444_800_000  # from a computer whose clock says 2100
    work.path.write_text(json.dumps(ahead))
    work.save({"list": "two"})
    at = json.loads(work.path.read_bytes())["at"]
    assert at["list"] == 4_102_444_800_001 and at["boards"] == ahead["at"]["boards"]


BAD_FILES = [
    b"",
    b'{"format": 1, "work": "07-pl',
    b"\x00\xff",
    b"[]",
    b'{"format": 1, "name": "", "group": "", "work": "07-plan"}',
    b'{"format": 1, "name": "", "group": "", "work": "../x", "kept": {}}',
    b'{"format": 1, "name": "", "group": "", "work": "07-plan", "kept": [1]}',
    b'{"format": 1, "name": "", "group": "", "work": "07-plan", "kept": {}, "at": {"list": "x"}}',
    b'{"format": 1, "name": "", "group": 7, "work": "07-plan", "kept": {}}',
    b'{"format": 2, "things": {}}',
]


@pytest.mark.parametrize("content", BAD_FILES)
def test_a_damaged_file_is_kept_aside_and_work_goes_on(content):
    work = KeptWork("07-plan")
    work.path.parent.mkdir(parents=True)
    work.path.write_bytes(content)
    assert work.read() == {}
    assert "It is kept as " in work.note and "\n" not in work.note
    assert [one.read_bytes() for one in work.path.parent.glob("*.kept-*")] == [content]
    assert work.save({"list": "C1"}) == {"list": "C1"}


def test_a_folder_that_cannot_be_made_is_said_in_one_line(home):
    home.write_text("a file stands where the folder should be")
    for ask in (KeptWork("07-plan", ADA).read, lambda: KeptWork("07-plan", ADA).save({"a": 1})):
        with pytest.raises(RepairlibError, match="cannot be read or saved") as error:
            ask()
        assert "\n" not in str(error.value)


def test_a_lock_held_by_another_kernel_is_said(monkeypatch):
    work = KeptWork("07-plan")
    monkeypatch.setattr(saving, "PATIENCE", 0.05)
    with (
        files.locked(work.path),
        pytest.raises(RepairlibError, match="another program has held this file"),
    ):
        work.save({"list": "x"})


# Types on at one thing and reports each state when it is saved.
TYPING = """
import sys
from repairlib.learn.kept_work import KeptWork
from tests.learn.killing import reported_until_killed
work = KeptWork("07-plan")
for number in range(int(sys.argv[1]), 1_000_000):
    work.save({"list": "x" * (number % 900), "number": number})
    sys.stdout.write(f"{number}\\n")
    sys.stdout.flush()
"""
KILLS = 30


@pytest.mark.slow
@pytest.mark.skipif(os.name != "posix", reason="kill -9 is a signal of POSIX systems")
def test_killed_at_random_moments_it_keeps_what_was_saved_last():
    seed = random.SystemRandom().randrange(10**9)
    print(f"seed {seed}")  # shown by pytest when this fails
    moments, start = random.Random(seed), 0
    for _ in range(KILLS):
        reported = reported_until_killed(TYPING, start, moments)[-1]
        work = KeptWork("07-plan")
        kept = work.read()
        assert work.note == ""
        assert kept["number"] in (reported, reported + 1)  # killed before it could say so
        assert kept["list"] == "x" * (kept["number"] % 900)
        start = kept["number"] + 1
