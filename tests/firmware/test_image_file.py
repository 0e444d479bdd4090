"""Images are read whole or refused in one line, and never written over."""

import os

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import image_of, read_image, save_new, sums


@pytest.mark.published("FIPS 180-4 examples: SHA-256 of 'abc'")
def test_sha_256():
    published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert sums(image_of(b"abc")).sha256 == published


@pytest.mark.published("RFC 1952, CRC-32; its check value over the digits 1 to 9 is CBF43926")
def test_crc_32():
    assert sums(image_of(b"123456789")).crc32 == "CBF43926"


@pytest.mark.behaviour
def test_no_image(tmp_path):
    (tmp_path / "empty.bin").write_bytes(b"")
    os.mkfifo(tmp_path / "pipe")
    said = {"": "folder", "empty.bin": "empty", "pipe": "pipe or a device", "none.bin": "read"}
    for name, why in said.items():
        with pytest.raises(RepairlibError, match=why):
            read_image(tmp_path / name)
    with pytest.raises(RepairlibError, match="pipe or a device"):
        read_image("/dev/zero")


@pytest.mark.behaviour
def test_no_more_than_the_largest_is_read(tmp_path):
    with open(tmp_path / "huge.bin", "wb") as file:
        file.truncate((256 << 20) + 1)
    with pytest.raises(RepairlibError, match="larger than 256 MiB"):
        read_image(tmp_path / "huge.bin")


@pytest.mark.behaviour
def test_what_is_too_large_is_refused_before_it_is_read(tmp_path, monkeypatch):
    with open(tmp_path / "huge.bin", "wb") as file:
        file.truncate((256 << 20) + 1)
    monkeypatch.setattr("builtins.open", lambda *given, **named: pytest.fail("it was opened"))
    with pytest.raises(RepairlibError, match="larger than 256 MiB"):
        read_image(tmp_path / "huge.bin")


@pytest.mark.behaviour
def test_an_image_cannot_be_changed(tmp_path):
    (tmp_path / "old.bin").write_bytes(b"old")
    with pytest.raises(ValueError, match="read-only"):
        read_image(tmp_path / "old.bin").array()[0] = 1
    with pytest.raises(RepairlibError, match="already"):
        save_new(b"new", tmp_path / "old.bin")
    assert (tmp_path / "old.bin").read_bytes() == b"old"


@pytest.mark.behaviour
def test_a_new_file(tmp_path):
    save_new(image_of(b"new").data, tmp_path / "new.bin")
    assert (tmp_path / "new.bin").read_bytes() == b"new"
    with pytest.raises(RepairlibError, match="written"):
        save_new(b"new", tmp_path / "no folder" / "new.bin")
    with pytest.raises(RepairlibError, match="written"):
        save_new(b"new", "nul\0.bin")


@pytest.mark.behaviour
@pytest.mark.parametrize("links", [True, False], ids=["with links", "without links"])
def test_a_full_disk_leaves_nothing_and_nothing_is_written_over(tmp_path, monkeypatch, links):
    def refuses(*_):
        raise OSError(28, "No space left on device")

    if not links:
        monkeypatch.setattr(os, "link", refuses)
    new = tmp_path / "new.bin"
    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", refuses)
        with pytest.raises(RepairlibError, match="No space left"):
            save_new(b"new", new)
    assert list(tmp_path.iterdir()) == []
    save_new(b"new", new)
    (tmp_path / "nowhere").symlink_to(tmp_path / "gone")
    for there in (new, tmp_path / "nowhere", tmp_path):
        with pytest.raises(RepairlibError, match="already"):
            save_new(b"other", there)
    assert new.read_bytes() == b"new" and not (tmp_path / "gone").exists()
    assert {one.name for one in tmp_path.iterdir()} == {"new.bin", "nowhere"}
