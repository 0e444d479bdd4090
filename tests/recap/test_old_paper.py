"""Valve sets: paper becomes film, line parts and oil are left alone, and nothing stays unseen."""

import pytest

from repairlib.core.tables import demo_path
from repairlib.health import read_measured
from repairlib.recap import plan, read_catalogue, replacement_capacitor
from repairlib.recap.words import FILM
from repairlib.show.sheets.plan_files import PlanReport

CATALOGUE = read_catalogue(demo_path("parts-catalogue.csv"))


def decided(line):
    (item,) = plan(line + "\n").all_items
    return item


# By hand: 0.01 and 0.022 µF are E6; 0.25 µF is not made, 0.22 is 12 % less; the film ratings
# above 200, 350 and 600 V are 250, 400 and 630 V.
@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("line", "nano", "volts"),
    [
        ("C1 .01 MFD 600V paper", 10, 630),
        ("C1 0.022uF 400V paper", 22, 400),
        ("C1 .25 MFD 200V paper", 220, 250),
        ("C1,.1uF,350V,paper", 100, 400),
    ],
)
def test_leaking_paper_becomes_film_of_at_least_its_dc_rating(line, nano, volts):
    item = decided(line)
    assert item.verdict == "replace" and item.new.kind == FILM
    assert item.new.farad == pytest.approx(nano * 1e-9)
    assert item.new.volts == volts
    assert "film" in str(item.new) and item.polarity == "no plus"
    assert {"stored charge", "mains", "high-voltage tubes"} <= set(item.cautions)
    assert not any("class" in look for look in item.looks)


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "line", ["C1 .047uF 250VAC paper", "C1 .01 600V paper line to chassis", "C1 .1uF 250V MP"]
)
def test_paper_on_the_line_is_a_mains_part(line):
    item = decided(line)
    assert item.verdict in ("judge", "hold") and item.new is None
    assert {"mains", "stored charge", "heat and fire"} <= set(item.cautions)
    if item.verdict == "judge":
        assert "same safety class" in item.why


@pytest.mark.common_practice
@pytest.mark.parametrize("line", ["C1 6uF 400VAC motor-run", "C1 0.5uF 400V oil paper"])
def test_oil_is_left_alone(line):
    """EPA 530-F-20-005: nearly all small capacitors of 1929 to 1979 held PCB; do not open."""
    item = decided(line)
    assert item.verdict == "judge" and item.new is None
    assert "PCB" in item.why and "qualified person" in item.why
    assert {"mains", "stored charge"} <= set(item.cautions)


@pytest.mark.common_practice
@pytest.mark.parametrize("line", ["C1 .047 630V", "C1,.005,400V", "C1 0.25 200V", "C1 .5 150V"])
def test_an_unnamed_part_of_a_valve_set_is_looked_at_and_said(line):
    made = plan(line + "\nC2 .02 MFD 600V paper\n")
    (item,) = made.judged
    assert "paper leaks" in item.why
    assert "C1 (line 1" in str(PlanReport(made))


@pytest.mark.common_practice
@pytest.mark.parametrize("line", ["C1 .1 50V", "C1 100pF 500V", "C1 .01 400V mylar", "C1 .1 250V"])
def test_other_small_parts_stay(line):
    assert decided(line).verdict == "keep"


def test_what_waits_is_headed_by_who_does_it():
    made = plan("C1 .047 630V\nC2 10uF 16V tantalum\nC3 22uF 350V gizmo\n")
    said = str(PlanReport(made))
    for place, headed in (("C1", True), ("C2", False), ("C3", True)):
        (line,) = [one for one in said.splitlines() if one.startswith(f"  {place} (line")]
        assert ("leave it to a qualified person: " in line) is headed


def test_a_look_stands_beside_a_part_that_stays():
    assert "C1: no kind stated" in str(PlanReport(plan("C1 .1 50V\n")))


@pytest.mark.common_practice
def test_the_calculator_says_film_for_paper():
    found = replacement_capacitor("33 nF", "500 V", "paper")
    assert (found.verdict, found.values["kind"], found.values["polarity"]) == (
        "replace",
        FILM,
        "none",
    )
    assert float(found.rated_voltage) == 630
    assert "temperature_rating" not in found.values


@pytest.mark.common_practice
def test_no_reading_of_capacitance_keeps_old_paper():
    readings = read_measured("Ref, C (nF), D @ 1 kHz\nC1, 101, 0.005\n")
    made = plan("C1 .1uF 400V paper\n", measured=readings)
    assert [item.reference for item in made.items] == ["C1"]


@pytest.mark.behaviour
def test_a_bipolar_electrolytic_is_never_chosen_for_film():
    made = plan("C1 1uF 50V paper\n", catalogue=CATALOGUE)
    (item,) = made.items
    part = item.selection.part
    assert part is None or part.family.startswith("film")
