"""The invented logs of the network switch are read with their oddities told."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.heat.exposure_log import judge_exposure, read_exposure_log
from repairlib.heat.reflow import CANNOT_TELL, FAIL, PASS, judge_profile
from repairlib.heat.reflow_limits import package_limits
from repairlib.heat.thermocouple_log import read_log

CHIP = package_limits("Pb-free", 1.0, 200)


def judged(name, channel):
    return judge_profile(read_log(demo_path(f"switch-rework-{name}.csv")).profile(channel), CHIP)


def test_first_try_fails_and_the_body_was_too_hot():
    assert judged("first", "joint").verdict == FAIL
    assert judged("first", "body").criteria["peak"].verdict == FAIL


@pytest.mark.parametrize("channel", ["joint", "body"])
def test_second_try_passes(channel):
    assert judged("second", channel).verdict == PASS


def test_messy_log_is_told_in_full():
    log = read_log(demo_path("switch-rework-messy.csv"))
    told = " ".join(log.notes)
    for words in ("Windows-1252", "°F", "spikes", "open sensor", "no reading", "reflow stage"):
        assert words in told
    assert judged("messy", "joint").verdict == CANNOT_TELL


@pytest.mark.parametrize(("name", "verdict"), [("chip", "bake first"), ("spare", "use now")])
def test_histories(name, verdict):
    events = read_exposure_log(demo_path(f"switch-{name}-history.csv"))
    assert judge_exposure(events, "3", 1.0).verdict == verdict
