"""Which sectors must be erased, and what a read-back tells of the write."""

import random
from itertools import pairwise

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    EQUAL,
    ERASE,
    PROGRAM,
    check_read_back,
    image_of,
    sectors_that_differ,
)
from tests.documents import document

KINDS = (EQUAL, PROGRAM, ERASE)


@pytest.mark.published(
    document("S29GL-P programming", "a 0 cannot be programmed back to a 1; only erase does it")
)
@pytest.mark.parametrize(
    ("old", "new", "kind"),
    [
        (0xFF, 0x00, PROGRAM),
        (0xF0, 0xB0, PROGRAM),
        (0xFF, 0xFE, PROGRAM),
        (0x00, 0xFF, ERASE),
        (0x00, 0x01, ERASE),
        (0b1010, 0b1011, ERASE),
        (0b1010, 0b0101, ERASE),
        (0x5A, 0x5A, EQUAL),
    ],
)
def test_ones_become_zeros_without_an_erase_and_zeros_never_ones(old, new, kind):
    images = (image_of(bytes([0x33] * 4095 + [byte])) for byte in (old, new))
    assert sectors_that_differ(*images).ranges(kind) == ((0, 4096),)


@pytest.mark.behaviour
@pytest.mark.parametrize("erase", [1, 3, 256, 4096, 65536, 1 << 30])
def test_sectors_agree_with_a_plain_count(erase):
    chance = random.Random(erase)
    old = bytearray(chance.randbytes(20_000))
    new = bytearray(old)
    for _ in range(12):
        at = chance.randrange(len(old))
        new[at] = chance.choice((old[at] & chance.randrange(256), chance.randrange(256)))
    found = sectors_that_differ(image_of(bytes(old)), image_of(bytes(new)), erase)
    plain = []
    for begin in range(0, len(old), erase):
        pairs = list(zip(old[begin : begin + erase], new[begin : begin + erase], strict=True))
        rises = any(have & want != want for have, want in pairs)
        plain.append(2 if rises else 1 if any(have != want for have, want in pairs) else 0)
    assert list(found.states) == plain
    assert sum(found.count(kind) for kind in KINDS) == len(plain)
    covered = sorted(one for kind in KINDS for one in found.ranges(kind))
    assert covered[0][0] == 0 and covered[-1][1] == len(old)
    assert all(one[1] == two[0] for one, two in pairwise(covered))


@pytest.mark.behaviour
def test_images_longer_than_one_piece():
    old = bytes(9 << 20)
    new = bytearray(old)
    new[0], new[5 << 20], new[-1] = 1, 2, 3
    found = sectors_that_differ(image_of(old), image_of(bytes(new)), 1 << 16)
    middle, end = 5 << 20, 9 << 20
    assert found.ranges(ERASE) == ((0, 65536), (middle, middle + 65536), (end - 65536, end))
    back = check_read_back(image_of(old), image_of(bytes(new)))
    assert back.ranges == ((0, 1), (middle, middle + 1), (end - 1, end))


@pytest.mark.behaviour
def test_what_cannot_be_compared():
    with pytest.raises(RepairlibError, match="2 bytes, and the image has 1"):
        sectors_that_differ(image_of(b"1"), image_of(b"22", "new.bin"))
    for erase in (0, -4096, 2.5, "4KiB", True, None):
        with pytest.raises(RepairlibError, match="no size of a sector"):
            sectors_that_differ(image_of(b"1"), image_of(b"2"), erase)


@pytest.mark.behaviour
def test_what_is_next():
    same, less, more = image_of(b"\x0f"), image_of(b"\x0e"), image_of(b"\x1f")
    assert "Nothing has to be written" in sectors_that_differ(same, same).next
    assert "needs no erase" in sectors_that_differ(same, less).next
    assert "two equal reads" in sectors_that_differ(same, more).next
    assert sectors_that_differ(same, more).why == (
        "Of 1 sector of 4 KiB: 0 equal, 0 to be programmed without an erase, 1 to be erased first."
    )


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
