"""True sizes: what is twice as long is drawn twice as long, and life size is in millimetres."""

import re
from xml.etree import ElementTree as ET

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show import draw_life_size, draw_to_scale
from repairlib.show.capacitors import SLEEVE
from tests.show.test_drawings import (
    SVG,
    assert_no_text_covers_another,
    assert_text_is_inside_the_sheet,
)


def sleeves(picture) -> list[tuple[float, float]]:
    """Width and height of each can's body as it is shown."""
    found = []
    for group in ET.fromstring(picture.svg).iter(f"{SVG}g"):
        across, down = map(
            float, re.search(r"scale\((\S+) (\S+)\)", group.get("transform")).groups()
        )
        body = next(rect for rect in group if rect.get("fill") == SLEEVE)
        found.append((float(body.get("width")) * across, float(body.get("height")) * down))
    return found


@pytest.mark.parametrize("sizes", [((5, 11), (10, 16)), ((4, 7), (18, 40)), ((6.3, 11), (35, 50))])
def test_one_scale_for_all(sizes):
    picture = draw_to_scale(*(("radial", "a can", *size) for size in sizes))
    (one, other), ((wide, high), (wider, higher)) = sizes, sleeves(picture)
    assert wider / wide == pytest.approx(other[0] / one[0], rel=1e-3)
    assert higher / high == pytest.approx(other[1] / one[1], rel=1e-3)
    assert wide / high == pytest.approx(one[0] / one[1], rel=1e-3)


@pytest.mark.parametrize("wide", [5, 12.5, 30])
def test_the_bar_is_ten_millimetres(wide):
    picture = draw_to_scale(("radial", "a can", wide, 2 * wide))
    bars = [line for line in ET.fromstring(picture.svg).findall(f"{SVG}polyline")]
    xs = [float(point.split(",")[0]) for point in bars[-1].get("points").split()]
    assert max(xs) - min(xs) == pytest.approx(sleeves(picture)[0][0] * 10 / wide, rel=1e-3)


def test_usual_parts_and_the_gauge_are_drawn_with_their_words():
    for picture in (draw_to_scale(), draw_life_size()):
        assert_text_is_inside_the_sheet(picture)
        assert_no_text_covers_another(picture)


def test_life_size_is_in_millimetres_and_fits_a_sheet_of_paper():
    root = ET.fromstring(draw_life_size().svg)
    wide, high = (float(root.get(name).removesuffix("mm")) for name in ("width", "height"))
    _, _, units, down = map(float, root.get("viewBox").split())
    assert wide <= 180 and high <= 260
    assert units / wide == pytest.approx(down / high)
    largest = max(float(circle.get("r")) for circle in root.findall(f"{SVG}circle"))
    assert 2 * largest * wide / units == pytest.approx(18)


def test_sizes_that_cannot_be_drawn():
    for size in ((0, 5), (5, -1)):
        with pytest.raises(RepairlibError, match="not a size"):
            draw_to_scale(("radial", "a can", *size))
    with pytest.raises(RepairlibError, match="brick"):
        draw_to_scale(("brick", "a brick", 5, 5))
