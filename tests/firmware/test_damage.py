"""Damage is named where it can be told, and no sound image is called damaged."""

import os
import random
import zlib

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import KINDS, check_image, image_of
from tests.firmware import invented_images as invented

ALL = os.environ.get("FIRMWARE") == "all"
SOUND = 1000 if ALL else 60
SEEDS = 20 if ALL else 1
MUTATED = 100_000 if ALL else 300
CHIP = 1 << 16
FORTY = [(way,) for way in invented.ALONE] + list(invented.PAIRS)
BEFORE_THE_PADDING = (
    invented.half_twice,
    invented.line_dead,
    invented.swapped,
    invented.bits_reversed,
    invented.line_low,
    invented.line_high,
)
# Two slots end so as well, a block may be stored twice, and content may begin at any address:
# then it stands among the doubts.
MAY_BE_MEANT = {"repeated half", "repeated block"}


def kinds(found):
    return {damage.kind for damage in found}


def damaged(ways, seed):
    """An image damaged in these ways, one after the other, and what must be named."""
    chance = random.Random(f"{seed} {[way.__name__ for way in ways]}")
    data, named = invented.firmware(chance, CHIP), set()
    for way in ways:
        data = way(chance, data)
        named |= invented.ALONE[way]
    return data, named


@pytest.mark.common_practice
@pytest.mark.parametrize("ways", FORTY, ids=lambda ways: "-".join(way.__name__ for way in ways))
def test_forty_damaged_images(ways):
    for seed in range(SEEDS):
        data, named = damaged(ways, seed)
        checked = check_image(image_of(data), CHIP)
        told, maybe = kinds(checked.damages), kinds(checked.doubts)
        meant = MAY_BE_MEANT | ({"padding at the front"} if len(data) == CHIP else set())
        assert named - meant <= told, (seed, checked)
        assert named <= told | maybe, (seed, checked)
        assert told <= named, (seed, checked)


@pytest.mark.behaviour
@pytest.mark.parametrize("way", BEFORE_THE_PADDING, ids=lambda way: way.__name__)
def test_what_padding_at_the_front_would_hide(way):
    for seed in range(SEEDS):
        chance = random.Random(f"{seed} {way.__name__}")
        data = way(chance, invented.firmware(chance, CHIP))
        checked = check_image(image_of((b"\xff" * 37 + data)[:CHIP]), CHIP)
        wanted = invented.ALONE[way] | {"padding at the front"}
        assert kinds(checked.damages) <= wanted, (seed, checked)
        assert wanted <= kinds(checked.damages) | kinds(checked.doubts), (seed, checked)


@pytest.mark.behaviour
def test_there_are_forty():
    assert len(set(FORTY)) == 40


@pytest.mark.behaviour
@pytest.mark.parametrize("part", range(4))
def test_no_sound_image_is_called_damaged(part):
    for seed in range(part, SOUND, 4):
        data = invented.sound(random.Random(seed))
        checked = check_image(image_of(data), len(data) if seed % 8 < 4 else None)
        assert not checked.damages, (seed, checked)


@pytest.mark.behaviour
@pytest.mark.parametrize("piece", invented.PIECES, ids=lambda piece: piece.__name__)
def test_no_single_kind_of_content_is_damage(piece):
    for seed in range(40 if ALL else 2):
        data = piece(random.Random(seed), 1 << 14)
        assert not check_image(image_of(data), len(data)).damages


@pytest.mark.behaviour
def test_two_slots_are_a_doubt_that_names_both_explanations():
    slot = invented.firmware(random.Random(1), CHIP)[:20_000].ljust(CHIP // 2, b"\xff")
    checked = check_image(image_of(slot * 2), CHIP)
    (doubt,) = checked.doubts
    assert doubt.kind == "repeated half"
    assert "the halves are equal: two slots" in doubt.why
    assert "address line" in doubt.why
    assert not checked.damages


@pytest.mark.behaviour
def test_a_half_that_runs_on_is_an_address_line():
    data = random.Random(2).randbytes(CHIP // 2)
    (damage,) = check_image(image_of(data * 2), CHIP).damages
    assert damage.kind == "repeated half"
    assert damage.where == (CHIP // 2, CHIP)


@pytest.mark.behaviour
@pytest.mark.parametrize("bit", range(8))
@pytest.mark.parametrize("level", [0, 1])
def test_the_stuck_bit_and_its_level_are_said(bit, level):
    data = invented.firmware(random.Random(f"{bit}"), CHIP)
    one = 1 << bit
    spoiled = bytes(byte | one if level else byte & ~one for byte in data)
    (damage,) = check_image(image_of(spoiled), CHIP).damages
    assert damage.why.startswith(f"bit {bit} of each byte is {level}")
    assert not kinds(check_image(image_of(data), CHIP).damages)


@pytest.mark.behaviour
def test_a_stuck_bit_of_a_bus_of_sixteen_lines():
    data = bytearray(invented.firmware(random.Random(3), CHIP))
    data[1::2] = bytes(byte & ~4 for byte in data[1::2])
    (damage,) = check_image(image_of(bytes(data)), CHIP).damages
    assert damage.why.startswith("bit 2 of each odd byte is 0")


@pytest.mark.behaviour
def test_the_lengths_that_are_missing_or_too_many():
    image = image_of(invented.encrypted(random.Random(4), 5000))
    assert check_image(image, 8192).damages[0].where == (5000, 8192)
    assert check_image(image, 4096).damages[0].where == (4096, 5000)
    assert kinds(check_image(image).doubts) == {"short read"}
    assert not check_image(image).damages
    front = image_of(b"\xff" * 100 + image.data[:4096])
    assert kinds(check_image(front).damages) == {"padding at the front"}
    assert check_image(front).damages[0].where == (0, 100)


@pytest.mark.behaviour
def test_every_image_is_asked_for_a_second_read():
    data = b"x" * 100 + bytes(412)
    checked = check_image(image_of(data), 512)
    assert "read the chip again" in checked.notes[-1]
    assert "0x000064" in checked.notes[0]
    assert checked.sums.crc32 == f"{zlib.crc32(data):08X}"


@pytest.mark.behaviour
@pytest.mark.parametrize("chip", [0, -1, True, 1 << 40, 8.0, "8 MiB"])
def test_no_capacity(chip):
    with pytest.raises(RepairlibError, match="no capacity of a chip"):
        check_image(image_of(b"abc"), chip)


@pytest.mark.behaviour
def test_any_bytes_get_an_answer():
    chance = random.Random(5)
    sources = [invented.firmware(chance, 1 << 12) for _ in range(20)]
    for count in range(MUTATED):
        data = bytearray(chance.choice(sources))
        for _ in range(chance.randrange(6)):
            at, many = chance.randrange(len(data) + 1), chance.choice((1, 7, 300, 3000))
            new = chance.choice((b"", b"\0" * many, b"\xff" * many, chance.randbytes(many)))
            data[at : at + chance.choice((0, 1, many))] = new
            if not data:
                data = bytearray(b"\0")
        chip = chance.choice((None, 1, 4096, chance.randrange(1, 1 << 28)))
        checked = check_image(image_of(bytes(data)), chip)
        for one in (*checked.damages, *checked.doubts):
            assert one.kind in KINDS, count
            assert one.where[0] < one.where[1], (count, one)
            assert one.why, count
            assert one.next, count
            assert "\n" not in str(one), count


@pytest.mark.behaviour
@pytest.mark.parametrize("mask", [0xF0, 0x0F, 0x8C])
@pytest.mark.parametrize("level", [0, 1])
def test_several_bits_that_never_change_are_a_doubt(mask, level):
    data = invented.encrypted(random.Random(mask), CHIP)
    data = bytes(byte | mask if level else byte & ~mask for byte in data)
    checked = check_image(image_of(data), CHIP)
    (doubt,) = checked.doubts
    assert not checked.damages
    assert doubt.kind == "stuck bit"
    assert all((f"bit {bit} is {level}" in doubt.why) == bool(mask >> bit & 1) for bit in range(8))
    assert "numbers of few bits" in doubt.why
