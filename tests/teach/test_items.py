"""What a group's answers say about a question, beside numpy, pandas and examples worked by hand."""

from math import sqrt

import numpy
import pandas
import pytest

from repairlib.teach.entries import Entry
from repairlib.teach.items import (
    AGAINST,
    ALL_RIGHT,
    HARDLY,
    NO_REST,
    NONE_RIGHT,
    TOO_FEW,
    YES,
    hardest,
    items_of,
    separation,
)
from tests.teach.rooms import chance

VARMA = "S. Varma, Preliminary Item Statistics Using Point-Biserial Correlation and P-Values, "
VARMA += "Educational Data Systems: definition of the point-biserial correlation"


def entries(rows, hints=(), state="", tries=1):
    """Entries of one lesson from rows of 1 and 0, a row for each learner; None is not tried."""
    return [
        Entry(
            f"w{who}",
            f"Learner {who}",
            "",
            "03-capacitor-markings",
            f"q{number}",
            state or ("unanswered" if got is None else "right" if got == 1 else "wrong"),
            got or 0,
            1,
            first_state="" if got is None else "right" if got == 1 else "wrong",
            first_points=got,
            first_hints=() if got is None or got == 1 else tuple(hints),
            tries=0 if got is None else tries,
        )
        for who, row in enumerate(rows)
        for number, got in enumerate(row, 1)
    ]


def scores(rows):
    return {who: {f"q{n}": got for n, got in enumerate(row, 1)} for who, row in enumerate(rows)}


@pytest.mark.published(VARMA)
def test_by_hand():
    """Question 1 as x = 1 1 0 0, the rest as 2 1 1 0: by hand r = 2 / sqrt(4 * 2) = 0.7071."""
    rows = [(1, 1, 1), (1, 0, 1), (0, 0, 1), (0, 0, 0)]
    assert separation(scores(rows), "q1") == pytest.approx(1 / sqrt(2))
    # x = 1 0 0 0, mean 1/4; rest 2 2 1 0, mean 5/4: 3/4 / sqrt(3/4 * 11/4) = 3 / sqrt(33)
    assert separation(scores(rows), "q2") == pytest.approx(3 / sqrt(33))
    # x = 1 1 1 0; rest 2 1 0 0, mean 3/4: 3/4 / sqrt(3/4 * 11/4) again
    assert separation(scores(rows), "q3") == pytest.approx(3 / sqrt(33))


@pytest.mark.published(VARMA)
@pytest.mark.parametrize("seed", range(5))
def test_as_numpy_and_pandas_have_it(seed):
    rows = [
        [int(chance(seed, who, n) < chance(who, seed)) / (1 + (n == 3)) for n in range(9)]
        for who in range(24)
    ]
    table = numpy.array(rows, float)
    frame = pandas.DataFrame(table)
    for at in range(9):
        rest = numpy.delete(table, at, axis=1).sum(axis=1)
        ours = separation(scores(rows), f"q{at + 1}")
        assert ours == pytest.approx(numpy.corrcoef(table[:, at], rest)[0, 1])
        assert ours == pytest.approx(frame[at].corr(frame.drop(columns=at).sum(axis=1)))


def test_whoever_has_not_tried_it_is_left_out():
    rows = [(1, 1, 1), (1, 0, 1), (0, 0, 1), (0, 0, 0)]
    assert separation(
        scores(rows) | {"late": {"q2": 1, "q3": 1}, "alone": {"q1": 0}}, "q1"
    ) == pytest.approx(1 / sqrt(2))


@pytest.mark.parametrize(
    "column, verdict",
    [
        ([1] * 10, ALL_RIGHT),
        ([0] * 10, NONE_RIGHT),
        ([1] * 5 + [0] * 5, YES),
        ([0] * 5 + [1] * 5, AGAINST),
        ([1, 0, 1, 0, 1, 0, 1, 0, 1, 0], YES),  # r = 0.17
        ([1, 0, 0, 1, 1, 0, 0, 1, 1, 0], HARDLY),
        ([0, 1, 0, 1, 0, 1, 0, 1, 0, 1], HARDLY),  # r = -0.17, well within chance
    ],
)
def test_the_verdict_in_words(column, verdict):
    """The rest falls evenly from the first learner to the last."""
    rows = [(x, *(int(k < 9 - who) for k in range(9))) for who, x in enumerate(column)]
    (first, *_) = items_of(entries(rows))
    assert first.verdict == verdict
    (too_few, *_) = items_of(entries(rows[:9]))
    assert (too_few.verdict, too_few.separation) == (TOO_FEW, None)


@pytest.mark.from_memory("standard error of a correlation near 0 is about 1 / sqrt(n)")
def test_by_chance_19_of_20_lie_within_two_errors():
    found = []
    for seed in range(150):
        rows = [[int(chance(seed, who, n) < 0.5) for n in range(8)] for who in range(25)]
        found.append(separation(scores(rows), "q1"))
    (item, *_) = items_of(entries([(0, 1)] * 25))
    assert 0.9 < sum(abs(one) < item.by_chance for one in found) / len(found) < 0.99


def test_nothing_is_said_where_all_are_alike_in_the_rest():
    item = items_of(entries([(who % 2, 1, 0) for who in range(10)]))[0]
    assert (item.verdict, item.separation) == (NO_REST, None)


def test_shares_at_first_and_at_last():
    rows = entries([(1,), (0,), (0,), (None,)])
    rows[1] = rows[1]._replace(state="right", tries=3)
    (item,) = items_of(rows)
    assert (item.tried, item.first_right, item.answered, item.right) == (3, 1, 3, 2)
    assert item.first_wrong == pytest.approx(2 / 3)


def test_more_than_40_percent_of_at_least_three_is_hard_and_the_worst_comes_first():
    two_of_five = [(1, 1, 0)] * 2 + [(1, 0, 0)] + [(0, 0, 1)] * 2  # q1 0.4, q2 0.6, q3 0.6
    assert [one.id for one in hardest(items_of(entries(two_of_five)))] == ["q2", "q3"]
    assert not hardest(items_of(entries([(0,), (0,)])))
    assert hardest(items_of(entries([(0,), (0,), (0,)])))


def test_the_usual_mistake_is_the_hint_of_most_whatever_the_figures_of_their_variants():
    rows = entries([(0,)] * 4)
    hints = (
        ("Look at p82 and 82p. The letter stands where the point is.",),
        (
            "2 of 5 steps are in their place.",
            "Look at p47 and 4p7. The letter stands where the point is.",
        ),
        ("2 of 5 steps are in their place.", "nF and µF are mixed up."),
        ("3 of 5 steps are in their place.",),
    )
    rows = [one._replace(first_hints=said) for one, said in zip(rows, hints, strict=True)]
    (item,) = items_of(rows)
    assert item.mistake.startswith("Look at p") and item.mistaken == 2


def test_the_mistake_of_the_first_try_counts_also_when_it_was_put_right_since():
    rows = [one._replace(state="right") for one in entries([(0,), (0,), (1,)], ["Zeros."])]
    (item,) = items_of(rows)
    assert (item.mistake, item.mistaken, item.right) == ("Zeros.", 2, 3)


def test_without_a_record_of_tries_the_mistake_of_now_counts_and_no_first_share():
    rows = [
        one._replace(first_state="", first_points=None, first_hints=(), hints=("Zeros.",))
        for one in entries([(0,), (0,)])
    ]
    (item,) = items_of(rows)
    assert (item.tried, item.first_wrong, item.mistake, item.mistaken) == (0, 0, "Zeros.", 2)


def test_unsafe_counts_persons():
    rows = [one._replace(once_unsafe=n < 2) for n, one in enumerate(entries([(1,), (0,), (1,)]))]
    assert items_of(rows)[0].unsafe == 2


def test_a_question_that_changed_since_counts_in_no_share():
    rows = entries([(0,), (0,)])
    rows[0] = rows[0]._replace(state="changed", out_of=0, first_state="changed", first_points=None)
    (item,) = items_of(rows)
    assert (item.tried, item.answered) == (1, 1)
