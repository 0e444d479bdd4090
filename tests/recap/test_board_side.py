"""Every plus names the side from which it is seen and an edge; turned over, left is right."""

import json
import re

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap import plan, read_board
from repairlib.show.recap_board import draw_both_sides, draw_recap
from repairlib.show.sheets import bench_sheet
from repairlib.show.sheets.plan_files import PlanReport

LISTED = "C1 47uF 25V elect radial\nC2 10uF 16V elect radial\nC3 22uF 35V elect NP\n"
SIDE = '"component side, fuse edge left"'


def board(tmp_path, seen_from=SIDE, last=""):
    lines = [
        "reference,x_mm,y_mm,form,plus,seen_from",
        f"C1,20,10,radial,left,{seen_from}",
        f"C2,50,30,radial,up,{last}",
    ]
    path = tmp_path / "amplifier.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return read_board(path)


def told_everywhere(made):
    report = PlanReport(made)
    return [str(report), json.dumps(report.to_dict()), bench_sheet(made)]


@pytest.mark.behaviour
def test_every_direction_names_its_side_and_edge(tmp_path):
    made = plan(LISTED, board(tmp_path))
    for told in told_everywhere(made):
        directions = re.findall("plus (?:left|up)(.{0,70})", told)
        assert len(directions) >= 2
        for behind in directions:
            assert behind.startswith(", seen from the component side with the fuse edge left")


@pytest.mark.behaviour
def test_a_side_that_is_not_stated_is_said_to_be_so(tmp_path):
    made = plan(LISTED, board(tmp_path, seen_from=""))
    for told in told_everywhere(made):
        for behind in re.findall("plus (?:left|up)(.{0,70})", told):
            assert behind.startswith(", as the board file has it, side not stated")
    (only,) = draw_both_sides(made)
    assert "component side" not in only.alt and "side not stated" in only.alt
    with pytest.raises(RepairlibError, match="does not state from which side"):
        draw_recap(made, from_behind=True)


# By hand: the board is 50 + 14 = 64 mm wide, so 20 mm from the left is 44 mm from behind; it is
# turned over like a page, so left and right change, up stays, and so does the fuse edge's name.
@pytest.mark.common_practice
@pytest.mark.parametrize("side", ["component", "solder"])
def test_the_map_from_behind_is_mirrored(tmp_path, side):
    made = plan(LISTED, board(tmp_path, f'"{side} side, fuse edge left"'))
    first, second = (picture.alt for picture in draw_both_sides(made))
    assert "seen from the component side" in first and "seen from the solder side" in second
    as_filed, behind = (first, second) if side == "component" else (second, first)
    assert "fuse edge left" in as_filed and "fuse edge right" in behind
    assert "C1: 20 mm from the left, 10 mm from the top, positive end to the left" in as_filed
    assert "C1: 44 mm from the left, 10 mm from the top, positive end to the right" in behind
    for alt in (as_filed, behind):
        assert re.search("C2: [0-9]+ mm from the left, 30 mm from the top, .* to the top", alt)


@pytest.mark.behaviour
def test_the_sheet_has_both_maps(tmp_path):
    assert bench_sheet(plan(LISTED, board(tmp_path))).count('class="drawn"') == 2
    assert 'class="drawn"' not in bench_sheet(plan(LISTED))


@pytest.mark.parametrize(
    "wrong", ["the back", '"component side, fuse edge"', "top", '"solder side, left fuse edge"']
)
def test_a_side_that_cannot_be_used_is_refused(tmp_path, wrong):
    with pytest.raises(RepairlibError, match="no side from which a board is seen"):
        board(tmp_path, wrong)


def test_two_sides_on_one_board_are_refused(tmp_path):
    with pytest.raises(RepairlibError, match="two sides on one board"):
        board(tmp_path, SIDE, '"solder side, fuse edge left"')


@pytest.mark.behaviour
def test_a_part_that_is_left_to_another_is_no_stop(tmp_path):
    made = plan("C1 10uF 160V elect radial\nC2 10uF 16V elect radial\n", board(tmp_path))
    alt = draw_recap(made, []).alt
    assert re.search(r"C2: [^.]*stop 1, here", alt)
    assert not re.search(r"C1: [^.]*(stop|here)", alt)
    assert not re.search(r"C1: [^.]*(stop|here)", draw_recap(made, ["C2"]).alt)
