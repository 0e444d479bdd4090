"""Solder in a hole, wire, stencil, hole fill by class, against worked figures and IPC tables."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.heat.volume import (
    fill_needed,
    hole_volume,
    judge_hole_fill,
    metal_share,
    solder_for_joint,
    stencil_opening,
    wire_length,
)


@pytest.mark.from_memory("geometry: V = π/4 (D² − d²) × thickness × fill, by hand")
def test_hole_volumes():
    assert hole_volume(1.0, 0.6, 1.6) == pytest.approx(0.804, abs=5e-4)
    assert hole_volume(1.0, 0.6, 1.6, 0.75) == pytest.approx(0.603, abs=5e-4)
    assert hole_volume(1.1, 0.64, 1.57, square=True) == pytest.approx(0.849, abs=5e-4)


@pytest.mark.published("Bolotoff (Alasir), Solder Alloys, section 1: 8.40 g/cm³; geometry by hand")
def test_wire_and_mass():
    share = metal_share(0.022, 8.40, 1.10)
    assert share == pytest.approx(0.853, abs=5e-4)
    assert wire_length(0.804, 0.7, share) == pytest.approx(2.45, abs=0.005)
    finding = solder_for_joint("1 mm", "0.6 mm", "1.6 mm", wire="0.7 mm", flux="2.2 %")
    assert finding.cubic_mm == pytest.approx(0.804, abs=5e-4)
    assert finding.milligrams == pytest.approx(6.76, abs=0.005)
    assert finding.grams_per_metre == pytest.approx(2.76, abs=0.005)
    assert finding.wire == pytest.approx(2.45e-3, abs=5e-6)


@pytest.mark.behaviour
def test_leaded_wire_brings_the_caution():
    assert "lead" in solder_for_joint("1 mm", "0.6 mm", "1.6 mm").cautions
    assert "lead" not in solder_for_joint("1 mm", "0.6 mm", "1.6 mm", solder="SAC305").cautions


@pytest.mark.from_memory("IPC-7525 aims, half metal by volume")
def test_stencils():
    square = stencil_opening("0.3 mm", "0.3 mm", "0.12 mm")
    assert square.area_ratio == pytest.approx(0.625, abs=5e-4)
    assert square.paste_cubic_mm == pytest.approx(0.0108, abs=5e-5)
    assert square.metal_cubic_mm == pytest.approx(0.0054, abs=5e-5)
    assert square.verdict == "aim missed"
    lead = stencil_opening("0.28 mm", "1.2 mm", "0.125 mm")
    assert lead.area_ratio == pytest.approx(0.908, abs=5e-4)
    assert lead.aspect_ratio == pytest.approx(2.24, abs=0.005)
    assert lead.verdict == "aim met"


@pytest.mark.published("IPC, IPC-A-610F, 7.3.5.1 and Table 7-4")
def test_fill_by_class():
    assert fill_needed("1", 8, 1.6) is fill_needed("1", 14, 1.6) is None
    assert fill_needed("1", 8, 1.6, plane=True) is None
    assert (fill_needed("2", 14, 1.6), fill_needed("3", 14, 1.6)) == (50, 75)
    assert (fill_needed("2", 13, 1.6), fill_needed("3", 13, 1.6)) == (75, 75)
    # 14 leads or more in class 2: the smaller of 50 % and 1.2 mm.
    assert fill_needed("2", 16, 1.6) == 50  # min(0.80 mm, 1.2 mm)
    assert fill_needed("2", 20, 3.2) == pytest.approx(37.5)  # min(1.6 mm, 1.2 mm)
    assert fill_needed("3", 20, 3.2) == 75
    assert judge_hole_fill("2", 16, "1.6 mm", 50).needed_height == pytest.approx(0.80e-3)
    assert judge_hole_fill("2", 20, "3.2 mm", 50).needed_height == pytest.approx(1.2e-3)
    assert judge_hole_fill("3", 8, "1.6 mm", 70).verdict == "reject"
    assert judge_hole_fill("2", 8, "1.6 mm", 76).verdict == "accept"
    assert judge_hole_fill("2", 8, "1.6 mm", 75).verdict == "accept"
    assert judge_hole_fill("1", 8, "1.6 mm", 20).verdict == "cannot tell"
    assert any("100 %" in note for note in judge_hole_fill("3", 8, "1.6 mm", 70).notes)


@pytest.mark.published(
    "Minimum Through Hole Solder Joint Requirements, IPC-A-610G, class 2 sheet: 50 %; EPTAC, "
    "question on IPC-A-610F, 7.3.5.1"
)
def test_fill_on_a_plane():
    """Revision F left the rule out by mistake: G is followed."""
    assert fill_needed("2", 8, 1.6, plane=True) == 50
    assert fill_needed("3", 8, 1.6, plane=True) == 75
    assert judge_hole_fill("2", 8, "1.6 mm", 60, plane="yes").verdict == "accept"
    assert judge_hole_fill("2", 8, "1.6 mm", 60).verdict == "reject"


@pytest.mark.behaviour
def test_the_screen_says_which_revision_is_followed():
    assert any("G for planes" in note for note in judge_hole_fill("2", 8, 1e-3, 60).notes)


@pytest.mark.published("Steve Gregory, IPC TechNet list, 2003-05, message 3212207")
def test_the_older_edition_is_named():
    """Class 2 and 3: 75 %; class 1 and 2 could fall to 50 % with planes."""
    assert fill_needed("2", 8, 1.6) == fill_needed("3", 8, 1.6) == 75
    assert any(
        "2003" in note and "50 %" in note for note in judge_hole_fill("2", 8, 1e-3, 60).notes
    )


def test_a_round_opening_holds_its_circle_of_paste():
    """By hand: π/4 × 0.3² × 0.12 = 0.00848 mm³; as a square it would be 0.0108, 27 % more."""
    round_one = stencil_opening("0.3 mm", "0.3 mm", "0.12 mm", "round")
    square = stencil_opening("0.3 mm", "0.3 mm", "0.12 mm")
    for one in (round_one, square):
        assert one.area_ratio == pytest.approx(0.625)  # diameter / (4 × thickness)
    assert round_one.paste_cubic_mm == pytest.approx(0.00848, abs=5e-6)
    assert square.paste_cubic_mm / round_one.paste_cubic_mm == pytest.approx(1.273, abs=0.001)
    assert any("shape=round" in note for note in square.notes)
    assert not stencil_opening("0.28 mm", "1.2 mm", "0.125 mm").notes
    assert stencil_opening("0.5 mm", "0.5 mm", "0.1 mm", "round").paste_cubic_mm == pytest.approx(
        0.01963, abs=5e-6
    )


def test_a_round_opening_has_one_diameter():
    with pytest.raises(RepairlibError, match="one diameter"):
        stencil_opening("0.3 mm", "0.4 mm", "0.12 mm", "round")


@pytest.mark.parametrize(
    "call",
    [
        lambda: hole_volume(0.6, 0.7, 1.6),
        lambda: hole_volume(0.8, 0.64, 1.6, square=True),  # its diagonal is 0.905 mm
        lambda: hole_volume(1, 0.6, -1.6),
        lambda: hole_volume(1, 0.6, 1.6, 1.01),
        lambda: hole_volume(1, 0.6, float("nan")),
        lambda: metal_share(1.0, 8.4),
        lambda: metal_share(0.02, -8.4),
        lambda: wire_length(1, 0, 0.8),
        lambda: wire_length(-1, 0.7, 0.8),
        lambda: fill_needed("4", 8, 1.6),
        lambda: fill_needed("2", 0, 1.6),
        lambda: fill_needed("2", 8, 0),
        lambda: judge_hole_fill("2", 8, "1.6 mm", 101),
        lambda: solder_for_joint("1 mm", "1.2 mm", "1.6 mm"),
        lambda: stencil_opening("0 mm", "1 mm", "0.1 mm"),
    ],
)
def test_what_cannot_be(call):
    with pytest.raises(RepairlibError):
        call()


lengths = st.floats(0.01, 20)


@given(lengths, lengths, lengths, st.floats(0, 1), st.booleans())
def test_volumes_lie_between_nothing_and_the_hole(hole, lead, board, fill, square):
    try:
        volume = hole_volume(hole, lead, board, fill, square)
    except RepairlibError:
        assert lead * (2**0.5 if square else 1) > hole
        return
    assert -1e-9 <= volume <= 0.7854 * hole**2 * board
