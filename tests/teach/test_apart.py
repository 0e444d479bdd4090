"""The variants of a group are kept apart: shares, whole variants, and the same on every Python."""

import os

import pytest

from repairlib.learn import LESSONS, Choice, Learner, Mistake, Number, Order, Table, questions_of
from repairlib.learn.fingerprint import fingerprint
from repairlib.learn.group import Group, Member
from repairlib.learn.learner import member_of
from repairlib.teach.apart import choose_again, is_about_safety, right_answers, shared, whole

WHOLE = os.environ.get("CLASS") == "all"
every_lesson = pytest.mark.parametrize("lesson", LESSONS)


def names(count):
    return [f"Member {number}" for number in range(count)]


def members(group, count, lesson, before=()):
    """A group of so many, kept apart in one lesson, as learners."""
    again = choose_again(group, names(count)[len(before) :], before, [lesson])
    added = (Member(name, name, again[name]) for name in again)
    return [member_of(Group(group), one) for one in (*before, *added)]


# What is counted


SIDES = {"options": ("left", "right"), "answer": "left"}
HURTS = [Mistake("right", "Look again.", hazard="mains")]


@pytest.mark.behaviour
def test_a_safety_question_is_one_whose_mistake_could_hurt():
    safe, unsafe = Choice(**SIDES), Choice(**SIDES, mistakes=HURTS)
    assert is_about_safety(unsafe) and not is_about_safety(safe)
    assert not is_about_safety(Choice(**SIDES, mistakes=[Mistake("right", "Look again.")]))
    assert not is_about_safety(Table(cells={"C1": {"plus": unsafe}, "C2": {"plus": safe}}))
    assert is_about_safety(Table(cells={"C1": {"plus": unsafe}, "C2": {"plus": unsafe}}))


@pytest.mark.behaviour
def test_one_cell_that_could_hurt_makes_the_table_dangerous_to_answer():
    safe, unsafe = Choice(**SIDES), Choice(**SIDES, mistakes=HURTS)
    assert Table(cells={"C1": {"plus": safe, "minus": unsafe}}).hazards() == ("mains",)
    assert unsafe.hazards() == ("mains",) and safe.hazards() == ()
    assert not Table(cells={"C1": {"plus": safe}}).hazards()


def table(**cells):
    return Table(
        cells={row: {"plus": Choice(**SIDES | {"answer": at})} for row, at in cells.items()}
    )


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("one", "other", "equal"),
    [
        (Number(answer=9, unit="V"), Number(answer=9.0, unit="V", prompt="Another one"), True),
        (Number(answer=9, unit="V"), Number(answer=9.1, unit="V"), False),
        (Choice(**SIDES), Choice(options=("right", "left"), answer="left"), True),
        (Choice(**SIDES), Choice(**SIDES | {"answer": "right"}), False),
        (
            Order(steps=("a", "b"), shown=("b", "a")),
            Order(steps=("a", "b"), shown=("a", "b")),
            True,
        ),
        (
            Order(steps=("a", "b"), shown=("a", "b")),
            Order(steps=("b", "a"), shown=("a", "b")),
            False,
        ),
        (table(C1="left", C2="right"), table(C2="right", C1="left"), True),
        (table(C1="left", C2="right"), table(C3="left", C4="right"), True),
        (table(C1="left", C2="right"), table(C3="right", C4="left"), False),
        (table(C1="left", C2="right"), table(C1="left", C2="left"), False),
    ],
)
def test_equal_right_answers(one, other, equal):
    """A table is equal by its rows, in any order, or down its column, whatever the rows are."""
    assert (
        any(a == b for a, b in zip(right_answers(one), right_answers(other), strict=True)) == equal
    )


@pytest.mark.behaviour
def test_the_share_is_counted_question_by_question():
    """Counted here a second time, from the lists of right answers of a pair."""
    pair = [Learner("Ada Example", "bench-7"), Learner("Ben Example", "bench-7")]
    for lesson in LESSONS:
        asked = list(zip(*(questions_of(lesson, one) for one in pair), strict=True))
        free = [both for both in asked if not any(map(is_about_safety, both))]
        (found,) = shared(lesson, pair)
        assert found.share == sum(map(copied, free)) / len(free)
        assert found.with_safety == sum(map(copied, asked)) / len(asked)


def copied(both):
    forms = zip(*map(right_answers, both), strict=True)
    return any(mine == theirs for mine, theirs in forms)


# Two who sit together


@every_lesson
@pytest.mark.behaviour
def test_each_pair_of_twelve_shares_at_most_a_quarter(lesson):
    for number in range(40 if WHOLE else 2):
        group = members(f"bench {number}", 12, lesson)
        found = list(shared(lesson, group))
        assert len(found) == 66
        assert max(pair.share for pair in found) <= 0.25


@pytest.mark.behaviour
def test_without_throwing_anew_pairs_share_more():
    """The test above could not fail otherwise."""
    alone = [Learner(name, "bench 0") for name in names(12)]
    assert max(pair.share for lesson in LESSONS[:4] for pair in shared(lesson, alone)) > 0.25


@pytest.mark.behaviour
def test_whoever_comes_later_is_kept_apart_and_nobody_else_is_moved():
    lesson = "07-plan-a-recap"
    first = members("late", 9, lesson)
    known = [Member(one.name, one.name, one.apart) for one in first]
    later = members("late", 12, lesson, before=known)
    assert [one.apart for one in later[:9]] == [one.apart for one in first]
    assert max(pair.share for pair in shared(lesson, later)) <= 0.25


@pytest.mark.behaviour
def test_in_a_large_group_those_who_sit_together_share_little():
    lesson = "08-solder-and-heat"
    group = members("large", 30, lesson)
    for place in range(0, 19, 6):
        assert max(pair.share for pair in shared(lesson, group[place : place + 12])) <= 0.25


# No two variants are equal


@every_lesson
@pytest.mark.behaviour
def test_no_two_of_a_group_have_the_same_variant(lesson):
    group = members("all", 1000 if WHOLE else 6, lesson)
    assert len({whole(questions_of(lesson, one)) for one in group}) == len(group)


@every_lesson
@pytest.mark.behaviour
def test_ten_thousand_learners_draw_ten_thousand_variants(lesson):
    """Even where nobody throws anything anew."""
    count = 10_000 if WHOLE else 20
    found = {whole(questions_of(lesson, Learner(name, "one group"))) for name in names(count)}
    assert len(found) == count


@pytest.mark.behaviour
def test_whoever_would_get_a_variant_that_is_taken_gets_another():
    """Of two spellings of one name the second gets a variant of its own."""
    twice = ["Ada Example", "ADA  example"]
    again = choose_again("doubled", twice, lessons=["00-start-here"])
    learners = [Learner(name, "doubled", apart=again[name]) for name in twice]
    first, second = (whole(questions_of("00-start-here", one)) for one in learners)
    assert first != second


@pytest.mark.behaviour
def test_the_order_of_the_options_is_part_of_the_variant():
    one, other = Choice(**SIDES), Choice(options=("right", "left"), answer="left")
    assert whole([one]) != whole([other])


# The same everywhere: typed in from Python 3.11. A bank that grows moves one in some of them.

ALPHABETS = ("Ada Example", "Ben Example", "Zoë Čapek")
FILM = "03-capacitor-markings"
WORTH = "13-worth-repairing-and-the-record"
THROWN = {
    "Ada Example": {},
    "Ben Example": {
        FILM: {"letter j": 5, "plain film": 1, "code that ends in nine": 1, "disc code": 1},
        WORTH: {"decisions": 2, "correct an entry": 1},
    },
    "Zoë Čapek": {
        FILM: {"film voltage": 2, "tolerance limit": 4, "plain film": 2, "disc code": 1},
        WORTH: {"break even chance": 1, "what is spent": 1},
    },
}


@pytest.mark.behaviour
def test_the_throws_of_a_group_are_the_same_on_every_python():
    assert choose_again("Tuesday bench", ALPHABETS, lessons=[FILM, WORTH]) == THROWN


@pytest.mark.behaviour
def test_right_answers_of_a_variant_thrown_anew():
    variant = questions_of(FILM, Learner("Zoë Čapek", "Tuesday bench", apart=THROWN["Zoë Čapek"]))
    assert [right_answers(ask)[0] for ask in variant] == [
        "2.7e-09",
        "2.42e-07",
        ("p27", "27p", "n18", "1n8", "4µ7"),
        "1e-07",
        "It is good: 3.3\xa0pF may be off by more than this",
        "400",
        "6.3",
        "100 pF, C0G",
        "220\xa0µF, 50\xa0V",
    ]


LAST_QUESTIONS = {
    "00-start-here": "3136700d7f46",
    "01-a-safe-bench": "24fa030c8627",
    "02-resistors-and-inductors": "a26ed14be958",
    "03-capacitor-markings": "432b0e2d94b3",
    "04-polarity": "03429733699d",
    "05-measure-and-judge": "8d909b9c1290",
    "06-how-capacitors-age": "84f8f170c656",
    "07-plan-a-recap": "a1ee29fa0c35",
    "08-solder-and-heat": "aff4bc1973db",
    "09-hot-air-and-moisture": "e3912807052c",
    "10-firmware-and-missing-parts": "b16867e0ccdf",
    "11-connectors-and-power-entry": "fcfbe708472c",
    "12-first-power-up": "a3ae82f2f7cd",
    "13-worth-repairing-and-the-record": "39bb87ec8273",
    "14-the-whole-job": "592d74bea3c2",
}


@every_lesson
@pytest.mark.behaviour
def test_fingerprint_of_the_last_question_of_a_learner(lesson):
    last = questions_of(lesson, Learner("Zoë Čapek", "Tuesday bench"))[-1]
    assert fingerprint(last) == LAST_QUESTIONS[lesson]
