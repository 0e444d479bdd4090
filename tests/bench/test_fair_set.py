"""Whether an own set is fair: the reasons that an instructor is told."""

import pytest

from repairlib.bench import fair, read_set, unfair, unfair_fault
from repairlib.bench.board_room import without_room
from repairlib.core.errors import RepairlibError
from tests.bench.test_practice_set import LAMP

TWO = (
    LAMP.replace("R1,resistor,dc,out,90 Ω,", "U1,regulator,x,out,4.5 V,dropout 1 V")
    .replace("limit 1 A", "limit 3 A")
    .replace("R1 open", "U1 open")
)
pytestmark = pytest.mark.behaviour


def test_a_fair_set_has_no_reason_against_it():
    assert list(unfair(read_set(TWO))) == []
    assert fair(read_set(TWO)).title == "lamp board"


def test_a_set_that_misses_its_rails_when_it_is_sound():
    assert next(unfair(read_set(TWO.replace("out,4.5 V", "out,7 V")))).startswith(
        "sound it misses its rails: full load, line 90 %, cold: lamp is "
    )


def test_a_set_that_blows_its_own_fuse():
    weak = read_set(TWO.replace("500 mA", "20 mA"))
    assert list(unfair(weak)) == [
        "sound it blows a fuse: F1 carries 0.0505 A and blows at its rating of 0.02 A"
    ]


def test_a_circuit_that_cannot_be_worked_out():
    loop = TWO.replace("I1,lamp", "L1,choke,dc,0,1 mH,,,,10,36,4,3,,,\nI1,lamp")
    assert "its circuit cannot be worked out" in next(unfair(read_set(loop)))


def test_a_mistyped_point_is_told():
    slip = read_set(TWO.replace("x,GND", "xx,GND"))
    assert next(unfair(slip)) == "only C1 ends on point xx: is it mistyped?"


def test_the_first_reason_refuses_it():
    with pytest.raises(RepairlibError, match=r"lamp board.*misses its rails"):
        fair(read_set(TWO.replace("out,4.5 V", "out,7 V")))


UNFAIR = {
    "C1 dried out to 50 %": "nothing that the set must do is missed",
    "C1 short": "a line 'together: C1 short; F1 blown' is due",
    "U1 open; F1 blown": "F1 would not blow by that",
    "U1 opn": "no condition known",
    "C1 open; C1 short": "two faults of one part",
}


@pytest.mark.parametrize("line", UNFAIR)
def test_an_unfair_fault_is_told_why(line):
    (reason,) = unfair_fault(read_set(TWO), line)
    assert reason.startswith(line) and UNFAIR[line] in reason


def test_a_fuse_with_its_cause_is_fair():
    assert unfair_fault(read_set(TWO), "C1 short; F1 blown") == ()


def test_together_needs_two():
    alone = read_set(TWO.replace("fault: U1", "together: U1"))
    assert list(unfair(alone)) == ["U1 open: one fault is not together with anything"]


ROOM = {
    "over the edge": ("30,20,8,3", "58,20,8,3", "U1 stands over the edge"),
    "one on the other": ("30,20,8,3", "49,20,8,3", "U1 and I1 are less than 2 mm apart"),
    "a name under a part": ("30,20,8,3", "30,24.5,8,3", "the name F1 above its part"),
}


@pytest.mark.parametrize("what", ROOM)
def test_parts_without_room_are_told(what):
    right, wrong, said = ROOM[what]
    assert any(said in reason for reason in without_room(read_set(TWO.replace(right, wrong))))
