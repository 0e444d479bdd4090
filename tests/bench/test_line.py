"""The line up and down: what follows it, and what does not."""

from __future__ import annotations

import pytest

from repairlib.bench import Task, demo_set, walked
from repairlib.bench.practice_set import read_set

SWITCH = demo_set("network switch")


def volts_in(of, line):
    return walked(Task(of, (), "x"), [line, "plug in", "volts in 0"]).done[-1].told.reading.value


@pytest.mark.common_practice
def test_a_small_adapter_holds_its_volts_and_an_unregulated_one_does_not():
    assert volts_in(SWITCH, "line low") == pytest.approx(volts_in(SWITCH, "line high"), rel=0.002)
    plain = read_set(SWITCH.text.replace("P1,adapter", "P1,unregulated adapter"))
    share = volts_in(plain, "line high") / volts_in(plain, "line low")
    assert share == pytest.approx(1.1 / 0.9, rel=0.01)


def test_it_is_told_that_the_adapter_holds_them():
    said = walked(Task(SWITCH, (), "x"), ["line low"]).done[-1].told.words
    assert "holds its volts" in said
    said = walked(Task(demo_set("desk radio"), (), "x"), ["line low"]).done[-1].told.words
    assert "holds" not in said
