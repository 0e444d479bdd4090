"""What holds for the questions of every lesson, as they are drawn for the learners of a class."""

import os
import random
import re
from collections import Counter
from itertools import combinations
from math import sqrt
from statistics import mean

import ipywidgets as widgets
import pytest

from repairlib.core.draws import Draw
from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.faces.panels import answer_form
from repairlib.faces.panels.exercise_page import ExercisePage
from repairlib.learn import LESSONS, Choice, Learner, Number, Order, Table, mark_file, questions_of
from repairlib.learn import warm_up as warm_up_of
from repairlib.learn.bench_question import Bench
from repairlib.learn.exercise import Exercise
from repairlib.learn.question import normal
from tests import fuzz
from tests.learn.asking import right_answer

CLASS = [Learner(f"Learner {number}", "bench-7") for number in range(60)]
FEW = CLASS[:6]  # for what draws pictures
REPAIRED = 60 if os.environ.get("BENCH") == "all" else 1  # boards that an expert mends, in seconds
VARIANTS = {lesson: [questions_of(lesson, learner) for learner in CLASS] for lesson in LESSONS}
every_lesson = pytest.mark.parametrize("lesson", LESSONS)


def whole(ask):
    """The question and, for a table, each of its cells."""
    cells = [cell for row in ask.cells.values() for cell in row.values()] if is_table(ask) else []
    return [ask, *cells]


def is_table(ask):
    return isinstance(ask, Table)


def plain(text):
    return normal(text.replace("\xa0", " "))


# Whole


@every_lesson
def test_six_to_ten_questions_each_right_when_answered_right(lesson):
    for place, asks in enumerate(VARIANTS[lesson]):
        assert 6 <= len(asks) <= 10
        assert [ask.id for ask in asks] == [f"q{number + 1}" for number in range(len(asks))]
        for ask in asks:
            if isinstance(ask, Bench) and place >= REPAIRED:
                continue
            judged = ask.judge(ask.as_typed(right_answer(ask)))
            assert (judged.state, judged.share, judged.says) == ("right", 1.0, ())
            assert ask.points > 0 and ask.prompt


@every_lesson
def test_every_wrong_answer_can_be_explained_and_every_hazard_has_its_caution(lesson):
    practised = [ask for n in range(20) for ask in warm_up_of(lesson)(Draw(f"practice\n{n}"))]
    for ask in [*practised, *(ask for asks in VARIANTS[lesson] for ask in asks)]:
        for one in whole(ask):
            assert is_table(one) or one.hint or one.mistakes
            assert {mistake.hazard for mistake in one.mistakes} <= {"", *HAZARDS}


@every_lesson
def test_whatever_was_saved_the_exercise_opens_again(lesson, tmp_path, monkeypatch):
    """Sheet, form and the instructor's sheet say "cannot read" at worst."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    seed = random.SystemRandom().randrange(10**9)
    print(f"seed {seed}")  # shown by pytest when this fails
    chance = random.Random(seed)
    exercise = Exercise(lesson)
    for _ in range(3):
        typed = {ask.id: fuzz.any_answer(chance, ask) for ask in exercise.questions}
        exercise.save({**typed, "q1": chance.choice([",", "1e308", "5e-324", "\ud800"])})
        sheet = exercise.sheet()
        assert {line.state for line in sheet.lines} <= fuzz.STATES
        assert str(mark_file(exercise.saved.path)) == str(sheet)
        assert len(answer_form(Exercise(lesson)).views) == len(exercise.questions)


# Not given away

# Here the answer is one of several that are shown, and the question is which.
AMONG_OTHERS = {
    ("00-start-here", "q2"): "one of the times at which the meter was read",
    ("02-resistors-and-inductors", "q9"): "the same fuse as the old one, which is shown",
    ("06-how-capacitors-age", "q6"): "the rule names a least current, which may be the limit",
}
QUANTITY = re.compile(r"[-−]?\d[\d.,]*\s?(?:°C|%|[pnµmkMG]?[A-Za-zΩ]+)?")


def tells(text, ask):
    """True when a text holds the answer: the number with its unit, or the option but not all."""
    if isinstance(ask, Number):
        return any(is_right(ask, found) for found in QUANTITY.findall(text.replace("\xa0", " ")))
    if isinstance(ask, Choice):
        inside = [f" {plain(one)} " in f" {plain(text)} " for one in ask.options]
        return inside[ask.options.index(ask.answer)] and not all(inside)
    return False


def is_right(ask, found):
    try:
        return any(c.isalpha() or c in "%Ω" for c in found) and ask.share(ask.read(found)) == 1
    except RepairlibError:
        return False


def hints(ask):
    return " ".join([ask.hint, *(mistake.hint for mistake in ask.mistakes)])


@every_lesson
def test_prompt_and_hints_do_not_tell_the_answer(lesson):
    practised = [ask for n in range(20) for ask in warm_up_of(lesson)(Draw(f"practice\n{n}"))]
    for ask in [*practised, *(ask for asks in VARIANTS[lesson] for ask in asks)]:
        for one in [] if (lesson, ask.id) in AMONG_OTHERS else whole(ask):
            assert not tells(f"{one.prompt} {hints(one)}", one), (one.prompt, right_answer(one))
        if isinstance(ask, Order):  # the steps stand there, but never as they belong
            assert tuple(ask.shown) != tuple(ask.steps)


@every_lesson
def test_nothing_that_is_shown_tells_the_answer(lesson, tmp_path, monkeypatch):
    """Pictures, the page to read, the form in the browser and what a cell prints of it."""
    monkeypatch.setenv("REPAIRLIB_HOME", str(tmp_path))
    for learner in FEW:
        exercise = Exercise(lesson, learner)
        form = answer_form(exercise)
        printed = f"{exercise!r} {exercise.questions!r} {exercise.by_id!r}"
        for ask in exercise.questions:
            if ask.picture and (lesson, ask.id) not in AMONG_OTHERS:
                picture = ask.picture()
                assert not tells(picture.alt, ask), (picture.alt, right_answer(ask))
                assert not tells(re.sub("<[^>]*>", " ", picture.svg), ask)
            if isinstance(ask, Choice) and len(ask.answer) > 8:
                assert ask.answer not in printed
            chosen = [value for name, value in traits(form.views[ask.id].box) if name == "value"]
            assert not any(chosen)
        assert not re.search("answer=|steps=|hint=|when=", printed + repr(ExercisePage(exercise)))


def traits(box):
    """Name and value of every trait that goes to the browser, boxes inside included."""
    for one in getattr(box, "children", ()):
        yield from traits(one)
    if not isinstance(box, (widgets.Box, widgets.HTML)):
        yield from box.get_state().items()


# Not to be guessed


def choices(lesson):
    """Each Choice of a lesson: its variants, one list for each question."""
    columns = zip(*VARIANTS[lesson], strict=True)
    return [column for column in columns if all(isinstance(ask, Choice) for ask in column)]


def longest(ask):
    """1 when the right option is the longest; a tie shares it."""
    most = max(map(len, ask.options))
    return (len(ask.answer) == most) / sum(len(option) == most for option in ask.options)


@every_lesson
def test_the_right_option_is_not_the_longest_more_often_than_by_chance(lesson):
    """At most the mean of 1 / options, and one standard error of as many questions.

    The texts of a question hardly vary, so that questions count here, not learners.
    """
    asked = choices(lesson)
    chance = mean(1 / len(column[0].options) for column in asked)
    share = mean(mean(map(longest, column)) for column in asked)
    assert share <= chance + sqrt(chance * (1 - chance) / len(asked))


def test_the_right_option_is_the_longest_now_and_then():
    """Or who strikes out the longest would gain: at least chance, less two standard errors.

    Over the questions of all lessons: one lesson has too few for a lower bound above 0.
    """
    asked = [column for lesson in LESSONS for column in choices(lesson)]
    chance = mean(1 / len(column[0].options) for column in asked)
    share = mean(mean(map(longest, column)) for column in asked)
    assert share >= chance - 2 * sqrt(chance * (1 - chance) / len(asked))


# Chi-square that pure chance passes in all but one case of a thousand, by degrees of freedom
# (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values).
CHI_SQUARE = {1: 10.828, 2: 13.816, 3: 16.266, 4: 18.467}


@every_lesson
def test_the_right_option_stands_at_every_place_equally_often(lesson):
    places = {}
    for column in choices(lesson):
        if len({ask.options for ask in column}) > 1:
            for ask in column:
                found = places.setdefault(len(ask.options), Counter())
                found[ask.options.index(ask.answer)] += 1
    assert places
    for options, found in places.items():
        even = found.total() / options
        distance = sum((found[place] - even) ** 2 / even for place in range(options))
        assert distance < CHI_SQUARE[options - 1], found


@every_lesson
def test_two_learners_share_at_most_a_quarter_of_their_answers(lesson):
    """The mean over all pairs of a class. Answers on safety are for everybody the same."""
    free = [
        [repr(right_answer(ask)) for ask in column]
        for column in zip(*VARIANTS[lesson], strict=True)
        if not any(ask.hazards() for ask in column)
    ]
    assert free
    equal = [mean(a == b for a, b in combinations(answers, 2)) for answers in free]
    assert mean(equal) <= 0.25
