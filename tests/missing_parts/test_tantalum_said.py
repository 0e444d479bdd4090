"""What a typed place says of a chip tantalum."""

import pytest

from repairlib.missing_parts import missing_tantalum, read_place, said_of_tantalum

PLACES = {
    "C? between +5 V and ground, near regulator U2 output": "regulator output",
    "C? between +12 V and ground, near buck converter U3 output": "converter output",
    "C? between +12 V and ground, near the DC input jack": "supply entry",
    "C? between +3.3 V and ground": "not known",
}


@pytest.mark.behaviour
@pytest.mark.parametrize(("typed", "where"), PLACES.items())
def test_the_place_on_the_rail(typed, where):
    assert said_of_tantalum(read_place(typed))["place"] == where


@pytest.mark.behaviour
def test_what_is_said_can_be_asked_and_the_way_round_stays_open():
    typed = "C14 pads 2 x 3 mm, gap 4 mm, between -12 V and ground, twin channel has 47 µF"
    said = said_of_tantalum(read_place(typed))
    assert said["rail"] == -12 and said["twin"] == pytest.approx(47e-6)
    finding = missing_tantalum(**said)
    assert finding.verdict == "cannot tell" and finding.bar == "not known"
    assert "47" in finding.fit and "7343-31" in finding.fit
    assert missing_tantalum(**said, ground_at="left pad").bar == "to the left pad"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("mark", "why"),
    [("plus sign", "Say at which pad it is"), ("a bar at one end", "negative end on others")],
)
def test_a_mark_that_is_said_is_weighed_and_proves_nothing(mark, why):
    finding = missing_tantalum(**said_of_tantalum(read_place(f"C7, {mark}, +5 V and ground")))
    assert finding.verdict == "cannot tell" and why in finding.reason


@pytest.mark.behaviour
def test_a_twin_read_in_circuit_is_no_value():
    typed = "C14, tantalum case B, between +5 V and ground, twin channel reads 310 µF in circuit"
    said = said_of_tantalum(read_place(typed))
    assert "twin" not in said and said["case"] == "3528-21"
    assert "rail" not in said_of_tantalum(read_place("C3, 2 pads 3.2 x 1.6 mm"))
