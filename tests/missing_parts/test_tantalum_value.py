"""How much capacitance stood there: bounds by place, case, regulator and twin."""

import pytest

from repairlib.missing_parts.tantalum_cases import cases
from repairlib.missing_parts.tantalum_value import (
    NOT_KNOWN,
    PLACES,
    bounds_of,
    likely,
    middle_of,
    together,
    values_in,
)
from tests.documents import document

MICRO = 1e-6


@pytest.mark.published(
    document("Intel 386 hardware manual", "10 to 47 µF from the external supply line")
)
def test_where_the_supply_enters():
    entry = PLACES["supply entry"]
    assert (entry.least, entry.most) == pytest.approx((10 * MICRO, 47 * MICRO))


@pytest.mark.published(document("Microchip tank capacitors", "typically 4.7 µF to 47 µF"))
def test_a_store_at_chips():
    chips = PLACES["rail at chips"]
    assert (chips.least, chips.most) == pytest.approx((4.7 * MICRO, 47 * MICRO))


@pytest.mark.published(
    document(
        "KEMET T491 list", "20 V: case C 4.7 to 22 µF, case D 15 to 47 µF, case B 2.2 to 10 µF"
    )
)
@pytest.mark.parametrize(
    ("eia", "made"), [("3528-21", (2.2, 10)), ("6032-28", (4.7, 22)), ("7343-31", (15, 47))]
)
def test_the_decade_of_a_case_holds_what_a_maker_lists(eia, made):
    (bound,) = bounds_of(NOT_KNOWN, cases()[eia], 20, None, None)
    assert bound.least <= made[0] * MICRO and made[1] * MICRO <= bound.most * (1 + 1e-9)


@pytest.mark.behaviour
def test_bounds_together():
    bounds = bounds_of("regulator output", cases()["3528-21"], 10, 22 * MICRO, None)
    assert together(bounds) == pytest.approx((22 * MICRO, 47 * MICRO))
    twin = bounds_of("regulator output", cases()["3528-21"], 10, None, 10 * MICRO)
    assert together(twin) == pytest.approx((10 * MICRO / 1.2, 12.5 * MICRO))
    assert together(()) is None
    assert together(bounds_of(NOT_KNOWN, None, 10, None, None)) is None
    assert together(bounds_of("branch of a rail", None, 10, 22 * MICRO, None)) is None


@pytest.mark.behaviour
def test_every_twin_has_a_value_that_is_made():
    for step in range(200):
        twin = 1e-7 * 1.05**step
        if twin < 0.5:
            assert values_in(*together(bounds_of(NOT_KNOWN, None, 10, None, twin)))


@pytest.mark.common_practice
def test_values_in_stock_come_first():
    assert likely([10.0, 15.0, 22.0, 33.0, 47.0]) == [10.0, 22.0, 47.0]
    assert middle_of([10.0, 15.0]) == 10.0
    assert middle_of([15.0]) == 15.0
