"""Every instrument at every part and point of the demo sets: a reading, never a wreck.

A few states; all with BENCH=all.
"""

import os
from dataclasses import replace
from math import isfinite

import pytest

from repairlib.bench.bench_supply import supply_shows
from repairlib.bench.conditions import read_fault
from repairlib.bench.electric import electric
from repairlib.bench.lamp_glow import glow
from repairlib.bench.looks import look, smell
from repairlib.bench.measuring import INSTRUMENTS
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import LAMP, OFF, OWN_PLUG, SUPPLY, Feed, begin
from repairlib.bench.thermometer import temperature

ALL = os.environ.get("BENCH") == "all"
CASES = [(title, fault) for title in DEMO for fault in ("", *demo_set(title).faults)]
FEEDS = (OFF, "charged", OWN_PLUG, LAMP, SUPPLY)
STATES = [(*case, feed) for case in CASES for feed in FEEDS]
SAMPLE = [one for one in STATES[6::61] if one[2] not in (OWN_PLUG, LAMP)]  # those take longer


@pytest.mark.parametrize(("title", "fault", "feed"), STATES if ALL else SAMPLE)
def test_a_reading_is_finite_or_none(title, fault, feed):
    made = demo_set(title)
    state = _fed(made, begin(made, (read_fault(fault, made),) if fault else (), "1"), feed)
    for part in made.parts[:: 1 if ALL else 8]:
        look(state, part.name, lens=True), smell(state, part.name), temperature(state, part.name)
        for verb, instrument in INSTRUMENTS.items():
            reading = instrument(state, *part.nodes)
            where = f"{verb} {part.name}: {reading}"
            assert reading.shown and reading.points == part.nodes, where
            assert reading.value is None or isfinite(reading.value), where
            assert isfinite(reading.error) and 0 <= reading.seconds <= 60, where
            assert bool(reading.harm) or not reading.hurts, where
            assert not (reading.harm and reading.value is not None), where
    if feed == SUPPLY:
        assert isfinite(supply_shows(state).value)
    if feed == LAMP:
        assert 0 <= glow(state).value <= 1.01


def _fed(made, state, feed):
    if feed == "charged":
        held = electric(replace(state, feed=Feed(OWN_PLUG))).held
        return replace(state, charges=dict(held))
    if feed == SUPPLY:
        return replace(state, feed=Feed(SUPPLY, made.feed_volts, made.feed_amps))
    return replace(state, feed=Feed(feed, lamp=25.0))
