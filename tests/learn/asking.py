"""What the tests of all exercises share: many variants, and how an answer is taken."""

from functools import partial

from repairlib.core.draws import Draw
from repairlib.learn import Number, Order, Table, warm_up
from repairlib.learn.asking import graded
from repairlib.learn.bench_question import Bench, as_lines
from repairlib.learn.exercise import module_of

VARIANTS = [Draw(f"variant {number}") for number in range(80)]


def asks_of(lesson):
    """The questions of a lesson and those to practise on, each as a function of a draw."""
    return partial(graded, module_of(lesson)), warm_up(lesson)


def right_answer(ask):
    """What a learner types who has everything right."""
    if isinstance(ask, Order):
        return " > ".join(ask.steps)
    if isinstance(ask, Table):
        return {
            row: {column: right_answer(cell) for column, cell in cells.items()}
            for row, cells in ask.cells.items()
        }
    if isinstance(ask, Bench):
        return as_lines(ask.one_way())
    return f"{ask.answer!r} {ask.unit}" if isinstance(ask, Number) else ask.answer


def asked(ask):
    """The prompt with plain spaces."""
    return ask.prompt.replace("\xa0", " ")


def hazards(ask, typed):
    """The hazards told for an unsafe answer, or None for one that is not unsafe."""
    judged = ask.judge(typed)
    return judged.hazards if judged.state == "unsafe" else None


def told(ask, typed):
    """What is said of a wrong answer."""
    judged = ask.judge(typed)
    assert judged.state == "wrong"
    return " ".join(judged.says)


def variants_of(questions, name):
    """The question of that id in every variant of an exercise."""
    return [one for draw in VARIANTS for one in questions(draw) if one.id == name]


def all_seen(ask_of, by_hand, check):
    """Each variant is one of those worked by hand, and all of these come up."""
    seen = set()
    for draw in VARIANTS:
        ask = ask_of(draw.part("x"))
        (key,) = (key for key in by_hand if key in asked(ask))
        check(ask, by_hand[key])
        seen.add(key)
    assert seen == set(by_hand)


def first_is_right(ask, answers):
    """The first of the answers worked by hand is right; the others are typical mistakes."""
    assert ask.judge(answers[0]).state == "right"


def marking_shown(ask, by_hand):
    """The one of the markings worked by hand that the question shows."""
    shown = ask.picture().alt if ask.picture else ask.prompt
    (marking,) = (one for one in by_hand if f": {one}." in shown or f"`{one}`" in shown)
    return marking


def check(asks, by_hand):
    """Each question shows one marking worked by hand, and all of these come up.

    `by_hand` maps a marking to its answer, a wrong answer, and what the hint to that one says.
    """
    seen = set()
    for ask in asks:
        marking = marking_shown(ask, by_hand)
        first_is_right(ask, by_hand[marking])
        seen.add(marking)
    assert seen == set(by_hand)


def check_hints(asks, by_hand):
    """The wrong answer to each marking gets the hint that belongs to it."""
    for ask in asks:
        _, wrong, hint = by_hand[marking_shown(ask, by_hand)]
        assert hint in told(ask, wrong)
