"""The map of an image: entropy as it is defined, kinds, and no byte left out."""

import random
import zlib
from collections import Counter
from itertools import pairwise
from math import log2

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.firmware import BLOCK_KINDS, block_map, image_of
from repairlib.firmware.blocks import entropy_of

DRAWS = random.Random(1)
WORDS = b"open the cover, take the sheet out, close the cover. "


@pytest.mark.published(
    "sarthaks.com 2642028, worked example: 1/2, 1/4, 1/8, 1/8 have 1.75 bits per symbol"
)
def test_entropy_of_the_worked_example():
    image = image_of(b"a" * 512 + b"b" * 256 + b"c" * 128 + b"d" * 128)
    assert block_map(image, 1).blocks[0].entropy == 1.75


@pytest.mark.published("cnx.org m0070, Entropy: log2 K for K equally likely symbols, 0 for one")
def test_entropy_of_equal_shares_and_of_one():
    assert block_map(image_of(bytes(range(256)) * 4), 1).blocks[0].entropy == 8
    assert block_map(image_of(bytes(range(16)) * 64), 1).blocks[0].entropy == 4
    assert block_map(image_of(b"\x55" * 1024), 1).blocks[0].entropy == 0


@given(st.binary(min_size=1, max_size=5000), st.integers(1, 40))
def test_every_byte_is_in_one_block(data, blocks):
    made = block_map(image_of(data), blocks)
    assert [one.start for one in made.blocks] == list(range(0, len(data), made.block))
    assert made.blocks[-1].end == len(data) and len(made.blocks) <= blocks
    for one in made.blocks:
        piece = data[one.start : one.end]
        shares = [count / len(piece) for count in Counter(piece).values()]
        assert one.entropy == pytest.approx(-sum(share * log2(share) for share in shares))
        assert one.blank == piece.count(255) / len(piece) and one.kind in BLOCK_KINDS
    regions = made.regions()
    assert regions[0][0] == 0 and regions[-1][1] == len(data)
    assert all(one[1] == after[0] for one, after in pairwise(regions))


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"\xff" * 4096, "blank"),
        (bytes(4096), "zeros"),
        ((WORDS * 90)[:4096], "text"),
        (DRAWS.randbytes(4096), "packed"),
        (DRAWS.randbytes(256), "packed"),
        (zlib.compress(DRAWS.randbytes(900) * 4 + WORDS)[2:900], "packed"),
        (b"\xff" * 4000 + bytes(96), "code or data"),
        (bytes(DRAWS.choices(range(64), k=4096)), "code or data"),
    ],
)
def test_kinds(data, kind):
    assert block_map(image_of(data), 1).blocks[0].kind == kind


@pytest.mark.behaviour
def test_text_is_what_stands_in_rows():
    share = block_map(image_of(b"\x01" * 500 + b"seven77" + bytes(5)), 1).blocks[0].text
    assert share == 0
    assert block_map(image_of(bytes(504) + b"eight888"), 1).blocks[0].text == 8 / 512


@pytest.mark.behaviour
@pytest.mark.parametrize("blocks", [0, -1, 4097])
def test_numbers_of_blocks_that_cannot_be(blocks):
    with pytest.raises(RepairlibError, match="1 to 4096"):
        block_map(image_of(b"a"), blocks)


@pytest.mark.behaviour
def test_nothing_counted():
    assert entropy_of([0, 0, 7]) == 0
