"""One question: its kind, its points, its variants, and a table of bad ones with their lines."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.draws import DemoDraw, Draw
from repairlib.core.errors import RepairlibError
from repairlib.learn.arranging import Order, Table
from repairlib.learn.own.asked import shuffled
from repairlib.learn.question import RIGHT, UNSAFE, WRONG, Choice, Number
from tests.learn.asking import right_answer
from tests.learn.own.typed import EXAMPLE, HEAD, TABLE, ask, lesson, slip_of, slips

CHOICE = "Which?\nRight: fuse\nWrong: wire"
NUMBER = "How much?\nAnswer: 5 V"


@pytest.mark.parametrize(
    "lines, kind",
    [
        (CHOICE, Choice),
        (NUMBER, Number),
        ("Order?\nFirst: wait\nThen: measure", Order),
        ("Table?\nColumns: marking | value\nRow: 104 | 100 nF", Table),
    ],
)
def test_the_kind_is_known_from_what_is_written(lines, kind):
    assert type(ask(lines)) is kind


@pytest.mark.parametrize("text", [EXAMPLE, TABLE], ids=["text", "table"])
def test_the_right_answer_of_every_variant_of_every_kind_is_right(text):
    checked = 0
    for asked in lesson(text).asked:
        for variant in asked.variants.values():
            for draw in (DemoDraw("a"), Draw("b"), Draw("c")):
                question = shuffled(variant, draw)
                assert question.judge(right_answer(question)).state == RIGHT
                checked += 1
    assert checked >= 12


def test_each_learner_gets_one_line_of_values_and_all_come_up():
    (asked,) = lesson(
        f"{HEAD}Question\nWhat is `[code]`?\nNames: code | value\n"
        "Values: 104 | 100 nF\nValues: 223 | 22 nF\nAnswer: [value]\nPicture: disc, [code]"
    ).asked
    drawn = [asked.ask(Draw(f"learner {number}")) for number in range(40)]
    assert {(one.prompt, one.answer, one.picture.marking) for one in drawn} == {
        ("What is `104`?", 1e-7, "104"),
        ("What is `223`?", 2.2e-8, "223"),
    }
    assert asked.ask(DemoDraw("demo")).answer == 1e-7  # the first


def test_a_line_of_values_added_at_the_end_moves_few_learners():
    typed = f"{HEAD}Question\nWhat is [code]?\nNames: code | value\n" + "".join(
        f"Values: {n} | {n} V\n" for n in range(10, 20)
    )
    before, after = (lesson(f"{typed}{more}Answer: [value]") for more in ("", "Values: 5 | 5 V\n"))
    moved = 0
    for number in range(200):
        old, new = (one.asked[0].ask(Draw(str(number))) for one in (before, after))
        moved += old.answer != new.answer
        assert new.answer in (old.answer, 5)
    assert 5 <= moved <= 40  # about one in eleven


def test_options_and_steps_come_in_another_order_for_another_learner():
    asked = lesson(EXAMPLE).asked
    choice, order = asked[1], asked[3]
    assert len({choice.ask(Draw(str(n))).options for n in range(20)}) > 5
    assert len({order.ask(Draw(str(n))).shown for n in range(20)}) > 5


def test_points_stand_behind_the_question_or_on_a_line():
    for head, line in (("Question, 2.5 points", ""), ("Question", "Points: 2,5\n")):
        assert lesson(f"Fuses\n{head}\nWhy?\n{line}Answer: 5").asked[0].points == 2.5
    assert lesson("Fuses\nQuestion\nWhy?\nAnswer: 5").asked[0].points == 1


def test_what_is_not_shown_is_not_shown():
    question = ask("Why?\nNot shown: the answer is 5\nAnswer: 5\n\nNot shown: more\nof it")
    assert question.prompt == "Why?"


BAD = [
    ("Which?", 3, "it has no answer"),
    ("Right: fuse\nWrong: wire", 3, "nothing is asked"),
    (f"{CHOICE}\nAnswer: 5 V", 3, "both answer and right stand in it"),
    (f"{CHOICE}\nThen: more", 7, "does not go with Right:"),
    (f"{NUMBER}\nAnswer: 6 V", 6, "stands in this question twice"),
    (f"{NUMBER}\n\nSome text below.", 7, "belongs to nothing"),
    (f"{NUMBER}\nHint:", 6, "nothing stands behind it"),
    (f"{NUMBER}\nSay: look again", 6, "says something on no answer"),
    (f"{NUMBER}\nMinutes: 5", 6, "belongs to the lesson"),
    (f"{NUMBER}\nWrong (mains): 6 V", 6, "only Danger has brackets"),
    (f"{NUMBER}\nPoints: many", 6, "no number of points"),
    (f"{NUMBER}\nPoints: 1.3", 6, "no number of points"),
    (f"{NUMBER}\nPoints: nan", 6, "no number of points"),
    (f"{NUMBER}\nPicture: fuze, T2A", 6, "no drawing of a part has this name. Accepted: fuse"),
    (f"{NUMBER}\nPicture: disc, 104, bulged", 6, "is not drawn bulged"),
    (f"{NUMBER}\nPicture: disc, 1, 2, 3", 6, "more than three things"),
    ("Which [code]?\nAnswer: 5 V", 4, "no name of a value"),
    ("Which [code]?\nNames: code\nAnswer: 5 V", 5, "has no Values: with it"),
    ("Which?\nValues: 5 V\nAnswer: 5 V", 5, "has no Names: with it"),
    ("Which [a]?\nNames: a | b\nValues: 1 | 2\nAnswer: 5 V", 5, "used nowhere"),
    ("Which [a]?\nNames: a, b\nValues: 1, 2\nAnswer: 5 V", 5, "strokes between. Accepted: a | b"),
    ("Which [a]?\nNames: a | A\nValues: 1 | 2\nAnswer: 5 V", 5, "named twice"),
    ("Which [a] [b]?\nNames: a | b\nValues: 1\nAnswer: 5 V", 6, "1 values for 2 names"),
    ("Which [a]?\nNames: a\nValues: 5 V\nValues: x\nAnswer: [a]", 8, "with the values on line 7"),
]


@pytest.mark.parametrize("lines, line, told", BAD, ids=[told for *_, told in BAD])
def test_a_bad_question_is_told_with_its_line(lines, line, told):
    assert slip_of(lines).startswith(f"line {line}: ")
    assert told in slip_of(lines)


@pytest.mark.parametrize(
    "text, line, told",
    [
        ("Question\nWhy?\nAnswer: 5", 1, "it has no title"),
        (f"{'x' * 90}\nQuestion\nWhy?\nAnswer: 5", 1, "too long for a title"),
        ("Fuses\nTitle: Two\nQuestion\nWhy?\nAnswer: 5", 2, "a second title"),
        ("Fuses\nMinutes: some\nQuestion\nWhy?\nAnswer: 5", 2, "no number of minutes"),
        ("Fuses\nMinutes: 0\nQuestion\nWhy?\nAnswer: 5", 2, "no number of minutes"),
        (
            "Fuses\nCautions: mains, leads\nQuestion\nWhy?\nAnswer: 5",
            2,
            "eyes, lead",
        ),
        ("Fuses\nGoal:\nQuestion\nWhy?\nAnswer: 5", 2, "nothing stands behind it"),
        ("Fuses\nHint: look\nQuestion\nWhy?\nAnswer: 5", 2, "none has begun"),
        ("Fuses\nPicture: fuze\nQuestion\nWhy?\nAnswer: 5", 2, "no drawing of a part"),
        ("Fuses\n\nOnly text.", 3, "no question stands in it"),
        ("Fuses\nPractice\nWhy?\nAnswer: 5", 4, "no question stands in it"),
        ("Fuses\nPractice, 2 points\nWhy?\nAnswer: 5\nQuestion\nWhy?\nAnswer: 5", 2, "not marked"),
        ("Fuses\nQuestion - 2 points\nWhy?\nAnswer: 5", 2, "not how a question begins"),
        ("Fuses\nQuestion, 2 points\nWhy?\nPoints: 2\nAnswer: 5", 4, "said twice"),
        ("Fuses\nQuestion, 0 points\nWhy?\nAnswer: 5", 2, "no number of points"),
    ],
)
def test_a_bad_lesson_is_told_with_its_line(text, line, told):
    assert any(one.startswith(f"line {line}: ") and told in one for one in slips(text))


@settings(max_examples=30)
@given(st.text(max_size=60))
def test_any_answer_to_any_kind_gets_a_judgement(typed):
    for asked in lesson(EXAMPLE).asked:
        for question in asked.variants.values():
            assert question.judge(typed).state


@pytest.mark.parametrize("names", [0, 1, 2, 3, 4])
def test_what_a_question_prints_gives_no_answer_away(names):
    question = lesson(EXAMPLE).asked[names].ask(Draw("x"))
    shown = repr(question)
    told = [one.hint for one in question.mistakes] + [question.hint]
    assert not any(hint and hint in shown for hint in told)


def test_dangers_are_unsafe_and_usual_mistakes_are_wrong():
    question = ask(f"{CHOICE}\nSay: too thick\nDanger (Stored  charge): coin\nSay: no")
    assert question.judge("wire").says == ("too thick",)
    assert question.judge("wire").state == WRONG
    assert question.judge("coin").state == UNSAFE
    assert question.judge("coin").hazards == ("stored charge",)


def test_a_danger_without_words_of_its_own_has_those_of_its_hazard():
    question = ask(f"{CHOICE}\nDanger (heat and fire): coin")
    assert "of the wrong rating" in question.judge("coin").says[0]


def test_brackets_without_names_are_not_taken_for_text():
    with pytest.raises(RepairlibError):
        ask("What is [this]?\nAnswer: 5")
