"""Numbers: how far off an answer may be, wrong ones, ranges, and a table of bad ones."""

import pytest

from repairlib.learn.question import RIGHT, UNSAFE, WRONG
from tests.learn.own.typed import ask, slip_of


@pytest.mark.parametrize(
    "answer, right, wrong",
    [
        ("100 nF", "0.1 µF", "102 nF"),  # 1 % where nothing is said
        ("100 nF, within 5 %", "105 nF", "106 nF"),
        ("100 nF ±5 %", "95 nF", "94 nF"),
        ("12 V, within 0.5 V", "12.5 V", "12.6 V"),
        ("50 %, within 5 %", "55 %", "56 %"),  # of the whole, as it is typed
        ("4,7 kΩ", "4k7", "4.8k"),
        ("104", "104", "105"),  # a plain count has to be right as it stands
        ("10, within 2", "12", "13"),
        ("25 °C, within 3 °C", "22 °C", "21 °C"),
        ("1 h 30 min", "90 min", "2 h"),
        ("-5 V", "-5 V", "5 V"),
        ("0 V", "0 V", "1 V"),
    ],
)
def test_an_answer_is_right_as_far_off_as_it_may_be(answer, right, wrong):
    question = ask(f"How much?\nAnswer: {answer}")
    assert question.judge(right).state == RIGHT
    assert question.judge(wrong).state == WRONG


def test_a_wrong_number_gets_what_is_said_on_it():
    question = ask("How much?\nAnswer: 100 nF\nWrong: 100 µF\nSay: Count the zeros.")
    assert question.judge("100 µF").says == ("Count the zeros.",)


def test_a_range_leaves_out_what_is_right():
    question = ask("How long?\nAnswer: 60 s, within 5 s\nDanger (mains): less than 60 s")
    assert question.judge("57 s").state == RIGHT
    assert question.judge("54 s").state == UNSAFE
    assert question.judge("70 s").state == WRONG


@pytest.mark.parametrize("words", ["more than", "above", "Over"])
def test_a_range_may_be_typed_in_several_words(words):
    question = ask(f"How much?\nAnswer: 5 V\nDanger (mains): {words} 9 V")
    assert [question.judge(typed).state for typed in ("9 V", "10 V")] == [WRONG, UNSAFE]


@pytest.mark.parametrize(
    "lines, line, told",
    [
        ("Answer: much", 5, "'much'"),
        ("Answer: 5 bananas", 5, "bananas"),
        ("Answer: 100 nF, within 5", 5, "not how far off"),
        ("Answer: 100 nF, within 200 %", 5, "not how far off"),
        ("Answer: 100 nF, within 5 V", 5, "not how far off"),
        ("Answer: 100 nF, within", 5, ""),
        ("Answer: 350 C", 5, "C stands for coulombs. Accepted: 350 °C"),
        ("Answer: 350 °C, within 20 C", 5, "C stands for coulombs"),
        ("Answer: 5 V\nDanger (fire): over 9 V", 6, "Accepted: heat and fire"),
        ("Answer: 5 V\nWrong: 6 V", 6, "nothing is said on it"),
        ("Answer: 5 V\nWrong: 6 A\nSay: no", 6, "not in the unit of the answer"),
        ("Answer: 5 V\nWrong: 5.01 V\nSay: no", 6, "the right answer is among it"),
        ("Answer: 5 V\nDanger (mains): more than 4 V", 6, "the right answer is among it"),
        ("Answer: 5 V\nDanger (mans): more than 9 V", 6, "Accepted: mains"),
        ("Answer: 5 V\nDanger: more than 9 V", 6, "no hazard has this name"),
        ("Answer: 5 V\nWrong: a lot\nSay: no", 6, "'a lot'"),
    ],
)
def test_a_bad_number_is_told_with_its_line(lines, line, told):
    said = slip_of(f"How much?\n{lines}")
    assert said.startswith(f"line {line}: ")
    assert told in said
