"""A torn pad: where the wire lands, which wire it is, and the proof before power."""

import pytest

from repairlib.connectors import link_wire, repairs
from repairlib.core.errors import RepairlibError
from repairlib.missing_parts import HOW_TO_FIND, proof, torn_pad
from repairlib.missing_parts.torn_pads import REACH

PROVEN = "via 3 mm 0.2 Ω"


@pytest.mark.common_practice
def test_a_proven_point_takes_the_wire_of_the_connectors():
    finding = torn_pad("0.2 A", f"{PROVEN}; TP5 40 mm 0.3 Ω; R12 pin 1 8 mm OL")
    assert finding.verdict == "only with these conditions"
    assert finding.lands_on.startswith("via (via")
    assert finding.also_possible.startswith("TP5")
    assert finding.not_this_net.startswith("R12 pin 1")
    assert finding.wire == link_wire("0.2 A", "torn pad of a surface part", "3 mm").verdict
    assert finding.how == repairs()["torn pad of a surface part"].how


@pytest.mark.behaviour
def test_nothing_is_bridged_on_a_guess():
    for lands in ("via 3 mm", "none", "via 3 mm OL", "TP1 0.1 Ω"):
        finding = torn_pad("0.1 A", lands)
        assert finding.verdict == "cannot tell" and "lands_on" not in finding.values
        assert set(HOW_TO_FIND) <= set(finding.notes)


@pytest.mark.common_practice
@pytest.mark.parametrize("damage", repairs())
def test_more_current_than_a_wire_carries(damage):
    assert torn_pad("5 A", PROVEN, damage).verdict == "do not"
    assert torn_pad("0.05 A", PROVEN, damage).verdict == "only with these conditions"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("line", "far"), [("fast pair", 8), ("crystal, feedback or switch node", 15)]
)
def test_a_long_wire_harms_a_fast_or_touchy_net(line, far):
    finding = torn_pad("20 mA", f"via {far} mm 0.1 Ω", line=line)
    assert finding.verdict == "do not" and "at most" in finding.reason
    assert torn_pad("20 mA", "via 2 mm 0.1 Ω", line=line).verdict == "only with these conditions"
    assert torn_pad("20 mA", f"via {far} mm 0.1 Ω").verdict == "only with these conditions"


@pytest.mark.behaviour
def test_the_mains_side_is_handed_on():
    finding = torn_pad("0.1 A", PROVEN, line="mains side")
    assert finding.verdict == link_wire("0.1 A", "broken track", where="mains side").verdict
    assert "mains" in finding.cautions and "lands_on" not in finding.values


@pytest.mark.common_practice
def test_a_broken_track_is_bridged_from_joint_to_joint():
    lands = "track 1 mm 0.1 Ω; R4 9 mm 0.1 Ω"
    assert torn_pad("0.1 A", lands, "broken track").lands_on.startswith("R4")
    assert torn_pad("0.1 A", lands).lands_on.startswith("track")


@pytest.mark.common_practice
def test_the_proof_comes_before_the_part_and_the_part_before_power():
    steps = proof("TP5", "U2 pin 3")
    order = ["Unplugged", "Before the wire", "other pad", "without the part", "Then power"]
    for step, words in zip(steps, order, strict=True):
        assert words in step
    assert "TP5 to U2 pin 3: below 1 Ω" in steps[1]
    assert set(proof("via")) <= set(torn_pad("0.1 A", PROVEN).working)


@pytest.mark.behaviour
@pytest.mark.parametrize("line", REACH)
@pytest.mark.parametrize("damage", repairs())
def test_every_net_and_damage_is_answered(line, damage):
    for lands in ("none", PROVEN, "TP3", "C7 90 mm 0.4 Ω; via 1 mm 3 kΩ"):
        finding = torn_pad("0.1 A", lands, damage, line)
        assert finding.verdict and finding.reason and "hot tools" in finding.cautions


@pytest.mark.behaviour
@pytest.mark.parametrize(
    "given", [("0 A", PROVEN), ("1 A", ""), ("1 A", "the moon"), ("1 A", PROVEN, "bent lid")]
)
def test_bad_input_is_one_line(given):
    with pytest.raises(RepairlibError) as refused:
        torn_pad(*given)
    assert "\n" not in str(refused.value)


@pytest.mark.common_practice
@pytest.mark.parametrize(("current", "count"), [("0.3 A", 2), ("0.5 A", 3)])
@pytest.mark.parametrize("line", ["rail or ground", "slow signal"])
def test_several_wires_share_what_is_too_much_for_one(current, count, line):
    finding = torn_pad(current, PROVEN, line=line)
    assert finding.verdict == "only with these conditions"
    assert finding.wire.replace("\xa0", " ").startswith(f"{count} × 28 AWG")
    assert finding.carries >= float(current.split()[0])
    assert finding.carries <= 0.8 * count * 0.2284
    assert any("equal length" in note for note in finding.notes)


@pytest.mark.common_practice
def test_too_much_for_three_wires_sends_to_another_landing():
    finding = torn_pad("0.6 A", PROVEN)
    assert finding.verdict == "do not"
    assert any("Another landing" in note for note in finding.notes)
    touchy = torn_pad("0.3 A", PROVEN, line="crystal, feedback or switch node")
    assert touchy.verdict == "do not"
