"""Images that were chosen in the browser stand as files, none over another, and are forgotten."""

import stat

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import read_image
from repairlib.learn.forgetting import KINDS
from repairlib.learn.home import home
from repairlib.learn.kept_images import keep_image


def test_two_reads_of_one_name_and_one_read_twice():
    first, second = keep_image("read.bin", b"first"), keep_image("read.bin", b"second")
    assert read_image(first).data == b"first" and read_image(second).data == b"second"
    assert keep_image("read.bin", b"first") == first
    assert stat.S_IMODE(first.stat().st_mode) == 0o600
    assert first.is_relative_to(home() / "images") and "images" in KINDS


def test_a_file_that_was_changed_stays():
    first = keep_image("read.bin", b"first")
    first.write_bytes(b"mine now")
    again = keep_image("read.bin", b"first")
    assert first.read_bytes() == b"mine now" and again.read_bytes() == b"first"


@pytest.mark.parametrize(
    "name", ["../../etc/passwd", "..\\..\\boot.bin", "", ".bin", "a\0b", "é" * 300]
)
def test_names_stay_in_their_folder(name):
    path = keep_image(name, b"data")
    assert path.read_bytes() == b"data" and path.parent.parent == home() / "images"


def test_no_room_to_write():
    home().mkdir(parents=True, exist_ok=True)
    (home() / "images").write_text("a file in its place")
    with pytest.raises(RepairlibError, match="REPAIRLIB_HOME"):
        keep_image("read.bin", b"data")
