"""The way from lesson to lesson: the safe bench comes before anything is opened."""

import json
import re
from pathlib import Path

import pytest

LESSONS = Path(__file__).parent.parent.parent / "lessons"


def prose(name):
    cells = json.loads((LESSONS / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"]
    return "\n".join("".join(cell["source"]) for cell in cells if cell["cell_type"] == "markdown")


def said_at(number, text):
    """Where a lesson is first named by its number; 104K names none."""
    return re.search(rf"\b{number}\b", text).start()


def printed(name):
    cells = json.loads((LESSONS / f"{name}.ipynb").read_text(encoding="utf-8"))["cells"]
    streams = [out for cell in cells for out in cell.get("outputs", ()) if "text" in out]
    return "".join("".join(out["text"]) for out in streams)


@pytest.mark.behaviour
def test_the_safe_bench_comes_first_then_the_numbers():
    text = prose("00-start-here").split("## Going further")[1].split("## Sources")[0]
    said = re.sub(r"\(.*?\)", "", text)
    places = [said_at(number, said) for number in ("01", "03", "04", "05", "06", "07", "08")]
    assert places == sorted(places) and "any order" not in said


@pytest.mark.behaviour
def test_lesson_01_prints_verdict_and_reason():
    lines = [line for line in printed("01-a-safe-bench").splitlines() if "strap" in line]
    for volts in ("100 V dc", "230 V ac rms"):
        (line,) = (line for line in lines if line.startswith(volts))
        assert "strap off while it is live; leave it to a qualified person (" in line


@pytest.mark.published("IEC 62368-1, edition 3.0, 2018-10, title page")
def test_lesson_01_names_editions():
    text = prose("01-a-safe-bench")
    assert "| IEC 62368-1, class ES1 | 3.0, 2018 |" in text
    assert text.count("| the page names none |") == 2 and "| IEC 60950-1 | withdrawn |" in text
