"""Drawings of melting and of hole fill: their words, their bytes, what they refuse."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.show.solder import draw_hole_fill, draw_melting


@pytest.mark.published(
    "Princeton University, MAE 324 glossary, Eutectic: tin and lead at 61.9 wt % and 183 °C"
)
def test_the_eutectic_is_told_and_drawn():
    picture = draw_melting("Sn-Pb")
    assert "61.9 wt % tin all of it melts at 183 °C" in picture.alt
    assert "eutectic: 61.9 %, 183 °C" in picture.svg


@pytest.mark.behaviour
def test_the_fields_of_the_diagram_are_named():
    picture = draw_melting("Sn-Pb")
    for word in ("liquid", "pasty", "solid", "begins to melt", "all liquid"):
        assert word in picture.svg


def test_the_same_bytes_each_time():
    assert draw_melting("Sn-Bi", 30).svg == draw_melting("Sn-Bi", 30).svg
    assert draw_hole_fill(55).svg == draw_hole_fill(55).svg


def test_fill_is_told_in_words():
    assert "Solder fills 0 %" in draw_hole_fill(0).alt
    assert "Solder fills 75 %" in draw_hole_fill(75).alt


@pytest.mark.parametrize(
    "call",
    [
        lambda: draw_melting("Sn-Ag"),
        lambda: draw_melting("Sn-Pb", 101),
        lambda: draw_hole_fill(-1),
        lambda: draw_hole_fill(float("nan")),
        lambda: draw_hole_fill(50, 0),
    ],
)
def test_what_cannot_be_drawn(call):
    with pytest.raises(RepairlibError):
        call()
