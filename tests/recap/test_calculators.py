"""The calculator of a replacement."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap import plan
from repairlib.recap.calculators import replacement_capacitor


@pytest.mark.common_practice
def test_the_kind_of_the_old_part_is_never_assumed():
    with pytest.raises(RepairlibError, match="kind is missing"):
        replacement_capacitor("25 µF", "15 V")
    bipolar = replacement_capacitor("25 µF", "15 V", "bipolar electrolytic")
    assert bipolar.values["polarity"] == "bipolar"
    assert replacement_capacitor("25 µF", "15 V", "tantalum").verdict == "judge"


@pytest.mark.common_practice
@pytest.mark.parametrize("kind", ["aluminium electrolytic", "bipolar electrolytic"])
@pytest.mark.parametrize("volts", [5.5, 6.3, 25, 63, 100, 160, 350, 450, 500])
@pytest.mark.parametrize(
    "farad", ["10 nF", "82 nF", "0.1 µF", "8 µF", "47 µF", "22000 µF", "0.1 F"]
)
def test_the_calculator_says_what_the_plan_says(farad, volts, kind):
    finding = replacement_capacitor(farad, volts, kind)
    (item,) = plan(f"C1 {farad} {volts:g}V {kind.replace(' electrolytic', '')}\n").all_items
    assert finding.verdict == item.verdict and set(item.cautions) <= set(finding.cautions)
    if item.new:
        assert finding.rated_voltage.value == item.new.volts
        assert finding.capacitance.value == pytest.approx(item.new.farad)


@pytest.mark.common_practice
def test_no_bipolar_electrolytic_above_100_volts():
    for volts, verdict in ((63, "replace"), (100, "replace"), (160, "hold"), (350, "hold")):
        assert replacement_capacitor("4.7 µF", volts, "bipolar electrolytic").verdict == verdict
