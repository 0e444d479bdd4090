"""What is said of an own lesson to whoever typed it: everything that was understood."""

import pytest

from repairlib.learn.own import read_own
from repairlib.teach.understood import understood
from tests.learn.own.typed import EXAMPLE, TABLE


def told(text):
    return understood(read_own(text)).replace("\xa0", " ")


def test_each_question_stands_there_with_its_answer_and_what_a_wrong_one_gets():
    said = told(EXAMPLE)
    for line in (
        "own-fuses: A fuse has blown, about 15 minutes",
        "4 questions, 10 points, and 1 to practise on",
        "Cautions: mains, heat and fire, stored charge",
        "Practice (line 43)",
        "Question 1, 2 points (line 55)",
        "  Right: Stop, and look for the fault behind it",
        "  Danger (mains), no points: Take the old fuse out and read it before Pull the plug and "
        "keep it where you can see it -> The fuse holder is live while the plug is in.",
        "  Any other wrong answer: Two fuses tell the same story.",
        "Question 2, 1 point (line 72)",
        "  Picture: A glass tube with a metal cap at each end. Printed on it: T2A 250V.",
        "  Right: 2 A (1.98 A to 2.02 A)",
        "  3 variants. This one has T2A 250V | 2 A | 20 A. The others:",
        "    F500mA 250V | 500 mA | 5 A: right is 500 mA (495 mA to 505 mA)",
        "  Wrong: F500mA 250V, speed: slow -> F is the first letter of a word.",
    ):
        assert line in said.split("\n")


@pytest.mark.parametrize("text", [EXAMPLE, TABLE], ids=["text", "table"])
def test_every_text_of_the_lesson_that_a_learner_is_told_is_told_here(text):
    said = told(text)
    for asked in read_own(text).asked:
        for question in asked.variants.values():
            for one in question.mistakes:
                assert one.hint in said
            assert question.hint in said
        assert next(iter(asked.variants.values())).prompt in said


def test_a_plain_count_has_to_be_right_as_it_stands():
    assert "Right: 5 (exactly)" in told("Fuses\nQuestion\nHow many?\nAnswer: 5")
