"""Reads beside each other: where they differ, and what the pattern means at the bench."""

import os
import random

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import PATTERNS, compare_reads, image_of
from tests.firmware import invented_reads
from tests.firmware.invented_images import sound_pieces

SIZE = 65536
SEEDS = 60 if os.environ.get("FIRMWARE") == "all" else 3


def compared(*reads):
    return compare_reads([image_of(data, f"read-{at}") for at, data in enumerate(reads, 1)])


@pytest.mark.common_practice
@pytest.mark.parametrize("spoil", invented_reads.SPOILED, ids=lambda spoil: spoil.__name__)
def test_the_pattern_names_its_cause(spoil):
    for seed in range(SEEDS):
        chance = random.Random(seed)
        true = sound_pieces(chance, SIZE)
        found = compared(true, spoil(chance, true))
        assert found.pattern == invented_reads.SPOILED[spoil], (seed, found)
        turned = compared(spoil(random.Random(seed + 99), true), true)
        assert turned.pattern == invented_reads.SPOILED[spoil], (seed, turned)


@pytest.mark.behaviour
def test_equal_reads_still_ask_for_the_image_to_be_checked():
    found = compared(b"abcd" * 99, b"abcd" * 99, b"abcd" * 99)
    assert found.equal
    assert (found.pattern, found.ranges, found.alike) == ("equal", (), ((0, 1, 2),))
    assert "stuck" in found.means
    assert "check the image" in found.next


@pytest.mark.behaviour
def test_every_range_is_where_it_is():
    true = bytearray(random.Random(3).randbytes(SIZE))
    other = bytearray(true)
    for begin, end in ((0, 3), (5000, 5001), (SIZE - 1, SIZE)):
        other[begin:end] = (byte ^ 0x10 for byte in other[begin:end])
    found = compared(bytes(true), bytes(other))
    assert found.ranges == ((0, 3), (5000, 5001), (SIZE - 1, SIZE))
    assert (found.in_all, found.bytes_differ) == (3, 5)
    assert sum(found.bits[4]) == 5
    assert sum(map(sum, found.bits)) == 5


@pytest.mark.behaviour
def test_ranges_are_bounded_and_counted_whole():
    true = bytes(4 << 20)
    other = bytearray(true)
    other[100::1000] = b"\1" * len(range(100, len(other), 1000))
    found = compared(true, bytes(other))
    assert (len(found.ranges), found.in_all, found.bytes_differ) == (64, 4195, 4195)


@pytest.mark.behaviour
def test_a_range_across_the_pieces_that_are_compared_at_once_is_one():
    true = bytes(3 << 20)
    other = bytearray(true)
    other[(1 << 20) - 5 : (2 << 20) + 5] = b"\1" * ((1 << 20) + 10)
    assert compared(true, bytes(other)).ranges == (((1 << 20) - 5, (2 << 20) + 5),)


@pytest.mark.behaviour
def test_of_three_the_two_that_agree_are_named():
    true = sound_pieces(random.Random(5), SIZE)
    bad = invented_reads.loose_contact(random.Random(6), true)
    found = compared(bad, true, true)
    assert found.alike == ((0,), (1, 2))
    assert "read-2, read-3" in found.means
    assert not found.equal


@pytest.mark.behaviour
def test_a_block_that_was_erased_in_between_is_no_bad_contact():
    true = random.Random(9).randbytes(SIZE)
    found = compared(true, true[:8192] + b"\xff" * 8192 + true[16384:])
    assert found.pattern == "another chip or content"
    assert "erase" in found.means


@pytest.mark.behaviour
def test_one_byte_is_no_pattern():
    true = random.Random(7).randbytes(SIZE)
    assert compared(true, true[:99] + b"\0" + true[100:]).pattern == "cannot tell"


@pytest.mark.behaviour
@pytest.mark.parametrize("many", [0, 1, 17])
def test_too_few_and_too_many(many):
    with pytest.raises(RepairlibError, match="2 to 16 reads"):
        compare_reads([image_of(b"x")] * many)


@pytest.mark.behaviour
def test_any_two_files_get_a_pattern():
    chance = random.Random(8)
    for _ in range(500):
        first = chance.randbytes(chance.randrange(1, 600))
        other = bytearray(first)
        for _ in range(chance.randrange(9)):
            at = chance.randrange(len(other) + 1)
            other[at : at + chance.randrange(9)] = chance.randbytes(chance.randrange(9))
        found = compared(first, bytes(other) or b"\0")
        assert found.pattern in PATTERNS
        assert found.equal == (first == bytes(other))
        assert "\n" not in found.means + found.next
