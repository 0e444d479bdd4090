"""The calculator of a replacement."""

import pytest

from repairlib.core.errors import RepairlibError
from repairlib.recap.calculators import replacement_capacitor


@pytest.mark.common_practice
def test_the_kind_of_the_old_part_is_never_assumed():
    with pytest.raises(RepairlibError, match="kind is missing"):
        replacement_capacitor("25 µF", "15 V")
    bipolar = replacement_capacitor("25 µF", "15 V", "bipolar electrolytic")
    assert bipolar.values["polarity"] == "bipolar"
    assert replacement_capacitor("25 µF", "15 V", "tantalum").verdict == "judge"
