"""Reads beside each other: where they differ, and what the pattern means at the bench."""

import os
import random
from functools import cache

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import PATTERNS, compare_reads, image_of
from tests.firmware import invented_reads
from tests.firmware.invented_images import sound_pieces

SIZE = 65536
SEEDS = 60 if os.environ.get("FIRMWARE") == "all" else 3


@cache
def a_long_read() -> bytes:
    return sound_pieces(random.Random(3), 1 << 19)


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
    assert found.pattern == "written in between"
    assert "erase" in found.means


LOG = b"".join(b"%05d started, paper tray 1 empty\r\n" % (at * 977) for at in range(9))


@pytest.mark.behaviour
@pytest.mark.parametrize("begin", [0xC000, 0xA0F0, SIZE - 4096])
def test_a_log_written_into_blank_space_is_no_bad_contact(begin):
    chance = random.Random(10)
    true = chance.randbytes(0xA0F0) + b"\xff" * (SIZE - 0xA0F0)
    later = true[:begin] + LOG + true[begin + len(LOG) :]
    for pair in ((true, later), (later, true)):
        found = compared(*pair)
        assert found.pattern == "written in between", found
        assert "nothing writes to it" in found.next
    code = chance.randbytes(SIZE)
    gap = code[:begin] + LOG + code[begin + len(LOG) :]
    lost = compared(gap, gap[:begin] + b"\xff" * len(LOG) + gap[begin + len(LOG) :])
    assert lost.pattern == "contact", lost  # text that is not read, with code behind it


@pytest.mark.common_practice
@pytest.mark.parametrize("many", [3000, 20_000, 250_000])
@pytest.mark.parametrize("filling", [b"\xff", b"\0", None])
def test_a_long_stretch_is_a_contact_however_many_bytes_differ(many, filling):
    chance, true = random.Random(many), a_long_read()
    begin = 100_003
    wrong = filling * many if filling else chance.randbytes(many)
    bad = true[:begin] + wrong + true[begin + many :]
    for reads in ((true, bad), (bad, true)):
        found = compared(*reads)
        assert found.pattern == "contact", found
        named = f"read-{1 + reads.index(bad)}"
        assert filling is None or f"in {named}, from" in found.means, found


@pytest.mark.common_practice
@pytest.mark.parametrize("wrong", [bytes(700), random.Random(13).randbytes(700)])
def test_noise_in_blank_space_blames_neither_read(wrong):
    true = random.Random(14).randbytes(SIZE // 2).ljust(SIZE, b"\xff")
    begin = SIZE - 9000
    noisy = true[:begin] + wrong + true[begin + len(wrong) :]
    found = compared(noisy, true)
    assert found.pattern == "contact", found
    assert "in one of the two reads" in found.means


@pytest.mark.common_practice
@pytest.mark.parametrize("share", [0, 0.5])
def test_a_read_that_ends_in_ff_got_no_answer_from_there_on(share):
    true = random.Random(11).randbytes(SIZE * 7 // 8) + b"\xff" * (SIZE // 8)
    silent = true[: int(SIZE * share)].ljust(SIZE, b"\xff")
    for reads in ((true, silent), (silent, true)):
        found = compared(*reads)
        assert found.pattern == "contact", found
        assert f"FF in read-{1 + reads.index(silent)}" in found.means


@pytest.mark.common_practice
@pytest.mark.parametrize("one_edge", ["rising", "falling"])
def test_late_bits_of_one_edge_are_late_bits(one_edge):
    chance = random.Random(12)
    true = sound_pieces(chance, SIZE)
    whole = int.from_bytes(true, "big")
    wrong = (whole ^ (whole >> 1)) & (whole if one_edge == "rising" else ~whole)
    some = int.from_bytes(bytes(chance.randrange(256) & chance.randrange(256) for _ in true), "big")
    late = (whole ^ (wrong & some)).to_bytes(SIZE, "big")
    for reads in ((true, late), (late, true)):
        found = compared(*reads)
        assert found.pattern == "speed", found
        assert f"each wrong bit of read-{1 + reads.index(late)}" in found.means


@pytest.mark.behaviour
def test_one_byte_is_no_pattern():
    true = random.Random(7).randbytes(SIZE)
    found = compared(true, true[:99] + b"\0" + true[100:])
    assert found.pattern == "cannot tell"
    assert "only 1 byte differs in" in found.means


@pytest.mark.behaviour
def test_what_one_read_lacks_is_no_pattern_of_what_both_have():
    found = compared(b"a", b"b" * SIZE)
    assert found.pattern == "cannot tell"
    assert "only 1 byte differs" in found.means
    assert found.means.endswith("read-1 is short too: 1 byte of 65,536")


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


@pytest.mark.behaviour
@pytest.mark.filterwarnings("error")
@pytest.mark.parametrize("size", [1, 2, 3, 8])
def test_images_of_a_few_bytes_warn_of_nothing(size):
    assert not compare_reads([image_of(bytes(size)), image_of(b"\xa5" * size)]).equal
