"""Hand-outs: what of a lesson is on them, and that no caution is ever left out."""

import json

import pytest

from repairlib.core.html import text
from repairlib.core.safety import HAZARDS
from repairlib.core.tables import LESSON_FOLDER
from repairlib.learn.exercise import LESSONS
from repairlib.teach.paper.hand_out import RULE, hand_out, parts_that_may_go, printed_pieces
from repairlib.teach.paper.lesson_pieces import hazards_of
from repairlib.teach.paper.stored import for_paper

pytestmark = pytest.mark.behaviour


def cells(lesson: str) -> list[dict]:
    return json.loads((LESSON_FOLDER / f"{lesson}.ipynb").read_text(encoding="utf-8"))["cells"]


@pytest.mark.parametrize("lesson", LESSONS)
@pytest.mark.parametrize("shorter", [0, 99])
def test_every_caution_of_the_printed_parts_is_there_however_short(lesson, shorter):
    made = "".join(hand_out(lesson, lesson, shorter).parts)
    shown = [one.html for one in printed_pieces(lesson) if one.warns]
    assert shown and all(one in made for one in shown)
    first = [key for key in HAZARDS if f'caution("{key}"' in json.dumps(cells(lesson))]
    for key in hazards_of(lesson)[:1] + first:
        assert text(" ".join(HAZARDS[key].do)) in made


@pytest.mark.parametrize("lesson", LESSONS)
def test_no_code_and_no_panel_is_on_it(lesson):
    made = "".join(hand_out(lesson, lesson).parts)
    code = [one for one in cells(lesson) if one["cell_type"] == "code"]
    for one in code:
        for line in "".join(one["source"]).splitlines():
            assert len(line) < 12 or text(line) not in made
    assert "<script" not in made and "<details" not in made and "VBox" not in made
    for left_out in ("Practice", "Graded exercise", "In depth", "Sources", "Going further"):
        assert f"<h2>{left_out}" not in made
    assert "<h2>What you will be able to do" in made and "<h2>Worked example" in made
    assert "<h2>Words" in made and RULE in made.replace("&#x27;", "'")


def test_what_goes_first_is_the_end_of_the_idea_and_it_is_named():
    going = parts_that_may_go(printed_pieces("04-polarity"))
    shorter = "".join(hand_out("04-polarity", "04", 3).parts)
    for _, part in going[:2]:
        assert f"<h3>{part}</h3>" not in shorter and part in shorter
    assert all(f"<h3>{part}</h3>" in shorter for _, part in going[2:])


def test_what_is_folded_stays_on_the_screen_but_for_cautions():
    note = '<div role="note">Hot.<details><summary>What to do</summary>Wait.</details></div>'
    assert "Wait." in for_paper(note)
    assert for_paper("<p>1</p><details><summary>More</summary><p>2</p></details>") == "<p>1</p>"
    row = '<div role="row"><div role="columnheader">C</div><div role="cell">1 &lt; 2</div></div>'
    table = for_paper(f'<div role="table">{row}</div>')
    assert table == "<table><tr><th>C</th><td>1 &lt; 2</td></tr></table>"
