"""The fitting order: what is handed on stands apart, and no unknown size is called low."""

import pytest

from repairlib.recap import plan
from repairlib.show.sheets import bench_sheet
from repairlib.show.sheets.plan_files import PlanReport


def steps(*lines):
    return {step.title: step for step in plan("\n".join(lines) + "\n").steps}


@pytest.mark.behaviour
@pytest.mark.parametrize("volts", [63, 100, 160, 250, 385, 450])
def test_above_60_volts_is_left_to_a_qualified_person_on_every_face(volts):
    """60 V dc is ES1 of IEC 62368-1; ratings above it sit where more than that may be."""
    made = plan(f"C1 10uF 16V elect\nC2 22uF {volts}V elect\n")
    own, handed_on = made.steps
    assert [item.reference for item in own.items] == ["C1"]
    assert handed_on.handed_on and "qualified person" in handed_on.title
    text = str(PlanReport(made))
    assert "[ ] C1" in text and "[ ] C2" not in text and "not yours: C2" in text
    sheet = bench_sheet(made)
    row = sheet[sheet.index(">C2<") :].partition("</tr>")[0]
    assert "tick" not in row and "deadly charge" in sheet


@pytest.mark.behaviour
def test_an_unknown_size_is_a_step_of_its_own():
    """47000 µF 6.3 V and a snap-in of 16 V are tall; no table here says how tall."""
    found = steps("C1 47000uF 6.3V elect", "C2 10uF 16V elect", "C3 22000uF 16V elect snap-in")
    (low,) = [one for title, one in found.items() if title.startswith("up to 13 mm")]
    assert [item.reference for item in low.items] == ["C2"]
    (unknown,) = [one for title, one in found.items() if "size not known" in title]
    assert {item.reference for item in unknown.items} == {"C1", "C3"}
