"""What a read-back tells of the write: where it differs, and what that looks like."""

import random

import pytest

from repairlib.firmware import check_read_back, image_of

CHANCE = random.Random(20261129)
WANTED = CHANCE.randbytes(32_768)
BEFORE = CHANCE.randbytes(32_768)


def _anded(begin: int, end: int) -> bytes:
    """The intended image, with the old one not erased below it from `begin` to `end`."""
    both = bytes(a & b for a, b in zip(WANTED, BEFORE, strict=True))
    return WANTED[:begin] + both[begin:end] + WANTED[end:]


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("read", "old", "pattern"),
    [
        (WANTED, BEFORE, "as intended"),
        (WANTED[:-4096], BEFORE, "too short"),
        (WANTED + b"\xff", None, "too long"),
        (b"\xff" * len(WANTED), BEFORE, "no answer"),
        (bytes(len(WANTED)), None, "no answer"),
        (WANTED[:4096] + b"\xff" * 4096 + WANTED[8192:], BEFORE, "not written"),
        (WANTED[:4096] + BEFORE[4096:8192] + WANTED[8192:], BEFORE, "old content"),
        (_anded(4096, 8192), BEFORE, "not erased"),
        (_anded(4096, 8192), None, "zeros where ones were meant"),
        (bytes(byte | 0x08 for byte in WANTED), BEFORE, "stuck bit"),
        (bytes(byte & 0x7F for byte in WANTED), None, "stuck bit"),
        (WANTED[:100] + bytes([WANTED[100] ^ 0x81]) + WANTED[101:], None, "mixed|ones|zeros"),
        (b"\xff" * 256 + WANTED[:-256], None, "moved"),
        (WANTED[512:] + b"\xff" * 512, None, "moved"),
        (bytes(a | b for a, b in zip(WANTED, BEFORE, strict=True)), None, "ones where zeros"),
        (CHANCE.randbytes(len(WANTED)), BEFORE, "mixed"),
    ],
)
def test_what_a_read_back_looks_like(read, old, pattern):
    old_image = None if old is None else image_of(old)
    told = check_read_back(image_of(WANTED), image_of(read), old_image)
    assert any(told.pattern.startswith(one) for one in pattern.split("|")), told
    assert told.equal == (read == WANTED)
    assert told.why and told.next
    differing = sum(a != b for a, b in zip(WANTED, read, strict=False))
    assert told.differing == differing + abs(len(read) - len(WANTED))
    assert len(told.ranges) == min(told.places, 32)


@pytest.mark.behaviour
def test_a_stuck_bit_is_named():
    told = check_read_back(image_of(WANTED), image_of(bytes(byte | 0x08 for byte in WANTED)))
    assert told.bits == (3,)
    assert "bit 3" in told.why and "reads 1" in told.why


@pytest.mark.behaviour
def test_one_byte_that_differs_is_no_line_that_is_stuck():
    text = b"a message of seven bits, over and over. " * 40 + b"\x80"
    read = text[:-1] + b"\0"
    assert check_read_back(image_of(text), image_of(read)).pattern != "stuck bit"


@pytest.mark.behaviour
def test_places_are_told_over_pieces_and_the_first_ones_only():
    old, new = bytes(5 << 20), bytearray(5 << 20)
    new[0], new[(4 << 20) - 1], new[4 << 20], new[-1] = 1, 2, 3, 4
    told = check_read_back(image_of(old), image_of(bytes(new)))
    middle, end = 4 << 20, 5 << 20
    assert told.ranges == ((0, 1), (middle - 1, middle + 1), (end - 1, end))
    assert (told.places, told.differing) == (3, 4)
    new = bytearray(old)
    new[:400:2] = b"\x11" * 200
    told = check_read_back(image_of(old), image_of(bytes(new)))
    assert (len(told.ranges), told.places, told.differing) == (32, 200, 200)
