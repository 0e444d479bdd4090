"""The life panel: what it shows is what the calculator says."""

import pytest

from repairlib.faces.panels.life import RATINGS, life_view


@pytest.mark.published(
    "Wikipedia, Electrolytic capacitor: 2000 h at 105 °C is 128 000 h at 45 °C, about 15 years"
)
def test_opens_on_a_life():
    """128 000 h / 8760 = 14.6 years."""
    view = life_view()
    assert "14.6 years" in view.answer.value
    assert "14.6 years at 45" in view.chart.value


def test_follows_its_sliders():
    view = life_view()
    view.temperature.value = 65
    assert "3.7 years" in view.answer.value
    view.ripple.value = 50
    assert "4.7 years" in view.answer.value  # × 1.297
    view.rating.value = "5000 h at 105 °C, low impedance"
    assert "11.8 years" in view.answer.value  # × 2.5


def test_says_why_a_life_is_refused():
    view = life_view()
    view.temperature.value = 110
    assert "rating of 105 °C: life is not extrapolated" in view.answer.value
    assert "years, always on" not in view.answer.value
    view.temperature.value = 65
    view.voltage.value = 110
    assert "voltage above" in view.answer.value


def test_more_than_15_years_is_not_believed():
    view = life_view(25)
    assert "15 years or more, always on" in view.answer.value
    assert "15.0 to 15.0" not in view.answer.value


@pytest.mark.parametrize("rating", RATINGS)
@pytest.mark.parametrize("temperature", [25, 85, 115])
def test_every_rating_has_an_answer(rating, temperature):
    view = life_view(temperature)
    view.rating.value = rating
    assert view.answer.value and "<img" in view.chart.value
