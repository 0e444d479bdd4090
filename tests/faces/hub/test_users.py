"""The calls that make the users of a hub: shown before they are made, and no door opened."""

from __future__ import annotations

import pwd
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.hub.users import as_typed, calls_to_make, calls_to_remove, learners_of

pytestmark = pytest.mark.behaviour
PLACE = Path("/srv/bench")
SOMEBODY = pwd.getpwuid(0).pw_name


def test_each_learner_gets_a_home_and_a_drop_folder_that_no_other_learner_enters():
    typed = as_typed(calls_to_make(PLACE, ["zqkite", "zqmoss"], SOMEBODY))
    for word in ("zqkite", "zqmoss"):
        home = f"install --directory --owner={word} --group={word} --mode=0700"
        assert f"{home} /srv/bench/learners/{word}" in typed
        drop = f"install --directory --owner={word} --group=bench-instructors --mode=2750"
        assert f"{drop} /srv/bench/handed-in/{word}" in typed
        (made,) = (line for line in typed if line.startswith("useradd") and word in line)
        assert "--user-group" in made and "/usr/sbin/nologin" in made


def test_the_instructor_joins_the_group_that_reads_what_is_handed_in():
    typed = as_typed(calls_to_make(PLACE, [], SOMEBODY))
    assert f"usermod --append --groups bench-instructors {SOMEBODY}" in typed
    drop = "install --directory --mode=0751 --group=bench-instructors /srv/bench/handed-in"
    assert drop in typed


@pytest.mark.parametrize(
    ("place", "words", "instructor", "said"),
    [
        (PLACE, [SOMEBODY], "", "has such a user already"),
        (PLACE, ["Kite"], SOMEBODY, "no name of a user"),
        (PLACE, ["kite; rm"], SOMEBODY, "no name of a user"),
        (PLACE, ["-kite"], SOMEBODY, "no name of a user"),
        (PLACE, ["zqkite"], "zqkite", "a learner's word"),
        (PLACE, ["zqkite"], "zqnobody", "no such user"),
        (PLACE, ["zqkite"], "", "nobody can log in"),
        (Path("/srv/my bench"), ["zqkite"], SOMEBODY, "no group of this computer"),
        (Path('/srv/"bench'), ["zqkite"], SOMEBODY, "no group of this computer"),
        (Path("/srv/deep/deep/deep/deep/deep/bench"), ["zqkite"], SOMEBODY, "longer than"),
    ],
)
def test_what_cannot_be_is_refused_before_anything_is_done(place, words, instructor, said):
    with pytest.raises(RepairlibError, match=said):
        calls_to_make(place, words, instructor)


def test_only_users_whose_home_is_in_the_hub_are_removed(tmp_path, monkeypatch):
    def entry(name, home):
        return pwd.struct_passwd((name, "x", 4000, 4000, "", str(home), "/usr/sbin/nologin"))

    there = [
        entry("zqkite", tmp_path / "learners" / "zqkite"),
        entry("zqother", "/home/zqother"),
        entry("zqmoss", tmp_path / "learners" / "zqkite"),  # somebody's odd entry
    ]
    monkeypatch.setattr(pwd, "getpwall", lambda: there)
    assert learners_of(tmp_path) == ["zqkite"]
    assert calls_to_remove(tmp_path) == [("userdel", "zqkite")]
