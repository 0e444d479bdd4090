"""repairlib.core.calculator: one definition, checked, called, fuzzed and documented."""

import json
import sys
import types

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.calculator import (
    TOPICS,
    Choice,
    Given,
    Text,
    all_calculators,
    calculator,
    found,
)
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import SOURCES


@calculator(
    topic="test",
    title="Energy",
    sources=("common practice",),
    cautions=("stored charge",),
    capacitance=Given("F", "The capacitance.", above=0, at_most=1),
    voltage=Given("V", "The voltage.", at_least=0),
    kind=Choice(("film", "can"), "The kind.", default="film"),
    label=Text("Anything.", default=""),
)
def energy(capacitance, voltage, kind, label):
    joule = capacitance * voltage**2 / 2
    return found({"energy": Quantity(joule, "J"), "kind": kind}, ["E = C V² / 2"], notes=[label])


def test_takes_numbers_in_si_and_text():
    assert energy(0.01, 10).energy == 0.5
    assert energy("10000 µF", voltage="10 V", kind="CAN").energy == 0.5
    assert energy(Quantity(0.01, "F"), 10).kind == "film"


def test_a_quantity_is_taken_whole_whatever_digits_it_shows():
    assert energy(Quantity(0.01049, "F", digits=2), 10).energy == pytest.approx(0.5245, rel=1e-12)
    with pytest.raises(RepairlibError, match="voltage is not in V"):
        energy(0.01, Quantity(10, "A"))


@pytest.mark.parametrize(
    ("given_values", "wrong"),
    [
        ({"capacitance": "1 F"}, "voltage is missing"),
        ({"capacitance": 0, "voltage": 1}, "out of range"),
        ({"capacitance": 2, "voltage": 1}, "out of range"),
        ({"capacitance": float("nan"), "voltage": 1}, "out of range"),
        ({"capacitance": "1 V", "voltage": 1}, "in V where F is due"),
        ({"capacitance": True, "voltage": 1}, "not a number"),
        ({"capacitance": 1, "voltage": 1, "kind": "box"}, "not a kind known"),
        ({"capacitance": 1, "voltage": 1, "colour": "red"}, "no such value"),
        ({"capacitance": 1, "voltage": 1, "label": 5}, "not a text"),
    ],
)
def test_bad_values_are_named(given_values, wrong):
    with pytest.raises(RepairlibError, match=wrong):
        energy(**given_values)


def test_given_twice_and_too_many():
    with pytest.raises(RepairlibError, match="given twice"):
        energy(1, capacitance=1)
    with pytest.raises(RepairlibError, match="too many"):
        energy(1, 2, "film", "x", "y")


def test_the_range_is_said_with_its_unit():
    with pytest.raises(RepairlibError) as error:
        energy(2, 1)
    assert error.value.accepted.replace("\xa0", " ") == "a number in F above 0 F, at most 1 F"


def test_a_count_or_ratio_has_no_unit():
    count = Given("", "Counts of the last digit.", at_least=0)
    assert count.read("digits", "3") == 3
    with pytest.raises(RepairlibError, match=r"has no unit\. Accepted: a plain number"):
        count.read("digits", "3 V")


def test_a_wrong_definition_stops_at_import():
    with pytest.raises(TypeError, match="parameters differ"):
        calculator(topic="t", title="t", sources=("common practice",), a=Text("x"))(lambda b: b)
    with pytest.raises(TypeError, match="not known"):
        calculator(topic="t", title="t", sources=("no such book",), a=Text("x"))(lambda a: a)
    with pytest.raises(TypeError, match="missing"):
        calculator(topic="t", title="t", sources=(), a=Text("x"))(lambda a: a)


def test_the_finding_carries_everything():
    finding = energy("4700 µF", 50)
    assert str(finding).replace("\xa0", " ") == "Energy: energy 5.875 J; kind film"
    document = json.loads(json.dumps(finding.to_dict()))
    assert document["values"]["energy"] == {"value": 5.875, "unit": "J"}
    assert document["cautions"] == ["stored charge"]
    page = finding._repr_html_()
    assert HAZARDS["stored charge"].title in page
    assert "C V² / 2" in page


def test_the_notebook_form_escapes_what_was_typed():
    assert "<script>" not in energy(1, 1, label="<script>")._repr_html_()


def test_a_name_that_is_not_there():
    with pytest.raises(AttributeError, match="it has energy, kind"):
        _ = energy(1, 1).power


CALCULATORS = all_calculators()


def test_two_calculators_of_one_name_are_a_mistake(monkeypatch):
    """Which of the two would answer is nobody's choice."""
    twin = types.ModuleType("twin")
    twin.energy = calculator(topic="test", title="Twin", sources=("common practice",))(
        lambda: found({})
    )
    twin.energy.name = "series_pair"
    monkeypatch.setitem(sys.modules, "twin", twin)
    monkeypatch.setattr("repairlib.core.calculator.TOPICS", (*TOPICS, "twin"))
    with pytest.raises(TypeError, match="two calculators are called series_pair"):
        all_calculators()


def test_there_are_calculators():
    assert CALCULATORS


@pytest.mark.parametrize("name", CALCULATORS)
def test_every_calculator_is_documented_and_sourced(name):
    one = CALCULATORS[name]
    assert ">>>" in one.__doc__
    assert all(key in SOURCES for key in one.sources)
    assert all(key in HAZARDS for key in one.cautions)
    for parameter in one.parameters.values():
        assert parameter.sentence.endswith(".")
        assert parameter.range()
    assert one.title in one.page()


@pytest.mark.parametrize("name", CALCULATORS)
@given(data=st.data())
def test_every_calculator_survives_any_input(name, data):
    one = CALCULATORS[name]
    values = {
        parameter_name: data.draw(_any_value_for(parameter))
        for parameter_name, parameter in one.parameters.items()
    }
    try:
        finding = one(**values)
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    assert isinstance(finding, Finding)
    assert "\n" not in str(finding)
    json.dumps(finding.to_dict())


def _any_value_for(parameter):
    sensible = {
        Given: st.floats(allow_nan=True, allow_infinity=True) | st.floats(1e-13, 1e3),
        Choice: st.sampled_from(parameter.all_options()) if isinstance(parameter, Choice) else None,
        Text: st.text(max_size=20),
    }[type(parameter)]
    return sensible | st.text(max_size=12) | st.none()
