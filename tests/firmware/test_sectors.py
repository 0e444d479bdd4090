"""Which sectors must be erased, and which can be programmed as they are."""

import random
from itertools import pairwise

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import (
    EQUAL,
    ERASE,
    PROGRAM,
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
