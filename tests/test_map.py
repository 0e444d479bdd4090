"""The learner's map: each lesson once, with what the lesson itself says of time and order."""

from __future__ import annotations

import json
import re
from typing import NamedTuple

import pytest

from repairlib.learn import LESSONS
from repairlib.learn.exercise import ONE_EVENING
from repairlib.learn.progress import stated
from tests.refresh import LESSONS as FOLDER

pytestmark = pytest.mark.behaviour

MAP = (FOLDER / "README.md").read_text(encoding="utf-8")
PATH = (FOLDER / "path.svg").read_text(encoding="utf-8")
ROW = re.compile(r"^\| \[(.+?)\]\((.+?)\.ipynb\) \| (\d+) \| (.+?) \| (.+?) \|$", re.MULTILINE)
STEP = re.compile(r"^\d\. \[(.+?)\]\((.+?)\.ipynb\): (all of it|the first half)\. ?", re.MULTILINE)
TOTAL = re.compile(r"About (\d+) hours (\d+) minutes")
STOP = "### A good place to stop"  # where a first half ends


class Stop(NamedTuple):
    """A lesson on the map."""

    called: str
    minutes: int
    first: str
    after: str


def the_map() -> dict[str, Stop]:
    rows = ROW.findall(MAP)
    return {name: Stop(called, int(minutes), *rest) for called, name, minutes, *rest in rows}


def prose(name: str) -> str:
    cells = json.loads((FOLDER / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"]
    return "\n".join("".join(one["source"]) for one in cells if one["cell_type"] == "markdown")


def minutes_of(name: str) -> int:
    """What a lesson says: "About 45 minutes", or "One hour at this computer"."""
    said = stated(name)[1]
    if said is None:
        assert "\nOne hour at this computer." in prose(name)
    return said or 60


def asked_first(name: str) -> str | None:
    """The numbers of the lessons behind "First:" in a lesson's first lines; None if it has none."""
    found = re.search(r"First: (.+?)\.(?: |\*)", prose(name).partition("\n## ")[0])
    return ", ".join(re.findall(r"\[lesson (\d\d)\]", found[1])) if found else None


def test_each_lesson_stands_on_the_map_once_and_in_order():
    assert tuple(the_map()) == LESSONS == tuple(name for _, name, *_ in ROW.findall(MAP))


@pytest.mark.parametrize("name", LESSONS)
def test_the_map_says_what_the_lesson_says(name):
    stop = the_map()[name]
    assert stop.called == f"{name[:2]} {stated(name)[0]}"
    assert stop.minutes == minutes_of(name)
    assert stop.first == (asked_first(name) or stop.first)
    assert len(stop.after.split()) <= 12


@pytest.mark.parametrize("name", LESSONS[1:])
def test_what_is_asked_first_comes_earlier(name):
    for number in the_map()[name].first.split(", "):
        assert number in [one[:2] for one in LESSONS[: LESSONS.index(name)]]


def test_one_evening_is_the_short_way_of_the_workbook():
    assert tuple(name for _, name, _ in STEP.findall(MAP)) == ONE_EVENING
    assert "01" in MAP.partition("## One evening")[0]  # before anything is opened


def test_a_first_half_ends_at_a_place_to_stop():
    for called, name, part in STEP.findall(MAP):
        assert called == f"{name[:2]} {stated(name)[0]}"
        assert part == "all of it" or STOP in prose(name)


def test_the_times_of_both_ways_are_those_of_their_lessons():
    parts = [(minutes_of(name), part) for _, name, part in STEP.findall(MAP)]
    evening = sum(minutes if part == "all of it" else minutes / 2 for minutes, part in parts)
    said = [int(hours) * 60 + int(minutes) for hours, minutes in TOTAL.findall(MAP)]
    assert said == pytest.approx([evening, sum(map(minutes_of, LESSONS))], abs=5)


def test_the_picture_shows_the_same_way():
    drawn = re.findall(r">(\d\d [^<]+)</text>", PATH)
    assert drawn == [stop.called for stop in the_map().values()]
    bold = re.findall(r'font-weight="bold">(\d\d) ', PATH)
    assert bold == [name[:2] for name in ONE_EVENING]
    halves = re.findall(r">(\d\d) [^<]+</text>\n<text [^>]+>first half<", PATH)
    assert halves == [name[:2] for _, name, part in STEP.findall(MAP) if part != "all of it"]
    (words,) = re.findall(r"<title>(.+)</title>", PATH)
    assert f"![{words}](path.svg)" in MAP
    assert ", ".join(name[:2] for name in ONE_EVENING) in words
