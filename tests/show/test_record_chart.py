"""The chart of the work: every figure in words too, letters that can be read, all on the sheet."""

import xml.etree.ElementTree as ET

import pytest

from repairlib.show import draw_work
from repairlib.show.canvas import text_width
from repairlib.show.record_chart import MOST
from tests.show.test_drawings import SVG
from tests.show.test_legible import assert_legible


def months(count, hours=2.5):
    return [
        {
            "month": f"{2020 + at // 12}-{at % 12 + 1:02}",
            "jobs": at,
            "hours": at * hours,
            "parts": 1,
        }
        for at in range(count)
    ]


@pytest.mark.parametrize("count", [0, 1, 3, MOST, MOST + 3])
def test_it_can_be_read_and_nothing_is_cut(count):
    drawing = draw_work(months(count, hours=12345.678))
    assert_legible(drawing)
    assert len(drawing.alt.splitlines()) == 1 + min(count, MOST) + (count in (0, MOST + 3))
    root = ET.fromstring(drawing.svg)
    for one in root.iter(f"{SVG}text"):
        wide = text_width(one.text, float(one.get("font-size")), one.get("font-weight") == "bold")
        left = float(one.get("x")) - (wide if one.get("text-anchor") == "end" else 0)
        assert left >= 0
        assert left + wide <= float(root.get("width")), one.text


def test_a_bar_is_as_long_as_its_hours():
    drawing = draw_work(
        [
            {"month": "2026-10", "jobs": 1, "hours": 2.0, "parts": 0},
            {"month": "2026-11", "jobs": 2, "hours": 4.0, "parts": 1},
        ]
    )
    bars = [one for one in ET.fromstring(drawing.svg).iter(f"{SVG}rect")][1:]
    short, long = (float(one.get("width")) for one in bars)
    assert long == 2 * short > 0
    assert drawing.alt.splitlines()[1:] == [
        "2026-10: 2 h, 1 job, 0 parts.",
        "2026-11: 4 h, 2 jobs, 1 part.",
    ]


def test_of_many_months_the_last_are_drawn_and_it_says_so():
    said = draw_work(months(15)).alt
    assert f"The last {MOST} of 15 months." in said
    assert "2020-03" not in said
    assert "2020-04" in said
