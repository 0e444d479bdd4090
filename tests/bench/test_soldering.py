"""The joints of the board: the table against the joint model, and which tool frees which part."""

import os
import random
import runpy

import pytest

from repairlib.bench import Move, demo_set
from repairlib.bench.soldering import heated, tool_of, way_out
from repairlib.core.errors import RepairlibError
from repairlib.core.tables import DATASETS, read_table
from repairlib.heat import heat_joint
from repairlib.heat.joint import MARGIN

SCRIPT = DATASETS / "make_bench_joints.py"
ROWS = read_table("bench-joints")
RADIO, SWITCH, LABEL = map(demo_set, ("desk radio", "network switch", "label maker"))
ALL = os.environ.get("BENCH") == "all"


def rows_tried():
    quick = [at for at, row in enumerate(ROWS) if row["joint"] == "surface"]
    return range(len(ROWS)) if ALL else random.Random(8).sample(quick, 1)


@pytest.mark.behaviour
@pytest.mark.parametrize("at", rows_tried())
def test_the_table_is_what_the_joint_model_answers(at):
    script = runpy.run_path(str(SCRIPT))
    joint = list(script["joints"]())[at]
    made = {name: str(value) for name, value in script["row_of"](joint).items()}
    row = ROWS[at]
    same = ("tool", "tip", "solder", "joint", "plane", "celsius", "after")
    assert [made[name] for name in same] == [row[name] for name in same]
    assert bool(made["melts"]) == bool(row["melts"])
    if row["melts"]:
        assert float(made["melts"]) == pytest.approx(float(row["melts"]), rel=0.02, abs=0.02)
    pads = [list(map(float, one["pad"].split())) for one in (made, row)]
    assert pads[0] == pytest.approx(pads[1], abs=2)


@pytest.mark.behaviour
@pytest.mark.parametrize("celsius", range(263, 450, 25) if ALL else [338])
def test_between_the_rows_the_pad_is_as_hot_as_the_model_has_it_within_its_own_margin(celsius):
    run = heat_joint(seconds=3, celsius=celsius)
    move = Move("take out", ("R2",), {"celsius": float(celsius), "seconds": 3.0})
    worked = heated(RADIO.part("R2"), move, "pump")
    assert worked.pad == pytest.approx(run.peak("board under the pad"), abs=MARGIN / 4)
    assert worked.flowed == (run.all_melted is not None and run.all_melted <= 2)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("of", "part", "kind", "tool"),
    [
        (RADIO, "C1", "two-lead part in plated holes", "pump"),
        (SWITCH, "C2", "two-terminal chip", "braid"),
        (SWITCH, "I1", "gull-wing chip", "low-melt alloy"),
        (LABEL, "J1", "through-hole connector", "low-melt alloy"),
    ],
)
def test_each_part_has_its_way_out(of, part, kind, tool):
    assert way_out(of.part(part)) == kind
    assert tool_of(Move("take out", (part,)), of.part(part)) == tool


@pytest.mark.behaviour
def test_every_part_of_every_set_comes_out_as_lesson_08_says():
    for title in ("desk radio", "network switch", "label maker", "printer controller"):
        for part in demo_set(title).parts:
            move = Move("take out", (part.name,))
            worked = heated(part, move, tool_of(move, part))
            assert worked.flowed and not worked.tears(0), (title, part.name, worked)


@pytest.mark.behaviour
def test_a_pad_stands_three_careful_heatings_and_not_ten():
    part = RADIO.part("R2")
    ageing = heated(part, Move("resolder", ("R2",), {"celsius": 350.0, "seconds": 4.0})).ageing
    one = heated(part, Move("resolder", ("R2",), {"celsius": 350.0, "seconds": 4.0}))
    assert not one.tears(2 * ageing) and one.tears(9 * ageing)


@pytest.mark.behaviour
@pytest.mark.parametrize("figures", [{"celsius": 900.0}, {"seconds": 100.0}, {"seconds": 0.1}])
def test_what_no_tool_here_does_is_refused(figures):
    with pytest.raises(RepairlibError):
        heated(RADIO.part("C1"), Move("take out", ("C1",), figures), "pump")
