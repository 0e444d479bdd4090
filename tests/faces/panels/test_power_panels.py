"""The panels of the limit and of the simulated supply."""

import pytest

from repairlib.circuits import FAULTS, SOUND, SYMPTOMS, symptom_rows, symptoms_of
from repairlib.faces.panels.limiting import power_limit
from repairlib.faces.panels.simulated_supply import supply_faults
from repairlib.power_up import LAMP, NEITHER


def plain(html):
    return html.replace("\xa0", " ")


def test_the_limit_of_a_bench_supply():
    panel = power_limit("12 V", "250 mA")
    assert "begin at 3 V with 100 mA" in plain(panel.answer.value)
    assert "bursts or burns" in panel.answer.value


def test_a_lamp_is_left_to_a_qualified_person():
    panel = power_limit(have=LAMP)
    head = panel.answer.value.partition("<details")[0]
    assert "qualified person" in head and "step 1" not in panel.answer.value
    assert "does not isolate" in panel.answer.value and "Mains current" in panel.answer.value


def test_with_neither_it_is_handed_on():
    panel = power_limit(have=NEITHER)
    assert "hand on" in panel.answer.value
    assert "somebody who has a limited supply" in panel.answer.value


@pytest.mark.parametrize(("field", "typed"), [("voltage", "12 A"), ("current", "some")])
def test_bad_input_gives_one_line_and_stays(field, typed):
    panel = power_limit()
    panel.fields[field].value = typed
    assert "Not done" in panel.answer.value and typed in panel.answer.value
    assert panel.fields[field].value == typed
    assert power_limit().fields[field].value == typed  # kept, too


def test_bad_watts_of_a_lamp_are_told():
    panel = power_limit(have=LAMP)
    panel.fields["power"].value = "bright"
    assert "bright" in panel.answer.value


@pytest.mark.parametrize("fault", FAULTS)
def test_the_simulated_supply_shows_its_symptoms_and_no_others(fault):
    panel = supply_faults(fault)
    told = plain(panel.answer.value)
    for symptom, words in SYMPTOMS.items():
        assert (words[1:] in told) == (symptom in symptoms_of(fault))
    for row in symptom_rows():
        assert (f">{row.fault}<" in told) == (set(row.shows) == set(symptoms_of(fault)))
    assert "<img" in panel.picture.value


def test_a_sound_supply_has_no_symptom_and_no_part():
    panel = supply_faults(SOUND)
    assert "No symptom" in panel.answer.value and "decides" not in panel.answer.value
