"""Taking parts out: methods, braid, tips, shields, and the order of the work."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.core.sources import SOURCES
from repairlib.core.tables import demo_path, read_table
from repairlib.heat.desoldering import (
    BRAIDS,
    FIRST,
    LAST,
    TOOLS,
    Job,
    braid_width,
    jobs_of,
    nozzle_bore,
    plan_removal,
    removals,
    shield_neighbour,
    take_out,
    tip_width,
)
from repairlib.heat.solder_alloys import alloys
from repairlib.recap import plan_file, read_board


@pytest.mark.published(
    "US Navy, NEETS Module 14, Introduction to Microelectronics (14186), page 3-16"
)
def test_wick_is_for_surface_joints_and_a_plunger_kicks():
    for removal in removals().values():
        if "plated holes" in removal.part:
            assert "braid" not in removal.by_tools.values()
    finding = take_out("two-lead part in plated holes")
    assert "recoil can lift a pad" in finding.notes[0]
    assert "leaves some solder" in finding.notes[0]


@pytest.mark.from_memory("powered vacuum is preferred for plated holes; heat until the lead moves")
def test_vacuum_for_plated_holes():
    for part in ("two-lead part in plated holes", "axial part", "dual-in-line chip"):
        finding = take_out(part, "desoldering station")
        assert finding.verdict == "vacuum"
        assert any("until the lead moves freely" in step for step in finding.working)


@pytest.mark.behaviour
def test_hand_tools_take_a_pump_to_plated_holes():
    assert take_out("two-lead part in plated holes").verdict == "pump"


@pytest.mark.published("BEST Inc., Part Removal, basic requirements: the whole board is preheated")
def test_a_ball_grid_is_preheated():
    steps = " ".join(take_out("ball grid", "hot air station").working)
    assert "preheat the whole board" in steps


@pytest.mark.published(
    "BEST Inc., Part Removal, basic requirements: board 75 to 125 °C; joints at least 190 °C tin-"
    "lead, 230 °C lead-free; neighbours under 180 and 200 °C"
)
@pytest.mark.parametrize(
    ("solder", "joint", "neighbour"), [("Sn60Pb40", "190 °C", "180 °C"), ("SAC305", "230", "200")]
)
def test_a_ball_grid_has_temperatures_of_its_own(solder, joint, neighbour):
    steps = take_out("ball grid", "hot air station", solder).working
    assert any("75 to 125 °C" in step for step in steps)
    assert any(joint in step and neighbour in step for step in steps)
    others = take_out("gull-wing chip", "hot air station", solder).working
    assert not any("75 to 125" in step for step in others)


@pytest.mark.behaviour
def test_a_ball_grid_is_not_for_hand_tools():
    assert take_out("ball grid").verdict == "stop"
    assert take_out("ball grid", "desoldering station").verdict == "stop"
    with_air = take_out("ball grid", "hot air station")
    assert with_air.verdict == "hot air"
    assert any("thermocouple" in step for step in with_air.working)


@pytest.mark.published(
    "EPD&T, Solder wick or braid, 2011: equal to or slightly less than the joint"
)
def test_braid():
    assert braid_width(2.0) == 2.0
    assert braid_width(2.2) == 2.0
    assert braid_width(4.0) == 3.5
    for land in (1.0, 1.4, 2.7, 6.0):
        assert braid_width(land) <= land


@pytest.mark.from_memory("usual widths of braid, tips and nozzles")
def test_tip_and_nozzle():
    assert BRAIDS[:3] == (1.0, 1.5, 2.0)
    assert tip_width(2.0) == 1.6
    assert (nozzle_bore(0.6), nozzle_bore(0.8)) == (1.0, 1.3)


@pytest.mark.common_practice
def test_low_melt_alloy_is_all_taken_off_again():
    finding = take_out("gull-wing chip")
    assert finding.verdict == "low-melt alloy"
    assert any("none of it may stay" in step for step in finding.working)
    assert any("95 °C" in note for note in finding.notes)


@pytest.mark.common_practice
def test_bismuth_is_rinsed_off_with_the_solder_that_the_joint_gets():
    """Twice or more; lead never comes onto a joint that keeps bismuth."""
    parts = ("gull-wing chip", "dual-in-line chip", "aluminium can for surface mounting")
    for part in parts:
        for solder in ("SAC305", "Sn60Pb40", "Bi58Sn42"):
            finding = take_out(part, "hand tools", solder)
            said = " ".join([*finding.working, *finding.notes])
            assert "with the solder that the joint will get" in said and "twice or more" in said
            assert "never put lead on a joint that keeps bismuth" in said
            assert "with leaded solder" not in said


@pytest.mark.common_practice
def test_batteries_and_charged_capacitors_stop_the_work():
    for neighbour, word in (
        ("battery or cell", "out of the set"),
        ("charged capacitor", "discharge"),
    ):
        for source in ("hot air", "iron"):
            finding = shield_neighbour(neighbour, "0.5 m", source)
            assert finding.verdict == "stop"
            assert word in finding.do
            assert {"batteries", "stored charge"} <= set(finding.cautions)


@pytest.mark.from_memory("shield distances: a choice of this workbook")
def test_shields():
    assert shield_neighbour("film capacitor", "9 mm", "hot air").verdict == "shield it"
    assert shield_neighbour("film capacitor", "10 mm", "hot air").verdict.startswith("far enough")
    wide = shield_neighbour("film capacitor", "12 mm", "hot air", nozzle="8 mm")
    assert (wide.verdict, wide.shield_within) == ("shield it", 0.016)
    assert any("a choice" in note for note in wide.notes)
    assert shield_neighbour("ceramic chip", "3 mm", "iron").verdict.startswith("far enough")


def keyboard_plan(**options):
    board = read_board(demo_path("keyboard-board.csv"))
    items = plan_file(demo_path("keyboard-parts.csv")).items
    return plan_removal(jobs_of(board, [i.reference for i in items], ("C1", "C2", "C3")), **options)


@pytest.mark.common_practice
def test_no_hot_air_at_a_wet_electrolytic():
    for tools in ("hand tools", "desoldering station", "hot air station"):
        out = take_out("aluminium can for surface mounting", tools)
        assert out.verdict == "low-melt alloy"
        assert "bursts" in out.reason


@pytest.mark.common_practice
def test_the_keyboard_is_dead_and_without_batteries_before_any_heat():
    lines = keyboard_plan().lines()
    work = next(i for i, line in enumerate(lines) if "C20" in line)
    assert [line.partition(". ")[2] for line in lines[: len(FIRST)]] == list(FIRST)
    assert work >= len(FIRST)
    assert "discharged" in lines[0]
    assert "battery" in lines[1]
    assert lines[-1].endswith(LAST[-1])
    assert "wash your hands" in lines[-1]


def test_the_keyboard_keeps_every_part_and_preheats_the_planes_last():
    plan = keyboard_plan()
    groups = plan.groups
    assert sum(len(references) for *_, references in groups) == 23
    assert groups[-1][0] == "vacuum, preheat"
    assert sorted(
        reference for method, *_, refs in groups if "preheat" in method for reference in refs
    ) == [
        "C1",
        "C2",
        "C3",
    ]
    assert "<li>" in plan._repr_html_()
    by_hand = keyboard_plan(tools="hand tools")
    assert {method for method, *_ in by_hand.groups} == {"pump", "pump, preheat"}


def test_wide_heat_comes_last():
    jobs = [Job("U1", "gull-wing chip", 0.3, False), Job("C1", "axial part", 0.8, True)]
    assert [job.reference for job in plan_removal(jobs, "hot air station").jobs] == ["C1", "U1"]


@pytest.mark.parametrize(
    "call",
    [
        lambda: plan_removal([]),
        lambda: plan_removal([Job("C1", "axial part", 0.8, False)], "a hammer"),
        lambda: plan_removal([Job("C1", "a brick", 0.8, False)]),
        lambda: plan_removal([Job("U1", "ball grid", 0.5, False)]),
        lambda: plan_removal([Job("C1", "axial part", 0.8, False)], solder="lead"),
        lambda: jobs_of(read_board(demo_path("keyboard-board.csv")), ["C99"]),
        lambda: braid_width(0),
        lambda: tip_width(float("nan")),
        lambda: nozzle_bore(-1),
        lambda: take_out("a brick"),
        lambda: take_out("axial part", land="-2 mm"),
        lambda: shield_neighbour("cat", 1, "iron"),
    ],
)
def test_what_cannot_be(call):
    with pytest.raises(RepairlibError):
        call()


@given(
    st.sampled_from(sorted(removals())), st.sampled_from(TOOLS), st.sampled_from(sorted(alloys()))
)
def test_every_part_has_an_answer_and_its_cautions(part, tools, solder):
    finding = take_out(part, tools, solder)
    assert finding.verdict
    assert set(finding.cautions) >= {"hot tools", "fumes and flux", "stored charge"}
    assert "safe" not in finding.verdict
    leaded = alloys()[solder].leaded
    assert ("lead" in finding.cautions) == leaded


def test_rows_have_sources():
    for name in ("desoldering-methods", "heat-shielding", "solvents", "hand-soldering-limits"):
        assert all(row["source"] in SOURCES for row in read_table(name))


@pytest.mark.common_practice
def test_what_may_be_cut_is_dead_and_holds_nothing():
    chip = take_out("dual-in-line chip", "desoldering station")
    assert "cut" not in chip.reason and "cut" not in " ".join(chip.working)
    assert any(note.startswith("Dead for certain") and "memory" in note for note in chip.notes)
