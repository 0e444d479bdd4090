"""Expected gain and break-even of one job, worked by hand from the definitions."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.worth.job import Job, read_currency
from tests.documents import document

EXPECTED = document("encyclopaedia, Expected value", "E(X) is the sum of xi f(xi)")
EVEN = document("break-even analysis", "revenue less total costs is zero")


# Worked by hand: the outcomes of a try, each with its chance, added up.
@pytest.mark.published(EXPECTED)
def test_gain_is_the_sum_of_outcomes_by_their_chances():
    """Label maker: success leaves 30 - 11.50 = 18.50, failure -11.50.

    0.7 × 18.50 + 0.3 × (-11.50) = 12.95 - 3.45 = 9.50; at 0.9: 16.65 - 1.15 = 15.50.
    """
    job = Job(value=30, parts=2.5, hours=1.5, success_low=70, success_high=90, hour_worth=6)
    assert job.spent == pytest.approx(11.5)
    assert job.gain(70) == pytest.approx(9.5)
    assert job.gain(90) == pytest.approx(15.5)


@pytest.mark.published(EXPECTED)
def test_a_failed_try_and_shared_tools_count():
    """Scanner: spent 4 + 3 × 6 + 24 / 8 = 25; success 50 - 25 = 25 (another costs 50, so the
    value of 55 does not count in full), failure -25 - 5 = -30.

    0.4 × 25 + 0.6 × (-30) = -8; 0.75 × 25 + 0.25 × (-30) = 11.25. Cost: 25 + 0.6 × 5 = 28.
    """
    job = Job(55, 4, 3, 40, 75, hour_worth=6, tools=24, jobs=8, replacement=50, failed=5)
    assert job.spent == pytest.approx(25)
    assert job.gain(40) == pytest.approx(-8)
    assert job.gain(75) == pytest.approx(11.25)
    assert job.cost(40) == pytest.approx(28)
    assert job.cost(75) == pytest.approx(26.25)


@pytest.mark.published(EVEN)
def test_break_even_by_formula():
    """Scanner: C* = (25 + 5) / (50 + 5) = 54.545 %.

    At 75 %: revenue 37.50 - 1.25 = 36.25, without work 4 + 3 = 7 is spent, so 29.25 is left for
    hours: 29.25 / 6 = 4.875 h. Parts: 36.25 - 18 - 3 = 15.25.
    """
    job = Job(55, 4, 3, 40, 75, hour_worth=6, tools=24, jobs=8, replacement=50, failed=5)
    assert job.break_even_chance() == pytest.approx(54.545, abs=5e-4)
    assert job.break_even_hours(75) == pytest.approx(4.875)
    assert job.break_even_parts(75) == pytest.approx(15.25)


@pytest.mark.published(EVEN)
def test_nothing_is_enough():
    """100 earned at most, 170 spent: even at 100 % 70 are lost; C* = 170 %.

    Without the 150 for work 20 are spent on parts: at 10 % revenue is 10, hours (10 - 20) / 50.
    """
    job = Job(100, 20, 3, 10, 100, hour_worth=50)
    assert job.gain(100) == pytest.approx(-70)
    assert job.break_even_chance() == pytest.approx(170)
    assert job.break_even_hours(10) == pytest.approx(-0.2)
    assert job.break_even_parts(100) == pytest.approx(-50)


def test_where_there_is_no_break_even():
    assert Job(0, 3, 1, 50, 50).break_even_chance() is None
    assert Job(60, 8, 2, 50, 80).break_even_hours(50) is None


money = st.floats(0, 1e6)
jobs = st.builds(
    lambda ends, **figures: Job(success_low=min(ends), success_high=max(ends), **figures),
    ends=st.tuples(*[st.just(0.0) | st.floats(1.01, 100)] * 2),
    value=money,
    parts=money,
    hours=st.floats(0, 1e3),
    hour_worth=st.just(0.0) | st.floats(0.1, 1e3),
    tools=money,
    jobs=st.floats(1, 1e3),
    replacement=st.none() | money,
    failed=money,
)


def changed(job, **figures):
    return Job(**{name: getattr(job, name) for name in job.__dataclass_fields__} | figures)


def size(job):
    """What rounding is measured by."""
    return job.earned + job.failed + job.spent + job.hours * job.hour_worth + 1


@given(jobs, st.floats(0, 1e3), st.floats(0, 100))
def test_more_hours_never_raise_the_gain(job, more, chance):
    longer = changed(job, hours=job.hours + more)
    assert longer.gain(chance) <= job.gain(chance) + 1e-9 * size(longer)


@given(jobs, money, st.floats(0, 100))
def test_dearer_parts_and_failures_never_raise_it_and_a_better_set_never_lowers_it(
    job, more, chance
):
    slack = 1e-9 * (size(job) + more)
    gain = job.gain(chance)
    assert changed(job, parts=job.parts + more).gain(chance) <= gain + slack
    assert changed(job, failed=job.failed + more).gain(chance) <= gain + slack
    assert changed(job, value=job.value + more).gain(chance) >= gain - slack


@given(jobs)
def test_ranges_are_in_order(job):
    assert job.gain(job.success_low) <= job.gain(job.success_high) + 1e-9 * size(job)
    assert job.cost(job.success_high) <= job.cost(job.success_low) + 1e-9 * size(job)


@given(jobs)
def test_at_break_even_nothing_is_gained(job):
    chance = job.break_even_chance()
    assume(chance is not None and chance <= 100)
    assert job.gain(chance) == pytest.approx(0, abs=1e-9 * size(job))
    assert job.sign(chance) == 0


@given(jobs, st.floats(0, 100))
def test_at_break_even_hours_and_parts_nothing_is_gained(job, chance):
    hours, parts = job.break_even_hours(chance), job.break_even_parts(chance)
    if hours is not None and hours >= 0:
        assert changed(job, hours=hours).gain(chance) == pytest.approx(0, abs=1e-9 * size(job))
    if parts >= 0:
        assert changed(job, parts=parts).gain(chance) == pytest.approx(0, abs=1e-9 * size(job))


@pytest.mark.parametrize(
    ("low", "high", "wrong"),
    [
        (80, 50, "low end of the chance is above the high end"),
        (0.6, 80, "may be 0.6 % or 60 %"),
        (0, 1, "may be 1 % or 100 %"),
    ],
)
def test_chances_that_are_wrong(low, high, wrong):
    with pytest.raises(RepairlibError, match=wrong) as error:
        Job(60, 8, 2, low, high)
    assert "\n" not in str(error.value)


@pytest.mark.parametrize("text", ["5 tokens", "a very long name of money", "V", "h", "a\x07b"])
def test_what_is_no_currency(text):
    with pytest.raises(RepairlibError):
        read_currency(text)


def test_any_word_or_sign_is_a_currency():
    assert [read_currency(text) for text in ("", " ", "crowns", "¤")] == [
        "tokens",
        "tokens",
        "crowns",
        "¤",
    ]


def test_money_is_not_put_in_thousands_by_a_prefix():
    job = Job(60, 8, 2, 50, 80, currency="¤")
    assert [str(job.money(amount)) for amount in (12345.678, 0.004, -0.001, 1e6)] == [
        "12345.68\xa0¤",
        "0\xa0¤",
        "0\xa0¤",
        "1000000\xa0¤",
    ]
