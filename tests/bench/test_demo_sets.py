"""The five demo sets: real circuits that hold their rails, with room for every part and name."""

import os
from dataclasses import replace

import pytest

from repairlib import demo_path
from repairlib.bench import CONDITIONS, read_faults, unfair, unfair_fault
from repairlib.bench.board_room import without_room
from repairlib.bench.electric import electric
from repairlib.bench.practice_set import DEMO, demo_set, read_set
from repairlib.bench.state import LIGHT, OWN_PLUG, Feed, begin
from repairlib.bench.still_works import misses

SHORT = sorted(demo_path("short-benches").glob("*.txt"))
ALL = os.environ.get("BENCH") == "all"
WITH_MAINS = ("desk radio", "keyboard", "printer controller")


def faults_of(title):
    of = demo_set(title)
    return [fault for line in (*of.faults, *of.together) for fault in read_faults(line, of)]


@pytest.mark.parametrize("title", DEMO)
def test_a_set_has_parts_faults_and_room(title):
    of = demo_set(title)
    assert of.title == title
    assert 12 <= len(of.parts) <= 25
    assert len(of.faults) + len(of.together) >= 10
    assert list(without_room(of)) == []


def test_all_conditions_are_used_somewhere():
    assert {fault.condition for title in DEMO for fault in faults_of(title)} == set(CONDITIONS) - {
        "burst"
    }  # that happens here


@pytest.mark.parametrize("title", WITH_MAINS)
def test_the_mains_side_has_its_own_parts_and_points_at_one_edge(title):
    of = demo_set(title)
    mains = [part for part in of.parts if part.mains]
    other = [part for part in of.parts if not part.mains]
    assert {part.what for part in mains} == {"mains fuse", "line capacitor", "bleed resistor"}
    assert max(part.x + part.wide / 2 for part in mains) < min(
        part.x - part.wide / 2 for part in other
    )
    touched = {point for part in mains for point in part.nodes}
    assert not touched & {point for part in other for point in part.nodes}
    assert of.behind in [part.name for part in mains]


@pytest.mark.common_practice
@pytest.mark.parametrize("title", DEMO)
def test_every_capacitor_bears_more_than_it_gets(title):
    """At high line and light load at least a tenth of its rating is left."""
    of = demo_set(title)
    on = replace(begin(of, (), ""), feed=Feed(OWN_PLUG, line=1.1), load=LIGHT)
    now = electric(on)
    for part in of.parts:
        if part.circuit and part.circuit.letter == "C" and not part.mains:
            across = now.between(*part.nodes)
            assert across + 1e-6 >= 0 and across <= 0.9 * part.rated, part.name


def test_a_sound_set_misses_nothing_and_a_fault_shows():
    label_maker = demo_set("label maker")
    assert misses(begin(label_maker, (), "")) == ()
    assert unfair_fault(label_maker, "J1 worn 4 Ω") == ()


@pytest.mark.skipif(not ALL, reason="minutes: BENCH=all")
@pytest.mark.parametrize("title", DEMO)
def test_every_set_and_each_of_its_faults_is_fair(title):
    assert list(unfair(demo_set(title))) == []


@pytest.mark.behaviour
@pytest.mark.parametrize("path", SHORT, ids=lambda path: path.stem)
def test_a_short_bench_is_fair(path):
    assert list(unfair(read_set(path.read_text(encoding="utf-8")))) == []
