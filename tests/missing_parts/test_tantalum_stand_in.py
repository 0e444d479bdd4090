"""Polymer and ceramic in the place of a tantalum, and windows of ESR."""

import pytest

from repairlib.missing_parts.tantalum_stand_in import (
    against_window,
    resistor_for,
    stability,
    stand_ins,
)
from tests.documents import document


@pytest.mark.published(
    document("LP2950 data sheet", "ESR 0.05 Ω to 5 Ω; a ceramic with about 0.1 Ω to 2 Ω in series")
)
def test_a_resistor_brings_a_ceramic_into_the_window():
    assert resistor_for(0.05, 5) == pytest.approx((0.1, 2))
    said = " ".join(stability(0.05, 5)).replace("\xa0", " ")
    assert "class 2 ceramic, usually 2 mΩ to 20 mΩ: out of the window; with 100 mΩ" in said


@pytest.mark.published(document("LM1117 data sheet", "ESR 0.3 Ω to 22 Ω, 10 µF tantalum at least"))
def test_a_regulator_made_for_tantalum_takes_one_and_no_ceramic():
    assert against_window("ordinary tantalum", 0.3, 22) == "in the window"
    assert against_window("class 2 ceramic", 0.3, 22) == "out of the window"
    assert against_window("tantalum polymer", 0.3, 22) == "out of the window"
    assert against_window("low-ESR tantalum", 0.3, 22) == "partly in the window"


@pytest.mark.published(document("LP2985 data sheet", "ceramics with an ESR as low as 5 mΩ"))
def test_a_regulator_for_ceramics_takes_one_without_a_resistor():
    said = " ".join(stability(0.002, 0.5))
    assert "in series it is in it" not in said
    assert against_window("class 2 ceramic", 0.002, 0.5) == "in the window"
    assert resistor_for(0.005, 0.01) is None


@pytest.mark.behaviour
def test_without_a_window_nothing_is_judged():
    said = " ".join(stability(None, None))
    assert "nobody can tell" in said and "oscilloscope" in said
    assert "in the window" not in said


@pytest.mark.published(
    document("LP2950 data sheet", "a ceramic has a rating of at least twice the output voltage")
)
@pytest.mark.parametrize(("rail", "rated"), [(3.3, 10), (5, 10), (12, 25), (-5, 10), (24, 50)])
def test_a_ceramic_has_twice_the_rail(rail, rated):
    assert stand_ins(rail, 10e-6)[1].rated == rated


@pytest.mark.published(document("UF Capacitors bias note", "10 µF 10 V in 0805 has 5 µF at 5 V"))
def test_a_ceramic_is_marked_with_twice_what_is_needed():
    assert stand_ins(5, 5e-6)[1].farad == pytest.approx(10e-6)


@pytest.mark.published(
    document("encyclopaedia, Electrolytic capacitor", "tantalum polymer 20 % less")
)
@pytest.mark.parametrize(("rail", "rated"), [(3.3, 6.3), (5, 6.3), (12, 16), (20, 25), (41, None)])
def test_polymer_keeps_a_fifth(rail, rated):
    assert stand_ins(rail, 10e-6)[0].rated == rated


@pytest.mark.behaviour
def test_what_stands_in_says_what_it_asks_for():
    polymer, ceramic = stand_ins(5, 22e-6, "3528-21")
    assert "bar is the plus" in str(polymer)
    assert "1210 stands on these pads" in str(ceramic) and "no plus" in str(ceramic)
    assert "Compare its size" in str(stand_ins(5, 22e-6, "7343-31")[1])
    assert "none is made" in str(stand_ins(60, 22e-6)[0])


@pytest.mark.from_memory("one class 2 ceramic has some 330 µF at most")
def test_no_ceramic_is_made_that_large():
    polymer, ceramic = stand_ins(5, 470e-6)
    assert ceramic.short.replace("\xa0", " ") == "none is made with 1000 µF"
    assert "X7R" not in str(ceramic) and "or more" in polymer.short
