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
