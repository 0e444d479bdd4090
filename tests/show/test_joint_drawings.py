"""The cross-section and the chart of a heated joint: what they say, and that nothing is lost."""

import xml.etree.ElementTree as ET

import pytest

from repairlib.heat.joint import heat_joint
from repairlib.show.joint_chart import draw_joint_chart
from repairlib.show.joint_section import draw_joint_section

SETUPS = (
    {},
    {"kind": "surface", "plane": "solid plane", "tip": "large"},
    {"source": "hot air", "celsius": 480.0, "gap": 0.2e-3},
    {"preheat": 150.0, "solder": "SAC305"},
    {"preheat": -40.0, "seconds": 0.2},
    {"pad": 12e-3, "hole": 5e-3, "lead": 4e-3, "neighbour": 15e-3},
    {"source": "hot air", "seconds": 120},
)


@pytest.fixture(scope="module", params=SETUPS, ids=str)
def run(request):
    return heat_joint(**request.param)


@pytest.mark.parametrize("draw", [draw_joint_section, draw_joint_chart])
def test_drawings_are_whole_and_the_same_on_each_run(run, draw):
    picture = draw(run)
    root = ET.fromstring(picture.svg)
    width, height = float(root.get("width")), float(root.get("height"))
    for text in root.iter("{http://www.w3.org/2000/svg}text"):
        assert 0 <= float(text.get("x")) <= width
        assert 8 <= float(text.get("y")) <= height
    assert picture.svg == draw(run).svg
    assert "not a measurement" in picture.alt


def test_section_names_every_part_with_its_peak(run):
    alt = draw_joint_section(run).alt
    assert f"under the mat: {run.peak('mat underside'):.0f} °C" in alt
    assert f"neighbour, {run.neighbour * 1e3:g} mm away: {run.peak('neighbour'):.0f} °C" in alt
    assert ("far side" in alt) == (run.setup.kind == "through hole")


def test_chart_marks_when_the_tool_goes(run):
    picture = draw_joint_chart(run)
    assert f"taken away after {run.held}" in picture.alt
    assert f"{run.setup.source} away: {run.held}" in picture.svg
