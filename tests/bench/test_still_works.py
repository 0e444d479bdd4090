"""Whether a set works again is tried warm too, where a crack opens and cools in between."""

from __future__ import annotations

import pytest

from repairlib.bench import begin, demo_set
from repairlib.bench.conditions import read_faults
from repairlib.bench.still_works import misses


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("title", "line"), [("label maker", "J1 cracked 80 mΩ"), ("network switch", "L1 cracked")]
)
def test_a_crack_that_opens_between_two_looks_is_missed_by_nobody(title, line):
    of = demo_set(title)
    found = misses(begin(of, read_faults(line, of), ""))
    assert found and all("warm" in one for one in found)
