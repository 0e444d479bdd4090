"""repairlib.core.series against the printed lists of preferred values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.series import (
    E_SERIES,
    is_made,
    nearest,
    next_down,
    next_up,
    series_of,
    values_between,
)
from tests.documents import document

LISTS = document("encyclopaedia, E series")


@pytest.mark.published(LISTS)
@pytest.mark.parametrize(
    ("series", "figures", "member"),
    [
        ("E12", 83, False),
        ("E6", 68, True),
        ("E24", 30, True),
        ("E24", 29, False),
        ("E12", 27, True),
        ("E12", 26, False),
        ("E96", 499, True),
        ("E48", 105, True),
        ("E48", 107, False),
        ("E96", 240, False),
        ("E96", 390, False),
    ],
)
def test_members(series, figures, member):
    assert is_made(figures, series) is member


@pytest.mark.published(LISTS)
def test_e24_departs_from_rounding_in_eight_places():
    made = E_SERIES["E24"]
    rounded = [round(10 ** (n / 24 + 1)) for n in range(24)]
    departures = {
        value: plain for value, plain in zip(made, rounded, strict=True) if value != plain
    }
    assert departures == {27: 26, 30: 29, 33: 32, 36: 35, 39: 38, 43: 42, 47: 46, 82: 83}


@pytest.mark.published(LISTS)
def test_e3():
    assert values_between(1e3, 99e3, "E3") == [1e3, 2.2e3, 4.7e3, 10e3, 22e3, 47e3]


@pytest.mark.published(LISTS)
@pytest.mark.parametrize(
    ("series", "departures"),
    [
        ("E3", {47: 46}),
        ("E6", {33: 32, 47: 46}),
        ("E12", {27: 26, 33: 32, 39: 38, 47: 46, 82: 83}),
        ("E48", {}),
        ("E96", {}),
        ("E192", {920: 919}),
    ],
)
def test_departures_from_rounding(series, departures):
    made = E_SERIES[series]
    power = len(str(made[0])) - 1
    rounded = [round(10 ** (n / len(made) + power)) for n in range(len(made))]
    pairs = zip(made, rounded, strict=True)
    assert {value: plain for value, plain in pairs if value != plain} == departures


@pytest.mark.published(LISTS)
@pytest.mark.parametrize(
    ("series", "count"),
    [("E3", 3), ("E6", 6), ("E12", 12), ("E24", 24), ("E48", 48), ("E96", 96), ("E192", 192)],
)
def test_as_many_values_as_the_name_says(series, count):
    assert len(E_SERIES[series]) == len(set(E_SERIES[series])) == count


@pytest.mark.published(LISTS)
def test_each_series_is_every_second_value_of_the_next():
    for coarse, fine in (("E6", "E12"), ("E12", "E24"), ("E48", "E96"), ("E96", "E192")):
        assert E_SERIES[fine][::2] == E_SERIES[coarse]


@pytest.mark.published(LISTS)
@pytest.mark.parametrize(
    ("value", "series"),
    [(4.7e-6, "E3"), (68e-9, "E6"), (8200, "E12"), (91, "E24"), (105, "E48"), (4990, "E96")],
)
def test_coarsest_series(value, series):
    assert series_of(value) == series


@pytest.mark.published(f"{LISTS}: 920 is an E192 value, where rounding has 919")
def test_an_e192_value_that_is_not_the_rounded_one():
    assert (series_of(9200), series_of(9190)) == ("E192", "")


@pytest.mark.published(LISTS)
def test_fifty_is_in_no_series():
    assert series_of(50) == ""


def test_values_between_includes_both_ends():
    assert values_between(10, 100, "E3") == [10, 22, 47, 100]
    assert values_between(23, 46, "E3") == []


@pytest.mark.parametrize("series", E_SERIES)
@given(st.floats(1e-13, 1e9))
def test_neighbours_enclose_the_value(series, value):
    below, above = next_down(value, series), next_up(value, series)
    assert below <= value * (1 + 1e-8)
    assert above >= value * (1 - 1e-8)
    assert is_made(below, series)
    assert is_made(above, series)
    assert nearest(value, series) in (below, above)


@pytest.mark.parametrize("value", [0, -1, float("nan"), float("inf")])
def test_impossible_values(value):
    with pytest.raises(RepairlibError, match="not a value"):
        nearest(value)


def test_unknown_series():
    with pytest.raises(RepairlibError, match="E3, E6, E12, E24"):
        nearest(1, "E7")
