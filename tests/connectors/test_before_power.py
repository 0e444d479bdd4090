"""The short table before power: stop, measure again, or go on; never that power may come on."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.connectors.before_power import GO_ON, pairs, shorts_before_power
from repairlib.core.errors import RepairlibError
from repairlib.core.html import state_of
from repairlib.core.verdicts import AGAIN, STOP
from repairlib.stored_charge import QUALIFIED

RAIL = "12 V rail and ground"


@pytest.mark.common_practice
def test_the_table():
    least = {name: one.stop_below for name, one in pairs().items()}
    assert least == {
        "supply input and ground": 10,
        RAIL: 10,
        "5 V rail and ground": 5,
        "3.3 V rail and ground": 5,
        "core rail and ground": None,
        "two rails": 10,
        "neighbouring contacts": 100,
        "supply contact and signal contact": 100,
        "supply contact and shield": 1000,
        "mains contacts": None,
    }


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("measured", "verdict"),
    [
        ("0.0 Ω", STOP),
        ("0.8 Ω", STOP),
        ("short", STOP),
        ("10.2 Ω", STOP),  # 9.9 Ω without the leads
        ("10.3 Ω", AGAIN),
        ("< 20 Ω", AGAIN),
        ("> 8 Ω", AGAIN),
        ("50.2 Ω", AGAIN),
        ("50.3 Ω", GO_ON),
        ("1.2 kΩ", GO_ON),
        ("1.2 kΩ ?", AGAIN),
        ("OL", AGAIN),
        ("", AGAIN),
    ],
)
def test_a_rail(measured, verdict):
    assert shorts_before_power(RAIL, measured).verdict == verdict


@pytest.mark.common_practice
def test_open_is_expected_between_neighbours():
    assert shorts_before_power("neighbouring contacts", "OL").verdict == GO_ON
    assert "hold them together" in shorts_before_power("neighbouring contacts", "OL").reason


@pytest.mark.common_practice
def test_a_core_rail_needs_a_figure_to_compare_with():
    bare = shorts_before_power("core rail and ground", "0.9 Ω")
    assert bare.verdict == AGAIN and "give a threshold" in bare.reason
    told = shorts_before_power("core rail and ground", "0.9 Ω", "0.1 Ω", "0.3 Ω")
    assert told.verdict == GO_ON
    assert "four wires" in told.notes[0]


@pytest.mark.behaviour
def test_the_own_threshold_goes_before_the_table():
    assert shorts_before_power(RAIL, "30 Ω", "100 Ω").verdict == STOP
    assert shorts_before_power(RAIL, "30 Ω", "2 Ω").verdict == GO_ON


@pytest.mark.behaviour
def test_mains_is_handed_on():
    for measured in ("OL", "0 Ω", "anything"):
        finding = shorts_before_power("mains contacts", measured)
        assert finding.verdict == QUALIFIED and "mains" in finding.cautions


@pytest.mark.behaviour
def test_what_comes_next():
    assert shorts_before_power(RAIL, "1 kΩ").next == "5 V rail and ground"
    assert "again" in shorts_before_power(RAIL, "12 Ω").next
    assert "no power" in shorts_before_power(RAIL, "1 Ω").next
    assert "second person" in shorts_before_power("supply contact and shield", "OL").next


@pytest.mark.behaviour
def test_a_stop_is_shown_as_bad_and_nothing_as_good():
    assert (STOP, AGAIN) == ("stop", "measure again")
    assert [state_of(word) for word in (STOP, AGAIN)] == ["wrong", "partly right"]
    assert state_of(GO_ON) != "right"


@pytest.mark.common_practice
def test_leads_of_more_than_one_ohm_are_worn():
    assert "worn" in shorts_before_power(RAIL, "1 kΩ", leads="1.1 Ω").notes[0]
    assert "worn" not in shorts_before_power(RAIL, "1 kΩ", leads="0.5 Ω").notes[0]


@given(st.sampled_from(tuple(pairs())), st.floats(0, 1e7))
def test_no_reading_is_ever_leave_to_power(pair, ohm):
    finding = shorts_before_power(pair, f"{ohm:.3f} Ω")
    assert finding.verdict in (STOP, AGAIN, GO_ON, QUALIFIED)
    assert "safe" not in str(finding) and "stored charge" in finding.cautions
    least = pairs()[pair].stop_below
    if least is not None and round(ohm, 3) < least:
        assert finding.verdict == STOP


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        ((RAIL, "much"), "no number"),
        ((RAIL, "12 V"), "in V where Ω is due"),
        ((RAIL, "-5 Ω"), "below zero"),
        ((RAIL, 12), "not a text"),
        ((RAIL, "1 kΩ", "0 Ω"), "threshold is out of range"),
        (("rail and rail", "1 kΩ"), "not a known pair"),
    ],
)
def test_what_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        shorts_before_power(*call)
