"""The same moves are told the same and get the same mark, on any machine and any Python."""

import pytest

from tests.bench.told import KEPT, told_now


@pytest.mark.behaviour
@pytest.mark.parametrize("path", KEPT, ids=lambda path: path.stem)
def test_an_attempt_is_told_and_marked_as_it_was(path):
    kept = path.read_text(encoding="utf-8")
    assert told_now(kept) == kept, "python -m tests.bench.told, and look at the difference"


@pytest.mark.behaviour
def test_every_demo_set_is_among_them():
    assert len({path.read_text(encoding="utf-8").splitlines()[0] for path in KEPT}) == 5
