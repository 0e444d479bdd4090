"""What is typed into a panel is back when the panel is made again, for each learner apart."""

import pytest

from repairlib.faces.panels import (
    before_power_panel,
    bench_audit,
    calculator_panel,
    discharge_view,
    hot_air_tuner,
    image_reader,
    joint_heat_panel,
    judge_part,
    judging,
    life_view,
    missing_part,
    on_the_board,
    polarity_check,
    power_path_panel,
    quick_check,
    which_chip,
    write_plan,
)
from repairlib.faces.panels.fields import FieldPanel, Fields
from repairlib.faces.panels.following import turn_to
from repairlib.learn import set_learner
from repairlib.learn.kept_work import KeptWork

SIZE = Fields("5rem", "20rem")


def panel(kept="words", options=("axial", "radial"), first="C1"):
    fields = {
        "place": SIZE.text("Place", first),
        "body": SIZE.choice("Body", options),
        "volts": SIZE.slider("Volts", 10, 0, 100),
    }
    return FieldPanel(fields, lambda **typed: [f"{typed}"], ["answer"], kept=kept)


# Each panel of the lessons, with a field to change and what to change it to.
PANELS = {
    "quick check": (lambda: quick_check("104K"), lambda made: made.marking, "47/25"),
    "discharge": (discharge_view, lambda made: made.fields["voltage"], "12 V"),
    "bench audit": (bench_audit, lambda made: made.fields["lines"], "strap: 40 MΩ"),
    "polarity": (polarity_check, lambda made: made.fields["family"], "bridge rectifier"),
    "judging": (judging, lambda made: made.fields["limit_high"], "2 Ω"),
    "judge part": (judge_part, lambda made: made.fields["esr"], "2 Ω"),
    "on the board": (on_the_board, lambda made: made.fields["part"], "C2"),
    "life": (life_view, lambda made: made.fields["temperature"], 65),
    "hot air": (hot_air_tuner, lambda made: made.fields["preheater"], 120),
    "joint heat": (joint_heat_panel, lambda made: made.fields["preheat"], 100),
    "power path": (power_path_panel, lambda made: made.fields["current"], "4 A"),
    "before power": (before_power_panel, lambda made: made.fields["pair 1"], "2 kΩ"),
    "images": (image_reader, lambda made: made.fields["chip"], "8 MiB"),
    "which chip": (which_chip, lambda made: made.fields["programmer"], "1.8 V"),
    "write plan": (write_plan, lambda made: made.fields["volts"], "1.8 V"),
    "missing part": (missing_part, lambda made: made.fields["beside"], "none"),
    "calculator": (
        lambda: calculator_panel("capacitor_code", capacitance="100 nF"),
        lambda made: made.inputs["capacitance"],
        "47 nF",
    ),
}


@pytest.mark.parametrize("name", PANELS)
def test_every_panel_has_it_back(name):
    make, field, value = PANELS[name]
    first = field(make())
    at_first = first.value
    first.value = value
    again = make()
    assert field(again).value == value != at_first
    assert again.keeping.strip.layout.display == ""
    again.keeping.again.click()
    assert field(again).value == at_first == field(make()).value
    assert again.keeping.strip.layout.display == "none"


def test_in_a_fresh_home_a_panel_looks_as_its_lesson_says():
    made = panel()
    assert made.typed() == {"place": "C1", "body": "axial", "volts": 10}
    assert made.keeping.strip.layout.display == "none"


def test_without_a_name_nothing_is_kept(home):
    panel(kept="").place.value = "C9"
    assert panel(kept="").place.value == "C1" and not home.exists()


def test_what_is_back_is_answered_and_the_rest_stays():
    panel().volts.value = 40
    panel().place.value = "C9"
    assert "'place': 'C9', 'body': 'axial', 'volts': 40" in panel().answer.value


def test_the_same_panel_that_begins_otherwise_keeps_another_thing():
    panel().place.value = "C9"
    assert panel(first="C2").place.value == "C2"
    assert panel("other").place.value == "C1"
    assert panel().place.value == "C9"


@pytest.mark.parametrize(
    ("kept", "now"),
    [
        ({"body": "chip"}, {"place": "C1", "body": "axial", "volts": 10}),
        ({"volts": 400}, {"place": "C1", "body": "axial", "volts": 10}),
        ({"volts": "many", "place": 7}, {"place": "C1", "body": "axial", "volts": 10}),
        ({"gone": "x", "place": "C9"}, {"place": "C9", "body": "axial", "volts": 10}),
        ({"place": None, "body": ["radial"]}, {"place": "C1", "body": "axial", "volts": 10}),
    ],
)
def test_what_no_longer_fits_gives_way_to_the_lesson(kept, now):
    KeptWork(panel().keeping.name).save(kept)
    assert panel().typed() == now


def test_a_choice_that_hangs_on_another_is_back_too():
    made = polarity_check()
    made.fields["family"].value = "bridge rectifier"
    mark = made.fields["part_mark"].options[1]
    made.fields["part_mark"].value = mark
    assert polarity_check().fields["part_mark"].value == mark


def test_learners_do_not_mix_and_a_panel_turns_to_who_is_set():
    set_learner("Ada", "bench-7")
    made = panel()
    made.place.value = "C9"
    turn_to("Ben", "bench-7")
    assert made.place.value == "C1"
    made.place.value = "C5"
    turn_to("Ada", "bench-7")
    assert made.place.value == "C9"
    turn_to("", "")
    assert made.place.value == "C1"


def test_a_panel_left_from_somebody_else_saves_nothing_and_turns():
    """Ben was set by another kernel: what stands here is Ada's and must not become his."""
    set_learner("Ada", "bench-7")
    made = panel()
    made.place.value = "C9"
    set_learner("Ben", "bench-7")
    made.volts.value = 70
    assert made.typed() == {"place": "C1", "body": "axial", "volts": 10}
    assert "it became the turn of Ben, group bench-7" in made.keeping.note.value
    assert KeptWork(made.keeping.name).read() == {}
    set_learner("Ada", "bench-7")
    assert KeptWork(made.keeping.name).read() == {"place": "C9"}


def test_what_cannot_be_kept_is_told_and_the_panel_goes_on(home):
    made = panel()
    home.write_text("in the way of the folder")
    made.place.value = "C9"
    assert "Not kept: " in made.keeping.note.value and "C9" in made.answer.value
    assert "cannot be read or saved" in panel().keeping.note.value
    home.unlink()
    made.volts.value = 70
    assert made.keeping.note.value == ""


def test_a_damaged_file_is_told_and_kept():
    made = panel()
    made.place.value = "C9"
    made.keeping.work.path.write_bytes(b"{")
    again = panel()
    assert again.place.value == "C1" and "It is kept as " in again.keeping.note.value
