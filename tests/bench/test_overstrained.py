"""What stands above its rating or the wrong way round: by family, by volts, old parts and new."""

from __future__ import annotations

from dataclasses import replace
from math import exp, inf

import pytest

from repairlib.bench import Attempt, Task, begin, demo_set, judge, strain
from repairlib.bench.conditions import as_it_acts, read_faults
from repairlib.bench.electric import beyond, electric
from repairlib.bench.passing import passing
from repairlib.bench.state import HARMED, OWN_PLUG, SUPPLY, Feed
from repairlib.bench.strain import (
    family_of,
    most_volts,
    paths_against,
    seconds_against,
    seconds_borne,
)
from repairlib.circuits import CircuitPart, operating_point
from repairlib.health import derating
from repairlib.missing_parts import tantalum_surge

RADIO, SWITCH, MAKER = map(demo_set, ("desk radio", "network switch", "label maker"))


def after(*moves, faults="", of=RADIO):
    """The attempt after these moves, or those until it ended."""
    attempt = Attempt(Task(of, read_faults(faults, of) if faults else (), "demo"))
    for move in moves:
        attempt = attempt if attempt.state.ended else attempt.after(move)
    return attempt


def renewed(name, how="", tool="vacuum"):
    return f"take out {name} with {tool}", f"clean {name}", f"fit {name} {how}".strip()


def against(volts, farad, family):
    """The amps that a reversed capacitor lets through."""
    parts = paths_against(CircuitPart("C1", ("a", "0"), farad, {"esr": 0.1}), family)
    source = CircuitPart("V1", ("a", "0"), volts, {"mains": 0.0, "series": 0.0})
    return -operating_point((source, *parts)).amps["V1"]


@pytest.mark.behaviour
def test_the_limits_in_reverse_are_those_of_the_other_topics():
    assert strain.REVERSE_VOLTS == derating.REVERSE_VOLTS
    assert strain.TANTALUM_REVERSE_PART == tantalum_surge.REVERSE_PART
    assert strain.TANTALUM_REVERSE_VOLTS == tantalum_surge.REVERSE_VOLTS


@pytest.mark.published("GE 23A: a wet aluminium bears at most 1.5 V the wrong way round")
def test_a_reversed_aluminium_lets_little_through_below_its_volts_and_much_above():
    leak = 1.0 / 1e3  # 100 µF
    assert against(1.0, 100e-6, "wet") == pytest.approx(leak, rel=0.02)
    assert against(6.0, 100e-6, "wet") > 50 * against(1.5, 100e-6, "wet")
    assert against(6.0, 470e-6, "wet") > 3 * against(6.0, 100e-6, "wet")


@pytest.mark.published("AVX: a tantalum bears a tenth of its rating in reverse, at most 1 V")
def test_a_reversed_tantalum_is_near_a_short_where_it_bears_no_more():
    part = SWITCH.part("C4")  # 6.3 V
    assert seconds_against(part, None, 0.6) == inf and seconds_against(part, None, 0.7) < 10
    assert seconds_against(part, 25.0, 0.9) == inf and seconds_against(part, 25.0, 1.1) < 10
    assert against(1.5, 47e-6, "tantalum") > 0.5 > 20 * against(0.5, 47e-6, "tantalum")


@pytest.mark.common_practice
def test_each_family_has_its_own_limit_and_time():
    tantalum, aluminium, ceramic = SWITCH.part("C2"), RADIO.part("C2"), SWITCH.part("C3")
    assert [family_of(one) for one in (tantalum, aluminium, ceramic)] == [
        "tantalum",
        "wet",
        "ceramic",
    ]
    assert seconds_borne(tantalum, None, 10.0) == seconds_borne(aluminium, None, 28.0) == inf
    assert seconds_borne(ceramic, None, 32.0) == inf > seconds_borne(ceramic, None, 48.0)
    assert seconds_borne(tantalum, 16.0, 15.0) == inf
    assert seconds_borne(tantalum, None, 16.0) < 1 < seconds_borne(tantalum, None, 11.0)
    ratio = seconds_borne(aluminium, None, 30.0) / seconds_borne(aluminium, None, 31.25)
    assert ratio == pytest.approx(exp(0.05 / 0.05))
    assert family_of(RADIO.part("C9")) == "" and most_volts(RADIO.part("C9"), None) == inf


@pytest.mark.common_practice
@pytest.mark.parametrize("how", ["100 µF 10 V turned", "100 µF 4 V"])
def test_a_tantalum_fitted_wrong_flares_up_on_a_strong_feed(how):
    fitted = renewed("C2", how)[1:]
    end = after(*fitted, "plug in", "wait 2 min", faults="C2 gone", of=SWITCH).state
    assert end.ended.kind == HARMED and end.ended.hazard == "heat and fire"
    assert "C2" in end.ended.why and end.place("C2").fitted.fault.condition == "short"


@pytest.mark.common_practice
def test_a_small_limit_keeps_it_at_a_short_and_the_supply_shows_it():
    fitted = renewed("C4", "turned", "low melt")
    told = after(*fitted, "plug in with supply 5 V 250 mA", of=SWITCH).done[-1].told.words
    assert "constant current" in told


@pytest.mark.common_practice
def test_old_parts_suffer_from_a_supply_above_their_rating():
    fire = after("plug in with supply 11.4 V 1 A", "wait 5 min", of=SWITCH).state
    assert fire.ended.hazard == "heat and fire" and "C2" in fire.ended.why
    clamped = after("plug in with supply 14 V 2 A", "wait 5 min", of=SWITCH).state
    assert any("D1 smoked" in told for told in clamped.harm) or clamped.ended
    bang = after("plug in with supply 29.5 V 1 A", "wait 1 h", of=RADIO).state
    assert bang.ended.hazard == "flying leads and eyes" and "C1" in bang.ended.why
    dead = after("plug in with supply 24 V 1 A", "wait 2 min", of=MAKER).state
    assert dead.harm or dead.ended


@pytest.mark.common_practice
def test_a_surge_diode_holds_the_volts_down_and_does_not_bear_it():
    state = replace(begin(SWITCH, (), ""), feed=Feed(SUPPLY, 20.0, 0.8))
    assert "D1" in beyond(state) and 10.0 < electric(state).mean["f"] < 12.5
    calm = replace(state, feed=Feed(SUPPLY, 5.0, 0.8))
    assert beyond(calm) == {}


@pytest.mark.behaviour
@pytest.mark.parametrize("volts", [4.5, 5.0, 5.5])
def test_volts_as_on_its_own_plug_strain_nothing(volts):
    state = replace(begin(SWITCH, (), ""), feed=Feed(SUPPLY, volts, 1.2))
    end, events = passing(state, 7200.0)
    assert not events and all(not place.fitted.strain for place in end.places.values())


@pytest.mark.common_practice
def test_what_stood_reversed_leaks_when_it_goes_back_and_is_judged():
    back = ("volts C1", *renewed("C3", "old"))
    attempt = after(*back, "hand back", faults="C3 reversed")
    leaks = attempt.state.place("C3").fitted.fault
    assert leaks.condition == "leaks" and leaks.figures["ohm"] == pytest.approx(1000.0)
    judged = judge(attempt)
    assert not judged.passed and any("scrap" in str(act) for act in judged.dangers)
    new = judge(after(*renewed("C3"), "hand back", faults="C3 reversed"))
    assert not any("scrap" in str(act) for act in new.dangers)


@pytest.mark.common_practice
def test_one_that_was_turned_right_before_power_is_as_good_as_before():
    attempt = after(*renewed("C3", "turned"), *renewed("C3", "old"), "plug in", "wait 10 min")
    fitted = attempt.state.place("C3").fitted
    assert fitted.fault is None and not fitted.spoilt and not attempt.state.harm
    powered = after(
        *renewed("C3", "turned"), "plug in with supply 15 V 0.6 A", "unplug", "discharge C1",
        *renewed("C3", "old"),
    )  # fmt: skip
    assert powered.state.place("C3").fitted.spoilt


@pytest.mark.behaviour
def test_turning_an_old_part_round_does_not_mend_it():
    attempt = after(*renewed("C1", "old turned"), *renewed("C1", "old"), faults="C1 open")
    assert attempt.state.place("C1").fitted.fault.condition == "open"


@pytest.mark.from_memory("data sheets: a regulator bears up to 7 V from output to input")
def test_a_regulator_the_wrong_way_round_dies_above_seven_volts():
    dead = after(*renewed("U1", "turned"), "plug in with supply 12 V 0.3 A").state
    assert any("U1 smoked" in told for told in dead.harm)
    assert dead.place("U1").fitted.fault.condition == "open"
    lives = after(*renewed("U1", "turned", "low melt"), "plug in", "wait 5 min", of=SWITCH).state
    assert not lives.harm and electric(lives).mean["v33"] < 0.1


@pytest.mark.from_memory("silicon at some 175 °C; a regulator's limit is 125 to 150 °C")
def test_a_regulator_far_too_hot_dies():
    on = replace(begin(RADIO, (), ""), feed=Feed(OWN_PLUG))
    dies, _ = passing(on.as_warm({"U1": 175.0, "the board": 15.0}), 1.0)
    lives, _ = passing(on.as_warm({"U1": 140.0, "the board": 15.0}), 1.0)
    assert any("U1 smoked" in told for told in dies.harm) and not lives.harm


@pytest.mark.from_memory("the electrolyte of an aluminium capacitor boils at some 130 °C")
def test_a_leaking_one_boils_and_vents_and_hurts_nobody():
    faults = read_faults("C1 leaks 33 Ω", RADIO)
    state = replace(begin(RADIO, faults, ""), feed=Feed(OWN_PLUG))
    end, events = passing(state, 900.0)
    assert len(events) == 1 and "hisses" in events[0]
    assert end.heat["C1"] == pytest.approx(110.0) and not end.harm and end.ended is None


@pytest.mark.behaviour
def test_a_burst_is_told_once():
    harm = after(*renewed("C3", "turned"), "plug in", "wait 10 min").state.harm
    assert len(harm) == len(set(harm)) == 1


@pytest.mark.behaviour
def test_what_it_lets_through_is_made_of_plain_elements():
    (fault,) = read_faults("C3 reversed", RADIO)
    made = as_it_acts(RADIO.part("C3").circuit, fault)
    assert {part.letter for part in made} == {"C", "R", "D"}
