"""What differs between two reads is counted whole, also across the pieces that are compared."""

import random
from itertools import pairwise

import pytest

from repairlib.firmware.image_file import image_of
from repairlib.firmware.read_tally import AT_ONCE, BLOCK, GAP, tally


def counted_one_by_one(one: bytes, other: bytes):
    """The same counts with nothing but loops."""
    places = [at for at, pair in enumerate(zip(one, other, strict=True)) if pair[0] != pair[1]]
    bursts: list[list[int]] = []
    for at in places:
        if bursts and at - bursts[-1][1] < GAP:
            bursts[-1][1] = at + 1
        else:
            bursts.append([at, at + 1])
    distances = [b[0] - a[0] for a, b in pairwise(bursts)]
    blank = sum(
        set(other[start : start + BLOCK]) == {255}
        for start in {at // BLOCK * BLOCK for at in places}
    )
    return places, bursts, distances, blank


@pytest.mark.behaviour
@pytest.mark.parametrize("seed", range(4))
def test_all_that_differs_is_counted(seed):
    chance = random.Random(seed)
    one = chance.randbytes(5 * AT_ONCE + 777)
    other = bytearray(one)
    for _ in range(60):
        at = chance.choice((chance.randrange(len(one)), 3 * AT_ONCE + chance.randrange(-200, 200)))
        many = chance.choice((1, 30, 5000))
        other[at : at + many] = bytes(255 for _ in one[at : at + many])
    places, bursts, distances, blank = counted_one_by_one(one, other)
    found = tally(image_of(one), image_of(bytes(other)))
    assert (found.bytes, found.blocks) == (len(places), len({at // BLOCK for at in places}))
    assert found.bursts.many == len(bursts)
    assert (found.bursts.start, found.bursts.end) == (bursts[0][0], bursts[-1][1])
    assert found.bursts.span == sum(end - start for start, end in bursts)
    assert found.bursts.squares == sum(distance**2 for distance in distances)
    assert found.bursts.distance == pytest.approx(sum(distances) / len(distances))
    assert (found.sides[1].ones, found.sides[0].ones) == (len(places), 0)
    assert found.sides[1].blank == blank
    assert sum(found.parts) == len(places)
    assert sum(found.falling) == 0
    assert sum(found.rising) == sum(8 - one[at].bit_count() for at in places)


@pytest.mark.behaviour
def test_a_bit_is_late_when_it_is_the_one_before_it():
    good, bad = bytes([0b0101_0101, 0b1000_0000]), bytearray([0b0101_0101, 0b1000_0000])
    bad[0] ^= 0b0010_0000  # a 0 behind a 1: late
    bad[1] ^= 0b1100_0000  # the first is a 1 behind a 1, the next a 0 behind a 1
    found = tally(image_of(good), image_of(bytes(bad)))
    assert found.sides[1].not_late == 1
