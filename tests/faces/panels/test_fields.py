"""A table of fields: it answers at every change, and tells at its place what is refused."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.faces.panels.fields import FieldPanel, Fields

SIZE = Fields("5rem", "20rem")


def half(number: str, unit: str) -> tuple[str, str]:
    if not number.isdigit():
        raise RepairlibError(number, "not a whole number", "digits")
    return f"{int(number) / 2:g} {unit}", "a picture"


def panel_of(**options) -> FieldPanel:
    fields = {"number": SIZE.text("Number", "4"), "unit": SIZE.choice("Unit", ("V", "A"))}
    return FieldPanel(fields, half, **options)


def test_it_answers_at_once_and_at_every_change():
    panel = panel_of()
    assert (panel.answer.value, panel.picture.value) == ("2 V", "a picture")
    panel.unit.value = "A"
    panel.number.value = "3"
    assert panel.answer.value == "1.5 A"


@pytest.mark.parametrize("keeps, picture", [(False, ""), (True, "a picture")])
def test_what_is_refused_is_told_and_what_was_typed_stays(keeps, picture):
    panel = panel_of(keeps=keeps)
    panel.number.value = "<four>"
    assert "&lt;four&gt;" in panel.answer.value and panel.number.value == "<four>"
    assert panel.picture.value == picture


def test_it_waits_while_the_options_of_a_list_are_changed():
    panel = panel_of()
    panel.unit.value = None
    assert panel.answer.value == "2 V"
    panel.unit.value = "A"
    panel.unit.options = ("Hz", "s")
    assert panel.answer.value == "2 Hz"
