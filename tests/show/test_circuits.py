"""Circuits around a part, leads of a meter, intervals beside limits."""

import math

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.health.neighbourhood import read_neighbourhood
from repairlib.show.circuits import draw_leads, draw_neighbourhood
from repairlib.show.intervals import draw_intervals

PARTS = read_neighbourhood(
    "part,from,to,value,more / C1,a,b,10u,1.5 / R1,a,0,10k / R2,b,0,47k / L1,a,c,10m / R3,c,b,1M"
)


def test_every_part_and_node_is_drawn_and_said():
    picture = draw_neighbourhood(PARTS, "C1")
    for words in ("node a", "node b", "node c", "node 0", "R1", "R2", "L1", "R3", "meter"):
        assert words in picture.svg
    for words in ("C1: capacitor 10\xa0µF, ESR 1.5\xa0Ω, from a to b", "L1: inductor", "across C1"):
        assert words in picture.alt


def test_the_same_circuit_is_the_same_bytes():
    assert draw_neighbourhood(PARTS, "R1").svg == draw_neighbourhood(PARTS, "R1").svg
    assert draw_leads(4).svg == draw_leads(4).svg


def test_more_parts_than_fit_are_counted():
    many = read_neighbourhood("part,from,to,value\n" + "\n".join(f"R{n},a,b,1k" for n in range(20)))
    assert "And 8 more parts, not drawn." in draw_neighbourhood(many, "R19").alt


def test_leads():
    assert "voltmeter" in draw_leads(4).svg
    assert "voltmeter" not in draw_leads(2).svg
    with pytest.raises(RepairlibError, match="2 or 4 wires"):
        draw_leads(3)
    with pytest.raises(RepairlibError, match="no such part"):
        draw_neighbourhood(PARTS, "C9")


def test_intervals_say_their_verdicts():
    picture = draw_intervals([("one", 4.97, 5.03), ("two", 5.21, 5.27)], 4.75, 5.25, "V")
    for words in ("at least 4.75", "at most 5.25", "pass", "cannot tell", "conditional pass"):
        assert words in picture.svg
    assert picture.alt.splitlines()[2] == "two: 5.21\xa0V to 5.27\xa0V, cannot tell."


@pytest.mark.parametrize("bars", [[], [("x", 1, 2)] * 13, [("x", 1, math.inf)], [("x", 2, 1)]])
def test_what_cannot_be_drawn(bars):
    with pytest.raises(RepairlibError):
        draw_intervals(bars, limit_high=1.0)
