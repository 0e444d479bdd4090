"""Questions that are remembered for a group are the questions that are made anew, for everybody."""

import os

import pytest

from repairlib.core.draws import DemoDraw, Draw
from repairlib.learn import LESSONS, Choice, Learner, Number, Order, questions_of, remembered
from repairlib.learn.asking import Entry
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import module_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.question import Mistake
from repairlib.learn.remembered import Made, Noted, Tree, alike, asked_of
from tests.learn.asking import right_answer

ALL = os.environ.get("CLASS") == "all"
EVERYBODY = range(3000 if ALL else 4)
WITH_PICTURES = LESSONS if ALL else LESSONS[2:13:5]  # a fingerprint draws the picture
TYPED = ("", "a", " B ", "c a b", "bacd", "100 nF", "4k7", "47", "?", "1 > 2", {}, {"C3": "5 V"})


def pairs(learner):
    """Each question of a learner, remembered and made anew."""
    for lesson in LESSONS:
        remembered = asked_of(module_of(lesson), learner.draw(lesson))
        for asked, question in zip(remembered, questions_of(lesson, learner), strict=True):
            yield lesson, asked, question


@pytest.mark.parametrize("number", EVERYBODY)
def test_a_remembered_question_is_the_one_made_anew(number):
    for lesson, asked, question in pairs(Learner(f"somebody {number}", "Tuesday bench")):
        assert alike(asked.question, question), question
        assert (asked.id, asked.points) == (question.id, question.points)
        given = TYPED if isinstance(question, Bench) else (*TYPED, right_answer(question))
        for typed in given:  # to mend a board takes seconds; it is done elsewhere
            assert asked.judge(typed) == question.judge(typed), (question, typed)
        assert given is TYPED or asked.judge(right_answer(question)).state == "right"
        if number < 20 and lesson in WITH_PICTURES:
            assert asked.fingerprint() == fingerprint(question)


def test_the_demo_variant_and_draws_thrown_anew_are_their_own():
    module = module_of("00-start-here")
    demo = asked_of(module, DemoDraw.of("00-start-here"))
    assert all(map(alike, [one.question for one in demo], questions_of("00-start-here")))
    ada = Learner("Ada Example", "Tuesday bench", apart={"00-start-here": {"two readings": 3}})
    anew = asked_of(module, ada.draw("00-start-here"))
    assert all(map(alike, [one.question for one in anew], questions_of("00-start-here", ada)))


def tree_of(ask):
    return Tree(Entry("q1", 1, ask).made)


def test_an_order_alone_is_no_fork_and_a_pick_is_one():
    made = []

    def ask(draw):
        made.append(draw)
        wanted, other = draw.pick([("film", "mica"), ("mica", "film")])
        return Choice(options=draw.shuffle([wanted, other, "glass"]), answer=wanted)

    tree = tree_of(ask)
    found = [tree.asked(f"seed {number}") for number in range(200)]
    assert len({one.made for one in found}) == 2
    assert len({tuple(one.question.options) for one in found}) == 6
    assert len(made) < 20
    for number, one in enumerate(found):
        assert alike(one.question, Entry("q1", 1, ask).made(Draw(f"seed {number}")))


def shown_elsewhere(draw):
    options = draw.shuffle(["film", "mica", "glass"])
    return Choice(options=options, answer="film", prompt=f"First stands {options[0]}.")


def seen_by_a_function(draw):
    steps = draw.shuffle(["unplug", "wait", "measure"])
    first = Mistake(lambda order: order[0] == steps[0], "You began as it is shown.")
    return Order(steps=("unplug", "wait", "measure"), shown=steps, mistakes=[first])


def drawn_further_on(draw):
    options = draw.shuffle(["film", "mica", "glass"])
    return Choice(options=options, answer=draw.pick(options[:2]))


def drawn_apart(draw):
    return Number(answer=draw.part("more").integer(1, 50), unit="V")


def steps_that_vary(draw):
    count = draw.integer(2, 4)
    return Number(answer=sum(draw.sample(range(10), count)) + draw.integer(1, 3), unit="V")


@pytest.mark.parametrize(
    "ask",
    [shown_elsewhere, seen_by_a_function, drawn_further_on, drawn_apart, steps_that_vary],
    ids=lambda ask: ask.__name__,
)
def test_whatever_a_function_does_with_its_draw_the_question_is_right(ask):
    tree = tree_of(ask)
    for turn in range(2):
        for number in range(30):
            anew = Entry("q1", 1, ask).made(Draw(f"seed {number}"))
            remembered = tree.asked(f"seed {number}").question
            for typed in ("a", "b", "a b c", "c b a", "b c a", "mica", "7 V", "21 V"):
                assert remembered.judge(typed) == anew.judge(typed), turn
            assert fingerprint(remembered) == fingerprint(anew)


def test_only_so_many_answers_are_remembered_and_no_long_ones():
    tree = tree_of(lambda draw: Number(answer=draw.integer(1, 3), unit="V"))
    asked = tree.asked("seed")
    for number in range(1000):
        asked.judge(f"{number} V")
        asked.judge("9" * 5000 + str(number))
    assert len(asked.made._judged) <= 100
    assert max(map(len, asked.made._judged)) < 301


def leaves(ways):
    return sum(1 if isinstance(one, Made) else leaves(one.ways) for one in ways.values())


def test_only_so_many_questions_are_kept_where_everybody_draws_another(monkeypatch):
    monkeypatch.setattr(remembered, "MOST_MADE", 200)
    tree = tree_of(lambda draw: Number(answer=draw.integer(1, 1000), unit="V"))
    for number in range(900):
        anew = Draw(f"seed {number}").integer(1, 1000)
        assert tree.asked(f"seed {number}").question.answer == anew
        assert leaves(tree.start) <= 200


def test_functions_are_alike_by_their_line_and_by_what_they_see():
    def above(limit):
        return lambda answer: answer > limit

    assert alike(above(3), above(3))
    assert not alike(above(3), above(4))
    assert not alike(above(3), lambda answer: answer > 3)
    assert not alike(Noted("a").pick, len)
