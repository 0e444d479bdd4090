"""Every drawing can be read: letters of 12 px or more, dark enough on what lies under them."""

from __future__ import annotations

from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest

from repairlib.heat import heat_joint
from repairlib.polarity import part_marks
from repairlib.show import (
    BODIES,
    LOOKS,
    Picture,
    draw_bench,
    draw_board,
    draw_colour_code,
    draw_oxide_skin,
    draw_part,
    draw_polarity,
    draw_row,
    draw_to_scale,
)
from repairlib.show.bands import INKS
from repairlib.show.joint_chart import draw_joint_chart
from tests.show.test_drawings import SVG, board_of
from tests.show.test_looks import contrast

SMALLEST = 12
PHONE = 330  # px that a drawing has on a phone of 390 px


def covers(shape: ET.Element, x: float, y: float) -> bool:
    """Whether a filled shape lies over the point."""

    def number(name: str) -> float:
        return float(shape.get(name, 0))

    kind = shape.tag.removeprefix(SVG)
    if kind == "rect":
        return 0 <= x - number("x") <= number("width") and 0 <= y - number("y") <= number("height")
    if kind == "circle":
        return (x - number("cx")) ** 2 + (y - number("cy")) ** 2 <= number("r") ** 2
    if kind == "ellipse":
        across, down = (x - number("cx")) / number("rx"), (y - number("cy")) / number("ry")
        return across**2 + down**2 <= 1
    if kind != "polygon":
        return False
    corners = [tuple(map(float, point.split(","))) for point in shape.get("points").split()]
    inside = False
    for (x1, y1), (x2, y2) in pairwise([*corners, corners[0]]):
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            inside = not inside
    return inside


def assert_legible(picture: Picture) -> None:
    shapes = list(ET.fromstring(picture.svg))
    for place, text in enumerate(shapes):
        if text.tag != f"{SVG}text":
            continue
        size, x, y = (float(text.get(name)) for name in ("font-size", "x", "y"))
        assert size >= SMALLEST, (text.text, size)
        x += {"start": 0.4 * size, "middle": 0, "end": -0.4 * size}[text.get("text-anchor")]
        y -= 0.36 * size
        ground = "#ffffff"
        for shape in shapes[:place]:
            fill = shape.get("fill", "none")
            if fill != "none" and not shape.get("fill-opacity") and covers(shape, x, y):
                ground = fill
        assert contrast(text.get("fill"), ground) >= 4.5, (text.text, text.get("fill"), ground)


@pytest.mark.parametrize("labels", [False, True])
@pytest.mark.parametrize("body", BODIES)
def test_parts(body, labels):
    for marking in ("4.7µF\n50V", "a\nb\nc\nd", "20-20-10 350V", ""):
        assert_legible(draw_part(body, marking, labels=labels))


@pytest.mark.parametrize("colour", INKS)
def test_coloured_bodies(colour):
    for body in ("resistor", "inductor", "film drop", "fuse"):
        assert_legible(draw_part(body, "-".join([colour] * 4)))
    assert_legible(draw_part("resistor", f"body {colour} end {colour} dot {colour}"))


@pytest.mark.parametrize("look", LOOKS)
def test_boards(look):
    for rule in part_marks():
        assert_legible(draw_polarity(rule, look=look))
    assert_legible(draw_board(board_of(40), 280, 120, look=look))


@pytest.mark.parametrize("draw", [draw_bench, draw_colour_code, draw_oxide_skin, draw_to_scale])
def test_others(draw):
    assert_legible(draw())


def smallest_shown(picture: Picture) -> float:
    """The smallest letters [px] of a drawing that has as much room as on a phone."""
    sheet = ET.fromstring(picture.svg)
    sizes = [float(text.get("font-size")) for text in sheet.iter(f"{SVG}text")]
    return min(sizes) * min(1, PHONE / float(sheet.get("width")))


@pytest.mark.parametrize("count", range(1, 7))
def test_captions_of_a_row_on_a_phone(count):
    for body in ("radial", "axial"):
        row = draw_row(*[(body, "", "a few words under it")] * count)
        for piece in getattr(row, "pieces", [row]):
            assert smallest_shown(piece) >= SMALLEST


def test_parts_to_scale_on_a_phone():
    """None is shown smaller than another, so they stay at one scale."""
    for piece in draw_to_scale().pieces:
        assert float(ET.fromstring(piece.svg).get("width")) <= PHONE
        assert smallest_shown(piece) >= SMALLEST


@pytest.mark.parametrize("kind", ["surface", "through hole"])
def test_joint_chart_on_a_phone(kind):
    chart = draw_joint_chart(heat_joint(kind=kind))
    assert_legible(chart)
    assert smallest_shown(chart) >= SMALLEST
