"""The demo images of the printer controllers: what their script writes, with the faults meant."""

import runpy
import zlib

import pytest

from repairlib import demo_path
from repairlib.core.tables import DATASETS
from repairlib.firmware import image_of, read_image, sectors_that_differ

pytestmark = pytest.mark.behaviour

SCRIPT = runpy.run_path(str(DATASETS / "make_firmware_images.py"))
WRITTEN = SCRIPT["files"]()


def stored(name):
    return read_image(demo_path(name)).data


def differing(one, other):
    """The blocks of 4 KiB in which two images differ, by number."""
    places = range(0, len(one), 4096)
    return [at // 4096 for at in places if one[at : at + 4096] != other[at : at + 4096]]


def test_they_are_what_the_script_writes():
    found = {path.name: path.read_bytes() for path in demo_path("").glob("*.bin")}
    assert found == WRITTEN
    assert all(len(data) == 64 << 10 for data in found.values())


def test_two_reads_are_equal_and_the_third_only_holds_ones_where_the_clip_let_go():
    first, third = stored("printer-read-first.bin"), stored("printer-read-loose-clip.bin")
    assert first == stored("printer-read-second.bin") != third
    assert {now for was, now in zip(first, third, strict=True) if was != now} == {0xFF}


def test_the_update_left_a_blank_block_and_one_half_written():
    old, sister = stored("printer-read-first.bin"), stored("printer-sister.bin")
    assert set(old[0x5000:0x6000]) == {0xFF} == set(old[0x6490:0x7000])
    assert old[0x6000:0x6480] == sister[0x6000:0x6480] != b"\xff" * 0x480
    assert differing(old, sister) == [5, 6, 14]  # and the settings


def test_only_the_block_with_lost_ones_must_be_erased():
    old, sister = read_image(demo_path("printer-read-first.bin")), stored("printer-sister.bin")
    program = sister[:0xE000] + old.data[0xE000:]
    sectors = sectors_that_differ(old, image_of(program))
    assert sectors.ranges("program only") == ((0x5000, 0x6000),)
    assert sectors.ranges("erase first") == ((0x6000, 0x7000),)


def test_sisters_differ_in_their_settings_only():
    assert differing(stored("printer-sister.bin"), stored("printer-other-sister.bin")) == [14]


@pytest.mark.parametrize(
    ("name", "sound"),
    [
        ("printer-sister.bin", True),
        ("printer-other-sister.bin", True),
        ("printer-read-first.bin", False),
    ],
)
def test_the_check_sum_in_the_head_is_that_of_the_program(name, sound):
    data = stored(name)
    assert (data[0x27:0x2B] == zlib.crc32(data[0x100:0xE000]).to_bytes(4, "big")) == sound


@pytest.mark.parametrize("board", ["OWN", "SISTER", "OTHER"])
def test_addresses_are_nobodys(board):
    """Given by somebody at the bench, and of one set: bits 1 and 0 of the first byte."""
    first = int(SCRIPT[board].address[:2], 16)
    assert first & 0b11 == 0b10
