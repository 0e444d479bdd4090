"""What of a lesson goes onto the wall: cautions and ideas, no code, what is practised."""

import json
import re
from html import unescape

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.tables import LESSON_FOLDER
from repairlib.faces.class_commands import run_class
from repairlib.learn import DEMO, LESSONS, files, warm_up
from repairlib.learn.group import Group
from repairlib.teach.screens.ideas import LEFT_OUT, ideas_of
from tests.learn.own.typed import EXAMPLE


def words_of(html):
    """The words that HTML shows, without what tells them apart."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


@pytest.mark.parametrize("lesson", LESSONS)
def test_every_caution_is_there_no_code_and_what_is_practised(lesson):
    shown = [words_of(f"{idea.heading} {' '.join(idea.pieces)}") for idea in ideas_of(lesson)]
    everything = " ".join(shown)
    cells = json.loads((LESSON_FOLDER / f"{lesson}.ipynb").read_text(encoding="utf-8"))["cells"]
    stored = [
        "".join(one["data"].get("text/html", ""))
        for cell in cells
        for one in cell.get("outputs", ())
        if "data" in one
    ]
    noted = [words_of(one) for html in stored for one in re.findall(r"<strong>⚠.*?</strong>", html)]
    assert all(one in everything for one in noted)
    assert "import " not in everything
    headings = [idea.heading for idea in ideas_of(lesson)]
    assert headings.count("Ask the room") == len(warm_up(lesson)(DEMO.draw("practice")))
    assert not set(headings) & set(LEFT_OUT)


def test_a_lesson_is_named_by_its_number_and_a_file_is_never_replaced(tmp_path):
    path = tmp_path / "wall.html"
    assert "→ next" in run_class(["screens", "4", "--out", str(path)], False)
    before = path.read_bytes()
    for wrong in (["4"], ["99"], []):
        with pytest.raises(RepairlibError):
            run_class(["screens", *wrong, "--out", str(path)], False)
    assert path.read_bytes() == before


def test_an_own_lesson_goes_onto_the_wall_and_what_was_typed_stays_text(tmp_path, monkeypatch):
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    typed = EXAMPLE.replace("A fuse is the weakest", "<script>alert(1)</script> **fuse** is the")
    files.write(tmp_path / "group.json", Group("Tuesday bench", own={"fuses.txt": typed}).to_dict())
    run_class(["screens", "own-fuses", "--out", str(tmp_path / "wall.html")], False)
    page = (tmp_path / "wall.html").read_text(encoding="utf-8")
    assert "own-fuses A fuse has blown" in page
    assert "&lt;script&gt;alert(1)&lt;/script&gt; **fuse** is the" in page
    assert "Mains current through the chest" in page
    assert "How many amperes may flow for long" in page
