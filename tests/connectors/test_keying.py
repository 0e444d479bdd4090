"""Pin 1 and keys."""

import pytest

from repairlib.connectors.keying import pin_one, ways
from repairlib.core.errors import RepairlibError


@pytest.mark.common_practice
def test_what_the_usual_marks_point_to():
    for way in ("square pad", "figure 1 or dot in the print", "triangle on the housing"):
        assert pin_one(way).points_to == "pin 1"
    assert pin_one("coloured edge of a ribbon").points_to == "wire 1"
    for key in ("notch or rib of the housing", "missing pin and plugged hole", "latch side"):
        assert pin_one(key).points_to == "which way round it goes in"
    assert pin_one("colour of the wires").points_to == "nothing for certain"


@pytest.mark.behaviour
@pytest.mark.parametrize("way", ways())
def test_no_mark_is_proof(way):
    finding = pin_one(way)
    assert finding.verdict == "prove it with the meter"
    assert finding.beware and finding.look_at
    assert "heat and fire" in finding.cautions


@pytest.mark.behaviour
def test_what_is_refused():
    with pytest.raises(RepairlibError, match="not a known way"):
        pin_one("a feeling")
