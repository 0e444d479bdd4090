"""The sheet: points, states, and the printed form."""

import json

from repairlib.learn import Choice, Mistake, Number, mark
from repairlib.learn.arranging import Order

QUESTIONS = [
    Number(id="q1", points=2, unit="F", answer=100e-9),
    Choice(
        id="q2",
        options=("one", "two"),
        answer="two",
        mistakes=[Mistake("one", "Think of the plug.", hazard="mains")],
    ),
    Order(id="q3", points=2, steps=("x 1", "y 2", "z 3"), shown=("z 3", "y 2", "x 1")),
    Number(id="q10", points=1, unit="V", answer=9),
]


def test_printed_sheet():
    sheet = mark(QUESTIONS, {"q1": "0.1 µF", "q2": "a", "q3": "c a b"}, "03-x", "demo variant")
    assert str(sheet) == (
        "03-x, demo variant\n"
        "q1   right         2 of 2\n"
        "q2   unsafe        0 of 1\n"
        "    Danger (mains): Think of the plug.\n"
        "q3   partly right  0.5 of 2\n"
        "    1 of 3 steps are in their place.\n"
        "q10  unanswered    0 of 1\n"
        "Total: 2.5 of 6 points"
    )
    assert repr(sheet) == str(sheet)
    assert (sheet.points, sheet.out_of, sheet.answered) == (2.5, 6, 3)


def test_what_was_once_unsafe_says_so_and_keeps_its_points():
    answers = {"q2": "b", "q1": "0.1 µF"}
    sheet = mark(QUESTIONS, answers, unsafe=("q2",))
    assert "q2   right         1 of 1\n    This one was answered unsafely first." in str(sheet)
    assert str(sheet).count("answered unsafely first") == 1
    assert sheet.points == mark(QUESTIONS, answers).points == 3
    by_id = {line["id"]: line for line in sheet.to_dict()["lines"]}
    assert by_id["q2"]["unsafe_first"] and not by_id["q1"]["unsafe_first"]
    still = mark(QUESTIONS, {"q2": "a"}, unsafe=("q2",))
    assert "unsafe        0 of 1" in str(still) and "unsafely first" not in str(still)


def test_a_share_is_rounded_down_to_half_a_point():
    (line,) = mark(QUESTIONS[2:3], {"q3": "c a b"}).lines
    assert line.points == 0.5  # one third of two points


def test_notes_are_printed_first():
    assert str(mark([], {}, notes=["A file was kept aside."])).splitlines()[1] == (
        "Note: A file was kept aside."
    )


def test_sheet_as_plain_values():
    found = json.loads(json.dumps(mark(QUESTIONS, {"q1": "9"}).to_dict()))
    assert found["lines"][0]["state"] == "cannot read"
    assert (found["points"], found["out_of"]) == (0, 6)


def test_answers_to_unknown_questions_are_left_alone():
    assert mark(QUESTIONS, {"q99": "9"}).points == 0
