"""What is saved is its owner's alone, unless it is said who may read it."""

import os
import stat

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.learn import files

pytestmark = [
    pytest.mark.behaviour,
    pytest.mark.skipif(os.name != "posix", reason="modes of POSIX systems"),
]


def mode(path):
    return stat.S_IMODE(path.stat().st_mode)


def test_every_folder_that_is_made_is_its_owner_s_and_one_that_was_there_stays(tmp_path):
    tmp_path.chmod(0o755)
    with files.locked(tmp_path / "answers" / "bench" / "ada" / "00.json"):
        pass
    made = (tmp_path / "answers", tmp_path / "answers" / "bench", tmp_path / "answers/bench/ada")
    assert [mode(one) for one in (tmp_path, *made)] == [0o755, 0o700, 0o700, 0o700]


def test_a_folder_that_cannot_be_made_is_one_clear_line(tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(RepairlibError, match="cannot be read or saved"):
        files.make_private(tmp_path / "file" / "below")


def test_a_file_has_its_mode_from_its_first_byte_on(tmp_path, monkeypatch):
    path, seen = tmp_path / "one.json", []
    sync = os.fsync
    monkeypatch.setattr(os, "fsync", lambda file: (seen.append(os.fstat(file)), sync(file)))
    files.write(path, {}, mode=0o600)
    assert stat.S_IMODE(seen[0].st_mode) == mode(path) == 0o600
    files.write(path, {"later": 1})
    assert mode(path) == 0o600
