"""The electrical state of a board: every set answers, at rest and with parts taken out."""

from __future__ import annotations

import pytest

from repairlib.bench import Task, begin, demo_set, judge, walked
from repairlib.bench.electric import electric
from repairlib.bench.practice_set import DEMO


@pytest.mark.parametrize("title", DEMO)
def test_a_set_at_rest_holds_nothing(title):
    assert set(electric(begin(demo_set(title), (), "x")).mean.values()) == {0.0}


def test_a_point_at_which_nothing_ends_has_no_volts():
    # the adapter is off and its inlet is out: nothing is left at the point between them
    maker = Task(demo_set("label maker"), (), "x")
    done = walked(maker, ["volts C1", "take out J1", "volts in 0"]).done
    assert done[-1].told.reading.value == pytest.approx(0, abs=1e-3)


def test_a_feed_that_lies_on_the_bench_gives_nothing():
    task = Task(demo_set("desk radio"), (), "demo")
    out = walked(task, ["take out V1", "clean V1", "fit V1", "plug in with supply 15 V 500 mA"])
    assert out.done[-1].told.reading.value == pytest.approx(0.35, abs=0.1)
    alone = walked(task, ["take out V1", "ohms old V1"]).done[-1].told.reading
    assert alone.value == pytest.approx(1.2, abs=0.3)  # 1 Ω of copper, 0.2 Ω of leads


def test_a_set_whose_feed_is_out_is_dead_and_is_judged_so():
    task = Task(demo_set("network switch"), (), "demo")
    out = walked(task, ["take out P1", "plug in", "volts v33 0", "unplug", "hand back"])
    assert out.done[2].told.reading.value == pytest.approx(0, abs=5e-3)
    assert not judge(out).passed
