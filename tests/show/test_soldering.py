"""Strips of soldering by hand: their words, their letters, what they refuse."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show import (
    draw_heat_bridge,
    draw_joints,
    draw_pump_and_braid,
    draw_putting_in,
    draw_taking_out,
)
from repairlib.show.joint_looks import JOINTS
from tests.show.test_drawings import assert_no_text_covers_another, assert_text_is_inside_the_sheet
from tests.show.test_legible import assert_legible

EVERY = [draw_heat_bridge, draw_joints, draw_pump_and_braid, draw_putting_in, draw_taking_out]

every_strip = pytest.mark.parametrize("draw", EVERY)


@every_strip
def test_letters_are_legible_and_inside(draw):
    for one in draw().shown:
        assert_legible(one.picture)
        assert_text_is_inside_the_sheet(one.picture)
        assert_no_text_covers_another(one.picture)


@every_strip
def test_every_picture_is_said_in_its_own_words(draw):
    strip = draw()
    shown = strip._repr_html_()
    assert len({one.picture.alt for one in strip.shown}) == len(strip.shown)
    assert all(one.words in shown and one.picture.alt in shown for one in strip.shown)
    assert repr(strip).count("\n") == len(strip.shown) - 1


@every_strip
def test_the_same_bytes_each_time(draw):
    assert draw()._repr_html_() == draw()._repr_html_()


@every_strip
def test_a_narrow_page_puts_them_below_each_other(draw):
    """Words under a picture are text of the page, so that they are not made smaller with it."""
    strip = draw()
    assert strip._repr_html_().count("display:inline-block") == len(strip.shown)
    assert not [one for one in strip.shown if one.words in one.picture.svg]


@pytest.mark.common_practice
def test_the_wire_goes_before_the_tip_and_the_lead_moves_before_it_is_sucked():
    order = [one.name for one in draw_putting_in().shown]
    assert order[2] == "3. Wire away, then the tip"
    heat, suck = draw_taking_out().shown[1:3]
    assert "moves freely" in heat.words and "suck" in suck.words


@pytest.mark.common_practice
def test_only_one_joint_is_left_as_it_is():
    left = [name for name, (_, _, words) in JOINTS.items() if words.endswith("Leave it.")]
    assert left == ["good"]


def test_some_joints_in_the_order_asked():
    assert [one.name for one in draw_joints("bridge", "good").shown] == ["Bridge", "Good"]


def test_an_unknown_joint_is_named():
    with pytest.raises(RepairlibError, match="'pretty'"):
        draw_joints("pretty")
