"""Any number given to the plain functions of solder: an answer that is a number, or our error."""

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from repairlib.core.errors import RepairlibError
from repairlib.heat.desoldering import braid_width, nozzle_bore, tip_width
from repairlib.heat.mixed_joint import mix, soft_from
from repairlib.heat.phase_diagrams import just_melted, liquid_fraction, liquidus, solidus
from repairlib.heat.solder_alloys import ELEMENTS, check_parts, density, fusion_heat
from repairlib.heat.volume import fill_needed, hole_volume, metal_share, wire_length

NUMBERS = st.floats() | st.floats(-10, 200) | st.integers(-5, 500)
CALLS = {
    "hole volume": (hole_volume, 4),
    "metal share": (metal_share, 3),
    "wire length": (wire_length, 3),
    "fill needed": (lambda leads, board: fill_needed("2", leads, board), 2),
    "liquidus": (lambda percent: liquidus("Sn-Pb", percent), 1),
    "solidus": (lambda percent: solidus("Sn-Bi", percent), 1),
    "just melted": (lambda percent: just_melted("Sn-Pb", percent), 1),
    "liquid fraction": (liquid_fraction, 3),
    "braid": (braid_width, 1),
    "tip": (tip_width, 1),
    "nozzle": (nozzle_bore, 1),
}


@pytest.mark.parametrize("name", CALLS)
@given(data=st.data())
def test_a_number_or_our_error(name, data):
    call, count = CALLS[name]
    numbers = [data.draw(NUMBERS) for _ in range(count)]
    try:
        answer = call(*numbers)
    except RepairlibError as error:
        assert "\n" not in str(error)
        return
    assert answer is None or isfinite(answer)


@given(
    st.dictionaries(st.sampled_from([*ELEMENTS, "Xx", ""]), NUMBERS, max_size=5), NUMBERS, NUMBERS
)
def test_any_composition(parts, first_mass, second_mass):
    try:
        check_parts(parts)
        assert density(parts) > 0
        assert fusion_heat(parts) > 0
        made = mix(parts, first_mass, {"Sn": 63, "Pb": 37}, second_mass)
        assert all(isfinite(share) for share in made.values())
        soft = soft_from(made)
        assert soft is None or 50 < soft < 400
    except RepairlibError as error:
        assert "\n" not in str(error)
