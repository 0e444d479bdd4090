"""Drawings of chips, boards and images: legible also on a phone, whole, and said in words."""

import xml.etree.ElementTree as ET

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import PINS, Sectors, block_map, image_of
from repairlib.show import (
    draw_image_map,
    draw_on_pads,
    draw_sectors,
    draw_small_board,
    draw_two_reads,
)
from repairlib.show.cell_map import BOX, COLUMNS
from repairlib.show.memory_chip import BODIES, PADS
from repairlib.show.small_board import KINDS, OnBoard
from tests.show.test_drawings import SVG, assert_text_is_inside_the_sheet, words
from tests.show.test_legible import SMALLEST, assert_legible, smallest_shown

TEXT = b"paper jam at roller one, open the cover\n" * 30
IMAGE = image_of(bytes(512) + TEXT[:1024] + bytes(range(256)) * 4 + b"\xff" * 1536, "a.bin")


def assert_whole(picture):
    assert_legible(picture)
    assert_text_is_inside_the_sheet(picture)
    assert smallest_shown(picture) >= SMALLEST


@pytest.mark.behaviour
def test_image_map():
    picture = draw_image_map(block_map(IMAGE), [(600, 601)])
    assert_whole(picture)
    boxes = [one for one in ET.fromstring(picture.svg).iter(f"{SVG}rect") if _is_box(one)]
    assert len(boxes) == 16 + 5 + 2  # the blocks, the legend's, and the outlines
    said = [one for one in words(picture) if len(one) == 1]
    assert sorted(said) == ["0"] * 3 + ["P"] * 5 + ["T"] * 5
    assert "0x000A00 to 0x000FFF: blank." in picture.alt
    assert "Outlined: the blocks at 0x000200." in picture.alt


def _is_box(shape) -> bool:
    size = (float(shape.get("width")), float(shape.get("height")))
    return size == (BOX, BOX) and shape.get("fill") in ("#ffffff", "none")


@pytest.mark.behaviour
def test_image_map_of_many_regions_stays_short():
    mixed = b"".join(bytes([number % 2 * 255]) * 256 for number in range(400))
    picture = draw_image_map(block_map(image_of(mixed, "x" * 300), 400), [(0, len(mixed))])
    assert "Then 380 more regions." in picture.alt and ", 388 more." in picture.alt
    assert_legible(picture)
    rows = [one for one in words(picture) if one.startswith("0x")]
    assert len(rows) == 400 / COLUMNS and rows[1] == "0x001000"


@pytest.mark.behaviour
def test_two_reads():
    other = bytearray(IMAGE.data[:3900])
    other[700] ^= 1
    other[1024:1280] = bytes(256)
    picture = draw_two_reads([IMAGE, image_of(bytes(other), "b.bin")])
    assert_whole(picture)
    assert picture.alt == (
        "a.bin and b.bin, 16 blocks of 256 bytes: 13 equal; 1 where some bytes differ: 0x000200; "
        "1 where half or more of its bytes differ: 0x000400; 1 not in every read: 0x000F00."
    )
    assert sorted(one for one in words(picture) if len(one) == 1) == ["−"] * 2 + ["≠"] * 4
    with pytest.raises(RepairlibError, match="two reads"):
        draw_two_reads([IMAGE])


@pytest.mark.behaviour
def test_sectors():
    picture = draw_sectors(Sectors(20000, 4096, bytes([0, 1, 2, 2, 0])), "a.bin")
    assert_whole(picture)
    assert sorted(one for one in words(picture) if len(one) == 1) == ["E"] * 3 + ["P"] * 2
    assert "Program only: 0x001000 to 0x001FFF. Erase first: 0x002000 to 0x003FFF." in picture.alt


@pytest.mark.behaviour
def test_a_box_of_many_sectors_shows_the_worst():
    states = bytearray(600)
    states[7], states[5], states[599] = 1, 2, 1
    picture = draw_sectors(Sectors(600 * 4096, 4096, bytes(states)))
    assert [one for one in words(picture) if len(one) == 1] == ["E", "P", "P", "E"]
    assert "4 sectors, and shows" in " ".join(words(picture))


@pytest.mark.behaviour
@pytest.mark.parametrize("body", BODIES)
@pytest.mark.parametrize("pads", PADS)
def test_chip_on_pads(body, pads):
    for series, names in PINS.items():
        picture = draw_on_pads(body, pads, series, "25Q64\n2209")
        assert_whole(picture)
        assert all(f"{number} {name}" in picture.alt for number, name in enumerate(names, 1))
    assert ("stand whole" in picture.alt) == (body == pads)


@pytest.mark.published("Zetex SO8 sheet, 2007-03: footprint 4.0 mm inside, 7.0 mm outside")
def test_narrow_pads():
    assert PADS["150 mil"] == (4.0, 7.0)


@pytest.mark.published("MS-012-AA, printed in Intersil M8.15: 3.8-4, 4.8-5, 5.8-6.2, 0.4-1.27 mm")
def test_narrow_body():
    width, length, over, foot = BODIES["150 mil"]
    assert 3.8 <= width <= 4 and 4.8 <= length <= 5 and 5.8 <= over <= 6.2 and 0.4 <= foot <= 1.27


@pytest.mark.published("S25FL064K sheet, SOC008: 5.283, 5.283, 8.001, foot 0.508-0.762 mm")
def test_wide_body():
    width, length, over, foot = BODIES["208 mil"]
    assert (width, length, over) == pytest.approx((5.283, 5.283, 8.001), abs=0.005)
    assert 0.508 <= foot <= 0.762


@pytest.mark.behaviour
def test_unknown_widths():
    for wrong in (("300 mil",), ("150 mil", "300 mil"), ("150 mil", "", "27-series")):
        with pytest.raises(RepairlibError):
            draw_on_pads(*wrong)


THINGS = [
    OnBoard(kind, f"X{place}", 6 + 9 * (place % 4), 7 + 10 * (place // 4), "25Q64", turned)
    for place, (kind, turned) in enumerate((kind, turned) for kind in KINDS for turned in (0, 1))
    if place < 12 or kind != "connector"
]


@pytest.mark.behaviour
def test_small_board():
    picture = draw_small_board(THINGS, [("X0", "X5"), ("X5", "X2")], 42, 60)
    assert_legible(picture)
    assert_text_is_inside_the_sheet(picture)
    assert all(f"{thing.name}, " in picture.alt for thing in THINGS)
    assert "Tracks: X0 to X5, X5 to X2." in picture.alt
    across = [thing for thing in THINGS[:4] if not thing.turned]
    assert smallest_shown(draw_small_board(across)) >= SMALLEST


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("things", "tracks", "why"),
    [
        ([OnBoard("valve", "V1", 1, 1)], [], "of this kind"),
        ([OnBoard("coil", "L1", 50, 1)], [], "off the board"),
        ([OnBoard("coil", "L1", 5, 5), OnBoard("coil", "L1", 9, 9)], [], "twice"),
        ([OnBoard("coil", "L1", 5, 5)], [("L1", "U2")], "not on the board"),
    ],
)
def test_boards_that_cannot_be_drawn(things, tracks, why):
    with pytest.raises(RepairlibError, match=why):
        draw_small_board(things, tracks)
