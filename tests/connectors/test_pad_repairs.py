"""Wire links for torn pads, barrels and tracks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.connectors.pad_repairs import link_wire, repairs, wire_for
from repairlib.connectors.wire import cautious_current
from repairlib.core.errors import RepairlibError
from repairlib.stored_charge import QUALIFIED


# d² in circular mils over 700, worked by hand from the printed diameters: 30 AWG 10.025 mil,
# 28 12.641, 26 15.940, 24 20.100, 22 25.347, 20 31.961
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("gauge", "ampere"),
    [(30, 0.1436), (28, 0.2283), (26, 0.3630), (24, 0.5772), (22, 0.9178), (20, 1.459)],
)
def test_what_each_gauge_carries(gauge, ampere):
    assert cautious_current(gauge) == pytest.approx(ampere, rel=1e-3)
    assert wire_for(ampere * 0.99, "broken track") == gauge


@pytest.mark.common_practice
def test_the_thickest_wire_of_each_place():
    assert {name: one.thickest for name, one in repairs().items()} == {
        "torn pad of a surface part": 28,
        "torn land of a plated hole": 22,
        "torn barrel": 22,
        "broken track": 20,
    }


# 30 mm of 24 AWG have 0.03 × 0.08421 Ω = 2.526 mΩ; at 0.5 A 1.263 mV
@pytest.mark.common_practice
def test_a_worked_link():
    link = link_wire("0.5 A", "torn barrel")
    assert link.verdict == "24 AWG"
    assert link.carries == pytest.approx(0.577, abs=5e-4)
    assert link.drop == pytest.approx(1.263e-3, abs=5e-6)
    assert "both sides" in link.how


@pytest.mark.behaviour
def test_what_no_wire_carries_there():
    over = link_wire("0.3 A", "torn pad of a surface part")
    assert over.verdict == "do not"
    assert "heat and fire" in over.cautions
    assert link_wire("5 A", "broken track").verdict == "do not"


@pytest.mark.behaviour
def test_the_mains_side_is_handed_on():
    finding = link_wire("0.1 A", "broken track", where="mains side")
    assert finding.verdict == QUALIFIED and "mains" in finding.cautions


@pytest.mark.behaviour
def test_a_link_says_who_goes_on_above_60_volts():
    notes = " ".join(link_wire("0.1 A", "broken track").notes)
    assert "Above 60 V dc" in notes and "qualified person" in notes


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        (("0 A", "torn barrel"), "current is out of range"),
        (("1 V", "torn barrel"), "in V where A is due"),
        (("1 A", "burnt pad"), "not a known damage"),
        (("1 A", "torn barrel", "2 m"), "length is out of range"),
    ],
)
def test_what_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        link_wire(*call)
    with pytest.raises(RepairlibError, match="not a kind of damage"):
        wire_for(1, "burnt pad")


@given(st.floats(1e-3, 100), st.sampled_from(tuple(repairs())))
def test_no_link_is_thinner_than_its_current_or_thicker_than_its_place(ampere, damage):
    awg = wire_for(ampere, damage)
    if awg is None:
        assert ampere > cautious_current(repairs()[damage].thickest)
    else:
        assert cautious_current(awg) >= ampere and awg >= repairs()[damage].thickest
