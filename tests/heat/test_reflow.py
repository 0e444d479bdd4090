"""Profiles measured by the definitions, held against J-STD-020 by hand-worked examples."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.heat.profile import Doubt, make_profile, read_points
from repairlib.heat.reflow import CANNOT_TELL, FAIL, PASS, judge_profile, judge_reflow
from repairlib.heat.reflow_limits import paste_limits, standard_limits

P1 = "0 25, 90 150, 180 200, 210 217, 240 245, 255 245, 285 217, 360 25"
P3 = "0 25, 50 150, 90 200, 105 217, 120 262, 130 262, 150 217, 200 25"
P4 = "0 25, 75 100, 155 150, 190 183, 225 215, 240 215, 272 183, 340 25"
P5 = "0 25, 60 100, 150 150, 175 183, 195 228, 205 228, 225 183, 300 25"
P6 = "0 25, 200 150, 300 200, 340 217, 500 243, 510 243, 540 217, 640 25"
P7 = "0 25, 100 150, 190 200, 205 217, 230 250, 275 250, 290 217, 380 25"
FREE, LEADED = "Pb-free", "Sn-Pb"

# Points, solder and Tc; then soak, time above liquidus, time near Tc, ramps, 25 °C to peak;
# the criteria that fail. Worked by hand from the table 5-2 limits.
EXAMPLES = [
    (P1, FREE, 260, 90, 75, 0, 0.933, 0.933, 240, ()),
    (P1, FREE, 245, 90, 75, 25.7, 0.933, 0.933, 240, ()),
    (P3, FREE, 260, 40, 45, 15.4, 3.0, 2.25, 120, ("soak", "above", "peak")),
    (P4, LEADED, 235, 80, 82, 0, 0.914, 1.0, 225, ()),
    (P5, LEADED, 235, 90, 50, 0, 2.25, 2.25, 195, ("above",)),
    (P6, FREE, 245, 100, 200, 31.9, 0.163, 0.867, 500, ("above", "near", "total")),
    (P7, FREE, 250, 90, 85, 51.1, 1.32, 2.2, 230, ("near",)),
]


@pytest.mark.published(
    "IPC/JEDEC, J-STD-020D, Table 5-2, as printed in TDK's data sheet B57820M, page 9; preheat: "
    "Coilcraft, Document 755 (J-STD-020D.1)"
)
@pytest.mark.parametrize("example", EXAMPLES, ids=["P1", "P2", "P3", "P4", "P5", "P6", "P7"])
def test_worked_profiles(example):
    points, alloy, tc, *measures, fails = example
    judged = judge_profile(read_points(points), standard_limits(alloy, tc), 0)
    keys = ("soak", "above", "near", "ramp_up", "ramp_down", "total")
    got = [judged.criteria[key].value for key in keys]
    assert got == pytest.approx(measures, rel=5e-3, abs=1e-9)
    assert {key for key, one in judged.criteria.items() if one.verdict == FAIL} == set(fails)
    assert judged.verdict == (FAIL if fails else PASS)


@pytest.mark.published(
    "IPC/JEDEC, J-STD-020C, as printed in the data sheet Solder profile: preheat to 180 s for "
    "Pb-free; near the peak to 40 and 30 s"
)
def test_revision_c_allows_more_time():
    points = "0 25, 90 150, 240 200, 270 217, 300 245, 315 245, 345 217, 420 25"
    assert judge_profile(read_points(points), standard_limits(FREE, 260), 0).verdict == FAIL
    old = standard_limits(FREE, 260, "C")
    assert judge_profile(read_points(points), old, 0).verdict == PASS
    assert (old.near, standard_limits(LEADED, 225, "C").near) == ((None, 40), (None, 30))


@pytest.mark.behaviour
def test_an_old_revision_is_called_out_of_date():
    old = standard_limits(FREE, 260, "C")
    assert any("out of date" in note for note in old.notes)


def test_the_screen_names_the_choice_where_revisions_differ():
    finding = judge_reflow(P4, LEADED, "2 mm", 100, 0)
    assert any("60 to 120 s as in revision D.1" in note for note in finding.notes)
    assert any("from memory" in note for note in finding.notes)
    assert any("User's reading" in note for note in finding.notes)
    assert finding.verdict == "pass"
    assert "safe" not in str(finding)


def test_a_limit_inside_the_sensors_uncertainty_cannot_be_told():
    """P1 against 245 °C: with ±2.5 °C the peak may be 247.5 °C, the time near it more than 30 s."""
    judged = judge_profile(read_points(P1), standard_limits(FREE, 245), 2.5)
    assert judged.criteria["peak"].verdict == CANNOT_TELL
    assert (judged.criteria["peak"].low, judged.criteria["peak"].high) == (242.5, 247.5)
    assert judged.criteria["above"].verdict == PASS
    assert judged.verdict == CANNOT_TELL
    # 15 s at the top and 2 × 30 s / 28 K for each K: 7.5 K below the top is 31.07 s.
    assert judged.criteria["near"].high == pytest.approx(31.07, abs=0.01)


def test_a_clear_failure_stays_one_with_an_uncertain_sensor():
    judged = judge_profile(read_points(P6), standard_limits(FREE, 245), 2.5)
    assert judged.criteria["above"].verdict == FAIL
    assert judged.verdict == FAIL


def test_a_log_that_ends_hot():
    judged = judge_profile(read_points(P1.rpartition(", 285")[0]), standard_limits(FREE, 260), 0)
    assert judged.criteria["ramp_down"].verdict == CANNOT_TELL
    assert judged.criteria["above"].verdict == CANNOT_TELL
    assert "ends" in judged.criteria["ramp_down"].why


def test_a_log_that_begins_hot():
    points = "0 160, 30 200, 60 217, 90 245, 105 245, 135 217, 200 25"
    judged = judge_profile(read_points(points), standard_limits(FREE, 260), 0)
    assert judged.criteria["soak"].verdict == CANNOT_TELL
    assert judged.criteria["total"].verdict == CANNOT_TELL
    assert "begins at 160" in judged.criteria["total"].why


def test_a_profile_that_never_melts_the_solder_fails():
    judged = judge_profile(read_points("0 25, 90 150, 180 205, 300 25"), standard_limits(FREE, 260))
    assert judged.criteria["above"].value == 0
    assert judged.verdict == FAIL
    assert judged.criteria["ramp_up"].verdict == CANNOT_TELL


def test_a_gap_near_the_peak_leaves_it_open_but_too_hot_stays_too_hot():
    columns = ([0, 90, 180, 210, 240, 255, 285, 360], [25, 150, 200, 217, 245, 245, 217, 25])
    gap = (Doubt(235, 250, "no reading from 235 to 250 s"),)
    judged = judge_profile(make_profile("log", *columns, gap), standard_limits(FREE, 260), 0)
    assert judged.criteria["peak"].verdict == CANNOT_TELL
    assert judged.criteria["soak"].verdict == PASS
    hot = judge_profile(make_profile("log", *columns, gap), standard_limits(FREE, 240), 0)
    assert hot.criteria["peak"].verdict == FAIL


def test_a_gap_on_the_way_leaves_the_time_to_the_peak_known():
    columns = ([0, 90, 180, 210, 240, 255, 285, 360], [25, 150, 200, 217, 245, 245, 217, 25])
    gap = (Doubt(85, 95, "no reading from 85 to 95 s"),)
    judged = judge_profile(make_profile("log", *columns, gap), standard_limits(FREE, 260), 0)
    assert judged.criteria["total"].verdict == PASS
    assert judged.criteria["soak"].verdict == CANNOT_TELL


def test_a_pastes_own_limits():
    """P1 has 90 s of preheat and 75 s above 217 °C, and its peak is 245 °C."""
    paste = paste_limits("paste", 217, (230, 249), (40, 70), soak=(60, 120), ramp_up=2)
    judged = judge_profile(read_points(P1), paste, 0)
    assert set(judged.criteria) == {"soak", "ramp_up", "above", "peak"}
    assert judged.criteria["above"].verdict == FAIL
    assert judged.criteria["peak"].verdict == PASS
    assert "limits as typed" in judged.finding().sources


def test_it_is_shown_in_words():
    judged = judge_profile(read_points(P5), standard_limits(LEADED, 235), 0)
    assert "time above 183 °C: 50 s; 60 to 150 s: fail" in str(judged)
    assert "✗" in judged._repr_html_()
    assert judged.finding().above == 50


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ("0 25, 100 150", "2 readings make no profile"),
        ("0 25, 100 150, 90 200", "goes back at reading 3"),
        ("0 25, 100 150, 100 200", "stands still at reading 3"),
        ("0 25, 100 -300, 200 25", "below absolute zero"),
        ("0 25, 100 nan, 200 25", "no number"),
        ("0 25, hot, 200 25", "not a point"),
        ("", "0 readings"),
    ],
)
def test_profiles_that_cannot_be(points, words):
    with pytest.raises(RepairlibError, match=words):
        judge_reflow(points, FREE, "1 mm", 200)
