"""The panel that any calculator gets: fields from its definition, the finding as one types."""

import ipywidgets as widgets
import pytest

from repairlib.core.calculators import all_calculators
from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.calculators import calculator_panel


def test_answers_as_one_types():
    panel = calculator_panel("capacitor_code")
    assert "Type capacitance" in panel.answer.value
    panel.inputs["capacitance"].value = "4n7"
    assert "472" in panel.answer.value
    panel.inputs["tolerance"].value = "J"
    assert "472J" in panel.answer.value


def test_its_title_stands_there_once():
    panel = calculator_panel("capacitor_code", capacitance="4n7")
    shown = "".join(one.value for one in panel.children if isinstance(one, widgets.HTML))
    assert shown.count(panel.calculator.title) == 1


def test_says_what_is_wrong_and_keeps_what_was_typed():
    panel = calculator_panel("capacitor_code")
    panel.inputs["capacitance"].value = "<b>4 ohms</b>"
    assert "<b>4 ohms" not in panel.answer.value
    assert "no number stands in front" in panel.answer.value
    assert panel.inputs["capacitance"].value == "<b>4 ohms</b>"


def test_opens_with_values_typed_in_and_shows_only_these():
    panel = calculator_panel("capacitor_code", capacitance="4n7")
    assert list(panel.inputs) == ["capacitance"]
    assert "472" in panel.answer.value
    with pytest.raises(RepairlibError, match="no such value"):
        calculator_panel("capacitor_code", colour="red")


def test_a_value_that_may_be_left_out_has_an_empty_field():
    panel = calculator_panel("judge_capacitor")
    assert panel.inputs["esr"].value == ""


def test_unknown_calculator():
    with pytest.raises(RepairlibError, match="capacitor_code"):
        calculator_panel("capacitor_kode")


@pytest.mark.parametrize("name", all_calculators())
def test_every_calculator_has_a_panel(name):
    panel, one = calculator_panel(name), all_calculators()[name]
    assert list(panel.inputs) == list(one.parameters)
    for field, default in one.defaults.items():
        assert panel.inputs[field].value == ("" if default is None else str(default))
    assert panel.answer.value
