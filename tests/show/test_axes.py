"""repairlib.show.axes: where values are drawn."""

import pytest

from repairlib.show.axes import Axes, Scale
from repairlib.show.canvas import Canvas


@pytest.mark.parametrize("value, place", [(20, 100), (70, 200), (45, 150), (95, 250)])
def test_a_scale_goes_straight_through_its_two_ends(value, place):
    assert Scale(20, 70, 100, 200)(value) == place


def test_the_numbers_stand_at_their_lines():
    axes = Axes(Scale(0, 10, 50, 150), Scale(0, 100, 90, 10))
    canvas = Canvas(200, 120)
    axes.grid(canvas, (0, 50), "°C")
    axes.ticks(canvas, (5,))
    svg = canvas.picture("").svg
    assert 'points="50,90 150,90"' in svg and 'points="50,50 150,50"' in svg
    assert ">50 °C</text>" in svg and 'points="100,90 100,96"' in svg and ">5</text>" in svg


# By hand: the least of 1, 2, 5 times a power of ten that is no smaller than the span / most.
@pytest.mark.parametrize(
    "low, high, most, least, values",
    [
        (0, 350, 7, 0, [0, 50, 100, 150, 200, 250, 300, 350]),  # 350 / 7 = 50 just
        (0, 351, 7, 0, [0, 100, 200, 300]),
        (25, 95, 7, 0, [30, 40, 50, 60, 70, 80, 90]),
        (-3, 3, 6, 0, [-3, -2, -1, 0, 1, 2, 3]),
        (0, 1.5, 8, 0, [0, 0.2, 0.4, 0.6, 0.8, 1.0, 1.2, 1.4]),
        (0, 1.5, 9, 1, [0, 1]),
        (0, 30_000, 7, 0, [0, 5_000, 10_000, 15_000, 20_000, 25_000, 30_000]),
    ],
)
def test_round_values_lie_on_the_scale(low, high, most, least, values):
    assert Scale(low, high, 50, 150).round_values(most, least) == pytest.approx(values)
