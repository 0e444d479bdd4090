"""repairlib.core.calculator: one definition, checked, called, fuzzed and documented."""

import inspect
import json
import pkgutil
import random
import subprocess
import sys
from importlib import import_module
from typing import Annotated

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import repairlib
from repairlib.core.calculator import Calculator, Choice, Found, Given, Text, calculator, found
from repairlib.core.calculators import HOMES, all_calculators, calculator_named
from repairlib.core.errors import RepairlibError
from repairlib.core.finding import Finding
from repairlib.core.quantity import Quantity
from repairlib.core.safety import HAZARDS
from repairlib.core.sources import SOURCES
from tests import fuzz


@calculator(
    topic="test",
    title="Energy",
    sources=("common practice",),
    cautions=("stored charge",),
)
def energy(
    capacitance: Annotated[float, Given("F", "The capacitance.", above=0, at_most=1)],
    voltage: Annotated[float, Given("V", "The voltage.", at_least=0)],
    kind: Annotated[str, Choice(("film", "can"), "The kind.")] = "film",
    label: Annotated[str, Text("Anything.")] = "",
) -> Found:
    joule = capacitance * voltage**2 / 2
    values = {"energy": Quantity(joule, "J"), "kind": kind}
    return found(values, working=["E = C V² / 2"], notes=[label])


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
        ({"capacitance": 1, "voltage": 1, "kind": "box"}, "not a known kind"),
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


def bare(value):
    return found({"value": value})


def noted_twice(value: Annotated[str, Text("One."), Text("Two.")]) -> Found:
    return found({"value": value})


def test_sources_and_cautions_not_known_stop_at_import():
    with pytest.raises(TypeError, match="not known"):
        calculator(topic="t", title="t", sources=("no such book",))(bare)
    with pytest.raises(TypeError, match="not known"):
        calculator(topic="t", title="t", sources=("common practice",), cautions=("x",))(bare)
    with pytest.raises(TypeError, match="missing"):
        calculator(topic="t", title="t", sources=())(bare)


@pytest.mark.parametrize("function", [bare, noted_twice])
def test_a_parameter_not_said_once_is_our_mistake(function):
    wrong = calculator(topic="t", title="t", sources=("common practice",))(function)
    with pytest.raises(TypeError, match="value is not annotated"):
        wrong("x")


def test_help_shows_names_and_real_defaults():
    assert str(inspect.signature(energy)) == "(capacitance, voltage, kind='film', label='')"


def test_what_is_found_beside_the_values_is_named():
    with pytest.raises(TypeError, match="positional"):
        found({}, ["a step"])


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


def test_a_value_is_asked_for_by_name_with_its_unit():
    joule = energy("4700 µF", 50).energy
    assert str(joule).replace("\xa0", " ") == "5.875 J"
    assert float(joule) == 5.875


@pytest.mark.parametrize("name", ["title", "values", "verdict", "notes", "to_dict"])
def test_a_value_may_not_hide_what_a_finding_has(name):
    def hiding() -> Found:
        return found({name: "lost"})

    one = calculator(topic="t", title="t", sources=("common practice",))(hiding)
    with pytest.raises(TypeError, match=f"value called {name}"):
        one()


def test_a_name_that_is_not_there():
    with pytest.raises(AttributeError, match="it has energy, kind"):
        _ = energy(1, 1).power


CALCULATORS = all_calculators()


def test_the_table_of_homes_names_every_calculator_once_and_where_it_is_made():
    defined = {}
    for module in pkgutil.walk_packages(repairlib.__path__, "repairlib."):
        if not module.name.endswith(("__main__", "hub.spawning")):  # the latter needs JupyterHub
            for one in vars(import_module(module.name)).values():
                if isinstance(one, Calculator):
                    defined[one] = one.__module__
    told = [(name, f"repairlib.{home}") for home in HOMES for name in HOMES[home].split()]
    assert sorted(told) == sorted((one.name, home) for one, home in defined.items())
    assert len(CALCULATORS) == len(told)


def test_a_call_by_name_loads_its_own_room_only():
    code = """
import sys
from repairlib.faces.cli import main
main(["calc", "stored_energy", "capacitance=100 uF", "voltage=25 V"])
print(*sys.modules)
"""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, encoding="utf-8"
    )
    rooms = {name.split(".")[1] for name in done.stdout.split() if name.startswith("repairlib.")}
    assert rooms == {"core", "faces", "stored_charge"}


def test_a_misspelt_name_gets_the_nearest_and_how_to_list_all():
    with pytest.raises(RepairlibError) as error:
        calculator_named("charge_lef")
    first, *others = error.value.accepted.partition("; ")[0].split(", ")
    assert first == "charge_left"
    assert len(others) == 2
    assert error.value.accepted.endswith("python -m repairlib calc lists all")
    with pytest.raises(RepairlibError, match="Accepted: python -m repairlib calc lists all"):
        calculator_named("🔥" * 100_000)


@pytest.mark.parametrize("name", CALCULATORS)
def test_every_calculator_is_documented_and_sourced(name):
    one = CALCULATORS[name]
    assert ">>>" in one.__doc__
    assert all(key in SOURCES for key in one.sources)
    assert all(key in HAZARDS for key in one.cautions)
    assert one.title in one.page()


@pytest.mark.parametrize("name", CALCULATORS)
def test_signature_page_and_call_say_the_same(name):
    one = CALCULATORS[name]
    shown = inspect.signature(one).parameters
    assert list(shown) == list(one.parameters)
    usage = one.usage()
    for parameter_name, parameter in one.parameters.items():
        assert parameter.sentence.endswith(".")
        assert f"{parameter_name}: {parameter.sentence} {parameter.range()}." in one.page()
        default = shown[parameter_name].default
        optional = default is not inspect.Parameter.empty
        assert (f"[{parameter_name}=...]" in usage) == optional
        assert f"{parameter_name}=..." in usage
        if optional and default is not None:
            assert parameter.read(parameter_name, default) == default


@pytest.mark.parametrize("name", CALCULATORS)
@given(data=st.data())
@settings(deadline=None)
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


@pytest.mark.parametrize(
    ("given_values", "wrong"),
    [
        ({"capacitance": 10**400, "voltage": 1}, "capacitance is out of range"),
        ({"capacitance": 1, "voltage": 1e21}, "voltage is out of range"),
        ({"capacitance": 5e-324, "voltage": 1}, "capacitance is out of range"),
        ({"capacitance": "1e-300 F", "voltage": 1}, "capacitance is out of range"),
        ({"capacitance": 1, "voltage": 1, "self": "1"}, "energy has no such value"),
        ({"capacitance": 1, "voltage": 1, "kind": np.array([1.0, 2.0])}, "not a known kind"),
        ({"capacitance": 1, "voltage": 1, "kind": 10**5000}, "not a known kind"),
    ],
    ids=range(7),
)
def test_what_no_bench_has_is_refused_in_one_line(given_values, wrong):
    with pytest.raises(RepairlibError, match=wrong) as error:
        energy(**given_values)
    assert "\n" not in str(error.value)


def test_less_than_anything_is_nothing():
    assert energy(1, 1e-300).energy == 0


def test_options_with_commas_are_parted_by_semicolons_and_a_part_of_one_will_do():
    marks = Choice(("NP or BP, no stripe", "dot", "dot, white", "ring"), "The mark.")
    assert marks.range() == "NP or BP, no stripe; dot; dot, white; ring"
    assert Choice(("film", "can"), "The kind.").range() == "film, can"
    assert marks.read("mark", " np or bp, NO stripe ") == "NP or BP, no stripe"
    assert marks.read("mark", "no stripe") == marks.read("mark", "NP or BP")
    assert marks.read("mark", "dot") == "dot"
    with pytest.raises(RepairlibError, match="not a known mark"):
        marks.read("mark", "stripe")
    for typed in ("NP or BP, no stripe", "NP or BP", "no stripe"):
        assert calculator_named("check_polarity").parameters["part_mark"].read("part_mark", typed)


@pytest.mark.parametrize("name", CALCULATORS)
def test_a_refused_choice_reads_well(name):
    for parameter_name, parameter in CALCULATORS[name].parameters.items():
        if isinstance(parameter, Choice):
            with pytest.raises(RepairlibError, match=r"^'X': not a known [a-z0-9 ]+\. Accepted: "):
                parameter.read(parameter_name, "X")


def test_what_a_person_reads_is_words_and_figures():
    values = {"leaded": True, "burns": False, "resistance": "5e+04 K/W", "share": 2.5e-05}
    finding = Finding("A check", values, ("k = 1.469e+05 × 2e-09",), reason="3e+15 of 1e+00")
    assert str(finding) == ("A check: leaded yes; burns no; resistance 50000 K/W; share 0.000025")
    assert finding.working == ("k = 146900 × 2 × 10⁻⁹",)
    assert finding.reason == "3 × 10¹⁵ of 1"
    assert "<dd>yes</dd>" in finding._repr_html_() or ">yes<" in finding._repr_html_()
    assert finding.to_dict()["values"]["leaded"] is True


def test_any_call_gives_a_finding_or_one_line():
    """In short; `python -m tests.fuzz calls 400000` asks more."""
    seed = random.SystemRandom().randrange(10**9)
    assert not [f"seed {seed}: {wrong}" for wrong in fuzz.calls(random.Random(seed), 3000)]


@pytest.mark.behaviour
@pytest.mark.parametrize(("typed", "told"), [("60", True), ("60 kV", False), ("1.5", True)])
def test_a_number_without_its_unit_is_told_as_that(typed, told):
    field = Given("V", "Of the rail.", at_least=0, at_most=1)
    with pytest.raises(RepairlibError, match="out of range") as refused:
        field.read("rail", typed)
    assert ("no unit and was taken in V" in str(refused.value)) == told
