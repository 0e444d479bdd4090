"""The fitting order: what is handed on stands apart, and no unknown size is called low."""

import pytest

from repairlib.faces.panels.route import head_html
from repairlib.recap import plan
from repairlib.recap.catalogue import parse_catalogue
from repairlib.recap.route import route_of
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


SHOP = (
    "part,family,capacitance_uf,rated_v,rated_c,life_h,diameter_mm,length_mm,lead_spacing_mm,"
    "mounting,price\n"
    "TALL,aluminium general 105,10,16,105,2000,8,16,3.5,radial,0.05\n"
    "FLAT,aluminium general 105,1000,16,105,2000,18,12,7.5,radial,0.05\n"
    "LYING,aluminium general 105,47,25,105,2000,8,20,,axial,0.05\n"
)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("listed", "usual", "bought"),
    [
        ("C1 10uF 16V elect radial", "up to 13 mm high", "over 13 mm high"),
        ("C1 1000uF 16V elect radial", "over 13 mm high", "up to 13 mm high"),
        ("C1 47uF 25V elect axial", "size not known: measure the room first", "up to 13 mm high"),
    ],
)
def test_the_chosen_part_decides_the_step_on_every_face(listed, usual, bought):
    """TALL is 16 mm high, FLAT 12 mm; a lying part is as high as it is thick, 8 mm."""
    assert [step.title for step in plan(listed).steps] == [usual]
    made = plan(listed, catalogue=parse_catalogue(SHOP))
    assert [step.title for step in made.steps] == [bought]
    assert made.rows()[0]["step"] == bought
    for face in (str(PlanReport(made)), bench_sheet(made)):
        assert f"Step 1: {bought}" in face
    assert bought in head_html(route_of(made)[0], 1)
