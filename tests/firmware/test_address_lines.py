"""Each address line without effect is named, and copies on purpose are not called damage."""

import random

import pytest

from repairlib.firmware import check_image, image_of
from tests.firmware import invented_images as invented

CHIP = 1 << 16
TOP = CHIP.bit_length() - 2
NAMED = {"address line stuck", "repeated half"}


def without(line: int, data: bytes, high: bool) -> bytes:
    """What is read when this line of the chip is always high or low."""
    block = 1 << line
    return b"".join(
        data[at + high * block : at + high * block + block] * 2
        for at in range(0, len(data), 2 * block)
    )


def told(data: bytes):
    checked = check_image(image_of(data), len(data))
    return [one for one in checked.damages if one.kind in NAMED], [
        one for one in checked.doubts if one.kind in NAMED
    ]


@pytest.mark.common_practice
@pytest.mark.parametrize("line", range(TOP + 1))
@pytest.mark.parametrize("high", [False, True])
def test_each_line_of_a_full_chip_is_named(line, high):
    data = without(line, invented.encrypted(random.Random(line), CHIP), high)
    (damage,), doubts = told(data)
    assert not doubts
    assert damage.kind == ("repeated half" if line == TOP else "address line stuck")
    assert line == TOP or f"address line A{line} has" in damage.why


@pytest.mark.common_practice
def test_two_lines_are_both_named():
    data = invented.encrypted(random.Random(1), CHIP)
    damages, _ = told(without(TOP - 1, without(3, data, True), False))
    assert [one.why.partition("address line ")[2][:3] for one in damages] == ["A3 ", "A14"]
    damages, _ = told(without(TOP, without(9, data, True), False))
    assert [one.kind for one in damages] == ["repeated half", "address line stuck"]


@pytest.mark.behaviour
@pytest.mark.parametrize("line", range(4))
def test_words_that_a_line_breaks_are_no_other_order(line):
    text = invented.ascii_lines(random.Random(line), CHIP)
    checked = check_image(image_of(without(line, text, False)), CHIP)
    assert [one.kind for one in checked.damages] == ["address line stuck"]
    assert any("order" in note for note in checked.notes)


@pytest.mark.behaviour
@pytest.mark.parametrize("area", [2, 4])
def test_areas_stored_twice_on_purpose_are_a_doubt(area):
    chance = random.Random(2)
    size = CHIP // area // 2
    data = b""
    for at in range(area):
        full = bytes([at]) + invented.firmware(chance, CHIP)[: size - 900]
        data += full.ljust(size, b"\xff") * 2
    damages, (doubt,) = told(data)
    assert not damages
    assert "on purpose" in doubt.why


@pytest.mark.behaviour
def test_equal_halves_that_begin_with_filling_are_not_passed_over():
    half = bytes(8192) + invented.encrypted(random.Random(3), CHIP // 2 - 8192)
    (damage,), _ = told(half * 2)
    assert damage.kind == "repeated half"
