"""J-STD-020 by package: the tables' cells and the rows at their edges."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat.reflow_limits import (
    body_peak,
    package_limits,
    paste_limits,
    reflow_limits,
    standard_limits,
)

REVISION_C = "IPC/JEDEC, J-STD-020C, as printed in the data sheet Solder profile, "
REVISION_D = "IPC/JEDEC, J-STD-020D, as printed in TDK's data sheet B57820M, page 9, Table 5-2"


@pytest.mark.published(REVISION_C + "Table 4-2, Pb-free")
@pytest.mark.parametrize(
    ("thickness", "peaks"), [(1.0, (260, 260, 260)), (2.0, (260, 250, 245)), (3, (250, 245, 245))]
)
def test_lead_free_peaks(thickness, peaks):
    assert tuple(body_peak("Pb-free", thickness, volume) for volume in (349, 2000, 2001)) == peaks
    assert body_peak("Pb-free", thickness, 350) == peaks[1]


@pytest.mark.from_memory("J-STD-020D.1 and E, table 4-1, Sn-Pb")
def test_leaded_peaks():
    assert [body_peak("Sn-Pb", 2.49, volume) for volume in (349, 350)] == [235, 220]
    assert [body_peak("Sn-Pb", 2.5, volume) for volume in (349, 350)] == [220, 220]


@pytest.mark.published(REVISION_C + "Table 4-1, Sn-Pb: 240 and 225 °C")
def test_leaded_peaks_of_revision_c():
    assert [body_peak("Sn-Pb", 2, volume, "C") for volume in (349, 350)] == [240, 225]
    assert [body_peak("Sn-Pb", 3, volume, "C") for volume in (349, 350)] == [225, 225]


@pytest.mark.published(REVISION_C + "Table 4-2: look-ups by thickness and volume")
@pytest.mark.parametrize(
    ("thickness", "volume", "peak"), [(1.0, 200, 260), (2.0, 2500, 245), (3.0, 500, 245)]
)
def test_look_ups(thickness, volume, peak):
    assert reflow_limits("Pb-free", thickness / 1000, volume).highest_peak == peak


@pytest.mark.from_memory("J-STD-020D.1, table 4-1: 2.0 mm, 100 mm³")
def test_look_up_leaded():
    assert reflow_limits("Sn-Pb", "2 mm", 100).highest_peak == 235


@pytest.mark.published(REVISION_C + "Table 4-2: the last row is 2.5 mm and more")
def test_exactly_two_and_a_half_millimetres_in_revision_c():
    assert body_peak("Pb-free", 2.49, 200, "C") == 260
    assert body_peak("Pb-free", 2.5, 200, "C") == 250


@pytest.mark.behaviour
def test_exactly_two_and_a_half_millimetres_goes_by_edition():
    """The row 1.6 to 2.5 mm is followed, and the screen says that revision C does not."""
    assert body_peak("Pb-free", 2.5, 200) == 260
    assert any("2.5 mm" in note for note in package_limits("Pb-free", 2.5, 200).notes)
    assert reflow_limits("Pb-free", "2.5 mm", 200).highest_peak == 260


@pytest.mark.published(REVISION_C + "Table 4-2: the rows are < 1.6 mm, 1.6 to 2.5 mm")
@pytest.mark.parametrize(
    ("thickness", "peaks"),
    [(1.59, (260, 260, 260)), (1.6, (260, 250, 245)), (2.4, (260, 250, 245))],
)
def test_exactly_one_point_six_millimetres_is_in_the_cooler_row(thickness, peaks):
    assert tuple(body_peak("Pb-free", thickness, v) for v in (349, 350, 2001)) == peaks
    assert body_peak("Pb-free", thickness, 2000) == peaks[1]


@pytest.mark.published(REVISION_D)
def test_table_5_2():
    leaded, free = standard_limits("Sn-Pb", 235), standard_limits("Pb-free", 260)
    assert (leaded.soak_from, leaded.soak_to) == (100, 150)
    assert (free.soak_from, free.soak_to) == (150, 200)
    assert (leaded.liquidus, free.liquidus) == (183, 217)
    assert leaded.above == free.above == (60, 150)
    assert (leaded.near, free.near) == ((None, 20), (None, 30))
    assert leaded.ramp_up == free.ramp_up == (None, 3)
    assert leaded.ramp_down == free.ramp_down == (None, 6)
    assert (leaded.total, free.total) == ((None, 6 * 60), (None, 8 * 60))


@pytest.mark.published(
    "Coilcraft, Document 755, Typical RoHS Reflow Profile (J-STD-020D.1): preheat 60 to 120 s"
)
def test_preheat_of_revision_d1():
    assert standard_limits("Pb-free", 260).soak == standard_limits("Sn-Pb", 235).soak == (60, 120)


@pytest.mark.published(REVISION_C + "classification profiles")
def test_table_5_2_of_revision_c():
    """Its times near the peak are 10 to 30 and 20 to 40 s: a user keeps below the longer."""
    leaded, free = standard_limits("Sn-Pb", 225, "C"), standard_limits("Pb-free", 260, "C")
    assert (leaded.soak, free.soak) == ((60, 120), (60, 180))
    assert (leaded.soak_from, leaded.soak_to) == (100, 150)
    assert (free.soak_from, free.soak_to) == (150, 200)
    assert (leaded.liquidus, free.liquidus) == (183, 217)
    assert leaded.above == free.above == (60, 150)
    assert (leaded.near, free.near) == ((None, 30), (None, 40))
    assert leaded.ramp_up == free.ramp_up == (None, 3)
    assert leaded.ramp_down == free.ramp_down == (None, 6)
    assert (leaded.total, free.total) == ((None, 360), (None, 480))


@pytest.mark.published(REVISION_D + ": Sn-Pb peaks from 220 to 235 °C")
def test_span_of_leaded_peaks():
    peaks = [body_peak("Sn-Pb", mm, mm3) for mm in (1, 2.5) for mm3 in (100, 350)]
    assert (min(peaks), max(peaks)) == (220, 235)


@pytest.mark.published(
    "IPC/JEDEC, J-STD-020D, Table 5-2, notes: Tp is at most Tc for the user of a part"
)
def test_tc_is_the_users_highest():
    assert standard_limits("Pb-free", 260).peak == (None, 260)


@pytest.mark.behaviour
def test_the_suppliers_reading_is_told():
    limits = standard_limits("Pb-free", 260)
    assert any("A maker who rates a part reads it as least" in note for note in limits.notes)


@pytest.mark.parametrize(
    ("thickness", "volume"), [(-1, 200), (0, 200), (1, -5), (1, 0), (float("nan"), 5), (1, "big")]
)
def test_packages_that_cannot_be(thickness, volume):
    with pytest.raises(RepairlibError, match="above 0"):
        body_peak("Pb-free", thickness, volume)


def test_unknown_words():
    with pytest.raises(RepairlibError, match="Sn-Pb, Pb-free"):
        body_peak("gold", 1, 1)
    with pytest.raises(RepairlibError, match=r"D\.1, C"):
        standard_limits("Pb-free", 260, "Z")
    with pytest.raises(RepairlibError, match="200 to 300"):
        standard_limits("Pb-free", 900)


@pytest.mark.parametrize(
    ("liquidus", "peak", "above"), [(217, (249, 230), (40, 70)), (260, (230, 249), (40, 70))]
)
def test_pastes_that_cannot_be(liquidus, peak, above):
    with pytest.raises(RepairlibError, match=r"turned round|do not rise"):
        paste_limits("paste", liquidus, peak, above)
