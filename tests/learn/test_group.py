"""The file of a group, and what a learner's computer makes of it."""

import json

import pytest

from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError
from repairlib.learn import current_learner, set_learner
from repairlib.learn.exercise import questions_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import (
    Group,
    MadeKnown,
    Member,
    group_of,
    group_put_away,
    known_group,
    make_known,
    read_group,
)
from repairlib.learn.home import home
from repairlib.learn.learner import Learner, member_of

LESSON = "03-capacitor-markings"
ADA = Member("Ada Example", "kite", {LESSON: {"film code": 3}})
GROUP = Group("Tuesday bench", (ADA, Member("Ben Example", "moss")), (LESSON,))


def known(content):
    """Make the group's file on this computer."""
    home().mkdir(parents=True, exist_ok=True)
    text = content if isinstance(content, str) else json.dumps({"format": 1, **content})
    (home() / "group.json").write_text(text, encoding="utf-8")


def test_a_group_comes_back_as_it_was_written(tmp_path):
    path = tmp_path / "group.json"
    path.write_text(json.dumps({"format": 1, **GROUP.to_dict()}), encoding="utf-8")
    assert read_group(path) == group_of(GROUP.to_dict()) == GROUP


@pytest.mark.parametrize(
    "spoilt",
    [
        {"members": "kite"},
        {"members": [{"name": "Ada"}]},
        {"members": [{"name": "", "word": "kite"}]},
        {"members": [{"name": "Ada", "word": "kite", "again": {LESSON: {"film code": -1}}}]},
        {"members": [{"name": "Ada", "word": "kite", "points": 9}]},
        {"members": [{"name": "Ada", "word": "kite"}, {"name": "Ben", "word": "KITE"}]},
        {"members": [{"name": "Ada", "word": "kite"}, {"name": "ADA", "word": "moss"}]},
        {"members": [{"name": "Eve", "word": "ruby"}, {"name": "Ruby", "word": "moss"}]},
        {"members": {}},
        {"lessons": [3]},
        {"lessons": LESSON},
        {"lessons": None},
        {"own": {"mine.txt": 3}},
        {"own": {"../mine.txt": ""}},
        {"own": {"..\\mine.txt": ""}},
        {"own": {"C:mine.txt": ""}},
        {"own": {"..": ""}},
        {"own": {"": ""}},
        {"group": " "},
    ],
)
def test_a_file_that_is_no_group_is_told(tmp_path, spoilt):
    path = tmp_path / "group.json"
    path.write_text(json.dumps({"format": 1, **GROUP.to_dict(), **spoilt}), encoding="utf-8")
    with pytest.raises(RepairlibError, match="does not hold what it should"):
        read_group(path)


def test_no_file_is_told(tmp_path):
    with pytest.raises(RepairlibError, match="there is no such file"):
        read_group(tmp_path / "group.json")


def test_a_member_has_the_variants_of_the_group_wherever_the_name_is_set():
    known(GROUP.to_dict())
    set_learner("ada  EXAMPLE", "tuesday bench")
    learner, note = current_learner()
    assert not note
    assert learner.apart == ADA.again
    apart, alone, again = (
        list(map(fingerprint, questions_of(LESSON, one)))
        for one in (learner, Learner(ADA.name, GROUP.name), member_of(GROUP, ADA))
    )
    assert sum(a != b for a, b in zip(apart, alone, strict=True)) <= 1
    assert apart == again


def test_a_draw_thrown_anew_is_another_and_moves_no_other_part():
    once, anew = Draw("seed"), Draw("seed", {"film code": 1})
    assert once.part("film code").seed != anew.part("film code").seed
    assert once.part("stripe").seed == anew.part("stripe").seed
    assert Draw("seed", {"film code": 0}).part("film code").seed == once.part("film code").seed


def test_a_damaged_group_is_told_kept_and_stops_nobody():
    known("{")
    set_learner("Ada Example", "Tuesday bench")
    learner, note = current_learner()
    assert learner == Learner("Ada Example", "Tuesday bench")
    assert "file of the group cannot be used: it is cut short" in note
    assert (home() / "group.json").read_text() == "{"


def test_the_group_of_a_server_is_found_by_its_variable(tmp_path, monkeypatch):
    path = tmp_path / "ours.json"
    path.write_text(json.dumps({"format": 1, **GROUP.to_dict()}), encoding="utf-8")
    monkeypatch.setenv("REPAIRLIB_GROUP", str(path))
    assert known_group() == (GROUP, "")


def test_a_pair_is_set_and_named_together():
    set_learner("Ada Example", "Tuesday bench", "Ben Example")
    learner, _ = current_learner()
    assert learner.who == "Ada Example and Ben Example, group Tuesday bench"
    assert learner.folder() == Learner("Ada Example", "Tuesday bench").folder()


def test_a_group_is_made_known_and_a_newer_file_of_it_tells_who_is_gone(tmp_path):
    first, newer = (
        written(tmp_path / "a", GROUP),
        written(tmp_path / "b", GROUP._replace(members=(ADA,))),
    )
    assert make_known(first) == MadeKnown(GROUP)
    assert known_group() == (GROUP, "")
    assert make_known(newer).gone == ("Ben Example",)
    assert known_group()[0].members == (ADA,)


def test_learners_of_the_group_before_come_back_with_their_variants(tmp_path):
    make_known(written(tmp_path / "a", GROUP))
    set_learner(ADA.name, GROUP.name)
    other = Group("Thursday bench", (Member("Cleo", "wasp"),))
    assert make_known(written(tmp_path / "b", other)).put_away == "Tuesday bench"
    assert known_group()[0] == other
    assert current_learner()[0].apart == ADA.again
    assert set_learner(ADA.name, GROUP.name).apart == ADA.again
    assert make_known(written(tmp_path / "a", GROUP)).put_away == "Thursday bench"
    assert not group_put_away(GROUP.name).exists()
    assert current_learner()[0].apart == ADA.again


def test_what_is_no_group_leaves_the_known_one_as_it_is(tmp_path):
    make_known(written(tmp_path / "a", GROUP))
    bad = tmp_path / "bad.json"
    bad.write_text('{"format": 1}')
    with pytest.raises(RepairlibError, match="does not hold what it should"):
        make_known(bad)
    assert known_group() == (GROUP, "")


def test_a_server_s_group_is_not_replaced(tmp_path, monkeypatch):
    monkeypatch.setenv("REPAIRLIB_GROUP", str(written(tmp_path / "a", GROUP)))
    with pytest.raises(RepairlibError, match="REPAIRLIB_GROUP"):
        make_known(written(tmp_path / "b", GROUP))


def test_the_nearest_are_offered_for_a_slip():
    assert GROUP.nearest("kyte") == [ADA] and GROUP.nearest("Ada Exampel")[0] == ADA
    assert GROUP.nearest("zzzz") == []
    with pytest.raises(RepairlibError, match=r"Accepted: kite \(Ada Example\)"):
        GROUP.member("kyte")


def written(path, group):
    """The group in a file of its own."""
    path.write_text(json.dumps({"format": 1, **group.to_dict()}), encoding="utf-8")
    return path
