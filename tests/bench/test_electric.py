"""The electrical state of a board: every set answers, at rest and with parts taken out."""

from __future__ import annotations

import pytest

from repairlib.bench import Task, begin, demo_set, walked
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
