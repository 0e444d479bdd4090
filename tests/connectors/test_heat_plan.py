"""Heat for taking out connectors: the ways and figures of the tables of heat, in order."""

import pytest

from repairlib.connectors.heat_plan import FINE, INLET, MAINS_INLET, connector_heat
from repairlib.core.errors import RepairlibError
from repairlib.stored_charge import QUALIFIED
from tests.documents import document


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("connector", "tools", "way"),
    [
        (INLET, "hand tools", "low-melt alloy"),
        (INLET, "desoldering station", "vacuum"),
        (INLET, "hot air station", "vacuum"),
        (FINE, "hand tools", "low-melt alloy"),
        (FINE, "hot air station", "hot air"),
    ],
)
def test_the_way(connector, tools, way):
    finding = connector_heat(connector, tools)
    assert finding.verdict == way
    assert {"hot tools", "fumes and flux", "lead"} <= set(finding.cautions)
    assert finding.working[0].startswith("plug out")


@pytest.mark.common_practice
def test_a_desoldering_tip_for_leaded_joints():
    assert connector_heat(INLET, "desoldering station").set_to == 350


@pytest.mark.from_memory("plastic of connectors bears 85 to 250 °C by its kind")
def test_what_the_body_bears():
    assert connector_heat(INLET, "hand tools").body_bears == "85 to 250 °C, by its kind"


@pytest.mark.published(document("lead in Sn-Bi", "95.3 ± 0.5 °C"))
def test_bismuth_with_lead_is_soft_below_boiling_water():
    finding = connector_heat(INLET, "hand tools", "Sn60Pb40")
    assert finding.mixed_joint_soft_from == 95 and 95.3 - 0.5 <= 95 <= 95.3
    assert "never put lead" in finding.notes[0]
    assert any("lead and bismuth in one joint" in step for step in finding.working)
    free = connector_heat(INLET, "hand tools", "SAC305")
    assert free.mixed_joint_soft_from == 138
    assert "can have lead on a lead or pad" in free.notes[0]


@pytest.mark.behaviour
@pytest.mark.parametrize("tools", ["desoldering station", "hot air station"])
def test_no_bismuth_where_the_way_needs_none(tools):
    assert "mixed_joint_soft_from" not in connector_heat(INLET, tools).values


@pytest.mark.behaviour
def test_an_inlet_of_the_mains_is_handed_on():
    finding = connector_heat(MAINS_INLET)
    assert finding.verdict == QUALIFIED and "mains" in finding.cautions
    assert not finding.working


@pytest.mark.behaviour
def test_a_plane_needs_more_and_says_so():
    plane = connector_heat(INLET, "desoldering station", plane="yes")
    assert plane.at_most > connector_heat(INLET, "desoldering station").at_most
    assert any("preheat" in note for note in plane.notes)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("call", "wrong"),
    [
        (("edge connector",), "not a known connector"),
        ((INLET, "torch"), "not a known tools"),
        ((INLET, "hand tools", "plumber's"), "not a known solder"),
    ],
)
def test_what_is_refused(call, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        connector_heat(*call)
