"""Power of an expansion slot with its auxiliary cables."""

import re

import pytest

from repairlib.connectors.slot import budget, handbook_watts, plugs, slot, slot_power
from repairlib.core.errors import RepairlibError
from tests.documents import document


@pytest.mark.published(document("PCI Express slot, quoted", "75 W: 3.3 V × 3 A + 12 V × 5.5 A"))
def test_the_slot():
    """The sum is 75.9 W; the page says up to 75 W."""
    assert slot_power("75 W").slot_alone == 75
    assert "3.3 V with 3 A and 12 V with 5.5 A" in slot()["note"]
    volts, amps, more_volts, more_amps = map(float, re.findall(r"[\d.]+", slot()["note"]))
    assert volts * amps + more_volts * more_amps == pytest.approx(75.9)


@pytest.mark.published(document("PC hardware handbook", "75 W, 150 W; cards 150, 225, 300 W"))
def test_budgets():
    assert (plugs()["6-pin"].watts, plugs()["8-pin"].watts) == (75, 150)
    assert budget("none") == 75
    assert budget("6-pin") == 150
    assert budget("two 6-pin") == budget("8-pin") == 225
    assert budget("6-pin and 8-pin") == 300


@pytest.mark.published(document("PC hardware handbook", "8 A each: 192 W and 288 W"))
def test_what_the_handbook_takes():
    assert handbook_watts("6-pin") == 192
    assert handbook_watts("8-pin") == 288


@pytest.mark.published(document("ATX 3.0 guide", "75, 150 and 600 W sustained"))
def test_what_the_guide_allows():
    assert [plugs()[name].watts for name in ("6-pin", "8-pin", "12+4-pin")] == [75, 150, 600]


@pytest.mark.from_memory("12+4-pin: six 12 V contacts")
def test_the_large_plug():
    """600 W over six contacts are 8.333 A each, and no table of them was read."""
    finding = slot_power("600 W", "12+4-pin")
    assert finding.each_contact == pytest.approx(8.333, abs=5e-4)
    assert "contacts_carry" not in finding.values
    assert any("no table of its contacts" in note for note in finding.notes)


# W / 12 V / contacts, worked by hand
@pytest.mark.common_practice
def test_worked_contacts():
    assert slot_power("100 W", "6-pin").each_contact == pytest.approx(3.125)
    eight = slot_power("200 W", "8-pin")
    assert eight.each_contact == pytest.approx(4.167, abs=5e-4)
    assert eight.contacts_carry == 252
    assert slot_power("100 W", "6-pin").contacts_carry == 2 * 8 * 12
    both = slot_power("280 W", "6-pin and 8-pin")
    assert both.each_contact == pytest.approx(4.167, abs=5e-4) and both.contacts_carry == 252


# 2 × 0.6 m × 0.020948 Ω/m × 4.1667 A, worked by hand
@pytest.mark.common_practice
def test_the_cable():
    assert slot_power("200 W", "8-pin").drop_of_cable == pytest.approx(0.1047, abs=5e-5)


@pytest.mark.behaviour
def test_more_than_the_budget():
    assert slot_power("75 W").verdict == "within the limits"
    over = slot_power("76 W")
    assert over.verdict == "over a limit" and "burns" in over.reason
    assert slot_power("225 W", "8-pin").verdict == "within the limits"
    assert slot_power("226 W", "8-pin").verdict == "over a limit"
    # 500 W leave 425 W for three contacts: 11.8 A each
    assert "in each contact is above 7 A" in slot_power("500 W", "8-pin").reason
    assert "heat and fire" in over.cautions


@pytest.mark.behaviour
def test_a_thin_cable_is_over_within_the_budget():
    """28 AWG in a housing of 8 has 1 A; 150 W are 4.167 A."""
    assert slot_power("150 W", "8-pin", 28).verdict == "over a limit"


# 8.333 A: 69.44 A² × 0.05296 Ω/m are 3.68 W for 22 AWG, × 0.03331 Ω/m 2.31 W for 20 AWG
@pytest.mark.common_practice
def test_a_thin_cable_of_the_large_plug_gets_too_hot():
    thin = slot_power("600 W", "12+4-pin", 22)
    assert thin.verdict == "over a limit" and "in a metre of each wire is above 3 W" in thin.reason
    assert slot_power("600 W", "12+4-pin", 28).verdict == "over a limit"
    assert slot_power("600 W", "12+4-pin", 20).verdict == "within the limits"


@pytest.mark.behaviour
def test_where_sources_disagree_is_said():
    assert any("8 A" in note and "7 A" in note for note in slot_power("200 W", "8-pin").notes)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        (("0 W",), "power is out of range"),
        (("75 V",), "in V where W is due"),
        (("75 W", "4-pin"), "not a known auxiliary"),
        (("75 W", "8-pin", 30), "no such wire"),
    ],
)
def test_what_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        slot_power(*call)
    with pytest.raises(RepairlibError, match="no auxiliary cables"):
        budget("4-pin")
