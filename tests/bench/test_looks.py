"""Eyes and nose: what is always told as it is, and what looks may hide or feign."""

from dataclasses import replace

import pytest

from repairlib.bench.conditions import CONDITIONS, Fault, read_fault
from repairlib.bench.looks import (
    BURNT,
    GLUE,
    MISSING,
    NOTHING,
    SAID,
    look,
    look_over,
    looks_of,
    smell,
)
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import LIFTED, Fitted, begin

SEEDS = range(60)
RADIO = demo_set("desk radio")


def seen(fault: str, seed: object = "1", part: str = ""):
    faults = (read_fault(fault, RADIO),) if fault else ()
    return looks_of(begin(RADIO, faults, str(seed)), part or fault.split()[0])


def test_what_is_missing_is_always_seen():
    for title in DEMO:
        for part in demo_set(title).parts:
            state = begin(demo_set(title), (), "1").with_place(part.name, fitted=None)
            found = looks_of(state, part.name)
            assert found.signs == {MISSING} and "missing" in found.facts[0]


def test_which_way_round_is_always_told_as_it_is():
    for seed in SEEDS:
        assert not seen("C1 dried out", seed).turned
        assert seen("C1 reversed", seed).turned
    sound = look(begin(RADIO, (), "1"), "C1").shown
    turned = look(begin(RADIO, (), "1").with_place("C1", fitted=Fitted(turned=True)), "C1").shown
    ends = [text.partition("its plus end points ")[2].split(",")[0] for text in (sound, turned)]
    assert set(ends) in ({"up", "down"}, {"left", "right"})
    assert "the board's plus" in sound and "the board's plus" in turned


def test_a_fuse_a_tantalum_and_an_empty_place_tell_what_they_carry():
    switch = demo_set("network switch")
    state = begin(switch, (read_fault("C2 gone", switch),), "1")
    assert "printed 47\N{NO-BREAK SPACE}µF 6.3 V" in look(state, "C4").shown
    assert "the board's plus is right" in look(state, "C2").shown
    assert "printed 1.25\N{NO-BREAK SPACE}A" in look(state, "F1").shown


def test_what_smoked_on_the_bench_is_burnt():
    state = begin(RADIO, (read_fault("U1 open", RADIO),), "1")
    smoked = replace(state, harm=("U1 smoked: it was too hot for too long.",))
    assert BURNT in looks_of(smoked, "U1").signs and BURNT not in looks_of(state, "U1").signs


def test_pads_and_print_are_told():
    state = begin(RADIO, (), "1").with_place("C1", pads=LIFTED)
    assert "come off the board" in look(state, "C1").shown
    renewed = state.with_place("C1", fitted=Fitted(new=True, value=1e-3, rated=35.0))
    assert "1000\N{NO-BREAK SPACE}µF 35 V" in look(renewed, "C1").shown


@pytest.mark.common_practice
def test_many_bad_parts_look_sound_and_some_sound_ones_bad():
    bulged = sum(bool(seen("C1 dried out", seed).signs) for seed in SEEDS)
    glued = sum(GLUE in seen("", seed, "C1").signs for seed in SEEDS)
    assert 0.15 * len(SEEDS) < bulged < 0.7 * len(SEEDS)
    assert 0 < glued < 0.25 * len(SEEDS)
    assert not any(seen("U1 gives 6.2 V", seed).signs for seed in SEEDS), "nothing shows that"


def test_a_glance_at_the_whole_board_tells_what_stands_out():
    state = begin(RADIO, (), "5").with_place("C3", fitted=None).with_place("C1", pads=LIFTED)
    told = look_over(state)
    assert "C3 is missing" in told and "C1: one of its pads" in told and "R1" not in told


def test_a_cracked_joint_takes_the_lens():
    joint = next(part.name for part in RADIO.parts if part.what == "joint")
    state = begin(RADIO, (Fault(joint, "cracked", {"cold": 0.05}),), "1")
    with_lens = [replace(state, seed=str(seed)) for seed in SEEDS]
    assert not any(looks_of(one, joint).signs for one in with_lens)
    found = [one for one in with_lens if looks_of(one, joint).with_lens]
    assert 0 < len(found) < len(SEEDS)
    assert "ring" in look(found[0], joint, lens=True).shown
    assert "ring" not in look(found[0], joint).shown


def test_the_nose_finds_what_shows_or_nothing():
    told = {smell(begin(RADIO, (read_fault("C1 leaks 200 Ω", RADIO),), str(n)), "C1").shown
            for n in SEEDS}  # fmt: skip
    assert NOTHING in told and len(told) == 2
    assert {smell(begin(RADIO, (), str(n)), "C1").shown for n in SEEDS} == {NOTHING}


def test_every_condition_of_every_set_can_be_looked_at():
    for title in DEMO:
        made = demo_set(title)
        for text in made.faults:
            fault = read_fault(text, made)
            state = begin(made, (fault,), "1")
            told = look(state, fault.part, lens=True).shown
            assert told.startswith(fault.part) and fault.condition in CONDITIONS
            assert looks_of(state, fault.part).signs <= {*SAID, MISSING}
