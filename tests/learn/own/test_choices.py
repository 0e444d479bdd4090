"""Options and steps, and a table of bad ones."""

import pytest

from repairlib.learn.question import PARTLY, RIGHT, UNSAFE
from tests.learn.own.typed import ask, slip_of

STEPS = "Order?\nFirst: unplug\nThen: wait\nThen: measure"


def test_steps_are_right_in_the_order_in_which_they_are_typed():
    question = ask(f"{STEPS}\nDanger (mains): step 3 before step 1\nSay: Still live.")
    assert question.judge("unplug > wait > measure").state == RIGHT
    assert question.judge("unplug > measure > wait").state == PARTLY
    unsafe = question.judge("measure > unplug > wait")
    assert (unsafe.state, unsafe.says) == (UNSAFE, ("Danger (mains): Still live.",))


@pytest.mark.parametrize(
    "lines, line, told",
    [
        ("Which?\nRight: a fuse", 5, "nothing else to choose from"),
        ("Which?\nRight: a fuse\nWrong: A  Fuse", 6, "stands there twice"),
        ("Which?\nRight: a fuse\nWrong: b", 6, "the letter before an answer"),
        ("Which?\nRight: a fuse\nRight: a wire\nWrong: x y", 6, "twice"),
        ("Which?\nRight: 0\n" + "\n".join(f"Wrong: {n}" for n in range(1, 27)), 31, "too many"),
        ("Order?\nFirst: unplug", 5, "one step is no order"),
        ("Order?\nThen: unplug\nThen: wait", 3, "it has no answer"),
        (f"{STEPS}\nThen: wait", 8, "stands there twice"),
        (f"{STEPS}\nWrong: wait first\nSay: no", 8, "not an order that is wrong"),
        (f"{STEPS}\nWrong: step 1 before step 3\nSay: no", 8, "that is the right order"),
        (f"{STEPS}\nWrong: step 4 before step 1\nSay: no", 8, "there is no such step"),
        (f"{STEPS}\nWrong: step 3 before step 1", 8, "nothing is said on it"),
    ],
)
def test_a_bad_choice_or_order_is_told_with_its_line(lines, line, told):
    said = slip_of(lines)
    assert said.startswith(f"line {line}: ")
    assert told in said


def test_letters_of_the_trade_are_options_where_no_option_has_them():
    question = ask("Which letter is ±10 %?\nRight: K\nWrong: J\nWrong: M")
    assert question.judge("k").state == RIGHT
