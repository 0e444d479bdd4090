"""Pairs of made values: worked by hand, and against trying every pair."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.pairs import best_pairs, capacitor_pairs, nearest_value, resistor_pairs
from repairlib.core.series import values_between
from tests.documents import document


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("value", "series", "first", "second", "how"),
    [
        (50e3, "E12", 100e3, 100e3, "in parallel"),
        (94, "E6", 47, 47, "in series"),
        (5, "E6", 10, 10, "in parallel"),
        (115, "E24", 68, 47, "in series"),
    ],
)
def test_two_resistors_that_hit_the_value(value, series, first, second, how):
    best = best_pairs(value, series)[0]
    assert (best.first, best.second, best.how) == (first, second, how)
    assert best.error == pytest.approx(0, abs=1e-9)


@pytest.mark.common_practice
def test_capacitors_add_in_parallel():
    best = best_pairs(94e-9, "E6", adds_in="in parallel")[0]
    assert (best.first, best.second, best.how) == (47e-9, 47e-9, "in parallel")
    assert capacitor_pairs("110 µF", "E6").joined == "in series"  # 220 µF twice


@pytest.mark.parametrize("value", [50e3, 1234, 7.77, 1.4e6])
@pytest.mark.parametrize("series", ["E3", "E6", "E12"])
def test_no_pair_of_all_is_better(value, series):
    made = values_between(value / 1000, value * 1000, series)
    both = [(a + b, a * b / (a + b)) for a in made for b in made]
    least = min(abs(one / value - 1) for pair in both for one in pair)
    best = best_pairs(value, series, 5)
    assert abs(best[0].error) == pytest.approx(least, abs=1e-9)
    assert [abs(one.error) for one in best] == sorted(abs(one.error) for one in best)


def test_pairs_say_what_they_make():
    for pair in best_pairs(1234, "E24", 5):
        joined = pair.first + pair.second
        if pair.how == "in parallel":
            joined = 1 / (1 / pair.first + 1 / pair.second)
        assert pair.value == pytest.approx(joined)
        assert pair.error == pytest.approx(joined / 1234 - 1)
        assert pair.first >= pair.second


def test_the_cautions_of_a_pair_are_said():
    assert "fusible" in " ".join(resistor_pairs("50 kΩ").notes)
    assert "uneven" in " ".join(capacitor_pairs("50 µF").notes)


@pytest.mark.published(document("encyclopaedia, E series"))
def test_nearest_value():
    finding = nearest_value("5 kΩ", "E96")
    assert (finding.nearest, finding.made) == (4990, False)
    assert nearest_value("390 Ω", "E96").made is False
    assert nearest_value("4.7 µF", "E6").made is True


@pytest.mark.behaviour
def test_a_value_of_no_series_has_no_coarsest_one():
    assert nearest_value("5 kΩ", "E96").coarsest_series == "none"


@pytest.mark.parametrize("text", ["-4 kΩ", "0", "abc", "1e30 Ω"])
def test_what_is_no_value(text):
    with pytest.raises(RepairlibError):
        nearest_value(text)


def test_unknown_ways_and_series():
    with pytest.raises(RepairlibError, match="in series, in parallel"):
        best_pairs(50, "E12", 5, "crossed")
    with pytest.raises(RepairlibError, match="E192"):
        best_pairs(50, "E13")
