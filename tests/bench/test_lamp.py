"""The lamp in series: what it lets through, and how it glows."""

from dataclasses import replace

import pytest

from repairlib.bench.attempt import Attempt, Task
from repairlib.bench.conditions import read_fault
from repairlib.bench.electric import electric
from repairlib.bench.lamp_glow import glow
from repairlib.bench.practice_set import DEMO, demo_set
from repairlib.bench.state import LAMP, OWN_PLUG, Feed, begin
from repairlib.core.errors import RepairlibError
from tests.bench.small_boards import board

FEED = "V1, in, 0, 10 V, series 10 mΩ"


def on_lamp(state, watts):
    return replace(state, feed=Feed(LAMP, lamp=watts))


@pytest.mark.common_practice
def test_a_short_gets_no_more_than_the_lamp_lets_through():
    # By hand: 10 W at 10 V are 1 A, whatever is shorted behind it; then the lamp is bright.
    shorted = on_lamp(board("R1, in, 0, 10 mΩ", feed=FEED), 10.0)
    amps = electric(shorted).mean["in"] / 10e-3
    assert amps == pytest.approx(1.0, rel=0.05)
    assert glow(shorted).shown == "the lamp is bright"


@pytest.mark.common_practice
def test_a_small_set_gets_nearly_its_volts_and_the_lamp_stays_dark():
    # By hand: cold it has a tenth of 10 Ω; 1 kΩ behind it gets 10 V × 1000 / 1001.
    light = on_lamp(board("R1, in, 0, 1 kΩ", feed=FEED), 10.0)
    assert glow(light).shown == "the lamp stays dark" and glow(light).value < 0.01


def test_without_a_lamp_there_is_no_glow():
    with pytest.raises(RepairlibError, match="no lamp"):
        glow(replace(board("R1, in, 0, 1 kΩ"), feed=Feed(OWN_PLUG)))


@pytest.mark.parametrize("title", DEMO)
def test_every_set_settles_behind_its_lamp(title):
    done = Attempt(Task(demo_set(title), (), "1")).after("plug in with lamp")
    assert "lamp" in done.done[-1].told.words
    assert 0 <= glow(done.state).value < 1


def test_the_lamp_tells_a_shorted_rectifier():
    radio = demo_set("desk radio")
    sound, bad = (
        on_lamp(begin(radio, faults, "1"), 25.0)
        for faults in ((), (read_fault("D1 short", radio),))
    )
    assert glow(bad).value > 2 * glow(sound).value
