"""A stick is whole or says that it is not: made, renewed, full, pulled, damaged."""

from __future__ import annotations

import errno
import json
import os
from pathlib import Path

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.cli import main
from repairlib.faces.stick import filling, start
from repairlib.faces.stick.start import what_is_broken
from repairlib.learn.group import Group, Member

pytestmark = pytest.mark.behaviour
GROUP = Group("Tuesday bench", (Member("Ada Example", "kite"),))


@pytest.fixture
def folder(tmp_path):
    folder = tmp_path / "class"
    folder.mkdir()
    (folder / "group.json").write_text(json.dumps(GROUP.to_dict() | {"format": 1}))
    return folder


@pytest.fixture
def wheels(monkeypatch):
    """What pip would fetch, to be changed by a test."""
    wheels = {"pip-1.whl": b"pip", "repairlib-1.whl": b"ours", "lab-1.whl": b"lab" * 1000}

    def fetch(made: Path, others):
        for name, content in wheels.items():
            (made / name).write_bytes(content)
        return sorted(made.glob("*.whl"))

    monkeypatch.setattr(filling, "_wheels", fetch)
    return wheels


@pytest.fixture
def stick(folder, wheels, tmp_path):
    """A stick that was made."""
    place = tmp_path / "stick"
    filling.fill_stick(folder, place, page=False)
    return place


def test_a_stick_holds_the_start_the_wheels_and_the_group_and_is_whole(stick, folder):
    names = {one.relative_to(stick).as_posix() for one in stick.rglob("*") if one.is_file()}
    wheels = {"wheels/pip-1.whl", "wheels/repairlib-1.whl", "wheels/lab-1.whl"}
    assert names == {"start.py", "group.json", "sums.json"} | wheels
    assert (stick / "group.json").read_bytes() == (folder / "group.json").read_bytes()
    assert what_is_broken(stick) == ""


def test_an_old_stick_is_renewed_in_place_and_what_is_the_same_is_not_written(
    stick, folder, wheels
):
    same = (stick / "wheels" / "lab-1.whl").stat().st_mtime_ns
    wheels["repairlib-2.whl"] = wheels.pop("repairlib-1.whl") + b"newer"
    filling.fill_stick(folder, stick, page=False)
    names = {one.name for one in (stick / "wheels").iterdir()}
    assert names == {"pip-1.whl", "repairlib-2.whl", "lab-1.whl"}
    assert (stick / "wheels" / "lab-1.whl").stat().st_mtime_ns == same
    assert what_is_broken(stick) == ""


def start_line():
    return filling.START.read_bytes().splitlines(keepends=True)[0]


@pytest.mark.parametrize(
    "name", ["wheels/own.whl", "wheels/notes.txt", "page/index.html", "start.py", "group.json"]
)
def test_a_place_with_other_files_is_refused_and_left_as_it_is(name, folder, wheels, tmp_path):
    path = tmp_path / "there" / name
    path.parent.mkdir(parents=True)
    path.write_bytes(b"of somebody else")
    with pytest.raises(RepairlibError, match="would be lost"):
        filling.fill_stick(folder, tmp_path / "there", page=False)
    found = [one for one in (tmp_path / "there").rglob("*") if one.is_file()]
    assert found == [path] and path.read_bytes() == b"of somebody else"


def test_what_somebody_put_on_a_stick_stays(stick, folder, wheels):
    own = (stick / "wheels" / "notes.txt", stick / "page" / "index.html", stick / "photo.jpg")
    (stick / "page").mkdir()
    for one in own:
        one.write_bytes(b"of somebody else")
    filling.fill_stick(folder, stick, page=True)  # the page is refused, and what lies there stays
    assert all(one.read_bytes() == b"of somebody else" for one in own)


def test_a_page_that_was_begun_and_cannot_be_had_goes(stick, folder, wheels, monkeypatch):
    begun = stick / "page" / "v-0123456789ab" / "reader.bin"
    begun.parent.mkdir(parents=True)
    begun.write_bytes(b"begun")
    assert "Without the page" in filling.fill_stick(folder, stick, page=True)
    assert not (stick / "page").exists()


def test_a_stick_that_was_full_at_first_can_be_filled_again(folder, wheels, tmp_path, monkeypatch):
    def full(wheels, place):
        place.mkdir()
        (place / "lab-1.whl.part").write_bytes(b"half")
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as once:
        once.setattr(filling, "_put_wheels", full)
        with pytest.raises(RepairlibError, match="no space left"):
            filling.fill_stick(folder, tmp_path / "stick", page=False)
    filling.fill_stick(folder, tmp_path / "stick", page=False)
    assert what_is_broken(tmp_path / "stick") == ""
    assert not list((tmp_path / "stick" / "wheels").glob("*.part"))


@pytest.mark.parametrize("full_at", range(7))
def test_a_stick_that_is_full_is_said_to_be_so_and_does_not_start(
    stick, folder, wheels, monkeypatch, full_at
):
    """Whichever file finds no room: no half-good stick."""
    for name in list(wheels):
        wheels[name.replace("-1", "-2")] = wheels.pop(name) + b"newer"
    (folder / "group.json").write_text((folder / "group.json").read_text() + " ")
    (stick / "start.py").write_bytes(start_line() + b"an older one")
    written = []

    def replace(fresh, path, replace=os.replace):
        written.append(path)
        if len(written) > full_at:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        replace(fresh, path)

    monkeypatch.setattr(os, "replace", replace)
    try:
        filling.fill_stick(folder, stick, page=False)
    except RepairlibError as error:
        assert "no space left" in str(error)
        assert what_is_broken(stick) == "it was not finished"
    else:
        assert full_at == 6 and what_is_broken(stick) == ""


@pytest.mark.parametrize(
    ("damage", "said"),
    [
        (lambda stick: (stick / "sums.json").unlink(), "not finished"),
        (lambda stick: (stick / "sums.json").write_text("{"), "cannot be read"),
        (lambda stick: (stick / "wheels" / "lab-1.whl").unlink(), "1 of 5 files"),
        (lambda stick: (stick / "wheels" / "lab-1.whl").write_bytes(b"lab"), "wheels/lab-1.whl"),
        (lambda stick: (stick / "group.json").write_text("{}"), "group.json"),
    ],
)
def test_a_damaged_stick_says_what_is_wrong_and_installs_nothing(
    stick, damage, said, monkeypatch, tmp_path
):
    damage(stick)
    monkeypatch.setattr(start, "HERE", stick)
    monkeypatch.setattr(start, "install", lambda environment: pytest.fail("it installed"))
    with pytest.raises(SystemExit, match="This stick is not whole") as stopped:
        start.main()
    assert said in str(stopped.value)


def test_files_that_a_file_manager_leaves_do_no_harm(stick):
    (stick / "._start.py").write_bytes(b"by another system")
    (stick / "System Volume Information").mkdir()
    assert what_is_broken(stick) == ""


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["class", "stick"], "--to"),
        (["class", "stick", "nowhere"], "--to"),
        (["class", "stick", "nowhere", "--to", "there"], "no such file"),
    ],
)
def test_what_is_missing_is_said_in_one_line(words, said, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert main(words) == 2
    (line,) = capsys.readouterr().err.splitlines()
    assert said in line
    assert not Path("there").exists()
