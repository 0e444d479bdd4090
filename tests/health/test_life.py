"""Life: every worked example of the makers' notes, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.health.capacitor_families import families
from repairlib.health.life import (
    CAP_HOURS,
    expected,
    mixed_life,
    ripple_base,
    ripple_factor,
    temperature_factor,
    voltage_factor,
)
from tests.documents import document

TEN_DEGREES = document("Cosel lifetime note", "10-degree rule, worked by hand")

GENERAL = "aluminium general 105"


def by_rule(rated_hours, rated, actual, family=GENERAL, **use):
    return expected(family, rated_hours, rated, actual, **use).hours


@pytest.mark.published(document("Cosel lifetime note", "64 000 h at 45 °C, 16 000 h at 65 °C"))
def test_1000_h_at_105():
    assert by_rule(1000, 105, 45) == 64_000
    assert by_rule(1000, 105, 65) == 16_000


@pytest.mark.published(
    document("encyclopaedia, Electrolytic capacitor", "128 000 h at 45 °C, about 15 years")
)
def test_2000_h_at_105():
    life = expected(GENERAL, 2000, 105, 45)
    assert life.hours == 128_000
    assert life.years == pytest.approx(14.6, abs=0.05)


@pytest.mark.published(document("Beckhoff PS9011", "166 000 h at 40 °C, 469 000 h at 25 °C"))
def test_moved_to_a_cooler_place():
    """The page prints 469 000, rounded down from 469 519; the formula was followed."""
    assert by_rule(166_000, 40, 25) == pytest.approx(469_000, rel=0.002)


@pytest.mark.published(document("Beckhoff PS9011", "answers end at 15 years, 131 400 h"))
def test_answers_end_at_15_years():
    life = expected(GENERAL, 166_000, 40, 25)
    assert life.hours > life.believed == CAP_HOURS == 131_400
    assert life.years == 15


@pytest.mark.published(
    document("BC Components 051/053", "12 000 h at 85 °C, 200 000 h at 40 °C and 1.4 x ripple")
)
def test_life_with_more_than_rated_ripple():
    """The plain rule gives 271 500 h, longer than the maker's own 200 000 h.

    The maker was followed: with the ripple factor (Ki 2 for an 85 °C part, 5 K) the answer is
    within 3 % of the printed one.
    """
    assert by_rule(12_000, 85, 40) == pytest.approx(271_500, rel=1e-3)
    with_ripple = by_rule(12_000, 85, 40, ripple=1.4, beyond_rated_ripple=True)
    assert with_ripple == pytest.approx(200_000, rel=0.03)


@pytest.mark.behaviour
def test_more_than_rated_ripple_is_refused_unless_asked_for():
    with pytest.raises(RepairlibError, match="ripple above the part's rating"):
        by_rule(12_000, 85, 40, ripple=1.4)


@pytest.mark.published(document("Jianghai, quoted", "L = L0 × KT × KR × KV, worked by hand"))
def test_three_factors():
    first = expected(GENERAL, 2000, 105, 65, ripple=0.5)
    factors = (first.by_temperature, first.by_ripple, first.by_voltage)
    assert factors == pytest.approx((16, 1.297, 1), rel=1e-3)
    assert first.hours == pytest.approx(41_500, rel=1e-3)
    second = expected(GENERAL, 5000, 105, 70, ripple=0.8, voltage=0.8)
    factors = (second.by_temperature, second.by_ripple, second.by_voltage)
    assert factors == pytest.approx((11.31, 1.133, 1.747), rel=1e-3)
    assert second.hours == pytest.approx(112_000, rel=2e-3)


@pytest.mark.published(document("Jianghai, quoted", "ripple factor, Ki 2 and 4, worked by hand"))
def test_ripple_factor():
    assert ripple_factor(1.2, 5, 4) == pytest.approx(0.7371, rel=1e-4)
    assert ripple_factor(0, 5, 2) == pytest.approx(1.414, rel=1e-3)
    assert ripple_factor(1) == 1
    assert ripple_base(1.2, 105) == 4  # only for 105 °C parts, and only above the rating
    assert (ripple_base(1.2, 85), ripple_base(1.0, 105)) == (2, 2)


@pytest.mark.published(document("Jianghai, quoted", "exponent -2.5, 3.59 below 0.6 of the rating"))
def test_voltage_factor():
    assert voltage_factor(0.9) == pytest.approx(1.301, rel=1e-3)
    assert voltage_factor(0.8) == pytest.approx(1.747, rel=1e-3)
    assert voltage_factor(0.6) == pytest.approx(3.586, rel=1e-3)
    assert voltage_factor(0.59) == voltage_factor(0) == 3.59


@pytest.mark.published(TEN_DEGREES)
def test_a_crooked_temperature():
    assert by_rule(3000, 105, 72) == pytest.approx(29_550, rel=1e-3)


@pytest.mark.published(document("Cosel lifetime note", "L = sum(h) / sum(h / L)"))
def test_mixed_use():
    """By hand: 8 h of 16 000 and 16 h of 64 000 use 0.0005 + 0.00025 of it a day: 32 000 h."""
    assert mixed_life([(8, 16_000), (16, 64_000)]) == pytest.approx(32_000)


@pytest.mark.from_memory("aluminium polymer: ten times for each 20 °C")
def test_polymer():
    assert by_rule(2000, 105, 65, "polymer radial") == pytest.approx(200_000)


@pytest.mark.published(
    document("encyclopaedia, Electrolytic capacitor", "polymer follows another rule")
)
def test_polymer_does_not_follow_the_10_degree_rule():
    """By the 10-degree rule it would be 2000 h × 2^4 = 32 000 h."""
    assert by_rule(2000, 105, 65, "polymer radial") != 32_000


@pytest.mark.published(
    document("Rubycon technical notes", "the 10-degree rule drifts below 60 and above 105 °C")
)
@pytest.mark.parametrize(("fits", "drifts"), [(60, 59), (105, 106)])
def test_the_spread_is_wider_where_the_rule_drifts(fits, drifts):
    assert expected(GENERAL, 2000, 125, fits).spread < expected(GENERAL, 2000, 125, drifts).spread


@pytest.mark.behaviour
def test_the_spread_is_half_to_twice_or_a_third_to_three_times():
    assert expected(GENERAL, 2000, 105, 75).spread == 2
    assert expected(GENERAL, 2000, 105, 45).spread == 3
    low, high = expected(GENERAL, 2000, 105, 75).range
    assert (low, high) == (8000, 32_000)


@pytest.mark.parametrize(
    ("given_values", "use", "wrong"),
    [
        ((2000, 105, 106), {}, "above the part's rating of 105 °C"),
        ((2000, 105, -300), {}, "absolute zero"),
        ((2000, -300, -301), {}, "absolute zero"),
        ((2000, 105, float("nan")), {}, "not a temperature"),
        ((2000, 105, 65), {"ripple": 1.01}, "ripple above"),
        ((2000, 105, 65), {"ripple": 9, "beyond_rated_ripple": True}, "ripple above"),
        ((2000, 105, 65), {"voltage": 1.01}, "voltage above"),
        ((2000, 105, 65), {"voltage": -1}, "voltage above"),
        ((2000, 105, 65), {"heating": -1}, "not a self-heating"),
        ((0, 105, 65), {}, "not the rated life"),
        ((0.5, 105, 65), {}, "was the unit h left out"),
    ],
)
def test_beyond_a_rating_life_is_refused(given_values, use, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        by_rule(*given_values, **use)


@pytest.mark.parametrize(
    "family", [name for name, one in families().items() if one.ages == "does not dry out"]
)
def test_what_does_not_dry_out_has_no_such_life(family):
    with pytest.raises(RepairlibError, match="does not dry out"):
        by_rule(2000, 105, 65, family)


@pytest.mark.parametrize("uses", [[], [(0, 1000)], [(8, 0)], [(8, -5)], [(float("inf"), 5)]])
def test_mixed_use_needs_hours_and_lives(uses):
    with pytest.raises(RepairlibError):
        mixed_life(uses)


@given(st.floats(0, 105), st.floats(0, 1), st.floats(0, 1))
def test_cooler_less_ripple_and_less_voltage_never_shorten_life(celsius, ripple, voltage):
    life = by_rule(2000, 105, celsius, ripple=ripple, voltage=voltage)
    assert life >= 2000 * (1 - 1e-9)
    assert by_rule(2000, 105, celsius - 10, ripple=ripple, voltage=voltage) >= life


@given(st.lists(st.tuples(st.floats(0.1, 1e4), st.floats(1, 1e6)), min_size=1, max_size=5))
def test_mixed_life_lies_between_the_lives(uses):
    lives = [life for _, life in uses]
    assert min(lives) * (1 - 1e-9) <= mixed_life(uses) <= max(lives) * (1 + 1e-9)


def test_temperature_factors_by_property():
    assert temperature_factor(85, 75) == 2
    assert temperature_factor(105, 85, "20-degree rule") == 10
