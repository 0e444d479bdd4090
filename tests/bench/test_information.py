"""What a reading tells of the suspects."""

from dataclasses import replace
from math import log2

import pytest

from repairlib.bench.attempt import Task, walked
from repairlib.bench.conditions import read_fault
from repairlib.bench.information import (
    OVER,
    Belief,
    across,
    alike,
    believed,
    best_next,
    cuts,
    entropy,
    gain,
    learned,
    predicted,
    shown_by,
)
from repairlib.bench.moves import Move, Reading
from repairlib.bench.practice_set import demo_set, read_set
from repairlib.bench.state import OWN_PLUG, SUPPLY, Feed, Fitted, begin
from repairlib.bench.step import at_once
from repairlib.bench.suspects import Suspect, all_suspects, as_if, listed_suspects
from repairlib.bench.where import on_mains_side

DIVIDER = read_set("""title: two resistors
says: It is wrong.
works: It is right.
feed: P1, inlet in 0, 10 V, 100 mA
rail: middle, at out, 5 V, 5 %
loads: I1
board: 60 x 40
fault: R1 open
fault: R2 open
fault: R1 wrong value 3 kΩ
part,is,from,to,value,more,x,y,wide,high
P1,adapter,in,0,10 V,limit 1 A,5,20,8,8
R1,resistor,in,out,1 kΩ,,30,20,8,3
R2,resistor,out,0,1 kΩ,,50,20,8,3
I1,lamp,in,0,10 mA,load,50,40,6,6
""")
OUT = Move("volts", ("out", "0"))
IN = Move("volts", ("in", "0"))


def shows(volts: float) -> Reading:
    return Reading("multimeter", ("out", "0"), f"{volts} V", volts, "V")


def on(*faults: str):
    state = begin(DIVIDER, tuple(read_fault(one, DIVIDER) for one in faults), "seed")
    return replace(state, feed=Feed(SUPPLY, 10.0, 0.1))


@pytest.mark.published("C. E. Shannon, A mathematical theory of communication, 1948, section 6")
def test_entropy_of_the_worked_example():
    # H(1/2, 1/3, 1/6) = H(1/2, 1/2) + 1/2 H(2/3, 1/3), the third property stated there
    whole = entropy([1 / 2, 1 / 3, 1 / 6])
    assert whole == pytest.approx(entropy([0.5, 0.5]) + 0.5 * entropy([2 / 3, 1 / 3]))
    assert entropy([0.25] * 4) == log2(4)


def test_a_reading_that_tells_all_suspects_apart_tells_all_bits():
    belief = believed(listed_suspects(DIVIDER))
    assert belief.bits == 2.0  # nothing, and three faults
    assert gain(belief, OUT, on()) == 2.0  # 5 V, 0 V, 10 V, 2.5 V
    assert gain(belief, IN, on()) == 0.0
    move, bits = best_next(belief, on())
    assert (move, bits) == (OUT, 2.0)


@pytest.mark.parametrize("fault, shown", [("R1 open", 0.0), ("R2 open", 10.0)])
def test_a_reading_leaves_who_fits_it(fault, shown):
    after = learned(believed(listed_suspects(DIVIDER)), OUT, shows(shown), on())
    (left,) = (after.suspects[place] for place in after.likely)
    assert str(left) == fault
    assert after.bits < 0.3


def test_what_lies_between_two_severities_fits_both():
    among = tuple(
        Suspect("R1 wrong", (read_fault(f"R1 wrong value {ohm}", DIVIDER),), 1.0)
        for ohm in ("2 kΩ", "4 kΩ", "100 kΩ")
    )
    after = learned(believed(among), OUT, shows(10 / 4), on())  # as with 3 kΩ
    assert after.likely == (0, 1)


def test_a_renewed_part_is_blamed_no_more():
    blamed = Suspect("", (read_fault("R1 open", DIVIDER),), 1.0)
    renewed = on("R2 open").with_place("R1", fitted=Fitted(new=True))
    seen = as_if(renewed, blamed)
    assert seen.place("R1").fitted.fault is None
    assert seen.place("R2").fitted.fault is None
    assert as_if(on("R2 open"), blamed).place("R1").fitted.fault is not None


def test_what_is_worked_out_does_not_hang_on_the_true_fault():
    belief = believed(all_suspects(DIVIDER))
    assert learned(belief, OUT, shows(5.0), on("R1 open")) == learned(belief, OUT, shows(5.0), on())


def test_alike_within_what_a_meter_may_be_off():
    assert alike("volts", 9.0, 9.1) and not alike("volts", 9.0, 9.4)
    assert alike("ohms", OVER, OVER) and not alike("ohms", 1e6, OVER)


def test_without_a_part_the_others_share_its_belief():
    belief = Belief(listed_suspects(DIVIDER), (0.1, 0.5, 0.2, 0.2)).without(["R1"])
    assert belief.by_part() == {"R2": pytest.approx(2 / 3), "": pytest.approx(1 / 3), "R1": 0.0}


def test_cuts_of_an_attempt_say_what_each_reading_told():
    task = Task(DIVIDER, (read_fault("R2 open", DIVIDER),), "seed")
    plug, first, second = cuts(walked(task, ["plug in", "volts in 0", "volts out 0"]))
    assert plug is None
    assert first.before == first.after and first.best == OUT and first.best_bits == 2.0
    assert second.left == 1 and second.after < 0.3 and second.expected == pytest.approx(2.0)


@pytest.mark.behaviour
@pytest.mark.parametrize("line", ["", "C1 dried out to 35 %, ESR x 6", "D1 open"])
def test_what_is_foreseen_is_what_the_instrument_shows(line):
    """Also where a point floats, so that a meter at another would change it, and between two."""
    radio = demo_set("desk radio")
    faults = (read_fault(line, radio),) if line else ()
    state = replace(begin(radio, faults, "seed"), feed=Feed(OWN_PLUG))
    points = [point for point in radio.points if point != "0" and not on_mains_side(radio, point)]
    moves = [across(verb, point) for verb in ("volts", "scope") for point in points]
    moves += [Move("volts", ("a", "out")), Move("scope", ("rail", "out"), {}, "ac")]
    for move in moves:
        shown = at_once(state, move)[1].reading
        foreseen = predicted(state, Suspect("", faults, 1.0), move)
        assert alike(move.verb, shown_by(shown), foreseen), (move, shown, foreseen)
