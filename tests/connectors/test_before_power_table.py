"""The whole short table: one stop stops the set, and it goes on only when every pair does."""

import pytest

from repairlib.connectors import GO_ON, NOT_MEASURED, NOT_THERE, asked_pairs, check_pairs
from repairlib.core.errors import RepairlibError
from repairlib.core.verdicts import AGAIN, STOP

GOOD = {"5 V rail and ground": "180 Ω", "two rails": "OL", "supply contact and shield": "47 kΩ"}


@pytest.mark.parametrize(
    ("more", "verdict"),
    [
        ({}, GO_ON),
        ({"neighbouring contacts": ""}, NOT_MEASURED),
        ({"neighbouring contacts": "250 Ω"}, AGAIN),
        ({"neighbouring contacts": "two"}, AGAIN),
        ({"neighbouring contacts": "2.1 Ω"}, STOP),
        ({"neighbouring contacts": "2.1 Ω", "core rail and ground": ""}, STOP),
        ({"neighbouring contacts": "Not there"}, GO_ON),
    ],
)
def test_the_worst_pair_decides(more, verdict):
    checked = check_pairs({**GOOD, **more})
    assert checked.verdict == verdict
    if verdict == STOP:
        assert checked.those(STOP) == ["neighbouring contacts"]


def test_nothing_measured_goes_nowhere():
    assert check_pairs(dict.fromkeys(asked_pairs(), "")).verdict == NOT_MEASURED
    assert check_pairs(dict.fromkeys(asked_pairs(), NOT_THERE)).verdict == NOT_MEASURED


def test_a_reading_that_cannot_be_read_stands_in_its_own_row():
    bad, good = check_pairs({"two rails": "ten", "5 V rail and ground": "180 Ω"}).rows
    assert "'ten'" in bad.reason and bad.finding is None
    assert good.verdict == GO_ON and good.finding is not None


@pytest.mark.common_practice
def test_the_leads_are_taken_off():
    """5.2 Ω less 0.3 Ω is below 5 Ω; with leads of 0 Ω it is not."""
    rail = {"5 V rail and ground": "5.20 Ω"}
    assert check_pairs(rail).verdict == STOP
    assert check_pairs(rail, leads="0 Ω").verdict == AGAIN


def test_an_own_limit_of_a_pair():
    core = {"core rail and ground": "1.9 Ω"}
    assert check_pairs(core).verdict == AGAIN
    assert check_pairs(core, thresholds={"core rail and ground": "0.2 Ω"}).verdict == GO_ON
    assert check_pairs(core, thresholds={"core rail and ground": "2 Ω"}).verdict == STOP
    (row,) = check_pairs(core, thresholds={"core rail and ground": "low"}).rows
    assert row.verdict == AGAIN and "'low'" in row.reason


@pytest.mark.parametrize(
    ("given", "wrong"), [("mains contacts", "not a pair"), ("a", "not a pair")]
)
def test_pairs_that_are_not_asked(given, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        check_pairs({given: "1 kΩ"})


def test_leads_that_cannot_be_read_are_told_once():
    with pytest.raises(RepairlibError, match="'long'"):
        check_pairs(GOOD, leads="long")
