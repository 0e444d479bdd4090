"""Handing in by code: into the group's folder, or as a file to give by hand."""

import stat

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import files, hand_in_work, open_exercise, set_learner
from repairlib.learn.forgetting import what_there_is
from repairlib.learn.group import Group, Member
from repairlib.learn.hand_in import read_hand_in

LESSON = "00-start-here"


def said(told: str) -> tuple[str, str]:
    receipt, where, *_ = told.splitlines()
    return receipt.removeprefix("Receipt: "), where


@pytest.mark.behaviour
def test_nobody_cannot_hand_in():
    with pytest.raises(RepairlibError, match="nobody is named"):
        hand_in_work()


@pytest.mark.behaviour
def test_without_a_folder_the_file_lies_at_home_and_the_path_is_said(home):
    set_learner("Ada Example")
    open_exercise(LESSON).answer(q7="10 nF")
    receipt, where = said(hand_in_work())
    path = next(home.rglob("handed-in-*.json"))
    assert where == f"Give this file to your instructor: {path}"
    assert read_hand_in(path.read_bytes())["lessons"][LESSON]["answers"] == {"q7": "10 nF"}
    open_exercise(LESSON).answer(q7="12 nF")
    assert said(hand_in_work())[0] != receipt
    assert len(list(home.rglob("handed-in-*.json"))) == 1
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE((home / "answers").stat().st_mode) == 0o700
    assert len(read_hand_in(path.read_bytes())["lessons"]) == 1


@pytest.mark.behaviour
def test_a_file_to_give_by_hand_counts_when_it_is_said_to_be_given():
    learner = set_learner("Ada Example")
    with pytest.raises(RepairlibError, match="there is no such file") as error:
        hand_in_work(given=True)
    assert error.value.accepted == "hand_in_work() first"
    open_exercise(LESSON).answer(q7="10 nF")
    told = hand_in_work()
    assert told.splitlines()[2] == "When it is given: hand_in_work(given=True)"
    assert what_there_is(learner).never_handed_in == (LESSON,)
    assert said(told)[0] in hand_in_work(given=True)
    assert what_there_is(learner).never_handed_in == ()
    open_exercise(LESSON).answer(q7="12 nF")  # the file does not have it
    hand_in_work(given=True)
    assert what_there_is(learner).never_handed_in == (LESSON,)


@pytest.mark.behaviour
def test_a_group_with_a_folder_has_it_there(home, tmp_path):
    (there := tmp_path / "there").mkdir()
    home.mkdir()
    group = Group("Tuesday bench", (Member("Ada Example", "kite"),), hand_in_to=str(there))
    files.write(home / "group.json", group.to_dict())
    set_learner("Ada Example", "Tuesday bench")
    where = said(hand_in_work())[1]
    (path,) = there.iterdir()
    assert where == f"It is with your instructor: {path}"
    set_learner("Ada Example", "another bench")
    assert "Give this file" in hand_in_work() and len(list(there.iterdir())) == 1
