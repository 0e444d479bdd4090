"""A table judged in one call says the same as the verdict on each part."""

from math import inf, nan, nextafter

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.health.capacitor_families import families
from repairlib.health.table import VERDICTS, family_codes, judge_table

GENERAL = "aluminium general 105"
FARADS = [1e-7, 1e-6, 2.5e-6, 10e-6, 100e-6, 1000e-6, 2200e-6, 3000e-6, 10000e-6]
VOLTS = [2.5, 4, 6.3, 8, 10, 16, 25, 40, 50, 63, 100, 160, 200, 400, 450, 500, 1000]


def one_row(*row, family=GENERAL, **settings_):
    return judge_table(family, *([value] for value in row), **settings_).verdicts()[0]


# As in test_verdict: 100 µF 25 V, ESR new 1.857 Ω, worn out 3.714 Ω, leakage 25 µA.
@pytest.mark.published("Lelon RGA data sheet: tan δ, tolerance, leakage, endurance")
def test_by_hand():
    rows = [
        (98e-6, 0.9, 20e-6, "fit"),
        (98e-6, 0.9, nan, "fit"),
        (98e-6, 2.5, nan, "marginal"),
        (98e-6, 3.7, nan, "cannot tell"),
        (98e-6, 4.0, nan, "replace"),
        (70e-6, 0.9, nan, "replace"),
        (98e-6, 0.9, 40e-6, "replace"),
        (98e-6, nan, nan, "cannot tell"),
        (98e-6, 0.0, nan, "cannot tell"),
        (nan, nan, nan, "cannot tell"),
    ]
    measured, esr, leakage, expected = zip(*rows, strict=True)
    marked = [100e-6] * len(rows), [25] * len(rows)
    table = judge_table(GENERAL, *marked, measured, esr, leakage)
    assert table.verdicts() == list(expected)
    assert sum(table.counts().values()) == len(rows)
    assert [table.why(row).verdict for row in range(len(rows))] == list(expected)


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(list(families())),
    st.sampled_from(FARADS) | st.floats(1e-9, 0.1),
    st.sampled_from(VOLTS) | st.floats(1, 1000),
    st.just(nan) | st.floats(0.3, 2),
    st.just(nan) | st.floats(0, 1),
    st.just(nan) | st.floats(0, 0.3),
    st.sampled_from([0, 1, 5, 30]),
    st.sampled_from([5, 20]),
)
def test_same_as_the_verdict_on_each_part(
    family, farad, volts, ratio, loss, per_cv, uncertainty, tolerance
):
    esr = loss / (2 * np.pi * 120 * farad)
    row = (farad, volts, ratio * farad, esr, per_cv * farad * volts)
    columns = [np.array([value]) for value in row]
    table = judge_table(family, *columns, uncertainty=uncertainty, tolerance=tolerance)
    assert table.verdicts()[0] == table.why(0).verdict


def test_every_family_at_the_ends_of_its_list():
    """Each listed voltage, a little below and a little above it, by table and by part."""
    around = [
        near for volts in VOLTS for near in (volts, nextafter(volts, 0), nextafter(volts, inf))
    ]
    for family in families():
        for volts in around[:-1]:
            row = ([1e-4], [volts], [1e-4], [0.5], [1e-5 * volts])
            table = judge_table(family, *row)
            assert table.verdicts()[0] == table.why(0).verdict, (family, volts)


def test_rows_do_not_touch_each_other():
    """Also across the blocks in which the table is worked."""
    row = (100e-6, 25.0, 98e-6, 0.9, 10e-6)
    columns = [np.full(20_001, value) for value in row]
    columns[3][[0, 8191, 8192, 20_000]] = 9.0
    table = judge_table(GENERAL, *columns)
    assert np.flatnonzero(table.codes != 0).tolist() == [0, 8191, 8192, 20_000]


def test_families_by_name_by_code_and_one_for_all():
    names = list(families())[:3]
    columns = [[100e-6] * 3, [25] * 3, [98e-6] * 3, [2.2] * 3, [nan] * 3]
    by_name = judge_table(names, *columns).verdicts()
    assert judge_table(family_codes(names), *columns).verdicts() == by_name
    assert [judge_table(name, *columns).verdicts()[0] for name in names] == by_name


@pytest.mark.parametrize(
    "row",
    [
        (nan, 25, 98e-6, 0.9, nan),
        (-100e-6, 25, 98e-6, 0.9, nan),
        (0, 25, 98e-6, 0.9, nan),
        (100e-6, 0, 98e-6, 0.9, nan),
        (100e-6, -25, 98e-6, 0.9, nan),
        (100e-6, nan, 98e-6, 0.9, nan),
        (100e-6, 25, 98e-6, -0.9, nan),
        (100e-6, 25, 0, 0.9, nan),
        (100e-6, 25, 98e-6, 0.9, -1e-6),
        (100e-6, 5000, 98e-6, 0.9, nan),
    ],
    ids=str,
)
def test_a_row_that_cannot_be_judged_spoils_no_other(row):
    assert one_row(*row) == "cannot tell"


@pytest.mark.parametrize(
    ("columns", "wrong"),
    [
        ((GENERAL, [1e-4], [25, 25], [1], [1], [1]), "not as long"),
        ((GENERAL, [1e-4], [25], ["OL"], [1], [1]), "not all numbers"),
        ((GENERAL, 1e-4, [25], [1], [1], [1]), "not a column"),
        (("paper", [1e-4], [25], [1], [1], [1]), "not a capacitor family"),
        ((["paper"], [1e-4], [25], [1], [1], [1]), "not a capacitor family"),
        (([None], [1e-4], [25], [1], [1], [1]), "not a capacitor family"),
        ((np.array([99]), [1e-4], [25], [1], [1], [1]), "not codes"),
        (([GENERAL] * 2, [1e-4], [25], [1], [1], [1]), "not as long"),
    ],
)
def test_bad_columns_are_named(columns, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        judge_table(*columns)


def test_an_empty_table():
    table = judge_table(GENERAL, [], [], [], [], [])
    assert (len(table), table.verdicts()) == (0, [])
    with pytest.raises(RepairlibError, match="no such row"):
        table.why(0)


def test_verdict_words():
    assert set(VERDICTS) == {"fit", "marginal", "cannot tell", "replace"}
