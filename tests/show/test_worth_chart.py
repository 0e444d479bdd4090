"""The chart of gain against chance: what it says, and that it can be read."""

import xml.etree.ElementTree as ET

import pytest
from hypothesis import given

from repairlib.core.tables import demo_path
from repairlib.show.worth_chart import draw_worth
from repairlib.worth import Job, read_shelf
from tests.show.test_drawings import SVG
from tests.show.test_legible import assert_legible
from tests.worth.test_job import jobs

EDGES = (
    Job(10, 0, 0, 0, 100, name="a free try"),
    Job(100, 20, 3, 2, 2, hour_worth=50, name="never"),
    Job(0, 0, 0, 50, 60, name="nothing at all"),
    Job(20, 18, 0, 90, 100, name="late"),
    Job(1e7, 1e6, 1e4, 20, 95, hour_worth=1e7, currency="a long name of money", name="x" * 200),
)
SHELF = tuple(read_shelf(demo_path("shelf.csv")))


@pytest.mark.parametrize("job", EDGES + SHELF, ids=lambda job: job.name[:20])
def test_legible_whole_and_the_same_on_each_run(job):
    picture = draw_worth(job)
    assert_legible(picture)
    root = ET.fromstring(picture.svg)
    width, height = float(root.get("width")), float(root.get("height"))
    for text in root.iter(f"{SVG}text"):
        assert 0 <= float(text.get("x")) <= width and 8 <= float(text.get("y")) <= height
    assert picture.svg == draw_worth(job).svg


@given(jobs)
def test_any_job_can_be_drawn(job):
    picture = draw_worth(job)
    assert "nan" not in picture.svg and "inf" not in picture.svg
    assert "Decision: " in picture.alt


def test_range_and_break_even_are_words_and_marks():
    picture = draw_worth(SHELF[1])
    shown = picture.svg.replace("\xa0", " ")
    assert "your range: 40 % to 75 %" in shown
    assert "break-even 54.5 %" in shown
    assert shown.count('stroke="#b9c6d2"') > 10  # the hatching
    assert "Break-even at 54.5 %" in picture.alt.replace("\xa0", " ")


def test_what_is_handed_on_stands_on_top():
    picture = draw_worth(SHELF[2])
    assert "desk radio: leave it to a qualified person" in picture.svg
    assert "no gain outweighs this danger" in picture.svg
