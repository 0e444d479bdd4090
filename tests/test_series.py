"""repairlib.series against the printed lists of preferred values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.errors import RepairlibError
from repairlib.series import E_SERIES, is_made, nearest, next_down, next_up

LISTS = "Encyclopaedia, E series of preferred numbers (IEC 60063)"


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
    assert E_SERIES["E3"] == (10, 22, 47)


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
