"""What can be wrong with a part: as it is typed, and what it makes of the part."""

import pytest

from repairlib.bench import CONDITIONS, as_it_acts, read_fault, read_faults
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.core.errors import RepairlibError

RADIO = demo_set("desk radio")
PRINTER = demo_set("printer controller")
pytestmark = pytest.mark.behaviour


@pytest.mark.parametrize("title", DEMO)
def test_every_listed_fault_is_said_as_it_is_typed(title):
    of = demo_set(title)
    for line in (*of.faults, *of.together):
        faults = read_faults(line, of)
        assert read_faults("; ".join(map(str, faults)), of) == faults


TYPED = {
    "c1 DRIED OUT to 20%, esr x12": "C1 dried out to 20 %, ESR x 12",
    "C1 dried out ESR × 4 to 50 %": "C1 dried out to 50 %, ESR x 4",
    "C1 dried out": "C1 dried out to 30 %, ESR x 8",
    "C1: open": "C1 open",
    "C2 leaks 0.47k": "C2 leaks 470 Ω",
    "R2 wrong value 4k7": "R2 wrong value 4.7 kΩ",
    "C2 wrong value 47u": "C2 wrong value 47 µF",
    "U1  gives 6200 mV": "U1 gives 6.2 V",
    "J1 worn 3R3": "J1 worn 3.3 Ω",
    "J1 cracked": "J1 cracked 50 mΩ",
}


@pytest.mark.parametrize("typed", TYPED)
def test_as_people_type_it(typed):
    assert str(read_fault(typed, RADIO)) == TYPED[typed]


REFUSED = {
    "": "not a fault in one line",
    "C1": "no condition known",
    "C1 is odd": "no condition known",
    "C1 opened": "no condition known",
    "C77 open": "no such part",
    "R2 dried out": "does not happen to the part series resistor",
    "R2 blown": "does not happen",
    "F1 worn 3 Ω": "does not happen",
    "J1 wrong value 3 Ω": "does not happen",
    "C1 corrupt": "does not happen",
    "R2 wrong value": "its figure is missing",
    "R2 wrong value 3 V": "V",
    "U1 gives": "its figure is missing",
    "U1 gives 6 Ω": "Ω",
    "C1 dried out to 0 %": "not so many %",
    "C1 dried out to 200 %": "not so many %",
    "C1 dried out ESR x much": "not so many x",
    "C1 dried out to 20 %, to 30 %": "does not belong there",
    "C1 open 3 Ω": "does not belong there",
    "C2 leaks -4 Ω": "4",
    "J1 worn 3 GΩ": "out of range",
}


@pytest.mark.parametrize("typed", REFUSED)
def test_what_is_no_fault_is_one_line(typed):
    with pytest.raises(RepairlibError) as problem:
        read_fault(typed, RADIO)
    assert REFUSED[typed] in str(problem.value)


def test_only_a_memory_chip_can_be_corrupt_and_nothing_else_happens_to_it():
    assert read_fault("M1 corrupt", PRINTER).condition == "corrupt"
    with pytest.raises(RepairlibError, match="corrupt"):
        read_fault("M1 open", PRINTER)


def test_two_faults_of_one_part_are_refused():
    with pytest.raises(RepairlibError, match="two faults of one part"):
        read_faults("C1 open; c1 short", RADIO)


ACTS = {
    "C1 dried out to 25 %, ESR x 6": [("C1", 550e-6)],
    "C1 leaks 40 Ω": [("C1", 2200e-6), ("R beside C1", 40.0)],
    "C1 open": [("R of C1", 1e8)],
    "C1 short": [("R of C1", 0.01)],
    "C1 reversed": [
        ("C1", 2200e-6),
        ("R beside C1", 0.1 / 2200e-6),
        ("D against C1", 1e-9),
        ("R against C1", 3e-3 / 2200e-6),
    ],
    "R2 wrong value 1 kΩ": [("R2", 1e3)],
    "J1 worn 4 Ω": [("R beside R of J1", 4.0), ("R of J1", 0.02)],
    "U1 gives 6 V": [("U1", 6.0), ("R inside U1", 10e3)],
    "U1 gone": [],
}


@pytest.mark.parametrize("typed", ACTS)
def test_what_it_makes_of_the_part(typed):
    fault = read_fault(typed, RADIO)
    parts = as_it_acts(RADIO.part(fault.part).circuit, fault)
    assert [part.name for part in parts] == [name for name, _ in ACTS[typed]]
    assert [part.value for part in parts] == pytest.approx([value for _, value in ACTS[typed]])


def test_a_cracked_joint_opens_when_it_is_warm():
    fault = read_fault("J1 cracked 0.1 Ω", RADIO)
    joint = RADIO.part("J1").circuit
    assert [as_it_acts(joint, fault, warm)[0].value for warm in (False, True)] == [0.1, 1e8]


def test_a_diode_that_is_reversed_points_the_other_way():
    fault = read_fault("D1 reversed", RADIO)
    (diode,) = as_it_acts(RADIO.part("D1").circuit, fault)
    assert diode.nodes == ("rail", "a1")


def test_each_condition_names_what_it_happens_to():
    for name, condition in CONDITIONS.items():
        assert condition.letters or name == "corrupt"
