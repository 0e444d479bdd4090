"""Memory cells and wet tantalum: neither gets an ordinary electrolytic, and the acid is named."""

import pytest

from repairlib.recap import plan, replacement_capacitor

ALUMINIUM = "aluminium electrolytic"


@pytest.mark.common_practice
@pytest.mark.parametrize("farad", ["22 mF", "0.033 F", "47 mF", "0.1 F", "0.22 F", "1 F", "1.5 F"])
@pytest.mark.parametrize("volts", ["2.5 V", "3.6 V", "5.5 V"])
@pytest.mark.parametrize("kind", [ALUMINIUM, "polymer electrolytic"])
def test_a_double_layer_cell_never_gets_an_electrolytic(farad, volts, kind):
    finding = replacement_capacitor(farad, volts, kind)
    assert finding.verdict == "hold" and not finding.values
    assert "double-layer cell of the same voltage" in finding.reason
    assert "never an ordinary electrolytic" in finding.reason


@pytest.mark.common_practice
@pytest.mark.parametrize("text", ["1.5F 5.5V", "0.22F 5.5V elect", "10000µF 5.5V elect memory"])
def test_so_does_the_plan(text):
    assert "never an ordinary electrolytic" in plan(f"C1 {text}\n").held[0].why


@pytest.mark.common_practice
@pytest.mark.parametrize("volts", [6.3, 10, 16])
def test_a_large_electrolytic_is_still_replaced(volts):
    assert replacement_capacitor("22 mF", volts, ALUMINIUM).verdict == "replace"


@pytest.mark.common_practice
def test_a_place_that_keeps_a_memory_takes_low_leakage():
    finding = replacement_capacitor("100 µF", "6.3 V", ALUMINIUM, place="memory back-up")
    assert finding.verdict == "replace" and "low leakage" in finding.notes[0]
    small = replacement_capacitor("10 mF", "5.5 V", ALUMINIUM, place="memory back-up")
    assert small.verdict == "hold"


@pytest.mark.common_practice
@pytest.mark.parametrize(
    "text",
    [
        "22uF 35V wet tantalum",
        "6.8µF 100V wet slug",
        "Tantal nass 47µF 50V",
        "47µF 75V tantale humide",
        "15µF 60V tantalio umido",
    ],
)
def test_wet_tantalum_is_handed_on_and_its_acid_named(text):
    made = plan(f"C1 {text}\n")
    (item,) = made.judged
    assert "sulphuric acid" in item.why and "like for like" in item.why.lower()
    assert "wet tantalum" in item.cautions and "wet tantalum" in made.cautions


@pytest.mark.common_practice
def test_wet_may_stand_in_the_remarks():
    made = plan("Ref,Value,Volts,Type,Remarks\nC1,22µF,35,tantalum,wet slug\n")
    assert "wet tantalum" in made.judged[0].cautions


@pytest.mark.common_practice
def test_solid_tantalum_is_no_wet_one():
    assert plan("C1 22uF 35V tantalum bead\n").judged[0].cautions == ()
    said = replacement_capacitor("22 µF", "35 V", "tantalum")
    assert said.verdict == "judge" and any("sulphuric acid" in note for note in said.notes)
