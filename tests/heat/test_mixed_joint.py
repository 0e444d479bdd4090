"""What two solders make: worked mixtures, and the lead and bismuth rule."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.heat.mixed_joint import mix, soft_from, solders_meet, solders_meet_by_mass
from repairlib.heat.solder_alloys import alloy, alloys

SOLDERS = sorted(alloys())


def parts_of(finding):
    words = finding.composition.removesuffix(" wt %").split(", ")
    return {word.split()[0]: float(word.split()[1]) for word in words}


@pytest.mark.published(
    "Moon and others (NIST), Pb contamination and the solidification of Sn-xBi alloys: "
    "95.3 ± 0.5 °C; NIST, Bi-Pb-Sn System: 98.0 °C"
)
def test_leaded_and_bismuth():
    finding = solders_meet_by_mass("Sn63Pb37", "10 mg", "Bi58Sn42", "30 mg")
    assert parts_of(finding) == {"Sn": 47.25, "Pb": 9.25, "Bi": 43.5}
    assert finding.verdict == "rework"
    assert finding.stay_below == 95
    assert "95.3 ± 0.5" in finding.notes[0]
    assert "98.0" in finding.notes[0]


@pytest.mark.behaviour
def test_the_parents_melting_points_are_not_named():
    finding = solders_meet_by_mass("Sn63Pb37", "10 mg", "Bi58Sn42", "30 mg")
    assert "138" not in finding.reason
    assert "183" not in finding.reason


@pytest.mark.published(
    "Ferrer and Holder, 57Bi-42Sn-1Ag: A Lead Free, Low Temperature Solder: not where lead is "
    "present in finishes"
)
def test_the_maker_warns_too():
    finding = solders_meet("Sn63Pb37", 0.1, "Bi57Sn42Ag1", 1)
    assert finding.verdict == "rework"
    assert any("not where lead is present" in note for note in finding.notes)


@pytest.mark.published(
    "Bolotoff (Alasir), Solder Alloys, section 1: Sn-Pb-Ag melts from 179 °C; mixed by hand"
)
def test_lead_free_and_leaded():
    finding = solders_meet_by_mass("SAC305", "50 mg", "Sn63Pb37", "10 mg")
    expected = {"Sn": 90.92, "Pb": 6.17, "Ag": 2.50, "Cu": 0.42}
    assert parts_of(finding) == pytest.approx(expected, abs=0.006)
    assert finding.stay_below == 179


@pytest.mark.behaviour
def test_a_mixture_without_a_diagram_says_so():
    finding = solders_meet_by_mass("SAC305", "50 mg", "Sn63Pb37", "10 mg")
    assert "lead" in finding.cautions
    assert "cannot tell from a diagram" in finding.all_liquid


@pytest.mark.published("Bolotoff (Alasir), Solder Alloys, section 1: densities 8.40 and 7.38 g/cm³")
def test_volumes_become_masses():
    """1 mm³ of each: 8.40 and 7.38 mg; Pb = 0.37 × 8.40 / 15.78 = 19.70 wt %."""
    finding = solders_meet("Sn63Pb37", 1, "SAC305", 1)
    assert parts_of(finding)["Pb"] == pytest.approx(19.70, abs=0.01)
    assert "8.4 mg" in finding.working[0]


@pytest.mark.published(
    "Princeton University, MAE 324 glossary, Eutectic: 183 °C; Bolotoff (Alasir), Solder Alloys, "
    "section 1: 50 wt % Sn liquid at 212 °C"
)
def test_two_tin_lead_solders():
    """Equal masses of Sn60 and Sn40 make Sn50."""
    finding = solders_meet_by_mass("Sn60Pb40", 1e-5, "Sn40Pb60", 1e-5)
    assert finding.stay_below == 183
    assert finding.all_liquid == "about 212 °C"


@pytest.mark.behaviour
def test_two_tin_lead_solders_are_one_to_note():
    assert solders_meet_by_mass("Sn60Pb40", 1e-5, "Sn40Pb60", 1e-5).verdict == "one to note"


def test_one_solder_stays_itself():
    finding = solders_meet("SAC305", 1, "SAC305", 2)
    assert finding.verdict == "one solder"
    assert (finding.stay_below, finding.all_liquid) == (217, "220 °C")


def test_what_nobody_measured_is_not_guessed():
    finding = solders_meet("Sn63Pb37", 1, "Au80Sn20", 1)
    assert finding.verdict == "cannot tell"
    assert "stay_below" not in finding.values


amounts = st.just(0.0) | st.floats(1e-6, 1e6)


@given(st.sampled_from(SOLDERS), st.sampled_from(SOLDERS), amounts, amounts)
def test_any_trace_of_lead_with_bismuth_is_reworked(old, new, old_mm3, new_mm3):
    if old_mm3 == new_mm3 == 0:
        with pytest.raises(RepairlibError, match="not two masses"):
            solders_meet(old, old_mm3, new, new_mm3)
        return
    finding = solders_meet(old, old_mm3, new, new_mm3)
    parts = mix(alloy(old).parts, old_mm3, alloy(new).parts, new_mm3)
    assert sum(parts.values()) == pytest.approx(100, abs=0.5)
    both = parts.get("Pb", 0) > 0 and parts.get("Bi", 0) > 0
    assert (finding.verdict == "rework") == both
    if both:
        assert soft_from(parts) <= 95


@pytest.mark.parametrize("masses", [(-1, 2), (0, 0), (float("nan"), 1), (float("inf"), 1)])
def test_masses_that_cannot_be(masses):
    with pytest.raises(RepairlibError, match="not two masses"):
        mix({"Sn": 100}, masses[0], {"Sn": 100}, masses[1])


def test_unknown_solders():
    with pytest.raises(RepairlibError):
        solders_meet("Sn63", 1, "SAC305", 1)
    with pytest.raises(RepairlibError):
        solders_meet_by_mass("Sn63Pb37", "-1 mg", "SAC305", "1 mg")
