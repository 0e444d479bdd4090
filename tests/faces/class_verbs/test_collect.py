"""`class collect`: what it prints, what it writes, and how it looks again."""

import json
import shutil

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.class_commands import run_class
from tests.teach.hand_ins import group_of_size, hand_in_of

GROUP = group_of_size(3, ("00-start-here",))


@pytest.fixture
def folder(tmp_path):
    place = tmp_path / "bench" / "handed-in"
    place.mkdir(parents=True)
    group = {"format": 1} | GROUP.to_dict()
    (place.parent / "group.json").write_text(json.dumps(group))
    for member in GROUP.members[:2]:
        data = hand_in_of(GROUP, member, lessons=GROUP.lessons)
        (place / f"{member.word}.json").write_bytes(data)
    (place / "holiday.png").write_bytes(b"\x89PNG")
    return place.parent


def test_the_account_says_what_was_taken_and_what_not(folder):
    told = run_class(["collect", str(folder)], False)
    assert "Tuesday bench: 3 files. 2 counted, 1 no hand-in." in told
    assert "handed-in/holiday.png: no hand-in" in told
    assert "Something from 2 of 3 members." in told
    assert "Nothing from: Somebody Number 2." in told
    assert "The rule: for each member and lesson the newest valid file counts" in told
    files = json.loads((folder / "marks" / "files.json").read_text())["files"]
    assert [one["outcome"] for one in files] == ["no hand-in", "counted", "counted"]
    assert (folder / "marks" / "room.html").exists()


def test_as_json_every_file_is_there(folder):
    found = json.loads(run_class(["collect", str(folder), str(folder / "handed-in")], True))
    assert found["counts"] == {"counted": 2, "no hand-in": 1}
    assert len(found["files"]) == 3
    assert found["nothing_from"] == ["Somebody Number 2"]


def test_it_looks_again_until_it_is_stopped_also_when_a_stick_is_pulled(
    folder, capsys, monkeypatch
):
    looks = []

    def wait(seconds):
        looks.append(seconds)
        if len(looks) == 1:
            shutil.rmtree(folder / "handed-in")
        if len(looks) == 3:
            raise KeyboardInterrupt

    monkeypatch.setattr("time.sleep", wait)
    told = run_class(["collect", str(folder), "--every", "5"], False)
    assert (told, looks) == ("No longer looking.", [5, 5, 5])
    printed = capsys.readouterr().out
    assert printed.count("2 counted") == 1
    assert printed.count("there is no such place") == 2


def test_it_may_look_before_the_first_has_handed_in(folder, capsys, monkeypatch):
    given = (folder / "handed-in" / "word0.json").read_bytes()
    shutil.rmtree(folder / "handed-in")
    looks = []

    def wait(seconds):
        looks.append(seconds)
        if len(looks) == 2:
            raise KeyboardInterrupt
        (folder / "handed-in" / "word0.json").write_bytes(given)

    monkeypatch.setattr("time.sleep", wait)
    assert run_class(["collect", str(folder), "--every", "10"], False) == "No longer looking."
    printed = capsys.readouterr().out
    assert "0 files. Nothing lies there." in printed and "1 files. 1 counted." in printed


@pytest.mark.parametrize("seconds", ["0", "-3", "nan", "inf", "often", "1e9"])
def test_seconds_that_are_none_are_one_line(folder, seconds):
    with pytest.raises(RepairlibError, match="not a number of seconds"):
        run_class(["collect", str(folder), f"--every={seconds}"], False)


def test_no_folder_and_no_group_are_one_line(tmp_path):
    with pytest.raises(RepairlibError, match="no folder is named"):
        run_class(["collect"], False)
    with pytest.raises(RepairlibError, match="no such file"):
        run_class(["collect", str(tmp_path)], False)
