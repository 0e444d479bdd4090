"""Lifting and refitting a memory chip: the method by body and tools, hazards, pin 1, moisture."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.firmware import OUTLINES, lift_chip


@pytest.mark.common_practice
@pytest.mark.parametrize(
    ("body", "tools", "verdict"),
    [
        ("208 mil", "hot air station", "hot air"),
        ("150 mil", "hand tools", "low-melt alloy"),
        ("TSSOP-8", "desoldering station", "low-melt alloy"),
        ("no leads, 6 × 5 mm", "hot air station", "hot air"),
        ("no leads, 6 × 5 mm", "hand tools", "stop"),
        ("pins, 300 mil", "desoldering station", "vacuum"),
    ],
)
def test_method_by_body_and_tools(body, tools, verdict):
    assert lift_chip(body, tools).verdict == verdict


@pytest.mark.common_practice
def test_a_cell_beside_it_stops_the_heat():
    found = lift_chip("208 mil", "hot air station", neighbour="battery or cell")
    assert found.verdict == "stop" and "cell" in found.reason
    assert "batteries" in found.cautions


@pytest.mark.behaviour
def test_cautions_go_with_the_solder_and_the_chip():
    found = lift_chip(solder="not known")
    assert {"lead", "static charge", "hot tools", "fumes and flux", "only copy"} <= set(
        found.cautions
    )
    assert "lead" not in lift_chip(solder="SAC305").cautions


@pytest.mark.from_memory("J-STD-020 peaks of small bodies: 260 °C lead-free, 240 °C tin-lead")
def test_what_its_body_bears():
    hot = lift_chip(solder="SAC305").body_at_most.value
    cool = lift_chip(solder="Sn63Pb37").body_at_most.value
    assert hot == 260.0
    assert cool < hot
    assert lift_chip(solder="not known").body_at_most.value == cool


@pytest.mark.behaviour
def test_steps_stand_in_the_order_of_the_work():
    notes = " ".join(lift_chip().notes)
    order = ["two equal reads", "Power off", "photograph", "Pin 1: the dot", "First power"]
    places = [notes.index(step) for step in order]
    assert places == sorted(places)


@pytest.mark.behaviour
@pytest.mark.parametrize(
    ("level", "open_for", "says"),
    [
        ("not known", None, "the bag of the new chip"),
        ("not known", None, "lead by lead"),
        ("1", None, "no limit"),
        ("3", None, "not known for how long"),
        ("3", "100 h", "it may go on now"),
        ("3", "300 h", "bake first, 125 °C for"),
    ],
)
def test_moisture_of_the_new_chip(level, open_for, says):
    given = {} if open_for is None else {"open_for": open_for}
    found = lift_chip(level=level, **given)
    assert says in next(note for note in found.notes if note.startswith("Moisture"))


@pytest.mark.behaviour
def test_an_unknown_body_is_one_line():
    with pytest.raises(RepairlibError, match="not a known body"):
        lift_chip("SO-9")


@pytest.mark.common_practice
@pytest.mark.parametrize("body", OUTLINES)
@pytest.mark.parametrize("tools", ["hand tools", "desoldering station", "hot air station"])
def test_the_chip_that_may_hold_the_only_copy_is_never_cut(body, tools):
    found = lift_chip(body, tools)
    said = " ".join((str(found.reason), *found.working, *map(str, found.values.values())))
    assert "cut" not in said
    assert sum("never cut" in note for note in found.notes) == 1
    assert not any("cut it out" in note for note in found.notes)
