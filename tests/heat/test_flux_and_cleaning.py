"""Flux codes, solvents, drying, cleanliness, and what the air may hold."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.heat.air_limits import (
    alcohol_for_level,
    alcohol_level,
    alcohol_vapour,
    alcohol_ventilation,
    bench_air,
    lead_in_air,
)
from repairlib.heat.cleaning import (
    MATERIALS,
    NEAR,
    RESIDUES,
    dry_before_power,
    ionic_cleanliness,
    solvent_for,
    solvents,
)
from repairlib.heat.flux import CODES, flux_code

NOTHING = NEAR[0]


@pytest.mark.published(
    "PCD&F, J-STD-004B: A New Twist on an Old Standard, Table 1: material, activity, halide digit"
)
def test_flux_codes():
    assert len(CODES) == 24
    rows = {
        "ROL0": ("rosin", "low", "none"),
        "ORM1": ("organic", "medium", "yes"),
        "INH1": ("inorganic", "high", "yes"),
        "REL1": ("resin", "low", "yes"),
    }
    for code, (material, activity, halides) in rows.items():
        flux = flux_code(code)
        assert (flux.material, flux.activity, flux.halides.split(":")[0]) == (
            material,
            activity,
            halides,
        )
    assert any(
        "old L0 may hold more halide than a new L1" in note for note in flux_code("ROL0").notes
    )


@pytest.mark.published(
    "PCD&F, J-STD-004B: A New Twist on an Old Standard: the spot test is dropped"
)
def test_revisions_of_flux_codes():
    (note,) = (one for one in flux_code("ROL0").notes if "Revision A" in one)
    assert "L0 and M0 pass on a spot test" in note
    assert "revision B dropped it" in note


@pytest.mark.from_memory("lead hardly evaporates at the heat of an iron")
def test_the_way_lead_gets_in():
    assert "dust and hand to mouth are the way in" in lead_in_air(8).notes[0]


@pytest.mark.from_memory("J-STD-004 revision B, halide of flux solids")
def test_halides():
    rows = {"ROL0": "under 0.05 %", "ROM0": "under 0.05 %", "ROL1": "under 0.5 %"}
    rows |= {"ROM1": "0.5 % to 2.0 %", "ROH1": "over 2.0 %", "ROH0": "under 0.05 %"}
    for code, halide in rows.items():
        assert flux_code(code).halides.endswith(halide)


@pytest.mark.published("IPC, J-STD-001D, 3.3: L0 or L1 of RO, RE, OR; organic L1 not for no-clean")
def test_flux_for_electronics():
    for code in ("ROL0", "ROL1", "REL0", "REL1", "ORL0"):
        assert flux_code(code).verdict == "listed for electronics"
    assert flux_code("ORL1").verdict == "only when washed off"
    for code in ("ROM0", "ORH1", "INL0", "INH1"):
        assert flux_code(code).verdict == "not for boards without tests"
    assert "stranded wire" in flux_code("ROM1").reason


@pytest.mark.parametrize("code", ["ROX0", "XXL0", "ROL2", "ROL", "", "ROL00", "R0L0"])
def test_codes_that_are_none(code):
    with pytest.raises(RepairlibError, match="not a flux code"):
        flux_code(code)


@pytest.mark.common_practice
def test_flammable_vapour_and_hot_tools_never_meet():
    for near in NEAR[1:]:
        for residue in RESIDUES:
            finding = solvent_for(residue, "bare board", near)
            assert finding.verdict == "stop"
            assert "cold" in finding.first
            assert {"solvents", "hot tools", "stored charge"} <= set(finding.cautions)


@pytest.mark.published(
    "NIOSH, Pocket Guide to Chemical Hazards, Isopropyl alcohol: flash point 53 °F"
)
def test_the_flash_point_is_told_where_alcohol_is_named():
    finding = solvent_for("rosin flux", "bare board", NOTHING)
    assert finding.verdict == "isopropyl alcohol"
    assert "11.7 °C" in finding.notes[0]  # (53 − 32) / 1.8


@pytest.mark.from_memory("what solvents dissolve and attack")
def test_materials_are_spared():
    assert solvent_for("water-soluble flux", "bare board", NOTHING).verdict == "demineralised water"
    assert solvent_for("alkaline battery leak", "bare board", NOTHING).verdict == "weak vinegar"
    assert solvent_for("rosin flux", "ABS", NOTHING).verdict == "isopropyl alcohol"
    assert solvent_for("adhesive", "printed label", NOTHING).verdict == "cannot tell"
    assert solvent_for("acrylic coating", "rubber", NOTHING).verdict == "isopropyl alcohol"
    urethane = solvent_for("polyurethane coating", "bare board", NOTHING)
    assert (urethane.verdict, "isocyanates" in urethane.way) == ("by hand", True)


@given(st.sampled_from(RESIDUES), st.sampled_from(MATERIALS))
def test_no_named_solvent_attacks_the_material(residue, material):
    finding = solvent_for(residue, material, NOTHING)
    if finding.verdict in solvents():
        assert material not in solvents()[finding.verdict].attacks
        assert residue in solvents()[finding.verdict].dissolves
    else:
        assert finding.verdict in ("by hand", "cannot tell")


def test_every_word_of_the_table_can_be_asked_for():
    for one in solvents().values():
        assert set(one.dissolves) <= set(RESIDUES), one.name
        assert set(one.attacks) <= set(MATERIALS), one.name


@pytest.mark.common_practice
def test_a_time_alone_never_allows_power():
    wet = dry_before_power("demineralised water", "2 h", "under parts")
    assert (wet.verdict, wet.time) == ("wait", 86400)
    dry = dry_before_power("isopropyl alcohol", "15 min", "open surface")
    assert dry.verdict == "look and smell"


@pytest.mark.published(
    "IPC, IPC-WP-019B, quoting J-STD-001: 1.56 µg NaCl eq/cm²; 10.06 µg/in² and a board by hand"
)
def test_cleanliness():
    finding = ionic_cleanliness("120 ug", "10 cm", "8 cm")
    assert finding.micrograms_per_square_cm == pytest.approx(0.75)
    assert finding.limit_for_this_board == "249.6 µg"
    assert finding.verdict == "pass"
    assert ionic_cleanliness("249.6 ug", "10 cm", "8 cm").verdict == "pass"
    assert ionic_cleanliness("250 ug", "10 cm", "8 cm").verdict == "fail"
    limit = ionic_cleanliness("156 ug", "10 cm", "10 cm", 1)
    assert limit.micrograms_per_square_inch == pytest.approx(10.06, abs=0.005)


@pytest.mark.from_memory("newer editions of J-STD-001 ask for evidence of the process instead")
def test_newer_editions_ask_for_the_process():
    finding = ionic_cleanliness("120 ug", "10 cm", "8 cm")
    assert "evidence of the process" in finding.notes[0]


@pytest.mark.published(
    "NIOSH, Pocket Guide to Chemical Hazards, Isopropyl alcohol: 2000 ppm, 400 ppm, "
    "1 ppm = 2.46 mg/m³, LEL 2.0 %"
)
def test_vapour():
    finding = alcohol_vapour(188, 30)
    assert finding.ppm == pytest.approx(2000, rel=0.002)
    assert finding.of_explosive_limit == pytest.approx(10, rel=0.002)
    assert finding.verdict == "stop"
    # 20000 ppm × 2.46 mg/m³ = 49.2 g/m³
    full = alcohol_vapour(49.2 / 0.785, 1)
    assert full.ppm == pytest.approx(20000, rel=1e-3)
    assert full.milligrams_per_cubic_m == pytest.approx(49200, rel=1e-3)
    assert alcohol_vapour(50, 30).verdict == "air the room"
    assert alcohol_vapour(10, 30).verdict == "keep it away from heat"
    assert alcohol_ventilation(10).cubic_m_an_hour == pytest.approx(7.98, abs=0.005)


@pytest.mark.published(
    "NIOSH, Pocket Guide to Chemical Hazards, Isopropyl alcohol; Johann Haltermann Ltd, Technical "
    "Data & Safety Bulletin, Isopropyl Alcohol: 425 °C, 2 to 12 %"
)
def test_alcohol_limits():
    air = bench_air("isopropyl alcohol")
    assert "400 ppm" in air.shift_limit
    assert "15 min 500 ppm" in air.shift_limit
    assert "2.46 mg/m³" in air.shift_limit
    assert "a tenth of the explosive limit" in air.dangerous_to_life
    assert "200 °F" in air.burns_in_air
    assert "2000 ppm" in air.dangerous_to_life
    assert air.burns_in_air.startswith("2.0 to 12.7 %")
    assert "2 to 12" in air.burns_in_air
    assert "11.7 °C (53 °F)" in air.flash_point
    assert "82.8 °C (181 °F), 33 mmHg" in air.boils
    assert "425 °C (a maker)" in air.lights_by_itself


@pytest.mark.from_memory("autoignition: 399 NFPA, 456 ICSC")
def test_autoignition_is_a_range():
    assert "399 °C (from memory)" in bench_air("isopropyl alcohol").lights_by_itself
    assert "456 °C (from memory)" in bench_air("isopropyl alcohol").lights_by_itself


@pytest.mark.published(
    "HSE, SIM 03/2002/26, rosin-based solder flux fume, paragraph 3: 0.05 and 0.15 mg/m³"
)
def test_rosin_fume():
    assert "0.05 mg/m³ over 8 h, 0.15 mg/m³" in bench_air("rosin flux fume").shift_limit


@pytest.mark.published(
    "Wyoming Department of Health, Lead poisoning: Information for workers: 50 and 30 µg/m³, "
    "400/hours; Labour Research Department, Health and Safety Law 2024: 0.15 mg/m³"
)
def test_lead():
    assert lead_in_air(10).micrograms_per_cubic_m == 40
    assert lead_in_air(8).micrograms_per_cubic_m == lead_in_air(6).micrograms_per_cubic_m == 50
    air = bench_air("lead")
    assert "50 µg/m³" in air.shift_limit
    assert "0.15 mg/m³ (UK)" in air.shift_limit
    assert "30 µg/m³" in air.action_level


@pytest.mark.parametrize(
    "call",
    [
        lambda: solvent_for("mud", "bare board", NOTHING),
        lambda: solvent_for("rosin flux", "gold", NOTHING),
        lambda: ionic_cleanliness("-1 ug", "10 cm", "8 cm"),
        lambda: ionic_cleanliness("1 ug", "-10 cm", "8 cm"),
        lambda: ionic_cleanliness("1 ug", "10 cm", "8 cm", 3),
        lambda: dry_before_power("isopropyl alcohol", "-1 s", "under parts"),
        lambda: alcohol_vapour(-1, 30),
        lambda: alcohol_vapour(10, 0),
        lambda: alcohol_ventilation(10, 401),
        lambda: lead_in_air(0),
        lambda: bench_air("tea"),
    ],
)
def test_what_cannot_be(call):
    with pytest.raises(RepairlibError):
        call()


@pytest.mark.published(
    "NIOSH, Pocket Guide to Chemical Hazards, Isopropyl alcohol: 1 ppm = 2.46 mg/m³, LEL 2.0 %"
)
@pytest.mark.parametrize(
    ("ppm", "room", "millilitres", "milligrams"),
    [
        (2000, 30, 188, 4920),  # 4.92 g/m³ × 30 m³ / 0.785 g/mL
        (400, 30, 37.6, 984),
        (500, 50, 78.3, 1230),
        (20_000, 1, 62.7, 49_200),
    ],
)
def test_how_much_alcohol_brings_a_room_to_a_level(ppm, room, millilitres, milligrams):
    finding = alcohol_for_level(ppm, room)
    assert finding.millilitres == pytest.approx(millilitres, rel=0.003)
    assert finding.milligrams_per_cubic_m == pytest.approx(milligrams)
    assert alcohol_vapour(float(finding.millilitres), room).ppm == pytest.approx(ppm, rel=0.003)


@pytest.mark.published("NIOSH, Pocket Guide to Chemical Hazards, Isopropyl alcohol: 2.0 to 12.7 %")
@pytest.mark.parametrize(
    ("ppm", "verdict"),
    [
        (0, "keep it away from heat"),
        (19_000, "keep it away from heat"),
        (20_000, "stop"),
        (127_000, "stop"),
        (300_000, "stop"),
    ],
)
def test_whether_it_can_burn_never_gets_a_bare_no(ppm, verdict):
    finding = alcohol_level(ppm)
    assert finding.verdict == verdict
    assert "burn" in finding.reason and "safe" not in str(finding)
