"""The walk of a first power-up: its order, its stops, its ends; random walks that break no rule."""

import json
import os
import random
from dataclasses import replace
from functools import lru_cache

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.core.safety import HAZARDS
from repairlib.power_up import (
    CAUSE,
    FINE,
    HAND_ON,
    LAMP,
    LIMITED,
    NEITHER,
    POWER_OFF,
    VERIFY,
    WRONG,
    RailToCheck,
    Reading,
    Setup,
    begin,
    checks_of,
    from_dict,
    may_take_back,
    rail_to_check,
    read_reading,
    read_setup,
    short_below,
    step,
    take_back,
    walked,
    windows,
)
from repairlib.power_up import walk as module
from repairlib.power_up.checks import BEFORE
from tests.documents import document

UNSURE = "cannot tell"
FIVE = RailToCheck("+5 V", 4.75, 5.25, 10.0, 0.05)
MINUS = RailToCheck("-12 V", -13.2, -10.8, 40.0)
SET = Setup(9.0, 0.25, (FIVE, MINUS))
SETS = (
    SET,
    Setup(12.0, 2.0, (FIVE,)),
    replace(SET, supply=NEITHER),
    replace(SET, supply=LAMP),
    replace(SET, voltage=61.0),
)
STARTS = tuple(begin(setup) for setup in SETS)
# What a sound set reads, by the first word of the check.
SOUND = {"ohms": 500.0, "power": 0.01, "ripple": 0.02}


def sound(check):
    """The reading that lets the check pass."""
    if not check.unit:
        return Reading(check.key, FINE)
    word = check.key.split()[0]
    return Reading(check.key, value=SOUND.get(word) or (check.low + check.high) / 2)


def walked_to(key, setup=SET):
    """The state in which that check is due."""
    state = begin(setup)
    while state.check.key != key:
        state = step(state, sound(state.check))
    return state


@pytest.mark.common_practice
def test_the_order_of_the_checks():
    keys = [one.key for one in checks_of(SET)]
    assert keys == [
        *("dead", "foreign metal", "polarity", "ohms +5 V", "ohms -12 V", "fuse"),
        *("power 1", "power 2", "power 3", "power 4"),
        *("volts +5 V", "volts -12 V", "ripple +5 V"),
        *("smell", "warm parts", "noise"),
    ]
    assert [one.key for one in checks_of(SET) if not one.powered] == keys[:6]
    for one in checks_of(SET):
        assert one.do.endswith((".", "?")) and one.why.endswith(".")
        assert one.cautions and set(one.cautions) <= set(HAZARDS)


@pytest.mark.behaviour
def test_a_sound_set_ends_in_verify():
    state = walked_to("noise")
    state = step(state, Reading("noise", FINE))
    assert state.end == VERIFY and state.check is None
    assert state.do.startswith("Verify") and "not judged: -12 V" in state.why
    with pytest.raises(RepairlibError, match="the walk has ended"):
        step(state, Reading("noise", FINE))


@pytest.mark.common_practice
@pytest.mark.parametrize("supply", [NEITHER, LAMP])
def test_without_a_limited_supply_the_power_is_handed_on(supply):
    state = begin(replace(SET, supply=supply))
    while not state.end:
        assert not state.powered and state.check.stage == BEFORE
        state = step(state, sound(state.check))
    assert state.end == HAND_ON and state.at == 6 and "mains" in state.cautions
    due = "licensed practice" if supply == LAMP else "somebody who has a limited supply"
    assert due in state.why


@pytest.mark.published(document("IEC 62368-1", "5.2.2, ES1: 60 V dc"))
def test_above_60_volts_it_is_handed_on_at_once():
    high = RailToCheck("+150 V", 140.0, 160.0, 1000.0)
    for setup in (replace(SET, voltage=61.0), replace(SET, rails=(FIVE, high))):
        assert begin(setup).end == HAND_ON and "60 V dc" in begin(setup).why


@pytest.mark.behaviour
@pytest.mark.parametrize(("value", "error"), [(0.3, 0.0), (9.9, 0.0), (0.0, 0.0), (5.0, 4.0)])
def test_a_rail_that_reads_short_is_a_stop(value, error):
    state = step(walked_to("ohms +5 V"), Reading("ohms +5 V", value=value, error=error))
    assert state.stop.check == "ohms +5 V" and not state.powered
    for other in (Reading("ohms -12 V", value=500.0), Reading("power 1", value=0.0)):
        with pytest.raises(RepairlibError, match="not what is asked now"):
            step(state, other)
    with pytest.raises(RepairlibError, match="no cause is written"):
        step(state, Reading(CAUSE, "  "))
    state = step(state, Reading(CAUSE, "tantalum C7 shorted, replaced"))
    assert state.check.key == "foreign metal" and state.stop is None


@pytest.mark.behaviour
def test_a_reading_that_cannot_be_told_is_taken_again():
    state = walked_to("ohms +5 V")
    again = step(state, Reading("ohms +5 V", value=10.0, error=1.0))
    assert again.check == state.check and not again.stop and "may or may not" in again.told
    assert step(walked_to("polarity"), Reading("polarity", UNSURE)).check.key == "polarity"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "reading",
    [
        Reading("power 2", value=0.3),  # its limit
        Reading("power 2", value=0.286),  # 95 % of it
        Reading("power 2", value=0.28, error=0.01),  # may be at its limit
        Reading("volts +5 V", value=5.6),
        Reading("volts -12 V", value=12.0),
        Reading("ripple +5 V", value=0.08),
        Reading("smell", WRONG),
        Reading("warm parts", UNSURE),
        Reading("noise", WRONG),
        Reading("power 1", value=0.2),
    ],
    ids=lambda one: f"{one.check} {one.found or one.value}",
)
def test_a_stop_under_power_wants_power_off_first_then_the_cause(reading):
    before = walked_to(reading.check)
    state = step(before, reading)
    assert state.stop and state.powered and state.do.startswith("Power off")
    for early in (Reading(CAUSE, "found"), Reading(HAND_ON), sound(before.check)):
        with pytest.raises(RepairlibError, match="Accepted: power off"):
            step(state, early)
    state = step(state, Reading(POWER_OFF))
    assert not state.powered and state.do.startswith("Find the cause")
    with pytest.raises(RepairlibError, match="Accepted: cause, hand on"):
        step(state, sound(before.check))
    assert step(state, Reading(HAND_ON)).end == HAND_ON
    state = step(state, Reading(CAUSE, "a bridge at IC2"))
    assert (state.at, state.check.key) == (0, "dead")


@pytest.mark.behaviour
def test_power_can_be_switched_off_at_any_check_under_power():
    state = step(walked_to("volts +5 V"), Reading(POWER_OFF))
    assert state.stop.why == "switched off by hand" and not state.powered
    assert step(state, Reading(CAUSE, "the probe slipped")).check.key == "dead"


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("key", "reading", "told"),
    [
        ("dead", Reading("dead", "yes"), "no answer to dead"),
        ("dead", Reading("dead"), "no answer to dead"),
        ("ohms +5 V", Reading("ohms +5 V"), "nothing was measured"),
        ("ohms +5 V", Reading("ohms +5 V", value=float("inf")), "for OL|not a number"),
        ("ohms +5 V", Reading("ohms +5 V", value=float("nan")), "not a number"),
        ("ohms +5 V", Reading("ohms +5 V", value=True), "not a number"),
        ("ohms +5 V", Reading("ohms +5 V", value=-3.0), "charge on it"),
        ("ohms +5 V", Reading("ohms +5 V", value=30.0, error=-1.0), "error below 0"),
        ("power 1", Reading("power 1", value=-0.1), "leads the right way"),
        ("polarity", Reading("fuse", FINE), "Accepted: polarity, hand on"),
    ],
)
def test_what_does_not_belong_is_refused_in_one_line(key, reading, told):
    state = walked_to(key)
    kept = state.to_dict()
    with pytest.raises(RepairlibError, match=told) as error:
        step(state, reading)
    assert "\n" not in str(error.value) and state.to_dict() == kept


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "make",
    [
        lambda: RailToCheck("", 4.75, 5.25, 10),
        lambda: RailToCheck("+5 V", 5.25, 4.75, 10),
        lambda: RailToCheck("+5 V", -1, 5.25, 10),
        lambda: RailToCheck("+5 V", 4.75, 5.25, 0.3),  # a short behind two leads
        lambda: RailToCheck("+5 V", 4.75, 5.25, 10, 0),
        lambda: Setup(0, 1, (FIVE,)),
        lambda: Setup(9, float("nan"), (FIVE,)),
        lambda: Setup(9, 1, ()),
        lambda: Setup(9, 1, (FIVE, FIVE)),
        lambda: Setup(9, 1, (FIVE,), "a long lead"),
    ],
    ids=range(10),
)
def test_a_set_that_is_none_is_refused(make):
    with pytest.raises(RepairlibError):
        make()


@pytest.mark.behaviour
def test_a_rail_of_the_table_is_taken_with_its_limits():
    rail = rail_to_check(windows()["+12 V"], short_below(12, 0.5))
    assert rail == RailToCheck("+12 V", 11.4, 12.6, 20.0, 0.12)


@pytest.mark.behaviour
def test_what_is_kept_is_walked_again_and_no_check_can_be_skipped():
    state = step(walked_to("power 2"), Reading("power 2", value=0.4))
    kept = json.loads(json.dumps(state.to_dict(), allow_nan=False))
    assert from_dict(kept) == state
    del kept["readings"][3]  # the ohms of a rail
    with pytest.raises(RepairlibError, match="not what is asked now"):
        from_dict(kept)
    for wrong in ({}, [], None, {"setup": {}, "readings": []}, kept | {"readings": [{"x": 1}]}):
        with pytest.raises(RepairlibError):
            from_dict(wrong)


def any_reading(chance, state):
    """A reading for this state: mostly one that belongs, sound or not."""
    roll = chance.random()
    if state.end or roll < 0.03:
        keys = [one.key for one in state.checks] or ["dead"]
        return Reading(chance.choice(keys), FINE, 1.0)
    if roll < 0.05:
        return Reading(chance.choice((HAND_ON, POWER_OFF, CAUSE, "nonsense")), "by chance")
    if state.stop:
        return Reading(chance.choice((POWER_OFF, CAUSE, CAUSE)), chance.choice(("found", "")))
    check = state.check
    if roll < 0.90:
        return sound(check)
    if not check.unit:
        return Reading(check.key, chance.choice((FINE, WRONG, UNSURE, "")))
    value = chance.choice((0.0, 0.3, 9.9, 10.0, 0.06, 5.3, -12.0, 1e6, -1e6, float("nan"), None))
    return Reading(check.key, value=value, error=chance.choice((0.0, 0.5, 1e4)))


def passes(check, reading):
    """By hand: whether a reading lets its check pass, clear of its limits by its error."""
    if not check.unit:
        return reading.found == FINE
    low, high = reading.value - reading.error, reading.value + reading.error
    above = check.low is None or low >= check.low
    return above and (check.high is None or high <= check.high)


def walk(chance):
    """One random walk, with its rules held by what was read and not by what the state says."""
    state = chance.choice(STARTS)
    checks = {one.key: one for one in state.checks}
    ohms = {rail.name: rail.short_below for rail in state.setup.rails}
    passed, stopped = set(), ""  # since the last stop that was answered
    for _ in range(chance.choice((20, 30, 50))):
        reading = any_reading(chance, state)
        try:
            after = step(state, reading)
        except RepairlibError:
            assert not (state.check and reading == sound(state.check))
            if state.end:
                break
            continue
        assert not state.end, "nothing is taken after an end"
        if reading.check == HAND_ON:
            assert after.end == HAND_ON and not state.powered
        elif stopped:
            assert reading.check == (POWER_OFF if stopped == "powered" else CAUSE)
            assert after.at == state.at or reading.check == CAUSE
            assert after.end is None
            if reading.check == CAUSE:
                assert reading.found and not after.powered
                passed &= {one.key for one in state.checks[: after.at]}
                assert not any(key.startswith("ohms") for key in passed), "measured again"
                stopped = ""
            else:
                stopped = "off"
        elif reading.check == POWER_OFF:
            stopped = "off"
        elif passes(checks[reading.check], reading):
            assert reading.check == state.check.key
            passed.add(reading.check)
        else:
            assert reading.check not in passed and after.at == state.at
            if after.stop:
                stopped = "powered" if checks[reading.check].powered else "off"
        assert bool(after.stop) == bool(stopped) or after.end == HAND_ON
        if after.powered and not stopped:
            for rail in ohms:
                assert f"ohms {rail}" in passed, "a rail was powered that was not measured"
            assert state.setup.supply == LIMITED and state.setup.voltage <= 60
        if after.end == VERIFY:
            assert passed == set(checks) and not stopped
            assert any(one.powered for one in checks.values())
        if after.end == HAND_ON and reading.check != HAND_ON:
            assert passed == set(checks) and state.setup.supply != LIMITED
        state = after
    return state


def walks(monkeypatch, seed, count):
    """How many walks ended how."""
    # The sentence of each verdict is made once for equal readings: it is most of the time.
    monkeypatch.setattr(module, "decide", lru_cache(maxsize=None)(module.decide))
    chance = random.Random(seed)
    ends = [walk(chance).end for _ in range(count)]
    return {end: ends.count(end) for end in (VERIFY, HAND_ON, None)}


@pytest.mark.behaviour
def test_random_walks_in_short(monkeypatch):
    seed = random.SystemRandom().randrange(10**9)
    ends = walks(monkeypatch, seed, 5000)
    assert min(ends.values()) > 50, f"seed {seed}: {ends}"


@pytest.mark.behaviour
@pytest.mark.slow
def test_random_walks(monkeypatch):
    """WALKS=100000 python -m pytest -n 0 tests/power_up/test_walk.py     for as many"""
    seed = random.SystemRandom().randrange(10**9)
    many = int(os.environ.get("WALKS", "20000"))
    ends = walks(monkeypatch, seed, many)
    assert min(ends.values()) > many / 100, f"seed {seed}: {ends}"


@pytest.mark.behaviour
def test_a_reading_is_taken_back_and_measured_anew_but_never_past_a_stop():
    state = walked_to("power 2")
    back = take_back(state)
    assert back.check.key == "power 1" and back == walked(SET, state.readings[:-1])
    stopped = step(state, Reading("power 2", value=0.3))
    off = step(stopped, Reading(POWER_OFF))
    again = step(off, Reading(CAUSE, "C1 turned"))
    for held in (STARTS[0], stopped, off, again, step(STARTS[0], Reading(HAND_ON))):
        assert not may_take_back(held)
        with pytest.raises(RepairlibError, match="a new reading"):
            take_back(held)
    after = step(again, Reading("dead", FINE))
    assert take_back(after) == again  # no further: its stop stays


@pytest.mark.behaviour
def test_a_set_is_read_as_it_is_typed():
    setup = read_setup(
        "9 V", "250 mA", "rail | tolerance | ripple\n+5 V | | 50 mV\n-12 V | 10 % | "
    )
    assert [(one.name, one.low, one.high) for one in setup.rails] == [
        ("+5 V", 4.75, 5.25),
        ("-12 V", -13.2, -10.8),
    ]
    assert [one.short_below for one in setup.rails] == [16.7, 40.0]
    assert [one.ripple for one in setup.rails] == [0.05, None]
    for rails, named in (
        ("rail\n", "rail"),
        ("rail | tolerance\n+5 V | 5\n+12 V | wide", "row 2 of the rails"),
        ("rail\n0 V", "row 1 of the rails"),
        ("rail\n+5 V\n5 V", "each rail once"),
        ("ripple\n50 mV", "rail"),
    ):
        with pytest.raises(RepairlibError, match=named):
            read_setup("9 V", "250 mA", rails)


@pytest.mark.behaviour
def test_a_reading_carries_the_meters_error():
    check = walked_to("ohms +5 V").check
    assert read_reading(check, "310 Ω", "1 %") == Reading("ohms +5 V", value=310.0, error=3.1)
    for typed in ("OL", "", "5 V", "some"):
        with pytest.raises(RepairlibError):
            read_reading(check, typed)
