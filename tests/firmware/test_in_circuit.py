"""Reading a chip on its board: what the board takes, two drivers on a line, when to lift."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.verdicts import CANNOT_TELL, CONDITIONS, NEVER
from repairlib.firmware import reading_on_board

GOOD = {
    "supply": 3.3,
    "to_ground": 2000.0,
    "series": 220.0,
    "processor": "in reset",
    "others": "none",
}


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("changed", "verdict", "says"),
    [
        ({}, CONDITIONS, "speaks against"),
        ({"to_ground": 3.0}, NEVER, "a short"),
        ({"to_ground": 20.0}, NEVER, "breaks down"),
        ({"to_ground": 20.0, "current": 0.5}, CONDITIONS, "speaks against"),
        ({"to_ground": 20.0, "fed_by": "board"}, CONDITIONS, "speaks against"),
        ({"to_ground": None}, CANNOT_TELL, "power off and discharged"),
        ({"processor": "running"}, NEVER, "two masters"),
        ({"processor": "not known"}, CANNOT_TELL, "reset pin"),
        ({"processor": "without supply"}, NEVER, "into each pin"),
        ({"processor": "without supply", "series": 1000.0}, CONDITIONS, "speaks against"),
        ({"others": "not known"}, CANNOT_TELL, "chip select"),
        ({"reads": "two equal"}, CONDITIONS, "store both"),
        ({"reads": "differ"}, CONDITIONS, "lift the chip"),
        ({"reads": "no answer"}, CONDITIONS, "lift the chip"),
    ],
)
def test_what_decides(changed, verdict, says):
    given = {name: value for name, value in (GOOD | changed).items() if value is not None}
    found = reading_on_board(**given)
    assert (found.verdict, says in found.reason) == (verdict, True), found.reason


@pytest.mark.behaviour
def test_figures_by_hand():
    # 3.3 V / 300 Ω; (3.3 - 0.6) V / 30 Ω; 3.3 V × 30 / 60 and / 60 Ω
    assert reading_on_board(3.3, 300.0).feeds_at_least.value == pytest.approx(0.011)
    dead = reading_on_board(3.3, 2000.0, processor="without supply")
    assert dead.into_each_pin.value == pytest.approx(0.09)
    both = reading_on_board(3.3, 2000.0, processor="running")
    assert both.level_when_high.value == pytest.approx(1.65)
    assert both.into_each_other.value == pytest.approx(0.055)
    weak = reading_on_board(3.3, 20.0)
    assert weak.supply_left.value == pytest.approx(2.0)  # 0.1 A × 20 Ω


@pytest.mark.behaviour
def test_hazards_and_conditions_stand_with_it():
    found = reading_on_board(1.8, 2000.0, 220.0, "in reset", "none")
    hazards = {"mains", "chip supply", "static charge", "stored charge", "only copy"}
    assert hazards <= set(found.cautions)
    assert any("set to 1.8" in note for note in found.notes)
    assert any("before two equal reads" in note for note in found.notes)


@pytest.mark.behaviour
@pytest.mark.parametrize("supply", ["12 V", "0 V", "3.3 A", "nothing"])
def test_a_supply_that_no_such_chip_has(supply):
    with pytest.raises(RepairlibError):
        reading_on_board(supply)
